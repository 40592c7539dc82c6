package model_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/work/design"
)

// times is d with k times of every line.
func times(d design.Design, k float64) design.Design {
	for _, p := range []design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
		for i, l := range d.Lines(p) {
			d = d.WithGrams(p, i, k*l.Grams)
		}
	}
	return d
}

// Scaled to the tubs, a recipe of a gram makes the same tub as one of a kilo:
// wherever a mass is compared with nought, a small one is still something.
func TestARecipeOfAGramMakesTheSameTub(t *testing.T) {
	m := model.New(market.Library(t))
	whole := evaluated(t, m, stall())
	for _, k := range []float64{1e-3, 1 / whole.Dense.WrittenG, 1 / whole.Foam.WrittenG, 0.5 / whole.Foam.WrittenG, 1 / 180., 1 / 60.} {
		r := evaluated(t, m, times(stall(), k))
		for i, p := range []*model.Phase{&r.Dense, &r.Foam} {
			q := []*model.Phase{&whole.Dense, &whole.Foam}[i]
			assert.InDelta(t, q.FreezingPointC.Value, p.FreezingPointC.Value, 1e-9)
			assert.InEpsilon(t, q.YieldKPa.Value, p.YieldKPa.Value, 1e-9)
			assert.InDelta(t, q.SweetnessPercent, p.SweetnessPercent, 1e-9)
			assert.InEpsilon(t, q.Portion.MassG, p.Portion.MassG, 1e-9)
		}
		assert.Equal(t, whole.Syrup.Reached, r.Syrup.Reached)
		assert.InDelta(t, whole.Syrup.SolidsPercent, r.Syrup.SolidsPercent, 1e-9)
		assert.InDelta(t, whole.Syrup.BoilingPointC, r.Syrup.BoilingPointC, 1e-6)
		assert.InEpsilon(t, whole.Blend.YieldKPa, r.Blend.YieldKPa, 1e-9)
		assert.InEpsilon(t, whole.Blend.DensityGPerML, r.Blend.DensityGPerML, 1e-9)
		assert.InDelta(t, whole.Nutrition.Per100G[ingredient.Protein].Known, r.Nutrition.Per100G[ingredient.Protein].Known, 1e-9)
		assert.Equal(t, whole.Allergens, r.Allergens)
		assert.InEpsilon(t, whole.Eggs.Yolks, r.Eggs.Yolks, 1e-9)
		for i := range r.Lines {
			assert.InEpsilon(t, whole.Lines[i].InTubsG, r.Lines[i].InTubsG, 1e-9)
			assert.InDelta(t, whole.Lines[i].Slopes.LnYield, k*r.Lines[i].Slopes.LnYield, 1e-9)
			assert.InDelta(t, whole.Lines[i].TubSweetPercentPerG, k*r.Lines[i].TubSweetPercentPerG, 1e-9)
		}
		assert.Equal(t, whole.Verdict.Dense.How, r.Verdict.Dense.How)
	}
	// Inverted sugar too, and a pan on the scale.
	inverted := stall()
	inverted.Foam.Syrup.InvertedPercent = 30
	a, b := evaluated(t, m, inverted), evaluated(t, m, times(inverted, 1/342.296))
	assert.InDelta(t, a.Foam.Percent(mix.Glucose), b.Foam.Percent(mix.Glucose), 1e-9)
	assert.Greater(t, a.Foam.Percent(mix.Glucose), 1.0)
	weighed := stall()
	weighed.Foam.Syrup.WeighedG = 210
	small := times(weighed, 1e-3)
	small.Foam.Syrup.WeighedG = 0.210
	a, b = evaluated(t, m, weighed), evaluated(t, m, small)
	assert.True(t, a.Syrup.Weighed && b.Syrup.Weighed)
	assert.InDelta(t, a.Syrup.SolidsPercent, b.Syrup.SolidsPercent, 1e-9)
	assert.InDelta(t, a.Syrup.BoilingPointC, b.Syrup.BoilingPointC, 1e-6)
}

