package label_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/mix"
)

type figures = map[ingredient.Column]float64

// made is an ingredient of our own with figures of our choosing, all others 0.
func made(id string, set figures) *ingredient.Ingredient {
	in := &ingredient.Ingredient{ID: id, Name: "Quay " + id}
	for c := range in.Cells {
		in.Cells[c] = ingredient.Known(0)
	}
	for c, v := range set {
		in.Cells[c] = ingredient.Known(v)
	}
	return in
}

// food is 100 g of parts by weight, 0.625 g/mL, so that the reference amount is
// 100 g.
func food(parts ...any) label.Food {
	f := label.Food{DensityGPerML: 0.625, TubML: 1000}
	for i := 0; i < len(parts); i += 2 {
		f.Lines = append(f.Lines, label.Used{Ingredient: parts[i].(*ingredient.Ingredient), Grams: parts[i+1].(float64), Phase: label.DensePhase})
	}
	return f
}

func notes(t *testing.T, f label.Food, r label.Region) string {
	t.Helper()
	return labelOf(t, f, r).Notes.String()
}

// 21 CFR 101.60–62: a quarter less than a food that is not low itself. Regulation
// (EC) No 1924/2006, Annex: three tenths less, of sodium a quarter.
func TestEveryReducedClaimHasItsShare(t *testing.T) {
	off := 1e-6
	for _, c := range []struct {
		region label.Region
		claim  string
		column ingredient.Column
		whole  float64 // of the reference food, per 100 g
		keep   float64 // share that may be left
		low    float64 // figure at which the reference is itself low; 0: any
	}{
		{label.US, "reduced sugar", ingredient.TotalSugars, 20, 0.75, 0},
		{label.US, "reduced sodium", ingredient.SodiumMG, 400, 0.75, 140},
		{label.US, "reduced fat", ingredient.Fat, 12, 0.75, 3},
		{label.US, "reduced saturated fat", ingredient.SaturatedFat, 4, 0.75, 1},
		{label.US, "reduced cholesterol", ingredient.CholesterolMG, 80, 0.75, 20},
		{label.US, "reduced calories", ingredient.Carbohydrate, 40, 0.75, 10}, // 40 kcal
		{label.EU, "energy-reduced", ingredient.Carbohydrate, 40, 0.7, 0},
		{label.EU, "reduced fat", ingredient.Fat, 12, 0.7, 0},
		{label.EU, "reduced saturated fat", ingredient.SaturatedFat, 4, 0.7, 0},
		{label.EU, "reduced sugars", ingredient.TotalSugars, 20, 0.7, 0},
		{label.EU, "reduced sodium or salt", ingredient.SodiumMG, 400, 0.75, 0},
	} {
		at := func(own, reference float64) bool {
			r := food(made("reference", figures{c.column: reference}), 100.)
			l, err := label.For(food(made("own", figures{c.column: own}), 100.), c.region, label.Options{Reference: &r})
			require.NoError(t, err)
			return claim(t, l, c.claim).Met
		}
		assert.True(t, at(c.keep*c.whole-off, c.whole), "%s %s", c.region, c.claim)
		assert.False(t, at(c.keep*c.whole+1e-4*c.whole, c.whole), "%s %s", c.region, c.claim)
		if c.low > 0 {
			assert.False(t, at(0.5*c.low, c.low), "%s of a low food", c.claim)
			assert.True(t, at(0.5*c.low, c.low*1.001), "%s of one that is not", c.claim)
		}
	}
	// Half a gram of sugar is some, of which there can be less.
	some := food(made("reference", figures{ingredient.TotalSugars: 0.5}), 100.)
	l, err := label.For(food(made("own", figures{ingredient.TotalSugars: 0.3}), 100.), label.US, label.Options{Reference: &some})
	require.NoError(t, err)
	assert.True(t, claim(t, l, "reduced sugar").Met)
	// Reduced cholesterol comes with 2 g saturated fat at most; less sugar with
	// no more energy, less saturated with no more trans fat.
	with := func(r label.Region, name string, own, reference figures) bool {
		ref := food(made("reference", reference), 100.)
		l, err := label.For(food(made("own", own), 100.), r, label.Options{Reference: &ref})
		require.NoError(t, err)
		return claim(t, l, name).Met
	}
	for g, want := range map[float64]bool{2: true, 2.001: false} {
		assert.Equal(t, want, with(label.US, "reduced cholesterol", figures{ingredient.CholesterolMG: 30, ingredient.SaturatedFat: g, ingredient.Fat: 3}, figures{ingredient.CholesterolMG: 80}))
	}
	for g, want := range map[float64]bool{40: true, 40.1: false} {
		assert.Equal(t, want, with(label.EU, "reduced sugars", figures{ingredient.TotalSugars: 10, ingredient.Carbohydrate: g}, figures{ingredient.TotalSugars: 20, ingredient.Carbohydrate: 40}))
	}
	for g, want := range map[float64]bool{0.5: true, 0.51: false} {
		assert.Equal(t, want, with(label.EU, "reduced saturated fat", figures{ingredient.SaturatedFat: 1, ingredient.TransFat: g}, figures{ingredient.SaturatedFat: 4, ingredient.TransFat: 0.5}))
	}
	// Saturated and trans fat are one figure: 30 % less of both together.
	for g, want := range map[float64]bool{2.95: true, 3.05: false} {
		assert.Equal(t, want, with(label.EU, "reduced saturated fat", figures{ingredient.SaturatedFat: g - 0.2, ingredient.TransFat: 0.55}, figures{ingredient.SaturatedFat: 4, ingredient.TransFat: 0.785714}), "%g", g)
	}
}

