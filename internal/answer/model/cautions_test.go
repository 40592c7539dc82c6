package model_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// limitCodes are the codes of the kitchen's limits.
var limitCodes = []string{"air_beyond_process", "yolk_heavy", "too_sweet", "not_sweet_enough", "too_salty", "freezer_overloaded",
	"syrup_too_little", "yolk_in_whites", "alcohol_boils_off", "acid_with_milk", "starch_with_yolk", "weighed_too_heavy", "altitude_syrup"}

func limitsOf(t *testing.T, m *model.Model, d design.Design) []model.Warning {
	t.Helper()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	var out []model.Warning
	for _, w := range r.Warnings {
		if slices.Contains(limitCodes, w.Code) {
			out = append(out, w)
		}
	}
	return out
}

// Designs of the invented stall, each with one trap; the limits and how they
// were read are in testdata/tables/kitchen_limits.csv.
func TestWhatNobodyCanMakeOrEatIsACautionOfItsCode(t *testing.T) {
	m := model.New(market.Library(t))
	add := func(p design.Part, id string, g float64) func(design.Design) design.Design {
		return func(d design.Design) design.Design {
			return d.WithLineAdded(p, design.Line{Ingredient: id, Grams: g})
		}
	}
	for _, c := range []struct {
		name     string
		trap     func(design.Design) design.Design
		code     string
		severity model.Severity
		spoils   bool
	}{
		{"120 % air by hand", func(d design.Design) design.Design { d.Dense.OverrunPercent = 120; return d }, "air_beyond_process", model.Serious, true},
		{"45 % air by hand", func(d design.Design) design.Design { d.Dense.OverrunPercent = 45; return d }, "air_beyond_process", model.Caution, true},
		{"foam at 850 %", func(d design.Design) design.Design { d.Foam.OverrunPercent = 850; return d }, "air_beyond_process", model.Serious, true},
		{"a third yolk", func(d design.Design) design.Design { return d.WithGrams(design.DensePart, 2, 380) }, "yolk_heavy", model.Caution, true},
		{"29 % sweet", func(d design.Design) design.Design { return d.WithGrams(design.DensePart, 3, 290) }, "too_sweet", model.Caution, true},
		{"no sugar in the custard", func(d design.Design) design.Design {
			return d.WithLineRemoved(design.DensePart, 4).WithGrams(design.DensePart, 3, 20)
		}, "not_sweet_enough", model.Caution, true},
		{"2 % salt", add(design.DensePart, "salt", 18), "too_salty", model.Caution, true},
		{"14.7 kg at once", func(d design.Design) design.Design { d.Tubs.Count, d.Tubs.VolumeML = 40, 550; return d }, "freezer_overloaded", model.Caution, true},
		{"10 g of syrup", func(d design.Design) design.Design {
			d.Batch.Basis = design.BasisAsWritten
			d = d.WithLines(design.FoamPart, []design.Line{{Ingredient: "egg_white", Grams: 8}})
			return d.WithLines(design.SyrupPart, []design.Line{{Ingredient: "sugar", Grams: 9}, {Ingredient: "water", Grams: 4}})
		}, "syrup_too_little", model.Caution, true},
		{"yolk in the foam", add(design.FoamPart, "egg_yolk", 10), "yolk_in_whites", model.Caution, true},
		{"whole egg in the foam", add(design.FoamPart, "egg_whole", 50), "yolk_in_whites", model.Caution, true},
		{"rum in the syrup", add(design.SyrupPart, "rum_40", 100), "alcohol_boils_off", model.Caution, true},
		{"rum in the custard", add(design.DensePart, "rum_40", 30), "alcohol_boils_off", model.Note, false},
		{"lemon with milk", add(design.DensePart, "lemon_juice", 30), "acid_with_milk", model.Caution, false},
		{"much lemon with milk", add(design.DensePart, "lemon_juice", 120), "acid_with_milk", model.Caution, true},
		{"starch with yolk", add(design.DensePart, "cornstarch", 15), "starch_with_yolk", model.Caution, false},
		{"the pan weighed with the syrup", func(d design.Design) design.Design { d.Foam.Syrup.WeighedG = 900; return d }, "weighed_too_heavy", model.Serious, true},
		{"118 °C at 3000 m", func(d design.Design) design.Design { d.Kitchen.AltitudeM = 3000; return d }, "altitude_syrup", model.Caution, true},
		{"107 °C at 3000 m", func(d design.Design) design.Design {
			d.Kitchen.AltitudeM, d.Foam.Syrup.CookTemperatureC = 3000, 107
			return d
		}, "altitude_syrup", model.Note, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := limitsOf(t, m, c.trap(market.Honey()))
			i := slices.IndexFunc(got, func(w model.Warning) bool { return w.Code == c.code })
			require.GreaterOrEqual(t, i, 0, "%v", got)
			assert.Equal(t, c.severity, got[i].Severity)
			assert.Equal(t, c.spoils, got[i].Severity > model.Note && !got[i].Handled)
			if f, ok := got[i].Facts.(model.OverLimit); ok {
				assert.True(t, f.Limit.Below && f.Value < f.Step.At || !f.Limit.Below && f.Value > f.Step.At, "%v", f)
				assert.False(t, f.Step.Level == limits.Stop && f.Step.Read == limits.Memory, "what is only remembered stops nobody")
			}
		})
	}
}

