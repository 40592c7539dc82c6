package model_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

// A temperature that is advised lies inside the range that is named beside it,
// and there both phases eat well.
func TestTheTemperatureAdvisedIsInsideItsRange(t *testing.T) {
	m := model.New(market.Library(t))
	tried := 0
	for sugar := 0.0; sugar <= 240; sugar += 10 {
		d := market.Honey()
		d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "sugar", Grams: sugar})
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		a := r.Verdict.Remedy
		if a.Kind != model.ServeAt {
			continue
		}
		tried++
		assert.LessOrEqual(t, a.Both.From, a.AtC, "%g g sugar", sugar)
		assert.GreaterOrEqual(t, a.Both.To, a.AtC, "%g g sugar", sugar)
		d.Serving.TemperatureC = a.AtC
		then, err := m.Evaluate(d)
		require.NoError(t, err)
		assert.Equal(t, model.EatsWell, then.Verdict.Dense.How, "%g g sugar at %g", sugar, a.AtC)
	}
	assert.Greater(t, tried, 3)
}
