package fold_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/form/fold"
)

func TestFoldingComparesWhatKeyboardsDoNotHave(t *testing.T) {
	for from, to := range map[string]string{
		"Crème épaisse": "creme epaisse", "Šlehačka (smetana)": "slehacka  smetana", "Rød grød": "rod grod",
		"Œufs": "oeufs", "Weißer Käse": "weisser kase", "Skyr, 0 %": "skyr  0 %", "cre\u0300me": "creme",
		"Masło": "maslo", "ŐRÖLT": "orolt", "乳脂": "乳脂", "\xff": "\ufffd",
		"Half-and-Half (10 %), COLD ": "half and half  10 %   cold", "a\tB\x00": "a\tb\x00", "": "",
	} {
		assert.Equal(t, to, fold.Text(from), from)
	}
}
