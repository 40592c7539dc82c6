package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestErrorsAreInPlainWords(t *testing.T) {
	for want, args := range map[string][]string{
		"--at takes a temperature in °C":           {"evaluate", "quay.yaml", "--at", "NaN"},
		"--at −50 °C is outside −40 to 0 °C":       {"evaluate", "quay.yaml", "--at", "-50"},
		"to −20.0 °C is colder than from −10.0 °C": {"curve", "quay.yaml", "--from", "-10", "--to", "-20"},
		"from −70 °C is outside −60 to 30 °C":      {"curve", "quay.yaml", "--from", "-70"},
		"there is no file /":                       {"process", "gone.yaml"},
		"there is no folder nodir\n":               {"card", "quay.yaml", "-o", "nodir/card.pdf"},
		"alone is not enough: 2 are needed":        {"diff", "quay.yaml"},
	} {
		code, _, err := ripplecalc(t, args...)
		assert.NotZero(t, code)
		assert.Contains(t, err, want)
	}
}