// 21 CFR 101.56(b): half the fat where half of the calories or more are fat, else
// a third fewer calories.
func TestLightFollowsWhereTheCaloriesComeFrom(t *testing.T) {
	reference := food(made("reference", figures{ingredient.Fat: 20, ingredient.Carbohydrate: 60}), 100.)
	at := func(fat, carbohydrate float64) bool {
		l, err := label.For(food(made("own", figures{ingredient.Fat: fat, ingredient.Carbohydrate: carbohydrate}), 100.), label.US, label.Options{Reference: &reference})
		require.NoError(t, err)
		return claim(t, l, "light").Met
	}
	// 12 g of fat are 108 kcal; beside 27 g of carbohydrate they are half.
	assert.False(t, at(12, 26.9), "half the energy is fat, and the fat is 60 %")
	assert.True(t, at(12, 27.1), "less than half, and two thirds of the energy gone")
	assert.True(t, at(10, 0))
}

// 21 CFR 101.62: who claims for one fat tells of the others and of cholesterol.
func TestAFatClaimTellsOfWhatItIsSilentOn(t *testing.T) {
	beside := func(name string, set figures) string {
		return claim(t, labelOf(t, food(made("own", set), 100.), label.US), name).Disclosure.String()
	}
	assert.NotContains(t, beside("low saturated fat", figures{ingredient.CholesterolMG: 1.9, ingredient.Carbohydrate: 9}), "cholesterol")
	assert.Contains(t, beside("low saturated fat", figures{ingredient.CholesterolMG: 2, ingredient.Carbohydrate: 9}), "cholesterol")
	assert.NotContains(t, beside("low saturated fat", figures{ingredient.Fat: 3, ingredient.Carbohydrate: 9}), "total fat")
	assert.Contains(t, beside("low saturated fat", figures{ingredient.Fat: 3.01, ingredient.Carbohydrate: 9}), "total fat")
	assert.NotContains(t, beside("low cholesterol", figures{ingredient.Fat: 13, ingredient.Carbohydrate: 9}), "total fat")
	assert.Contains(t, beside("low cholesterol", figures{ingredient.Fat: 13.01, ingredient.Carbohydrate: 9}), "total fat")
	assert.NotContains(t, beside("high in fiber", figures{ingredient.Fat: 3, ingredient.Fibre: 9, ingredient.Carbohydrate: 20}), "total fat")
	assert.Contains(t, beside("high in fiber", figures{ingredient.Fat: 3.01, ingredient.Fibre: 9, ingredient.Carbohydrate: 20}), "total fat")
}