// The tubs' figures are sums over what goes into them.
func TestTheTubIsTheSumOfItsPhases(t *testing.T) {
	m := model.New(market.Library(t))
	d := stall()
	d.Tubs.Count, d.Tubs.VolumeML, d.Tubs.FillPercent = 3, 500, 80
	r := evaluated(t, m, d)
	b := &r.Blend
	assert.InDelta(t, 3*500*0.8, b.VolumeML, 1e-9)
	assert.InDelta(t, 0.4*b.VolumeML, b.Foam.VolumeML, 1e-9)
	assert.InDelta(t, 3, b.TubsFilled, 1e-12)
	assert.InEpsilon(t, b.MassG/b.VolumeML, b.DensityGPerML, 1e-12)
	ice := b.Dense.MassG*r.Dense.State.IceMassFraction + b.Foam.MassG*r.Foam.State.IceMassFraction
	water := (b.Dense.MassG*r.Dense.Percent(mix.Water) + b.Foam.MassG*r.Foam.Percent(mix.Water)) / 100
	assert.InEpsilon(t, ice/b.MassG, b.IceMassFraction, 1e-12)
	assert.InEpsilon(t, ice/water, b.FrozenFraction, 1e-12)
	assert.InEpsilon(t, b.MassG*b.SweetnessPercent, b.Dense.MassG*r.Dense.SweetnessPercent+b.Foam.MassG*r.Foam.SweetnessPercent, 1e-12)
	assert.InDelta(t, r.TubMean(func(p *model.Phase) float64 { return p.SweetnessPercent }), b.SweetnessPercent, 1e-9)
	for _, l := range r.Lines {
		share := b.FoamMassFraction
		if l.Part == design.DensePart {
			share = 1 - b.FoamMassFraction
		}
		assert.InDelta(t, share*l.Slopes.SweetnessPercent, l.TubSweetPercentPerG, 1e-12)
	}

	// A tub of one phase is that phase.
	for percent, of := range map[float64]func(*model.Result) *model.Phase{0: func(r *model.Result) *model.Phase { return &r.Dense }, 100: func(r *model.Result) *model.Phase { return &r.Foam }} {
		d.Blend.FoamVolumePercent = percent
		r := evaluated(t, m, d)
		p := of(r)
		assert.InDelta(t, p.State.IceMassFraction, r.Blend.IceMassFraction, 1e-12)
		assert.InDelta(t, p.State.FrozenFraction, r.Blend.FrozenFraction, 1e-12)
		assert.InDelta(t, p.State.IceVolumeFraction, r.Blend.IceVolumeFraction, 1e-12)
		assert.InDelta(t, p.SweetnessPercent, r.TubMean(func(p *model.Phase) float64 { return p.SweetnessPercent }), 1e-12)
	}
	empty := evaluated(t, m, design.New())
	assert.Zero(t, empty.Blend.DensityGPerML)
	assert.True(t, math.IsNaN(empty.Blend.IceMassFraction))
	assert.True(t, empty.Verdict.Empty)
	assert.Zero(t, empty.Nutrition.Per100G[ingredient.Protein].Known)
}

// 21 CFR 101.9(b)(5)(viii): a tablespoon is 15 mL. 21 CFR 101.12(b): a serving
// of ice cream is 2/3 cup, 160 mL of 240.
func TestASpoonAndAServingAreTheRegulations(t *testing.T) {
	r := evaluated(t, model.New(market.Library(t)), stall())
	for _, p := range []*model.Phase{&r.Dense, &r.Foam} {
		assert.InEpsilon(t, p.SweetnessPercent/100*p.Body.GPerML()*15, p.SweetnessGPerSpoon, 1e-12)
	}
	assert.InEpsilon(t, r.Blend.SweetnessPercent/100*r.Blend.DensityGPerML*15, r.Blend.SweetnessGPerSpoon, 1e-12)
	n := &r.Nutrition
	assert.InDelta(t, 2./3*240, n.ServingML, 1e-12)
	assert.InEpsilon(t, 160*r.Blend.DensityGPerML, n.ServingG, 1e-12)
	assert.InEpsilon(t, n.TotalMassG, n.ServingG*n.ServingsTotal, 1e-12)
	for _, c := range []ingredient.Column{ingredient.Water, ingredient.Energy, ingredient.Protein, ingredient.SodiumMG} {
		assert.InEpsilon(t, n.Per100G[c].Known*n.ServingG/100, n.PerServing[c].Known, 1e-12, c.String())
	}
}

