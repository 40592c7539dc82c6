package start_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/start"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

// Every base with every foam, for two, four and a dozen tubs, eats well,
// has nothing that is more than a note, and fills the tubs. (One small tub has too little
// syrup for a thermometer, fifty litres too much for a home freezer: limits of kitchens,
// not of the bases, which warn.)
func TestEveryPairIsGoodForAnyTubs(t *testing.T) {
	shelf, err := start.Open(assets.Bases)
	require.NoError(t, err)
	require.Equal(t, []string{"dairy-free", "milk-and-yolk", "rich"}, start.Keys(shelf.Bases))
	require.Equal(t, []string{"brown-sugar", "honey", "plain"}, start.Keys(shelf.Foams))
	m := model.New(market.Library(t))
	for _, b := range shelf.Bases {
		for _, foam := range append(start.Keys(shelf.Foams), "") {
			for _, tubs := range []struct {
				n  int
				ml float64
			}{{2, 500}, {4, 500}, {12, 350}} {
				d, err := shelf.Design(b.Key, foam)
				require.NoError(t, err)
				d, err = start.Scaled(m, d, tubs.n, tubs.ml)
				require.NoError(t, err)
				d.Batch.Basis = design.BasisAsWritten // what stands there is what is weighed
				r, err := m.Evaluate(d)
				require.NoError(t, err)
				assert.True(t, r.Verdict.Good, "%s with %s, %d of %g mL", b.Key, foam, tubs.n, tubs.ml)
				assert.InDelta(t, float64(tubs.n), r.Blend.TubsFilled, 0.02*float64(tubs.n), "%s with %s", b.Key, foam)
				for _, w := range r.Warnings {
					assert.Equal(t, model.Note, w.Severity, "%s with %s: %s", b.Key, foam, w.Code)
				}
				if b.Key == "dairy-free" {
					assert.NotContains(t, r.Allergens.EU, "milk")
				}
			}
		}
	}
	_, err = shelf.Design("rich", "cloud")
	assert.ErrorContains(t, err, "brown-sugar, honey, plain")
	_, err = shelf.Design("poor", "")
	assert.ErrorContains(t, err, "milk-and-yolk")
}

// Whatever the tubs at hand, from one cup to a festival's tub, the design is valid and fills
// them, whether or not a home kitchen can make it.
func TestEveryPairFillsAnyTubs(t *testing.T) {
	shelf, err := start.Open(assets.Bases)
	require.NoError(t, err)
	m := model.New(market.Library(t))
	for _, b := range shelf.Bases {
		for _, foam := range start.Keys(shelf.Foams) {
			for _, tubs := range []struct {
				n  int
				ml float64
			}{{1, 120}, {1, 5000}, {3, 473.2}, {40, 150}, {500, 30}, {2, 20000}} {
				d, err := shelf.Design(b.Key, foam)
				require.NoError(t, err)
				d, err = start.Scaled(m, d, tubs.n, tubs.ml)
				require.NoError(t, err, "%s with %s, %d of %g mL", b.Key, foam, tubs.n, tubs.ml)
				assert.Empty(t, design.Validate(d), "%s with %s, %d of %g mL", b.Key, foam, tubs.n, tubs.ml)
				d.Batch.Basis = design.BasisAsWritten
				r, err := m.Evaluate(d)
				require.NoError(t, err)
				assert.InDelta(t, float64(tubs.n), r.Blend.TubsFilled, 0.05*float64(tubs.n), "%s with %s, %d of %g mL", b.Key, foam, tubs.n, tubs.ml)
			}
		}
	}
}

// Scaling to the tubs that a design has changes it by no more than a scale shows.
func TestScalingKeepsTheRecipe(t *testing.T) {
	m := model.New(market.Library(t))
	for name, d := range market.Demos(t) {
		was, err := m.Evaluate(d)
		require.NoError(t, err)
		scaled, err := start.Scaled(m, d, 12, 350)
		require.NoError(t, err, name)
		is, err := m.Evaluate(scaled)
		require.NoError(t, err)
		assert.Equal(t, 12, scaled.Tubs.Count)
		assert.InDelta(t, was.Dense.FreezingPointC.Value, is.Dense.FreezingPointC.Value, 0.02, name)
		assert.InEpsilon(t, was.Dense.YieldKPa.Value, is.Dense.YieldKPa.Value, 0.02, name)
	}
}