// 21 CFR 101.54: a good source has 10 to 19 % of the Daily Value, a high one 20;
// 101.9(c)(8)(iv) and (c)(9) give the values. Regulation (EU) No 1169/2011,
// Annex XIII: 15 and 30 % of the reference values.
func TestSourcesOfMineralsHaveTheirShareOfTheDay(t *testing.T) {
	for _, c := range []struct {
		column   ingredient.Column
		us, eu   string
		dv, nrv  float64
		carrying figures
	}{
		{ingredient.Fibre, "fiber", "", 28, 0, figures{ingredient.Carbohydrate: 30}}, {ingredient.VitaminDUG, "vitamin D", "vitamin D", 20, 5, nil},
		{ingredient.CalciumMG, "calcium", "calcium", 1300, 800, nil}, {ingredient.IronMG, "iron", "iron", 18, 14, nil}, {ingredient.PotassiumMG, "potassium", "potassium", 4700, 2000, nil},
	} {
		met := func(r label.Region, name string, v float64) bool {
			set := figures{c.column: v}
			for k, x := range c.carrying {
				set[k] = x
			}
			return claim(t, labelOf(t, food(made("own", set), 100.), r), name).Met
		}
		for share, want := range map[float64][2]bool{0.0999: {false, false}, 0.1: {true, false}, 0.1999: {true, false}, 0.2: {false, true}} {
			assert.Equal(t, want[0], met(label.US, "good source of "+c.us, share*c.dv), "%s, %g", c.us, share)
			assert.Equal(t, want[1], met(label.US, "high in "+c.us, share*c.dv), "%s, %g", c.us, share)
		}
		if c.eu == "" {
			continue
		}
		for share, want := range map[float64][2]bool{0.1499: {false, false}, 0.1501: {true, false}, 0.2999: {true, false}, 0.3001: {true, true}} {
			assert.Equal(t, want[0], met(label.EU, "source of "+c.eu, share*c.nrv), "%s, %g", c.eu, share)
			assert.Equal(t, want[1], met(label.EU, "high "+c.eu, share*c.nrv), "%s, %g", c.eu, share)
		}
	}
}

// Low saturated fat is so by its share of the energy too: 15 % in the US
// (101.62(c)), 10 % in the EU; energy by 9 and 4 kcal.
func TestSaturatedFatCountsByItsShareOfTheEnergy(t *testing.T) {
	for _, c := range []struct {
		region label.Region
		share  float64
	}{{label.US, 0.15}, {label.EU, 0.10}} {
		for k, want := range map[float64]bool{0.999: false, 1.001: true} {
			energy := 9 * 0.9 / c.share * k // of 0.9 g saturated fat
			set := figures{ingredient.SaturatedFat: 0.9, ingredient.Fat: 0.9, ingredient.Carbohydrate: (energy - 9*0.9) / 4}
			assert.Equal(t, want, claim(t, labelOf(t, food(made("own", set), 100.), c.region), "low saturated fat").Met, "%s %g", c.region, k)
		}
	}
}

// A share of little energy is a share too.
func TestTheShareOfLittleEnergyIsSaid(t *testing.T) {
	c := claim(t, labelOf(t, food(made("own", figures{ingredient.SaturatedFat: 0.05, ingredient.Fat: 0.1}), 100.), label.US), "low saturated fat")
	require.Len(t, c.Conditions, 2)
	assert.InDelta(t, 50, *c.Conditions[1].Own, 1e-9)
	assert.False(t, c.Met)
}

// A spirit stands in the name where the food is told to hold alcohol, and it is
// one: of a hundredth of alcohol and more.
func TestASpiritStandsInTheName(t *testing.T) {
	for percent, want := range map[float64]bool{0.9: false, 1.1: true} {
		in := made("cordial", figures{ingredient.Alcohol: percent})
		in.CommonName = "cordial"
		assert.Equal(t, want, strings.Contains(labelOf(t, food(in, 60., made("own", nil), 40.), label.US).ProposedName, "cordial"), "%g %%", percent)
	}
}

