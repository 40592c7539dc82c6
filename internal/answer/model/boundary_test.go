package model_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/work/design"
)

// stall is the market's design, of which nothing cooks off on the stove.
func stall() design.Design {
	d := market.Honey()
	d.Dense.StoveLossPercent = 0
	return d
}

func evaluated(t testing.TB, m *model.Model, d design.Design) *model.Result {
	t.Helper()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	return &r
}

// pass returns the fact that a limit is past, nil where the design is within it.
func pass(r *model.Result, code, where string) (*model.OverLimit, model.Severity) {
	for _, w := range r.Warnings {
		if f, ok := w.Facts.(model.OverLimit); ok && w.Code == code && w.Where == where {
			return &f, w.Severity
		}
	}
	return nil, 0
}

func cell(t testing.TB, m *model.Model, id string, c ingredient.Column) float64 {
	t.Helper()
	in, ok := m.Library().Find(id)
	require.True(t, ok, id)
	return in.Cell(c).Value
}

// The steps are rows of testdata/tables/kitchen_limits.csv, or say in
// internal/food/limits how they were read. A bound itself is allowed; a tenth
// of a percent past it is told, with the gravity of its step. What is measured
// is worked out here from the lines.
func TestALimitIsToldFromItsBoundOn(t *testing.T) {
	m := model.New(market.Library(t))
	denseG := 825. // the market's custard, of which nothing cooks off
	lines := func(p design.Part, id string, g float64) func(d design.Design) design.Design {
		return func(d design.Design) design.Design {
			return d.WithLineAdded(p, design.Line{Ingredient: id, Grams: g})
		}
	}
	share := func(limit, per, pure float64) float64 { // grams of something pure to such a share, in limit per per
		return denseG / (per/limit*pure - 1)
	}
	yolkG := denseG - 90
	for _, c := range []struct {
		code, where string
		at          float64 // the bound
		severity    model.Severity
		of          func(limit float64) func(d design.Design) design.Design
	}{
		{"air_beyond_process", "dense.overrun_percent", 40, model.Caution, func(v float64) func(d design.Design) design.Design {
			return func(d design.Design) design.Design { d.Dense.OverrunPercent = v; return d }
		}},
		{"air_beyond_process", "dense.overrun_percent", 60, model.Serious, func(v float64) func(d design.Design) design.Design {
			return func(d design.Design) design.Design { d.Dense.OverrunPercent = v; return d }
		}},
		{"air_beyond_process", "foam.overrun_percent", 500, model.Caution, func(v float64) func(d design.Design) design.Design {
			return func(d design.Design) design.Design { d.Foam.OverrunPercent = v; return d }
		}},
		{"air_beyond_process", "foam.overrun_percent", 700, model.Serious, func(v float64) func(d design.Design) design.Design {
			return func(d design.Design) design.Design { d.Foam.OverrunPercent = v; return d }
		}},
		{"yolk_heavy", "dense", 180, model.Caution, func(v float64) func(d design.Design) design.Design {
			return func(d design.Design) design.Design {
				return d.WithGrams(design.DensePart, 2, yolkG*v/(1000-v))
			}
		}},
		{"too_salty", "dense", 10, model.Caution, func(v float64) func(d design.Design) design.Design {
			return lines(design.DensePart, "salt", share(v, 1000, 0.998)) // the rest is water
		}},
		{"alcohol_boils_off", "dense", 0.5, model.Note, func(v float64) func(d design.Design) design.Design {
			return lines(design.DensePart, "rum_40", share(v, 100, 0.334))
		}},
		{"starch_with_yolk", "dense", 1, model.Note, func(v float64) func(d design.Design) design.Design {
			return lines(design.DensePart, "cornstarch", share(v, 1000, 1))
		}},
		{"starch_with_yolk", "dense", 5, model.Caution, func(v float64) func(d design.Design) design.Design {
			return lines(design.DensePart, "cornstarch", share(v, 1000, 1))
		}},
		{"yolk_in_whites", "foam", 0.15, model.Caution, func(v float64) func(d design.Design) design.Design {
			return lines(design.FoamPart, "egg_yolk", 165*v/100)
		}},
	} {
		within := evaluated(t, m, c.of(0.999*c.at)(stall()))
		if f, s := pass(within, c.code, c.where); f != nil {
			assert.Less(t, s, c.severity, "%s of %s at %g", c.code, c.where, f.Value)
		}
		over := evaluated(t, m, c.of(1.001*c.at)(stall()))
		f, s := pass(over, c.code, c.where)
		if assert.NotNil(t, f, "%s of %s past %g", c.code, c.where, c.at) {
			assert.Equal(t, c.severity, s, "%s of %s at %g", c.code, c.where, f.Value)
			assert.InEpsilon(t, 1.001*c.at, f.Value, 5e-4, "%s of %s", c.code, c.where)
		}
	}
}

