package ingredient

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAnUnknownNameSuggestsWhatWasMeant(t *testing.T) {
	lib := NewLibrary([]*Ingredient{{ID: "sugar"}, {ID: "dextrose_anhydrous"}, {ID: "dextrose_monohydrate"}})
	for given, want := range map[string]string{
		"suger":     "sugar",              // a slip
		"dextrose":  "dextrose_anhydrous", // a kind of it
		"plutonium": "",
		"":          "",
	} {
		assert.Equal(t, want, lib.Unknown(given).Nearest, given)
	}
}
