package say

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
)

func TestEachAssumptionHasASentence(t *testing.T) {
	seen := map[string]bool{}
	for _, code := range ingredient.AssumptionCodes {
		said := Assumption(metric, ingredient.Assumption{Code: code, ReadAs: []mix.Species{mix.Sucrose}, From: mix.Glucose, To: mix.Maltose, G: 104})
		assert.NotEqual(t, string(code), said)
		assert.NotContains(t, said, "_")
		assert.False(t, seen[said], said)
		seen[said] = true
	}
	assert.Equal(t, "only the total of its sugars is known; it counts as equal parts of glucose and fructose, and may be anything from glucose to maltose",
		Assumption(metric, ingredient.Assumption{Code: ingredient.SugarsInTotal, ReadAs: []mix.Species{mix.Glucose, mix.Fructose}, From: mix.Glucose, To: mix.Maltose}))
	assert.Equal(t, "its figures add up to 104.0 g in 100 g; every part counts for 3.8 % less", Assumption(metric, ingredient.Assumption{Code: ingredient.MassOver, G: 104}))
}