// Sweetness is in % sucrose equivalent, so sugar alone brings a custard to a
// bound; the steps are of McGee 2004 and the trade.
func TestSweetnessIsToldFromItsBoundsOn(t *testing.T) {
	m := model.New(market.Library(t))
	custard := func(sugar float64) *model.Result { // 99.8 % sucrose
		d := stall().WithLines(design.DensePart, []design.Line{{Ingredient: "oil_coconut", Grams: 180}, {Ingredient: "water", Grams: 820 - sugar/0.998}, {Ingredient: "sugar", Grams: sugar / 0.998}})
		return evaluated(t, m, d)
	}
	for _, c := range []struct {
		code   string
		at     float64
		beyond float64
	}{{"too_sweet", 21, 1}, {"not_sweet_enough", 10, -1}} {
		within, over := custard(10*c.at-c.beyond*0.5), custard(10*c.at+c.beyond*0.5)
		f, _ := pass(within, c.code, "dense")
		assert.Nil(t, f, c.code)
		f, s := pass(over, c.code, "dense")
		if assert.NotNil(t, f, c.code) {
			assert.Equal(t, model.Caution, s)
			assert.InDelta(t, c.at+c.beyond*0.05, f.Value, 0.01)
		}
	}
	// The tub's is the mean by mass: of custard at 20 and foam at more.
	r := custard(200)
	d := r.Dense.Portion.MassG / r.Blend.MassG
	assert.InDelta(t, d*20+(1-d)*r.Foam.SweetnessPercent, r.Blend.SweetnessPercent, 0.01)
}

// A litre of milk curdles with 0.5 g of citric acid hot and 8 g cold; cream
// counts as a quarter of milk. Lemon juice: as kind.AcidPercent has it.
func TestAcidIsCountedToTheMilk(t *testing.T) {
	m := model.New(market.Library(t))
	with := func(milk, cream, lemon float64) *model.Result {
		return evaluated(t, m, stall().WithLines(design.DensePart, []design.Line{{Ingredient: "milk_whole", Grams: milk}, {Ingredient: "cream_heavy", Grams: cream},
			{Ingredient: "water", Grams: 300}, {Ingredient: "sugar", Grams: 150}, {Ingredient: "lemon_juice", Grams: lemon}}))
	}
	f, _ := pass(with(500, 0, 10), "acid_with_milk", "dense")
	require.NotNil(t, f)
	perGram := f.Value * 0.5 / 10 // g acid per kg milk, of a gram of juice in half a kilo
	assert.InDelta(t, 0.042, perGram, 0.006, "lemon juice holds 36 to 48 g of acid in a kilo (Penniston 2008, J. Endourol. 22:567: 48 g/L, from memory)")
	half, _ := pass(with(250, 0, 10), "acid_with_milk", "dense")
	require.NotNil(t, half)
	assert.InEpsilon(t, 2*f.Value, half.Value, 1e-9)
	creamy, _ := pass(with(0, 1000, 10), "acid_with_milk", "dense")
	require.NotNil(t, creamy)
	assert.InEpsilon(t, 2*f.Value, creamy.Value, 0.02, "a kilo of cream as 250 g of milk")
	for _, none := range []*model.Result{with(0, 0, 10), with(500, 0, 0), with(500, 0, 0.99*0.5*0.5/perGram)} {
		f, _ := pass(none, "acid_with_milk", "dense")
		assert.Nil(t, f)
	}
	for perKG, want := range map[float64]model.Severity{0.501: model.Note, 1.999: model.Note, 2.001: model.Caution, 7.99: model.Caution} {
		f, s := pass(with(500, 0, perKG*0.5/perGram), "acid_with_milk", "dense")
		if assert.NotNil(t, f, "%g g/kg", perKG) {
			assert.Equal(t, want, s, "%g g/kg", perKG)
			assert.Equal(t, &limits.AcidHot, f.Limit)
		}
	}
	f, _ = pass(with(500, 0, 8.01*0.5/perGram), "acid_with_milk", "dense")
	require.NotNil(t, f)
	assert.Equal(t, &limits.AcidCold, f.Limit)
}