// Plain designs stay quiet, a lean and a rich one, with vanilla, a little
// salt, berries in the cold, and beside them the demos.
func TestPlainDesignsStayQuiet(t *testing.T) {
	m := model.New(market.Library(t))
	plain := map[string]design.Design{
		"market":  market.Honey(),
		"vanilla": market.Honey().WithLineAdded(design.DensePart, design.Line{Ingredient: "vanilla_extract", Grams: 6}).WithLineAdded(design.DensePart, design.Line{Ingredient: "salt", Grams: 2}),
		"rich":    market.Honey().WithGrams(design.DensePart, 2, 125),
		"by bowl": market.Honey().WithLineAdded(design.FoamPart, design.Line{Ingredient: "cream_of_tartar", Grams: 1}),
	}
	small := market.Honey()
	small.Tubs.Count, small.Tubs.VolumeML = 2, 500
	plain["two tubs"] = small
	for name, d := range plain {
		assert.Empty(t, limitsOf(t, m, d), name)
	}
}

// Check: 118 °C at sea level is the syrup of 107.12 °C at 3000 m
// (testdata/tables/altitude.csv).
func TestTheAltitudeNotTheRecipeIsBlamed(t *testing.T) {
	d := market.Honey()
	d.Kitchen.AltitudeM = 3000
	got := limitsOf(t, model.New(market.Library(t)), d)
	require.Len(t, got, 1)
	f := got[0].Facts.(model.AltitudeSyrup)
	check.Printed(t, f.HereC, "107.12")
	check.Printed(t, f.WaterBoilsC, "89.972")
	assert.Greater(t, f.AtSeaC, 121.0)
}

func TestAPhaseThatIsNotInTheTubIsNotJudged(t *testing.T) {
	m := model.New(market.Library(t))
	for percent, absent := range map[float64]func(v model.Verdict) model.Feel{
		0:   func(v model.Verdict) model.Feel { return v.Foam.How },
		100: func(v model.Verdict) model.Feel { return v.Dense.How },
	} {
		for _, basis := range []design.Basis{design.BasisTubs, design.BasisAsWritten} {
			d := market.Honey()
			d.Blend.FoamVolumePercent, d.Batch.Basis = percent, basis
			r, err := m.Evaluate(d)
			require.NoError(t, err)
			assert.Equal(t, model.NotThere, absent(r.Verdict), "%g %%", percent)
			where := "foam"
			if percent == 100 {
				where = "dense"
			}
			for _, w := range r.Warnings {
				assert.False(t, w.Where == where && w.Severity > model.Note, "%g %%: %s of a phase that is not there", percent, w.Code)
			}
		}
	}
}

// find returns the warning with that code, nil where there is none.
func find(t *testing.T, m *model.Model, d design.Design, code string) *model.Warning {
	t.Helper()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	if i := slices.IndexFunc(r.Warnings, func(w model.Warning) bool { return w.Code == code }); i >= 0 {
		return &r.Warnings[i]
	}
	return nil
}

