package model_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

// A foam that holds no ice in an ordinary freezer draws water there, at whatever
// temperature the tub is served: to serve it warmer is no remedy.
func TestServingWarmerIsNoRemedyForAFoamWithoutIce(t *testing.T) {
	m := model.New(market.Library(t))
	instead, warmer := 0, 0
	for _, dextrose := range []float64{0, 60, 120, 180, 240} {
		for serve := -24.0; serve <= -6; serve += 2 {
			d := market.Honey()
			d.Serving.TemperatureC = serve
			d = d.WithLineAdded(design.SyrupPart, design.Line{Ingredient: "dextrose_anhydrous", Grams: dextrose})
			d = d.WithLineAdded(design.SyrupPart, design.Line{Ingredient: "fructose", Grams: dextrose})
			r, err := m.Evaluate(d)
			require.NoError(t, err)
			v := r.Verdict
			isWarmer := v.Remedy.Kind == model.ServeAt && v.Remedy.AtC > v.Remedy.NowC
			if r.Foam.FreezingPoint.Value < model.HomeFreezerC {
				assert.False(t, isWarmer, "%g g, %g °C", dextrose, serve)
				if v.Because != nil && v.Because.Code == "foam_draws_water" && v.Dense.How != model.EatsWell {
					instead++
				}
			} else if isWarmer {
				warmer++
			}
		}
	}
	assert.Positive(t, instead, "no such foam was tried")
	assert.Positive(t, warmer, "no other was advised to be served warmer")
}