// The custard's own standard name stands in that of a ripple, and the foam is
// called by what it is beaten from.
func TestARippleIsNamedByItsPhases(t *testing.T) {
	dense := label.Food{Lines: lines(t, label.DensePhase, portion{"milk_whole", 400}, portion{"cream_heavy", 350}, portion{"nfdm_regular", 60}, portion{"sugar", 160}, portion{"egg_yolk", 60}), DensityGPerML: 0.6, TubML: 500}
	of := func(k float64, foam ...portion) *label.Label {
		f := dense
		f.Lines = append([]label.Used(nil), dense.Lines...)
		d := dense
		d.Lines = append([]label.Used(nil), dense.Lines...)
		for i := range d.Lines {
			d.Lines[i].Grams *= k
			f.Lines[i].Grams *= k
		}
		for i := range foam {
			foam[i].g *= k
		}
		f.Lines = append(f.Lines, lines(t, "foam", foam...)...)
		f.Dense = &d
		return labelOf(t, f, label.US)
	}
	for _, k := range []float64{1, 0.5 / 1030} { // half a gram of custard is one
		l := of(k, portion{"egg_white", 100}, portion{"sugar", 200})
		assert.Contains(t, l.ProposedName, ": frozen custard rippled with egg-white foam")
		alone := 0
		for _, n := range l.Names {
			if n.Of == "dense phase alone" {
				alone++
			}
		}
		assert.Positive(t, alone)
	}
	assert.Contains(t, of(1, portion{"egg_yolk", 100}, portion{"sugar", 200}).ProposedName, "a sweet foam", "no whites in it")
}

// Polyols have a line of their own in both columns as soon as there are some.
func TestPolyolsStandInBothColumns(t *testing.T) {
	for g, want := range map[float64]int{0: 0, 0.4: 1} {
		l := labelOf(t, food(made("own", figures{ingredient.Polyols: g, ingredient.Carbohydrate: 5}), 100.), label.EU)
		for _, column := range [][]label.PanelLine{l.Lines, l.Second} {
			n := 0
			for _, x := range column {
				if x.Key == "polyols" {
					n++
				}
			}
			assert.Equal(t, want, n, "%g g", g)
		}
	}
	f := food(made("own", nil), 100.)
	f.Lines[0].Grams, f.Lines[0].Ingredient = 0.5, made("own", figures{ingredient.Polyols: 100, ingredient.Carbohydrate: 100})
	assert.Len(t, labelOf(t, f, label.EU).Second, len(labelOf(t, f, label.EU).Lines), "half a gram of it")
}

// Annex of 1924/2006: sugars that are there by nature are told of beside "with no
// added sugars".
func TestNaturalSugarsAreToldOf(t *testing.T) {
	of := func(g float64) string {
		return claim(t, labelOf(t, food(made("own", figures{ingredient.TotalSugars: g, ingredient.Carbohydrate: 5}), 100.), label.EU), "with no added sugars").Disclosure.String()
	}
	assert.Empty(t, of(0))
	assert.Contains(t, of(0.4), "naturally occurring sugars")
}

// Regulation (EU) No 1169/2011, Annex III: sweeteners beside the name, and over
// 10 % of polyols their effect; 21 CFR 184.1835 and 180.25 in the US.
func TestSweetenersAreToldOf(t *testing.T) {
	of := func(polyols, sugars float64, r label.Region) *label.Label {
		in := made("own", figures{ingredient.Polyols: polyols, ingredient.TotalSugars: sugars, ingredient.Carbohydrate: 30})
		return labelOf(t, food(in, 100.), r)
	}
	text := func(l *label.Label) string { return l.Notes.String() }
	assert.NotContains(t, text(of(0, 1, label.EU)), "Sweeteners")
	assert.Empty(t, of(0, 1, label.EU).Statements)
	assert.Contains(t, text(of(0.5, 1, label.EU)), "Sweeteners")
	assert.Equal(t, []string{"With sugar(s) and sweetener(s)"}, of(0.5, 0.5, label.EU).Statements)
	assert.Equal(t, []string{"With sweetener(s)"}, of(0.5, 0, label.EU).Statements)
	for g, want := range map[float64]bool{10: false, 10.1: true} {
		l := of(g, 1, label.EU)
		assert.Equal(t, want, strings.Contains(text(l), "laxative"), "%g", g)
		assert.Equal(t, want, len(l.Statements) == 2, "%g", g)
	}
	assert.NotContains(t, text(of(0, 1, label.US)), "Sugar alcohols")
	assert.Contains(t, text(of(0.5, 1, label.US)), "Sugar alcohols")
	assert.Empty(t, of(20, 1, label.US).Statements)
}