// An ordinary freezer: 100 L, four stars, 4.5 kg in a day (EU), of which each
// is rated at 345 kJ. The batch goes in from a refrigerator of 4 °C (US FDA:
// 40 °F or below) and is to reach −18 °C.
func TestTheFreezersLoadIsTheHeatOfTheBatch(t *testing.T) {
	m := model.New(market.Library(t))
	load := func(ml float64) (*model.OverLimit, model.Severity, float64) {
		d := stall()
		d.Tubs.Count, d.Tubs.VolumeML = 20, ml
		r := evaluated(t, m, d)
		kj := 0.0
		for _, p := range []*model.Phase{&r.Dense, &r.Foam} {
			kj += p.Portion.MassG / 1000 * (p.Body.JPerG(4) - p.Body.JPerG(-18))
		}
		f, s := pass(r, "freezer_overloaded", "tubs")
		if f != nil {
			assert.InEpsilon(t, r.Blend.MassG/1000, f.Extra, 1e-9)
		}
		return f, s, kj / (4.5 * 345)
	}
	_, _, one := load(1000)
	for _, c := range []struct {
		at       float64
		severity model.Severity
	}{{1, model.Caution}, {2, model.Serious}} {
		f, s, _ := load(1000 * 0.999 * c.at / one)
		assert.True(t, f == nil || s < c.severity)
		f, s, want := load(1000 * 1.001 * c.at / one)
		if assert.NotNil(t, f) {
			assert.Equal(t, c.severity, s)
			assert.InEpsilon(t, want, f.Value, 1e-9)
		}
	}
}

// McGee 2004, On Food and Cooking, and two pastry books: an Italian meringue
// takes a syrup of up to 121 °C at sea level. Who asks for no more than that,
// and gets more only because of the height, is cautioned.
func TestOnlyASyrupThatTheHeightMakesTooThickIsACaution(t *testing.T) {
	m := model.New(market.Library(t))
	at := func(metres, asked float64) *model.Warning {
		d := stall()
		d.Kitchen.AltitudeM, d.Foam.Syrup.CookTemperatureC = metres, asked
		return find(t, m, d, "altitude_syrup")
	}
	for asked, want := range map[float64]model.Severity{105: model.Note, 109.9: model.Note, 110.1: model.Caution, 120.9: model.Caution, 121.1: model.Note, 145: model.Note} {
		w := at(3000, asked)
		require.NotNil(t, w)
		f := w.Facts.(model.AltitudeSyrup)
		assert.Equal(t, want, w.Severity, "%g °C: at sea level %g", asked, f.AtSeaC)
	}
	assert.True(t, math.IsNaN(at(4000, 149).Facts.(model.AltitudeSyrup).AtSeaC), "beyond what the boiling model knows")
	assert.Nil(t, at(299, 118))
	require.NotNil(t, at(301, 118))
}

