package ingredient

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAnUnknownNameSuggestsWhatWasMeant(t *testing.T) {
	lib := NewLibrary([]*Ingredient{{ID: "sugar"}, {ID: "dextrose_anhydrous"}, {ID: "dextrose_monohydrate"}, {ID: "nutmeg"}, {ID: "butter_salted"}})
	for given, want := range map[string]string{
		"suger":     "sugar",              // a slip
		"dextrose":  "dextrose_anhydrous", // a kind of it
		"butter":    "butter_salted",      // not nutmeg
		"plutonium": "",
		"":          "",
	} {
		assert.Equal(t, want, lib.Unknown(given).Nearest, given)
	}
}