// The rules and their sources are in phase and testdata/tables/solubility.csv.
func TestWhatCrystallisesIsOneCaution(t *testing.T) {
	m := model.New(market.Library(t))
	custard := func(id string, g float64) design.Design {
		return market.Honey().WithLineAdded(design.DensePart, design.Line{Ingredient: id, Grams: g})
	}
	foam := func(sugar, dextrose, erythritol float64) design.Design {
		return market.Honey().WithLines(design.SyrupPart, []design.Line{{Ingredient: "sugar", Grams: sugar}, {Ingredient: "dextrose_anhydrous", Grams: dextrose},
			{Ingredient: "erythritol", Grams: erythritol}, {Ingredient: "water", Grams: 80}})
	}
	for _, c := range []struct {
		name string
		d    design.Design
		want []mix.Species
	}{
		{"plain", market.Honey(), nil},
		{"erythritol, a little", custard("erythritol", 7), nil},
		{"erythritol, 75 g to 100 g of the custard's water", custard("erythritol", 420), []mix.Species{mix.Erythritol}},
		{"erythritol for half of the sugar", market.Honey().WithGrams(design.DensePart, 3, 48).WithLineAdded(design.DensePart, design.Line{Ingredient: "erythritol", Grams: 60}), []mix.Species{mix.Erythritol}},
		{"erythritol in the foam", foam(60, 0, 120), []mix.Species{mix.Erythritol}},
		{"xylitol for all of the sugar", market.Honey().WithGrams(design.DensePart, 3, 0).WithLineAdded(design.DensePart, design.Line{Ingredient: "xylitol", Grams: 130}), []mix.Species{mix.Xylitol}},
		{"milk powder, a lot", custard("nfdm_regular", 90), []mix.Species{mix.Lactose}},
		{"erythritol and milk powder", custard("nfdm_regular", 90).WithLineAdded(design.DensePart, design.Line{Ingredient: "erythritol", Grams: 60}), []mix.Species{mix.Erythritol, mix.Lactose}},
		{"a foam 1.5 to 1", foam(1.5*165, 0, 0), nil},
		{"a foam 2 to 1", foam(2*165, 0, 0), nil},
		{"a foam 3 to 1", foam(3*165, 0, 0), []mix.Species{mix.Sucrose}},
		{"a foam 2 to 1, a quarter dextrose", foam(1.5*165, 0.5*165, 0), nil},
		{"a foam 2 to 1, all dextrose", foam(0, 2*165, 0), []mix.Species{mix.Glucose}},
	} {
		var got []mix.Species
		w := find(t, m, c.d, "sugar_crystallises")
		if w != nil {
			assert.Equal(t, model.Caution, w.Severity, c.name)
			for _, x := range w.Facts.(model.Crystallises).Solutes {
				assert.True(t, x.Over(), c.name)
				got = append(got, x.Solute)
			}
		}
		assert.Equal(t, c.want, got, c.name)
	}
}

// The pack is invented: allulose as a label without its line for it.
func TestCarbohydrateThatAPackDoesNotNameIsSaid(t *testing.T) {
	m := model.New(market.Library(t))
	k := ingredient.Known
	in, err := ingredient.FromPack("quay_allulose", "Quay allulose", ingredient.Pack{PerG: 100, Carbohydrate: k(100), Sugars: k(0), Fibre: k(0), Fat: k(0), Protein: k(0), Salt: k(0)})
	require.NoError(t, err)
	d := market.Honey()
	d.Own = []*ingredient.Ingredient{in}
	d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "quay_allulose", Grams: 100})
	w := find(t, m, d, "carbohydrate_unnamed")
	require.NotNil(t, w)
	assert.Equal(t, model.Caution, w.Severity)
	assert.Equal(t, "ingredients[0].pack.polyols", w.Where, "sugars and fibre are stated")
	f := w.Facts.(model.CarbohydrateUnnamed)
	assert.Less(t, f.FreezesAtC.Low, f.FreezesAtC.High-0.5, "from inert to a simple sugar")
	// The soft reading freezes as glucose would, the firm one as though it lay inert.
	glucose := market.Honey().WithLineAdded(design.DensePart, design.Line{Ingredient: "dextrose_anhydrous", Grams: 100})
	as, err := m.Evaluate(glucose)
	require.NoError(t, err)
	assert.InDelta(t, as.Dense.FreezingPointC.Value, f.FreezesAtC.Low, 0.15, "the rest is the band of bound water")
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	assert.Less(t, r.Dense.YieldKPa.Low, as.Dense.YieldKPa.Value, "the band of hardness reaches the softest that it may be")
	assert.False(t, r.Verdict.Good, "it is not called good without a word")

	sugar, err := ingredient.FromPack("quay_syrup", "Quay syrup", ingredient.Pack{PerG: 100, Carbohydrate: k(100), Sugars: k(0), Polyols: k(100), Fibre: k(0), Fat: k(0), Protein: k(0), Salt: k(0)})
	require.NoError(t, err)
	named := market.Honey().WithLineAdded(design.DensePart, design.Line{Ingredient: "quay_syrup", Grams: 100})
	named.Own = []*ingredient.Ingredient{sugar}
	assert.Nil(t, find(t, m, named, "carbohydrate_unnamed"), "once a line of the pack names it")
	assert.Nil(t, find(t, m, market.Honey(), "carbohydrate_unnamed"))
}