// A kitchen scale's half percent is forgiven, more is not (common practice).
func TestAPanAHairTooHeavyIsStillTaken(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(k float64) *model.Result {
		d := stall()
		d.Foam.Syrup.WeighedG = 240 * k
		return evaluated(t, m, d)
	}
	r := of(1.004)
	assert.True(t, r.Syrup.Weighed)
	assert.InDelta(t, 0, r.Syrup.WaterOffG, 1e-9)
	r = of(1.006)
	assert.False(t, r.Syrup.Weighed)
	w := find(t, m, func() design.Design { d := stall(); d.Foam.Syrup.WeighedG = 240 * 1.006; return d }(), "weighed_too_heavy")
	require.NotNil(t, w)
	assert.InDelta(t, 240, w.Facts.(model.WeighedTooHeavy).WentInG, 1e-9)
	// Lighter than its own solids, 180 g of sugar: it is said, and no water left.
	assert.NotNil(t, find(t, m, func() design.Design { d := stall(); d.Foam.Syrup.WeighedG = 178; return d }(), "syrup_weighed_too_light"))
	assert.Nil(t, find(t, m, func() design.Design { d := stall(); d.Foam.Syrup.WeighedG = 181; return d }(), "syrup_weighed_too_light"))
}

// Outside the range to which the added salt's rule is settled, 1 g in 100 g of
// water: two published rules part there (mixing_rule_bracket.csv).
func TestMuchSaltIsToldFromAHundredthOfTheWater(t *testing.T) {
	m := model.New(market.Library(t))
	salted := func(g float64) design.Design {
		return stall().WithLines(design.DensePart, []design.Line{{Ingredient: "water", Grams: 1000}, {Ingredient: "sugar", Grams: 250}, {Ingredient: "salt", Grams: g}})
	}
	water := cell(t, m, "water", ingredient.Water) * 10
	assert.Nil(t, find(t, m, salted(water*0.01*0.985), "salt_rule_unsettled"))
	w := find(t, m, salted(water*0.01*1.01), "salt_rule_unsettled")
	require.NotNil(t, w)
	assert.InDelta(t, 1.01, w.Facts.(model.SaltRuleUnsettled).SaltG, 0.015)
}

// Frozen it takes more room: a tub filled as far as the caution says is just full.
func TestATubFilledAsFarAsSaidIsJustFullFrozen(t *testing.T) {
	m := model.New(market.Library(t))
	d := stall()
	d.Tubs.FillPercent = 100
	w := find(t, m, d, "tub_overfull")
	require.NotNil(t, w)
	f := w.Facts.(model.TubOverfull)
	assert.Greater(t, f.FrozenPercent, 100.0)
	assert.Equal(t, math.Trunc(f.FillPercent), f.FillPercent)
	d.Tubs.FillPercent = f.FillPercent
	assert.Nil(t, find(t, m, d, "tub_overfull"))
	d.Tubs.FillPercent = f.FillPercent + 1
	assert.NotNil(t, find(t, m, d, "tub_overfull"))
	// Each phase by its own swelling; the foam's air does not follow the cold.
	r := evaluated(t, m, d)
	want := 0.6*r.Dense.SwellingRatio + 0.4*r.Foam.Body.SwellingRatio(d.Serving.TemperatureC, 0)
	assert.InDelta(t, 100*want, f.FrozenPercent, 1e-6)
}

// Half an egg is the least that is worth telling, and a twentieth of one is
// forgiven when eggs are counted (common practice, no source).
func TestEggsAreCountedToATwentieth(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(yolks, whites float64) (*model.Result, *model.Warning) {
		d := stall()
		d.Batch.Basis = design.BasisAsWritten
		d = d.WithGrams(design.DensePart, 2, 17*yolks).WithGrams(design.FoamPart, 0, 33*whites)
		return evaluated(t, m, d), find(t, m, d, "eggs_unpaired")
	}
	for yolks, crack := range map[float64]float64{6: 6, 6.045: 6, 6.055: 7, 7: 7} {
		r, _ := of(yolks, 4)
		assert.InDelta(t, yolks, r.Eggs.Yolks, 1e-9)
		assert.InDelta(t, 4, r.Eggs.Whites, 1e-9)
		assert.Equal(t, crack, r.Eggs.Crack, "%g yolks", yolks)
	}
	_, w := of(5, 4.51)
	assert.Nil(t, w)
	_, w = of(5, 4.49)
	require.NotNil(t, w)
	assert.InDelta(t, 0.51, w.Facts.(model.EggsUnpaired).Whites, 1e-9)
	_, w = of(4.49, 5)
	require.NotNil(t, w)
}