// 21 CFR 101.9(c)(1)(i): with sugar alcohols method (C) takes them by (F); those
// without a factor there count as the carbohydrate that they are.
func TestSugarAlcoholsChangeTheMethodOfTheWholeFood(t *testing.T) {
	xylitol := made("xylitol", figures{ingredient.Polyols: 100, ingredient.Carbohydrate: 100})
	xylitol.Polyol = mix.Xylitol
	other := made("other", figures{ingredient.Polyols: 10, ingredient.Carbohydrate: 10})
	energy := func(f label.Food) float64 { return line(t, labelOf(t, f, label.US), "calories").Amount }
	assert.InDelta(t, 240, energy(food(xylitol, 100.)), 1e-9)
	assert.InDelta(t, 40, energy(food(other, 100.)), 1e-9)
	assert.InDelta(t, (0.4*240+99.6*40)/100, energy(food(xylitol, 0.4, other, 99.6)), 1e-9)
	assert.Contains(t, labelOf(t, food(xylitol, 0.4, other, 99.6), label.US).EnergyMethod.String(), "(F)", "a trace of it does")
	trace := made("trace", figures{ingredient.Polyols: 0.5, ingredient.Carbohydrate: 10})
	trace.Polyol = mix.Xylitol
	assert.Contains(t, labelOf(t, food(trace, 100.), label.US).EnergyMethod.String(), "(F)")
	assert.NotContains(t, labelOf(t, food(other, 100.), label.US).EnergyMethod.String(), "(F)")
	// Fibre counts at 2 there, and total carbohydrate at 4 elsewhere.
	fibrous := made("fibrous", figures{ingredient.Fibre: 10, ingredient.Carbohydrate: 10})
	assert.InDelta(t, 40, energy(food(fibrous, 100.)), 1e-9)
	assert.InDelta(t, 0.5*20+0.5*240, energy(food(fibrous, 50., xylitol, 50.)), 1e-9)
	// Annex XIV: erythritol counts nothing in the EU, other polyols 2.4 kcal.
	eu := func(in *ingredient.Ingredient) float64 {
		return line(t, labelOf(t, food(in, 100.), label.EU), "energy_kcal").Amount
	}
	assert.InDelta(t, 240, eu(xylitol), 1e-9)
	xylitol.Polyol = mix.Erythritol
	assert.InDelta(t, 0, eu(xylitol), 1e-9)
	assert.InDelta(t, 20, eu(fibrous), 1e-9)
}

// What is said of the alcohol's energy follows the method.
func TestTheMethodTellsOfAlcohol(t *testing.T) {
	of := func(method string, alcohol float64) string {
		f := food(made("own", figures{ingredient.Alcohol: alcohol, ingredient.Carbohydrate: 5}), 100.)
		f.EnergyMethod = method
		return labelOf(t, f, label.US).EnergyMethod.String()
	}
	assert.Contains(t, of(label.General, 0.4), "alcohol 7 kcal/g")
	assert.Contains(t, of(label.Specific, 0.4), "alcohol 6.93 kcal/g")
	assert.NotContains(t, of(label.General, 0), "alcohol")
	assert.NotContains(t, of(label.Specific, 0), "alcohol")
	assert.Contains(t, notes(t, food(made("own", figures{ingredient.Alcohol: 0.4}), 100.), label.US), "some will want to know")
	assert.Contains(t, notes(t, food(made("own", figures{ingredient.Alcohol: 0.6}), 100.), label.US), "Say so in the name")
	assert.NotContains(t, notes(t, food(made("own", nil), 100.), label.US), "Alcohol")
	open := made("own", nil)
	open.Name, open.Cells[ingredient.Alcohol] = "Quay liqueur", ingredient.Cell{}
	assert.Contains(t, notes(t, food(open, 0.5, made("own2", nil), 99.5), label.US), "sounds like alcohol")
	assert.NotContains(t, notes(t, food(open, 0., made("own2", nil), 100.), label.US), "sounds like alcohol")
}

// A fruit or nut that the name speaks of, and of which there is too little, is
// told of; cocoa and what is no flavour are not.
func TestTooLittleIsToldOfFlavoursOnly(t *testing.T) {
	for standing, want := range map[ingredient.Standing]bool{ingredient.Fruit: true, ingredient.Nut: true, ingredient.DriedFruit: true, ingredient.Dairy: false, ingredient.Cocoa: false} {
		in := made("plum", nil)
		in.Name, in.Standing = "Plum", standing
		in.Cells[ingredient.Water] = ingredient.Known(80)
		f := food(in, 1.5, made("own", nil), 98.5)
		f.Name = "Plum tide"
		assert.Equal(t, want, strings.Contains(notes(t, f, label.US), "is too little to be named"), "%v", standing)
		assert.Equal(t, want, strings.Contains(notes(t, f, label.US), "there is only 1.5 % of it"), "%v", standing)
	}
}

