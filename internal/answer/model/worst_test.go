package model_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// The verdict names the gravest that spoils a tub; of equals, that nobody knows
// how a phase eats, and else what was told first. Two traps at once, in each
// pair.
func TestTheVerdictNamesTheGravest(t *testing.T) {
	m := model.New(market.Library(t))
	air := func(of float64) func(design.Design) design.Design {
		return func(d design.Design) design.Design { d.Dense.OverrunPercent = of; return d }
	}
	full := func(d design.Design) design.Design { d.Tubs.FillPercent = 100; return d }
	heavy := func(d design.Design) design.Design { d.Foam.Syrup.WeighedG = 900; return d }
	butter := func(d design.Design) design.Design {
		return d.WithLineAdded(design.DensePart, market.Line("butter_unsalted", 500))
	}
	yolk := func(d design.Design) design.Design {
		return d.WithLineAdded(design.FoamPart, market.Line("egg_yolk", 10))
	}
	of := func(changes ...func(design.Design) design.Design) string {
		d := stall()
		d.Serving.TemperatureC = -7 // at which both phases eat well
		for _, change := range changes {
			d = change(d)
		}
		r := evaluated(t, m, d)
		if r.Verdict.Because == nil {
			return ""
		}
		return r.Verdict.Because.Code
	}
	require.Empty(t, of())
	for _, c := range []struct {
		name    string
		changes []func(design.Design) design.Design
		want    string
	}{
		{"air alone", []func(design.Design) design.Design{air(45)}, "air_beyond_process"},
		{"yolk alone", []func(design.Design) design.Design{yolk}, "yolk_in_whites"},
		{"two cautions: the first", []func(design.Design) design.Design{yolk, full}, "yolk_in_whites"},
		{"the unknown after a caution", []func(design.Design) design.Design{butter, air(45)}, "outside_hardness_law"},
		{"the unknown before a caution", []func(design.Design) design.Design{butter, yolk}, "outside_hardness_law"},
		{"graver than the unknown, told before", []func(design.Design) design.Design{butter, air(61)}, "air_beyond_process"},
		{"graver than the unknown, told after", []func(design.Design) design.Design{butter, heavy}, "weighed_too_heavy"},
		{"graver than a caution", []func(design.Design) design.Design{full, heavy}, "weighed_too_heavy"},
	} {
		assert.Equal(t, c.want, of(c.changes...), c.name)
	}
}

// Yolks are the custard's and whites the foam's: USDA SR28 NDB 01125 and 01124,
// 17 and 33 g of a large egg; a whole egg counts in both.
func TestEggsAreCountedWhereTheyGo(t *testing.T) {
	m := model.New(market.Library(t))
	d := stall().WithGrams(design.DensePart, 2, 6*17).WithGrams(design.FoamPart, 0, 4*33)
	d.Batch.Basis = design.BasisAsWritten
	e := evaluated(t, m, d).Eggs
	assert.InDelta(t, 6, e.Dense.Yolks, 1e-9)
	assert.Zero(t, e.Dense.Whites)
	assert.InDelta(t, 4, e.Foam.Whites, 1e-9)
	assert.Zero(t, e.Foam.Yolks)
	whole := evaluated(t, m, d.WithLineAdded(design.DensePart, market.Line("egg_whole", 50))).Eggs
	assert.InDelta(t, 7, whole.Dense.Yolks, 1e-9)
	assert.InDelta(t, 1, whole.Dense.Whites, 1e-9)
}

// How much carbohydrate lies unnamed is counted of the custard, and where to
// name it depends on whose record it is: the first of two; a line, where the
// record is the maker's shelf and not the design's.
func TestUnnamedCarbohydrateIsCountedAndPlaced(t *testing.T) {
	meal, bran := unnamed(t, "meal"), unnamed(t, "bran")
	shelf := model.New(market.Library(t)).Holding([]*ingredient.Ingredient{meal, bran})
	d := stall().WithLineAdded(design.DensePart, market.Line("bran", 0)).
		WithLineAdded(design.DensePart, market.Line("meal", 60)).WithLineAdded(design.DensePart, market.Line("bran", 40))
	of := func(m *model.Model, d design.Design) (string, model.CarbohydrateUnnamed) {
		w := find(t, m, d, "carbohydrate_unnamed")
		require.NotNil(t, w)
		return w.Where, w.Facts.(model.CarbohydrateUnnamed)
	}
	where, f := of(shelf, d)
	assert.Equal(t, "dense.lines[6]", where, "the first that weighs something")
	assert.InDelta(t, 100*100./925, f.Per100G, 1e-9, "100 g in 825 g of custard and these")
	assert.Equal(t, []*ingredient.Ingredient{meal, bran}, f.Ingredients)
	d.Own = []*ingredient.Ingredient{meal, bran}
	where, f = of(model.New(market.Library(t)), d)
	assert.Equal(t, "ingredients[0].pack.polyols", where)
	assert.Len(t, f.Ingredients, 2)
	d.Own = []*ingredient.Ingredient{bran, meal}
	where, _ = of(model.New(market.Library(t)), d)
	assert.Equal(t, "ingredients[1].pack.polyols", where)
}

// A gap of five thousandths of a gram in 100 g is one that no label could tell:
// all are rounded more coarsely (21 CFR 101.9(c): 0.5 g, of sodium 5 mg).
func TestAGapThatNoLabelCouldTellIsNotTold(t *testing.T) {
	m := model.New(market.Library(t))
	k := ingredient.Known
	in, err := ingredient.FromPack("quay_crumb", "Quay crumb", ingredient.Pack{PerG: 100, Carbohydrate: k(85), Sugars: k(40), Polyols: k(0), Starch: k(40), Fat: k(0), Protein: k(0), Salt: k(0)})
	require.NoError(t, err)
	of := func(g float64) (told bool, gap, known float64) {
		d := stall().WithLines(design.DensePart, []design.Line{market.Line("water", 700), market.Line("sugar", 200), market.Line("quay_crumb", g)})
		d.Own = []*ingredient.Ingredient{in}
		r := evaluated(t, m, d)
		for _, w := range r.Warnings {
			f, ok := w.Facts.(model.NutritionIncomplete)
			told = told || ok && f.Ingredient == in && slices.Contains(f.Lacks, ingredient.Fibre)
		}
		a := r.Nutrition.Per100G[ingredient.Fibre]
		return told, a.Most - a.Known, a.Known
	}
	low, high := 0.0, 50.0
	for range 60 {
		mid := (low + high) / 2
		if told, _, _ := of(mid); told {
			high = mid
		} else {
			low = mid
		}
	}
	told, gap, known := of(high)
	require.True(t, told)
	assert.Less(t, known, 0.5)
	assert.InEpsilon(t, 0.005, gap, 1e-3)
	assert.False(t, math.IsNaN(gap))
}