// What is left over is told from a millilitre on.
func TestAMillilitreLeftOverIsNotTold(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(foamShare float64) (*model.Warning, *model.Result) {
		d := stall()
		d.Batch.Basis, d.Blend.FoamVolumePercent = design.BasisAsWritten, foamShare
		return find(t, m, d, "left_over"), evaluated(t, m, d)
	}
	_, r := of(40)
	dense, foam := r.Dense.Portion.MadeML, r.Foam.Portion.MadeML
	for _, left := range []float64{0.9, 1.1} {
		for where, share := range map[string]float64{"foam": 100 * (foam - left) / (dense + foam - left), "dense": 100 * foam / (dense + foam - left)} {
			w, _ := of(share)
			assert.Equal(t, left > 1, w != nil, "%g mL of the %s", left, where)
			if w != nil {
				f := w.Facts.(model.LeftOver)
				assert.InDelta(t, left, f.DenseML+f.FoamML, 1e-6)
				assert.InDelta(t, r.Dense.Portion.MadeG/dense*f.DenseML+r.Foam.Portion.MadeG/foam*f.FoamML, f.DenseG+f.FoamG, 1e-6)
				again, _ := of(f.AllPercent)
				assert.Nil(t, again, "as much foam as uses up both leaves nothing")
			}
		}
	}
}

// A ribbon that holds no ice at −18 °C beside a custard that does draws its water.
func TestAFoamDrawsWaterWhereItAloneIsUnfrozenInTheFreezer(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(sugar float64) (*model.Result, *model.Warning) {
		d := stall()
		d.Foam.Syrup.CookTemperatureC = 118
		d = d.WithGrams(design.SyrupPart, 0, sugar).WithGrams(design.SyrupPart, 1, sugar/3)
		return evaluated(t, m, d), find(t, m, d, "foam_draws_water")
	}
	seen := map[bool]int{}
	for sugar := 300.0; sugar <= 600; sugar += 10 {
		r, w := of(sugar)
		colder := r.Foam.FreezingPointC.Value < -18
		assert.Equal(t, colder, w != nil, "%g g: %g °C", sugar, r.Foam.FreezingPointC.Value)
		seen[colder]++
	}
	assert.Positive(t, seen[true])
	assert.Positive(t, seen[false])
	// Beside a custard as unfrozen it draws nothing.
	d := stall().WithGrams(design.SyrupPart, 0, 600).WithGrams(design.SyrupPart, 1, 200).WithLineAdded(design.DensePart, design.Line{Ingredient: "fructose", Grams: 900})
	r := evaluated(t, m, d)
	require.Less(t, r.Dense.FreezingPointC.Value, -18.0)
	assert.Nil(t, find(t, m, d, "foam_draws_water"))
}

// Below the end of freezing no more ice grows (Roos 1993: T_m′ −34 °C of
// sucrose); within the rail nobody gets there but by lactose and maltose.
func TestTheEndOfFreezingIsTold(t *testing.T) {
	m := model.New(market.Library(t))
	said := func(c float64) bool {
		d := stall().WithLines(design.DensePart, []design.Line{{Ingredient: "water", Grams: 700}, {Ingredient: "sugar", Grams: 200}})
		r, err := m.EvaluateAt(d, c)
		require.NoError(t, err)
		for _, w := range r.Warnings {
			if f, ok := w.Facts.(model.EndOfFreezing); ok && w.Where == "dense" {
				assert.InDelta(t, -34, f.BelowC, 1e-9)
				return true
			}
		}
		return false
	}
	assert.False(t, said(-33.9))
	assert.True(t, said(-34.1))
}