// 21 CFR 101.9(b)(6), (b)(12)(i): the reason says by how much of the reference
// amount, and a container that is one serving holds one.
func TestTheColumnsReasonSaysTheShare(t *testing.T) {
	for ml, want := range map[float64]struct {
		percent string
		count   float64
	}{80: {"50 %", 1}, 300: {"188 %", 1}, 400: {"250 %", 2.5}, 800: {"500 %", 5}} {
		f := food(made("own", nil), 100.)
		f.TubML = ml
		l := labelOf(t, f, label.US)
		assert.Contains(t, l.ColumnsWhy.String(), want.percent, "%g mL", ml)
		assert.InDelta(t, want.count, l.ServingsPerContainer, 1e-9, "%g mL", ml)
	}
	for ml, want := range map[float64]bool{239: false, 241: true} { // 150 % of 160 mL
		f := food(made("own", nil), 100.)
		f.TubML = ml
		assert.Equal(t, want, labelOf(t, f, label.US).SecondAllowed, "%g mL", ml)
	}
	f := food(made("own", nil), 100.)
	f.TubG = 0.9
	assert.Equal(t, "1 container (0.9g)", labelOf(t, f, label.US).ServingMeasure, "the grams of a tub count before its room")
	f.TubG, f.TubML = 0, 1
	assert.Equal(t, "1 container (0.6g)", labelOf(t, f, label.US).ServingMeasure)
	f.TubML = 0
	_, err := label.For(f, label.US, label.Options{})
	assert.Error(t, err)
	f.TubML, f.Lines[0].Grams = 100, 0.5
	_, err = label.For(f, label.US, label.Options{})
	assert.NoError(t, err, "half a gram is a food")
}

// 21 CFR 101.9(j)(13): small packages. What we take for one holds no more than
// two and a half reference amounts (own convention: the surface is not known).
func TestASmallTubMayCarryASmallPanel(t *testing.T) {
	for ml, want := range map[float64]bool{399: true, 401: false} {
		f := food(made("own", nil), 100.)
		f.TubML = ml
		assert.Equal(t, want, strings.Contains(notes(t, f, label.US), "40 square inches"), "%g mL", ml)
		assert.NotContains(t, notes(t, f, label.EU), "40 square inches")
	}
}

// A panel prints energy, milligrams in whole units and grams, micrograms and
// iron in tenths; its unit is kcal where the regulation prints none.
func TestNutrientsArePrintedAsFineAsTheyAreMeant(t *testing.T) {
	for _, n := range label.Nutrients {
		want := 0.1
		if unit := n.Column.Unit(); (unit == "mg" || unit == "kcal") && n.Column != ingredient.IronMG {
			want = 1
		}
		assert.InDelta(t, want, n.Step, 1e-12, n.Key)
	}
	l := labelOf(t, food(made("own", figures{ingredient.Carbohydrate: 5}), 100.), label.US)
	assert.Equal(t, "kcal", line(t, l, "calories").Unit)
	assert.Equal(t, "g", line(t, l, "total_fat").Unit)
	assert.Equal(t, "mg", line(t, l, "sodium").Unit)
}

// 21 CFR 101.9(c)(8)(iii): under 2 % of the Daily Value a vitamin may be zero.
func TestATraceIsWhatALabelDeclaresAsZero(t *testing.T) {
	for _, c := range []struct {
		key     string
		amount  float64
		trace   bool
		percent float64
	}{
		{"calcium", 25.9, true, 100 * 25.9 / 1300}, {"calcium", 26, false, 2}, {"total_fat", 0.49, true, 100 * 0.49 / 78}, {"total_fat", 0.5, false, 100 * 0.5 / 78},
		{"sodium", 4.9, true, 100 * 4.9 / 2300}, {"sodium", 5, false, 100 * 5 / 2300.},
	} {
		trace, percent := label.Trace(c.key, c.amount)
		assert.Equal(t, c.trace, trace, "%s %g", c.key, c.amount)
		assert.InDelta(t, c.percent, percent, 1e-9, c.key)
	}
	_, percent := label.Trace("trans_fat", 1)
	assert.True(t, math.IsNaN(percent), "no Daily Value")
	trace, percent := label.Trace("moonlight", 0)
	assert.True(t, !trace && math.IsNaN(percent))
	_, err := label.Declare("moonlight", 1)
	assert.Error(t, err)
	_, err = label.Declare("percent_dv_trans_fat", 1)
	assert.Error(t, err)
	_, err = label.Declare("sodium", -1)
	assert.Error(t, err)
}