// What the label counts is what the lines hold, less what cooked off.
func TestNutrientsAreThoseOfTheLinesInTheTubs(t *testing.T) {
	m := model.New(market.Library(t))
	d := market.Honey()
	d.Dense.StoveLossPercent = 5
	r := evaluated(t, m, d)
	for _, c := range []ingredient.Column{ingredient.Protein, ingredient.Fat, ingredient.SodiumMG} {
		sum := 0.0
		for _, l := range r.Lines {
			sum += l.InTubsG / 100 * l.Ingredient.Cell(c).Value
		}
		assert.InEpsilon(t, 100*sum/r.Blend.MassG, r.Nutrition.Per100G[c].Known, 1e-9, c.String())
	}
	want := r.TubMean(func(p *model.Phase) float64 { return p.Percent(mix.Water) })
	assert.InDelta(t, want, r.Nutrition.Per100G[ingredient.Water].Known, 0.2)
	fat := r.TubMean(func(p *model.Phase) float64 { return p.PartPercent(ingredient.Fat).Known })
	assert.InDelta(t, fat, r.Nutrition.Per100G[ingredient.Fat].Known, 1e-9)
	assert.InDelta(t, d.Tubs.VolumeML*d.Tubs.FillPercent/100, r.Food(d).TubML, 1e-9)
	assert.InDelta(t, r.Blend.MassG, mass(r, d), 1e-6, "the label's food weighs what is in the tubs")
}

func mass(r *model.Result, d design.Design) float64 {
	f := r.Food(d)
	sum := -f.WaterOffG
	for _, l := range f.Lines {
		sum += l.Grams
	}
	return sum
}

// USDA SR28 NDB 01125 and 01124: the yolk of a large egg weighs 17 g, its white
// 33 g; whole eggs count in their parts wherever yolk or white is minded.
func TestAWholeEggIsSeventeenOfYolkAndThirtyThreeOfWhite(t *testing.T) {
	m := model.New(market.Library(t))
	r := evaluated(t, m, stall().WithLineAdded(design.FoamPart, design.Line{Ingredient: "egg_whole", Grams: 50}))
	f, _ := pass(r, "yolk_in_whites", "foam")
	require.NotNil(t, f)
	assert.InEpsilon(t, 100*17./(165+33), f.Value, 1e-9)
	r = evaluated(t, m, stall().WithLineAdded(design.DensePart, design.Line{Ingredient: "egg_whole", Grams: 500}))
	f, _ = pass(r, "yolk_heavy", "dense")
	require.NotNil(t, f)
	assert.InEpsilon(t, 1000*(90+170)/1325., f.Value, 1e-9)
	only := evaluated(t, m, stall().WithLines(design.FoamPart, []design.Line{{Ingredient: "egg_yolk", Grams: 30}}))
	f, _ = pass(only, "yolk_in_whites", "foam")
	require.NotNil(t, f)
	assert.False(t, math.IsInf(f.Value, 0), "yolk without any white is a figure too")
}

// Rum of 80 proof holds 33.4 g of alcohol in 100 g (USDA SR28 NDB 14050).
func TestAlcoholInTheSyrupIsToldFromHalfAPercent(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(g float64) (*model.OverLimit, model.Severity, *model.Result) {
		d := stall().WithLineAdded(design.SyrupPart, design.Line{Ingredient: "rum_40", Grams: g})
		r := evaluated(t, m, d)
		f, s := pass(r, "alcohol_boils_off", "foam.syrup")
		return f, s, r
	}
	f, _, _ := of(0)
	assert.Nil(t, f)
	f, s, r := of(1)
	require.NotNil(t, f)
	assert.Equal(t, model.Note, s)
	assert.InDelta(t, 0.334, f.Extra, 1e-9)
	assert.InEpsilon(t, 100*0.334/r.Foam.WrittenG, f.Value, 1e-9)
	at := 0.5 / 100 * r.Foam.WrittenG / 0.334
	_, s, _ = of(0.99 * at)
	assert.Equal(t, model.Note, s)
	_, s, _ = of(1.01 * at)
	assert.Equal(t, model.Caution, s)
	assert.InDelta(t, 0.334, r.Syrup.AlcoholOffG/r.Foam.Portion.Factor, 1e-9)
}

