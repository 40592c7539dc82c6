package model_test

import (
	"fmt"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/work/design"
)

// unnamed is a pack of the stall whose 100 g of carbohydrate no line names.
func unnamed(t testing.TB, id string) *ingredient.Ingredient {
	t.Helper()
	k := ingredient.Known
	in, err := ingredient.FromPack(id, "Quay "+id, ingredient.Pack{PerG: 100, Carbohydrate: k(100), Sugars: k(0), Fibre: k(0), Fat: k(0), Protein: k(0), Salt: k(0)})
	require.NoError(t, err)
	return in
}

// traps are designs of which something is said.
func traps(t testing.TB) map[string]design.Design {
	add := func(p design.Part, id string, g float64) design.Design {
		return stall().WithLineAdded(p, market.Line(id, g))
	}
	own := func(p design.Part) design.Design {
		d := stall()
		d.Own = []*ingredient.Ingredient{unnamed(t, "meal")}
		return d.WithLineAdded(p, market.Line("meal", 60))
	}
	heavy := stall()
	heavy.Foam.Syrup.WeighedG = 244
	light := stall()
	light.Foam.Syrup.WeighedG = 178
	weighed := stall()
	weighed.Foam.Syrup.WeighedG = 205
	inverted := stall()
	inverted.Foam.Syrup.InvertedPercent = 40
	return map[string]design.Design{
		"plain": stall(), "heavy pan": heavy, "light pan": light, "weighed": weighed, "inverted": inverted,
		"lemon": add(design.DensePart, "lemon_juice", 30), "starch": add(design.DensePart, "cornstarch", 15),
		"rum": add(design.DensePart, "rum_40", 40), "rum in the syrup": add(design.SyrupPart, "rum_40", 30),
		"yolk in the foam": add(design.FoamPart, "egg_yolk", 10), "salt": add(design.DensePart, "salt", 14), "salt in the foam": add(design.FoamPart, "salt", 6),
		"unnamed": own(design.DensePart), "unnamed in the foam": own(design.FoamPart), "nuts": add(design.DensePart, "hazelnut", 90),
	}
}

// A recipe scaled to the tubs says the same of itself written for a gram, of
// which yolk, acid, starch and what is over on the scale are then a trace.
func TestWhatIsSaidDoesNotDependOnTheAmount(t *testing.T) {
	m := model.New(market.Library(t))
	said := func(d design.Design) []string {
		var all []string
		for _, w := range evaluated(t, m, d).Warnings {
			s := fmt.Sprint(w.Code, w.Where, w.Severity, w.Handled)
			if f, ok := w.Facts.(model.OverLimit); ok {
				s += fmt.Sprintf(" %.6g", f.Value)
			}
			all = append(all, s)
		}
		sort.Strings(all)
		return all
	}
	for name, d := range traps(t) {
		whole := evaluated(t, m, d)
		small := times(d, 1e-3)
		small.Foam.Syrup.WeighedG *= 1e-3
		assert.Equal(t, said(d), said(small), name)
		r := evaluated(t, m, small)
		for i, p := range []*model.Phase{&r.Dense, &r.Foam} {
			q := []*model.Phase{&whole.Dense, &whole.Foam}[i]
			assert.InDelta(t, q.FreezingPointC.Low, p.FreezingPointC.Low, 1e-9, name)
			assert.InDelta(t, q.FreezingPointC.High, p.FreezingPointC.High, 1e-9, name)
			assert.InDelta(t, q.Soft.Mix.Grams[mix.Water], p.Soft.Mix.Grams[mix.Water], 1e-9, name)
		}
		assert.InDelta(t, whole.Syrup.SolidsBandPercent[0], r.Syrup.SolidsBandPercent[0], 1e-9, name)
	}
}

// Two parts in a hundred of sugar that no figure names lower the freezing point
// by a third of a kelvin, half a part by a twelfth of one: from there it is told
// and cautioned.
func TestCarbohydrateWithoutANameIsToldFromHalfAPercent(t *testing.T) {
	m := model.New(market.Library(t))
	said := func(p design.Part, share float64) *model.Warning {
		d := stall()
		d.Own = []*ingredient.Ingredient{unnamed(t, "meal"), unnamed(t, "flakes")}
		r := evaluated(t, m, d)
		phase := map[design.Part]*model.Phase{design.DensePart: &r.Dense, design.FoamPart: &r.Foam, design.SyrupPart: &r.Foam}[p]
		all := phase.WrittenG * share / (1 - share)
		d = d.WithLineAdded(p, market.Line("meal", 0.7*all)).WithLineAdded(p, market.Line("flakes", 0.3*all))
		return find(t, m, d, "carbohydrate_unnamed")
	}
	for _, p := range []design.Part{design.DensePart, design.FoamPart} {
		assert.Nil(t, said(p, 0.00495), p.String())
		w := said(p, 0.00505)
		require.NotNil(t, w, p.String())
		assert.Equal(t, model.Note, w.Severity)
		f := w.Facts.(model.CarbohydrateUnnamed)
		assert.InDelta(t, 0.505, f.Per100G, 1e-3)
		assert.Len(t, f.Ingredients, 2)
		assert.Equal(t, model.Note, said(p, 0.0198).Severity)
		assert.Equal(t, model.Caution, said(p, 0.0202).Severity)
	}
}

// A pack that says nothing of alcohol is not told to lose any in the syrup.
func TestNobodyGuessesAlcohol(t *testing.T) {
	m := model.New(market.Library(t))
	d := stall()
	d.Own = []*ingredient.Ingredient{unnamed(t, "meal")}
	for _, p := range []design.Part{design.DensePart, design.SyrupPart} {
		assert.Nil(t, find(t, m, d.WithLineAdded(p, market.Line("meal", 90)), "alcohol_boils_off"))
	}
}

// The two readings of a boiled syrup lie as far apart as published tables do:
// 2.7 points of solids (Browne 1912 against Starzak & Peacock 1997).
func TestTheReadingsOfASyrupLieAsFarApartAsTheTables(t *testing.T) {
	m := model.New(market.Library(t))
	d := stall().WithLines(design.FoamPart, nil)
	r := evaluated(t, m, d)
	solids := func(water float64) float64 { return 100 - water }
	body, soft, firm := solids(r.Foam.Body.Mix.Grams[mix.Water]), solids(r.Foam.Soft.Mix.Grams[mix.Water]), solids(r.Foam.Firm.Mix.Grams[mix.Water])
	assert.InDelta(t, 2.7, soft-body, 0.3)
	assert.InDelta(t, 2.7, body-firm, 0.3)
	// A syrup of hardly any solids has no fewer than none.
	thin := stall().WithLines(design.SyrupPart, []design.Line{market.Line("sugar", 1), market.Line("water", 300)})
	thin.Foam.Syrup.CookTemperatureC = 100
	s := evaluated(t, m, thin).Syrup
	require.True(t, s.Reached)
	assert.Less(t, s.SolidsPercent, 2.5)
	assert.Zero(t, s.SolidsBandPercent[0])
	assert.InDelta(t, 100, func() float64 {
		f, _ := pass(evaluated(t, m, stall().WithLines(design.FoamPart, []design.Line{market.Line("egg_yolk", 30)})), "yolk_in_whites", "foam")
		return f.Value
	}(), 1e-6, "yolk without any white is all yolk")
}