func limit(t *testing.T, l *label.Label, name, what string) label.Limit {
	t.Helper()
	for _, n := range l.Names {
		if n.Name != name || n.Of != "whole food" {
			continue
		}
		for _, x := range n.Limits {
			if strings.HasPrefix(x.What.String(), what) {
				return x
			}
		}
	}
	t.Fatalf("%s has no limit of %s", name, what)
	return label.Limit{}
}

// Bulky flavours count at a multiple of their weight, 21 CFR 135.110(a)(2):
// fruit and nuts 1.4, cocoa 2.5; dried fruit at its fresh weight, with a fifth
// of solids.
func TestBulkyFlavoursCountAtTheirMultiple(t *testing.T) {
	of := func(in *ingredient.Ingredient, g float64) string {
		for _, n := range labelOf(t, food(in, g, made("own", nil), 100-g), label.US).Names {
			if n.Name == "ice cream" {
				return n.Note.String()
			}
		}
		return ""
	}
	plum := made("plum", figures{ingredient.Water: 30})
	plum.Standing = ingredient.Fruit
	assert.Contains(t, of(plum, 10), "are 14.0 %")
	plum.Standing = ingredient.DriedFruit
	assert.Contains(t, of(plum, 2), "are 9.8 %", "7 g fresh, by 1.4")
	cocoa := made("cocoa", figures{ingredient.CocoaSolidsFatFree: 60, ingredient.Fat: 20, ingredient.CocoaButter: 20})
	cocoa.Standing = ingredient.Cocoa
	assert.Contains(t, of(cocoa, 10), "are 20.0 %")
	cocoa.Cells[ingredient.CocoaButter] = ingredient.Cell{}
	assert.Contains(t, of(cocoa, 10), "are at least 15.0 %")
	assert.Empty(t, of(made("other", nil), 10))
}

// What a standard counts of small amounts: whey of what little milk solids there
// are, solids of what leaves its water open, some fat and some protein.
func TestStandardsCountLittleToo(t *testing.T) {
	whey := made("whey", figures{ingredient.MSNF: 50, ingredient.Carbohydrate: 40})
	whey.Standing, whey.Name = ingredient.Dairy, "Quay whey"
	milk := made("milk", figures{ingredient.MSNF: 50})
	milk.Standing = ingredient.Dairy
	l := labelOf(t, food(whey, 0.5, milk, 0.5, made("own", nil), 99.), label.US)
	assert.InDelta(t, 50, *limit(t, l, "ice cream", "whey").Own, 1e-9)

	open := made("own", figures{ingredient.Fat: 10, ingredient.Protein: 5, ingredient.Carbohydrate: 20})
	open.Cells[ingredient.Water] = ingredient.Cell{}
	l = labelOf(t, food(open, 100.), label.US)
	assert.InDelta(t, 0.625*0.35*3785.411784/453.59237, *limit(t, l, "ice cream", "total solids").Own, 1e-9, "35 g are certain")

	for g, want := range map[float64]bool{0: false, 0.3: true} {
		l = labelOf(t, food(made("own", figures{ingredient.Fat: g, ingredient.Protein: g}), 100.), label.EU)
		assert.Equal(t, want, limit(t, l, "ice cream (EU code)", "fat").Met)
		assert.Equal(t, want, limit(t, l, "ice cream (EU code)", "protein").Met)
	}
}

// Water driven off is taken from added water, which is water to more than
// 99.8 % (tap water 99.9, brewed tea 99.7: USDA SR28 NDB 14411, 14355).
func TestOnlyWaterBoilsAwayFromTheList(t *testing.T) {
	for share, gone := range map[float64]bool{99.75: false, 99.85: true} {
		in := made("brew", figures{ingredient.Water: share})
		in.CommonName = "brew"
		f := food(in, 20., made("own", nil), 80.)
		f.WaterOffG = 20
		assert.Equal(t, gone, !strings.Contains(labelOf(t, f, label.US).IngredientsText, "brew"), "%g %%", share)
	}
}