// limits.SyrupDepthMM: 238 g stand 15 mm deep in 12 cm; 3 mm are the least that
// a thermometer's tip can be covered with.
func TestASyrupTooShallowForAThermometerIsTold(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(g float64) *model.OverLimit {
		d := stall()
		d.Batch.Basis = design.BasisAsWritten
		k := g / 205.2 // 180 g of sugar boiled to 118 °C
		d.Foam.Syrup.CookTemperatureC = 118
		d = times(d, k)
		r := evaluated(t, m, d)
		require.InEpsilon(t, g, r.Syrup.MassG, 0.005)
		f, _ := pass(r, "syrup_too_little", "foam.syrup")
		return f
	}
	assert.Nil(t, of(238./5*1.01))
	f := of(238. / 5 * 0.99)
	require.NotNil(t, f)
	assert.InDelta(t, 3*0.99, f.Value, 0.03)
	assert.InDelta(t, 238./5*0.99, f.Extra, 0.3)
}

// A line of nothing brings neither allergen nor gap, one of a crumb both.
func TestACrumbIsDeclaredAndNothingIsNot(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(g float64) *model.Result {
		d := stall().WithLineAdded(design.DensePart, design.Line{Ingredient: "hazelnut_roasted", Grams: g})
		d.Batch.Basis = design.BasisAsWritten
		return evaluated(t, m, d)
	}
	unpriced := func(r *model.Result) (n int) {
		for _, in := range r.Cost.Missing {
			if in.ID == "hazelnut_roasted" {
				n++
			}
		}
		return n
	}
	assert.Zero(t, unpriced(of(0)))
	assert.Equal(t, 1, unpriced(of(0.4)))
	none, crumb := of(0), of(0.4)
	assert.Less(t, len(none.Allergens.US), len(crumb.Allergens.US))
	assert.Less(t, len(none.Allergens.EU), len(crumb.Allergens.EU))
	lacks := func(r *model.Result) (n int) {
		for _, g := range r.Nutrition.Incomplete {
			for _, id := range g.Ingredients {
				if id == "hazelnut_roasted" {
					n++
				}
			}
		}
		return n
	}
	assert.Zero(t, lacks(none))
	assert.Positive(t, lacks(crumb))
	warned := func(r *model.Result) bool {
		for _, w := range r.Warnings {
			if f, ok := w.Facts.(model.NutritionIncomplete); ok && f.Ingredient.ID == "hazelnut_roasted" {
				return true
			}
		}
		return false
	}
	assert.False(t, warned(none))
	assert.True(t, warned(of(300)))
	// From half a percent of what is known, or 0.005 of the unit, a gap counts.
	for i := range 400 {
		g := 0.05 * float64(i)
		if i >= 200 {
			g = 10 + 1.5*float64(i-200)
		}
		r := of(g)
		counts := false
		for _, gap := range r.Nutrition.Incomplete {
			for _, id := range gap.Ingredients {
				a := r.Nutrition.Per100G[gap.Column]
				counts = counts || id == "hazelnut_roasted" && a.Most-a.Known >= 0.005*math.Max(a.Known, 1)
			}
		}
		assert.Equal(t, counts, warned(r), "%g g", g)
	}
}

// USDA SR28: a counted yolk of a large egg weighs 17 g.
func TestCountedEggsAreWeighedBySize(t *testing.T) {
	m := model.New(market.Library(t))
	d := stall()
	d.Batch.Basis = design.BasisAsWritten
	d.Eggs.System, d.Eggs.Size = "US", "large"
	lines := append([]design.Line{}, d.Dense.Lines...)
	lines[2] = design.Line{Ingredient: "egg_yolk", Count: 5, CountOf: design.Yolks}
	r := evaluated(t, m, d.WithLines(design.DensePart, lines))
	assert.InDelta(t, 85, r.Lines[2].WrittenG, 1e-9)
	assert.InDelta(t, 5, r.Eggs.Yolks, 1e-9)
	lines[2].Count = 1
	assert.InDelta(t, 17, evaluated(t, m, d.WithLines(design.DensePart, lines)).Lines[2].WrittenG, 1e-9)
}

// What a line's figures leave open, and whose record of the same name a design's
// own stands before, is told of lines that weigh something.
func TestWhoseFiguresCountIsTold(t *testing.T) {
	m := model.New(market.Library(t))
	codes := func(d design.Design) map[string]int {
		n := map[string]int{}
		for _, w := range evaluated(t, m, d).Warnings {
			n[w.Code]++
		}
		return n
	}
	lemon := func(g float64) design.Design {
		return stall().WithLineAdded(design.DensePart, market.Line("lemon_juice", g))
	}
	before := codes(lemon(0))["composition_assumed"]
	assert.Equal(t, before+1, codes(lemon(0.5))["composition_assumed"])

	in, ok := m.Library().Find("milk_whole")
	require.True(t, ok)
	same, other := *in, *in
	other.Cells[ingredient.Fat] = ingredient.Known(3.9)
	d := stall()
	assert.Zero(t, codes(d)["own_figures_differ"])
	d.Own = []*ingredient.Ingredient{&same}
	assert.Zero(t, codes(d)["own_figures_differ"], "its figures are the library's")
	d.Own = []*ingredient.Ingredient{&other}
	assert.Equal(t, 1, codes(d)["own_figures_differ"])
	assert.Zero(t, codes(d.WithGrams(design.DensePart, 0, 0))["own_figures_differ"], "of nothing")
}