// The ends of the temperatures that may be asked for, and the rail that
// designs are served on.
func TestTheRailIsWhereADesignMayBeServed(t *testing.T) {
	f, ok := design.FieldAt("serving.temperature_c")
	require.True(t, ok)
	assert.Equal(t, f.Min, model.RailLow)
	assert.Equal(t, f.Max, model.RailHigh)
	rail := model.RailC(41)
	assert.Equal(t, f.Min, rail[0])
	assert.Equal(t, f.Max, rail[40])
	assert.InDelta(t, (f.Min+f.Max)/2, rail[20], 1e-12)
	m := model.New(market.Library(t))
	for c, ok := range map[float64]bool{-40: true, 0: true, -40.01: false, 0.01: false} {
		_, err := m.EvaluateAt(stall(), c)
		assert.Equal(t, ok, err == nil, "%g °C", c)
	}
	states := model.Curve(&phase.Body{}, rail, make([]phase.State, 90))
	require.Len(t, states, 41)
	assert.Equal(t, rail[7], states[7].AtC)
}

// Inversion: a mol of sucrose takes up one of water and leaves two of hexose.
func TestInvertedSugarTakesItsWater(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(percent, water float64) *model.Result {
		d := stall().WithLines(design.FoamPart, []design.Line{{Ingredient: "water", Grams: 100}})
		d = d.WithLines(design.SyrupPart, []design.Line{{Ingredient: "sugar", Grams: 200}, {Ingredient: "water", Grams: water}})
		d.Foam.Syrup.InvertedPercent, d.Foam.Syrup.CookTemperatureC = percent, 100
		return evaluated(t, m, d)
	}
	sucrose, _ := solution.SoluteOf(mix.Sucrose)
	glucose, _ := solution.SoluteOf(mix.Glucose)
	r := of(50, 400)
	g := r.Foam.WrittenG / 100
	split := 0.5 * 199.6
	assert.InDelta(t, 199.6-split, g*r.Foam.Percent(mix.Sucrose), 0.02)
	assert.InDelta(t, split/sucrose.GPerMol*glucose.GPerMol, g*r.Foam.Percent(mix.Glucose), 0.01)
	assert.Equal(t, r.Foam.Percent(mix.Glucose), r.Foam.Percent(mix.Fructose))
	plain := of(0, 400)
	assert.InDelta(t, plain.Foam.WrittenG, r.Foam.WrittenG, 1e-9, "the pan weighs the same, for it boils no more at 100 °C")
	// With 2 g of water no more than 2/18 mol can split, and what is dry stays.
	short := of(50, 2)
	g = short.Foam.WrittenG / 100
	assert.InDelta(t, (2*0.999+0.04)/18.015*glucose.GPerMol, g*short.Foam.Percent(mix.Glucose), 0.05)
}

// Starzak & Peacock 1997: 180 g of sucrose hold 25.03 g of water at 118 °C.
func TestASyrupIsWhatThermometerAndScaleSay(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(change func(d *design.Design)) *model.Result {
		d := stall()
		d.Batch.Basis = design.BasisAsWritten
		d.Foam.Syrup.CookTemperatureC = 118
		d = d.WithLines(design.SyrupPart, []design.Line{{Ingredient: "sugar", Grams: 180 / 0.998}, {Ingredient: "water", Grams: 60}})
		change(&d)
		return evaluated(t, m, d)
	}
	s := of(func(*design.Design) {}).Syrup
	assert.True(t, s.Present && s.Reached && !s.Weighed)
	assert.InDelta(t, 118, s.BoilingPointC, 1e-3)
	assert.InDelta(t, 100*180/205.03, s.SolidsPercent, 0.1)
	assert.InDelta(t, 205.2, s.MassG, 0.4)
	assert.InDelta(t, 60+180/0.998-s.MassG, s.WaterOffG, 1e-9)

	weighed := of(func(d *design.Design) { d.Foam.Syrup.WeighedG = s.MassG }).Syrup
	assert.True(t, weighed.Reached && weighed.Weighed)
	assert.InDelta(t, 118, weighed.BoilingPointC, 1e-3, "the same syrup by the scale")
	assert.Equal(t, [2]float64{weighed.SolidsPercent, weighed.SolidsPercent}, weighed.SolidsBandPercent, "a scale leaves nothing open")

	thick := of(func(d *design.Design) { *d = d.WithGrams(design.SyrupPart, 1, 20) }).Syrup
	assert.False(t, thick.Reached, "thicker than that from the start")
	assert.Zero(t, thick.WaterOffG)
	assert.Equal(t, [2]float64{thick.SolidsPercent, thick.SolidsPercent}, thick.SolidsBandPercent)

	hot := of(func(d *design.Design) { d.Foam.Syrup.CookTemperatureC, d.Kitchen.AltitudeM = 150, 4000 }).Syrup
	assert.Equal(t, 100.0, hot.SolidsBandPercent[1], "no syrup has more solids than all")
	assert.True(t, math.IsNaN(of(func(d *design.Design) { d.Foam.Syrup.WeighedG = 180.9 }).Syrup.BoilingPointC), "beyond the boiling model")
	assert.True(t, math.IsNaN(of(func(d *design.Design) { d.Foam.Syrup.WeighedG = 180.2 }).Syrup.BoilingPointC), "dry")
	none := of(func(d *design.Design) { *d = d.WithLines(design.SyrupPart, nil) }).Syrup
	assert.False(t, none.Present)
	assert.True(t, math.IsNaN(none.SolidsPercent) && math.IsNaN(none.BoilingPointC))
}

