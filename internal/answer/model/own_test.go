package model_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/work/design"
)

// The pack is invented: a fig paste that the stall Saltmarsh Quay buys in.
func TestWhatAPackDoesNotStateIsIncompleteInResultAndLabel(t *testing.T) {
	k := ingredient.Known
	in, err := ingredient.FromPack("fig_paste", "Fig paste", ingredient.Pack{PerG: 100, Fat: k(0.5), Saturates: k(0.1),
		Carbohydrate: k(55), Sugars: k(50), Protein: k(2), Salt: k(0), AvailableCarbohydrate: true})
	require.NoError(t, err)
	d := market.Honey()
	d.Own = []*ingredient.Ingredient{in}
	d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "fig_paste", Grams: 200})
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)

	assert.InDelta(t, 100, r.Dense.Body.Mix.TotalG(), 1e-9)
	assert.Equal(t, []string{"fig_paste"}, r.Allergens.Unstated)
	for _, c := range []ingredient.Column{ingredient.CalciumMG, ingredient.IronMG, ingredient.PotassiumMG, ingredient.Fibre} {
		i := slices.IndexFunc(r.Nutrition.Incomplete, func(g model.Gap) bool { return g.Column == c })
		if assert.GreaterOrEqual(t, i, 0, c) {
			assert.Contains(t, r.Nutrition.Incomplete[i].Ingredients, "fig_paste")
		}
		assert.False(t, r.Nutrition.Per100G[c].Complete(), c)
	}
	for region, keys := range map[label.Region][]string{
		label.US: {"calcium", "iron", "potassium", "dietary_fiber", "total_carbohydrate"}, label.EU: {"energy_kcal"}} {
		l, err := label.For(r.Food(d), region, label.Options{})
		require.NoError(t, err)
		for _, key := range keys {
			i := slices.IndexFunc(l.Lines, func(x label.PanelLine) bool { return x.Key == key })
			require.GreaterOrEqual(t, i, 0, key)
			assert.True(t, l.Lines[i].Incomplete, key)
			assert.Contains(t, l.Lines[i].Missing, "fig_paste", key)
		}
		if i := slices.IndexFunc(l.Lines, func(x label.PanelLine) bool { return x.Key == "carbohydrate" }); region == label.EU && i >= 0 {
			assert.NotContains(t, l.Lines[i].Missing, "fig_paste", "the pack states the available carbohydrate")
		}
	}
}