// As written, a batch of a gram is one too.
func TestABatchOfAGramIsATubOfSome(t *testing.T) {
	m := model.New(market.Library(t))
	d := stall()
	d.Batch.Basis = design.BasisAsWritten
	for i := range d.Dense.Lines {
		d.Dense.Lines[i].Price = ingredient.Known(2)
	}
	small := times(d, 1e-4)
	a, b := evaluated(t, m, d), evaluated(t, m, small)
	assert.InEpsilon(t, a.Cost.PerTub, b.Cost.PerTub, 1e-9, "of a full tub, however little there is")
	assert.True(t, b.Dense.InTub() && b.Foam.InTub())
	assert.InEpsilon(t, a.Blend.DensityGPerML, b.Blend.DensityGPerML, 1e-9)
	assert.InDelta(t, a.Blend.IceVolumeFraction, b.Blend.IceVolumeFraction, 1e-9)
	assert.InDelta(t, a.Blend.FrozenFraction, b.Blend.FrozenFraction, 1e-9)
	sweet := func(p *model.Phase) float64 { return p.SweetnessPercent }
	assert.InDelta(t, a.TubMean(sweet), b.TubMean(sweet), 1e-9)
	assert.Equal(t, a.Verdict.Dense.How, b.Verdict.Dense.How)
	assert.False(t, b.Verdict.Empty)
	assert.InDelta(t, a.Nutrition.Per100G[ingredient.Protein].Known, b.Nutrition.Per100G[ingredient.Protein].Known, 1e-9)
	assert.InDelta(t, 1e-4*a.Blend.TubsFilled, b.Blend.TubsFilled, 1e-12)
	assert.InDelta(t, a.Foam.Body.SwellingRatio(d.Serving.TemperatureC, 1), a.Foam.SwellingRatio, 1e-12, "its air follows the cold")
}

// What a label reads of the custard alone is the custard.
func TestTheLabelsCustardIsTheCustard(t *testing.T) {
	m := model.New(market.Library(t))
	d := market.Honey()
	r := evaluated(t, m, d)
	f := r.Food(d)
	phases := map[string]int{}
	for _, l := range f.Lines {
		phases[l.Phase]++
	}
	assert.Equal(t, map[string]int{"dense": 5, "foam": 3}, phases)
	require.Len(t, f.Dense.Lines, 5)
	sum := -f.Dense.WaterOffG
	for _, l := range f.Dense.Lines {
		assert.Equal(t, "dense", l.Phase)
		sum += l.Grams
	}
	assert.InDelta(t, r.Blend.Dense.MassG, sum, 1e-6)
	assert.InDelta(t, r.Dense.Body.GPerML(), f.Dense.DensityGPerML, 1e-12)
}

// A phase of one gram exactly is as little empty as any other.
func TestAPhaseOfAGramIsNotEmpty(t *testing.T) {
	m := model.New(market.Library(t))
	for _, part := range []design.Part{design.DensePart, design.FoamPart} {
		d := stall().WithLines(part, []design.Line{market.Line("water", 1)})
		if part == design.FoamPart {
			d = d.WithLines(design.SyrupPart, nil)
		}
		written := func(r *model.Result) float64 {
			if part == design.DensePart {
				return r.Dense.WrittenG
			}
			return r.Foam.WrittenG
		}
		r := evaluated(t, m, d)
		for g, n := math.Nextafter(1, 0), 0; written(r) != 1 && n < 20; g, n = math.Nextafter(g, 2), n+1 {
			r = evaluated(t, m, d.WithGrams(part, 0, g))
		}
		require.Equal(t, 1.0, written(r))
		assert.False(t, r.Verdict.Empty)
		for _, w := range r.Warnings {
			assert.NotEqual(t, "phase_empty", w.Code)
		}
	}
}