// Butter, oil and a very thick liquid get no word, no figure and no "good", in
// the custard as in the foam, and where the other phase eats
// well the reason is the first thing said; an ordinary tub keeps its words. More fat than 20 % is outside the law's data,
// see phase.LawRange.
func TestBeyondTheHardnessLawThereIsNoWord(t *testing.T) {
	m := model.New(market.Library(t))
	for name, c := range map[string]struct {
		part  design.Part
		lines []design.Line
	}{
		"butter":     {design.DensePart, []design.Line{{Ingredient: "butter_unsalted", Grams: 500}}},
		"oil":        {design.DensePart, []design.Line{{Ingredient: "oil_coconut", Grams: 500}}},
		"fat only":   {design.DensePart, []design.Line{{Ingredient: "butter_oil", Grams: 500}}},
		"cream only": {design.DensePart, []design.Line{{Ingredient: "cream_heavy", Grams: 500}, {Ingredient: "sugar", Grams: 80}}},
		"thick":      {design.DensePart, []design.Line{{Ingredient: "sugar", Grams: 500}, {Ingredient: "milk_whole", Grams: 100}}},
		"thick foam": {design.FoamPart, []design.Line{{Ingredient: "egg_white", Grams: 20}}},
	} {
		d := market.Honey().WithLines(c.part, c.lines)
		d.Dense.StoveLossPercent = 0 // of dry fat, a graver matter
		r, err := m.Evaluate(d)
		require.NoError(t, err, name)
		p, eats := &r.Dense, r.Verdict.Dense
		if c.part == design.FoamPart {
			p, eats = &r.Foam, r.Verdict.Foam
		}
		assert.Equal(t, phase.NoWord, p.Word, name)
		assert.True(t, math.IsNaN(p.YieldKPa.Value) && math.IsNaN(r.Blend.YieldKPa) && math.IsNaN(r.Blend.HardnessRatio), name)
		assert.False(t, p.Scoop.OK, name)
		assert.Equal(t, model.NotKnown, eats.How, name)
		assert.False(t, r.Verdict.Good, name)
		w := find(t, m, d, "outside_hardness_law")
		if assert.NotNil(t, w, name) {
			assert.Equal(t, model.Caution, w.Severity, name)
			assert.True(t, w.Facts.(model.OutsideHardnessLaw).Law.Ends(), name)
		}
		other := r.Verdict.Foam.How
		if c.part == design.FoamPart {
			other = r.Verdict.Dense.How
		}
		if other == model.EatsWell || other == model.NotKnown {
			require.NotNil(t, r.Verdict.Because, name)
			assert.Equal(t, "outside_hardness_law", r.Verdict.Because.Code, name)
		}
	}
	r, err := m.Evaluate(market.Honey())
	require.NoError(t, err)
	assert.NotEqual(t, phase.NoWord, r.Dense.Word)
	assert.NotEqual(t, phase.NoWord, r.Foam.Word)
	assert.Nil(t, find(t, m, market.Honey(), "outside_hardness_law"))
}