// The stove takes no more water than there is, and says where it is asked to.
func TestTheStoveTakesWaterOnly(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(percent, water float64) (*model.Result, bool) {
		d := stall().WithLines(design.DensePart, []design.Line{{Ingredient: "sugar", Grams: 500}, {Ingredient: "water", Grams: water}})
		d.Dense.StoveLossPercent = percent
		return evaluated(t, m, d), find(t, m, d, "stove_loss_exceeds_water") != nil
	}
	r, short := of(20, 500)
	assert.False(t, short)
	assert.InDelta(t, 200, r.Dense.WaterOffG, 1e-9)
	assert.InDelta(t, 800, r.Dense.WrittenG, 1e-9)
	r, short = of(49, 500)
	assert.False(t, short)
	assert.InDelta(t, 490, r.Dense.WaterOffG, 1e-9)
	r, short = of(51, 500)
	assert.True(t, short)
	assert.InDelta(t, 499.5+0.1, r.Dense.WaterOffG, 1e-4, "the water of both lines")
	for _, l := range r.Lines {
		if l.Ingredient.ID == "water" {
			assert.InDelta(t, 0, l.Slopes.SweetnessPercent, 1e-3, "more water would go too")
		}
	}
}

// Salt in the foam counts from all of its lines, the syrup's too (the trade's 10
// g/kg, common practice).
func TestSaltOfFoamAndSyrupIsOne(t *testing.T) {
	m := model.New(market.Library(t))
	of := func(k float64) (*model.OverLimit, *model.Result) {
		d := stall()
		w := evaluated(t, m, d).Foam.WrittenG
		g := k * 0.01 * w / (0.998 - 0.01) / 2
		d = d.WithLineAdded(design.FoamPart, market.Line("salt", g)).WithLineAdded(design.SyrupPart, market.Line("salt", g))
		r := evaluated(t, m, d)
		f, _ := pass(r, "too_salty", "foam")
		return f, r
	}
	f, _ := of(0.8)
	assert.Nil(t, f)
	f, r := of(1.3)
	require.NotNil(t, f)
	assert.InDelta(t, 10*r.Foam.Percent(mix.SodiumChloride), f.Value, 0.02*f.Value)
}

// A phase that nobody can judge, or that is not there, spoils nothing by itself.
func TestOnlyWhatIsWrongIsWrong(t *testing.T) {
	m := model.New(market.Library(t))
	d := stall()
	d.Blend.FoamVolumePercent = 0
	r := evaluated(t, m, d)
	require.Equal(t, model.NotThere, r.Verdict.Foam.How)
	assert.Equal(t, r.Verdict.Dense.How == model.EatsWell && r.Verdict.Because == nil, r.Verdict.Good)
}