// What a maker's own ingredient tells in its name must be among its allergens:
// of the kind told, or of any.
func TestANameTellsOfAllergensByTheirKind(t *testing.T) {
	warned := func(list ...string) bool {
		in := made("paste", nil)
		in.Name, in.Own, in.AllergensUS, in.AllergensEU = "Almond paste", true, list, list
		l := labelOf(t, food(in, 100.), label.US)
		return strings.Contains(l.Warnings.String(), "in its name or parts")
	}
	assert.True(t, warned("milk"))
	assert.True(t, warned("tree_nut:hazelnut"), "another nut")
	assert.False(t, warned("tree_nut:almond"))
	assert.False(t, warned("tree_nut"), "a kind is asked for by another warning")
}

// Both lists of an ingredient are read, and what one says with its kind the other
// need not say again.
func TestAllergensOfBothListsAreOneEach(t *testing.T) {
	in := made("paste", nil)
	in.AllergensUS, in.AllergensEU = []string{"tree_nut:almond", "milk"}, []string{"nuts", "milk", "celery"}
	assert.Equal(t, []string{"tree_nut:almond", "milk"}, label.Allergens(in, label.US))
	in.AllergensUS, in.AllergensEU = []string{"milk"}, []string{"milk", "nuts:hazelnut"}
	assert.Equal(t, []string{"milk", "tree_nut:hazelnut"}, label.Allergens(in, label.US))
	in.AllergensUS = []string{"tree_nut:almond"}
	assert.Equal(t, []string{"tree_nut:almond", "milk", "tree_nut:hazelnut"}, label.Allergens(in, label.US), fmt.Sprint("two kinds are two"))
}

// Annex XIII, Part B of Regulation (EU) No 1169/2011: the reference intakes.
func TestReferenceIntakesAreTheRegulations(t *testing.T) {
	set := figures{ingredient.Fat: 7, ingredient.SaturatedFat: 2, ingredient.Carbohydrate: 26, ingredient.TotalSugars: 9, ingredient.Protein: 5, ingredient.SodiumMG: 240}
	l := labelOf(t, food(made("own", set), 100.), label.EU)
	told := 0
	for _, key := range []string{"fat", "saturates", "carbohydrate", "sugars", "protein", "salt"} {
		if x := line(t, l, key); x.DVPercent != nil {
			told++
			assert.InDelta(t, 10, *x.DVPercent, 0.5, key)
		}
	}
	assert.Equal(t, 6, told)
}

// Half a gram of honey, nuts or something nobody described is told of as a pound
// is; what weighs nothing is not there.
func TestACrumbIsDeclared(t *testing.T) {
	honey, nuts, open := made("honey", nil), made("nuts", nil), made("mix", nil)
	honey.Name, honey.CommonName = "Honey", "honey"
	nuts.AllergensUS = []string{"tree_nut:hazelnut"}
	open.Own, open.Compound, open.Name = true, true, "Quay mix"
	for g, want := range map[float64]bool{0: false, 0.5: true} {
		f := food(honey, g, nuts, g, open, g, made("own", nil), 90.)
		l := labelOf(t, f, label.US)
		assert.Equal(t, want, strings.Contains(l.Notes.String(), "not for infants"), "%g g", g)
		assert.Equal(t, want, strings.Contains(l.Contains, "hazelnut"), "%g g: %s", g, l.Contains)
		assert.Equal(t, want, strings.Contains(l.Warnings.String(), "Quay mix") || strings.Contains(l.Contains, "Quay mix"), "%g g: %v", g, l.Warnings)
	}
}

// 21 CFR 135.130: mellorine is made with fat from an ingredient used for its
// fat, one whose solids are half fat or more.
func TestAFatSourceIsHalfFat(t *testing.T) {
	for fat, want := range map[float64]bool{39.9: false, 40.1: true} { // of 80 g solids
		in := made("spread", figures{ingredient.Fat: fat, ingredient.Water: 20})
		l := labelOf(t, food(in, 50., made("own", nil), 50.), label.US)
		assert.Equal(t, want, limit(t, l, "mellorine", "fat other than").Met, "%g", fat)
	}
}
