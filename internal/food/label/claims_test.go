package label_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/food/limits"
)

func claim(t *testing.T, l *label.Label, name string) label.Claim {
	t.Helper()
	for _, c := range l.Claims {
		if c.Claim == name {
			return c
		}
	}
	t.Fatalf("no claim %q", name)
	return label.Claim{}
}

// plain is 100 g of water with figures of our choosing, so that each limit can
// be met from both sides. Density 0.625 g/mL makes the reference amount 100 g.
func plain(set map[ingredient.Column]float64) label.Food {
	in := &ingredient.Ingredient{ID: "made", Name: "made up"}
	for c := range in.Cells {
		in.Cells[c] = ingredient.Known(0)
	}
	for c, v := range set {
		in.Cells[c] = ingredient.Known(v)
	}
	return label.Food{Lines: []label.Used{{Ingredient: in, Grams: 100}}, DensityGPerML: 0.625, TubML: 1000}
}

// The limits of 21 CFR 101.54 and 101.60–62 and of Regulation (EC) No
// 1924/2006, Annex, each just kept and just missed.
func TestEveryClaimHasItsLimit(t *testing.T) {
	const off = 1e-6
	type figures = map[ingredient.Column]float64
	for _, c := range []struct {
		region label.Region
		claim  string
		column ingredient.Column
		limit  float64
		kept   int // +1: kept above and at the limit, −1: at and below, −2: below only
		also   figures
	}{
		{label.US, "low fat", ingredient.Fat, 3, -1, nil},
		{label.US, "fat free", ingredient.Fat, 0.5, -2, nil},
		{label.US, "low saturated fat", ingredient.SaturatedFat, 1, -1, figures{ingredient.Fat: 5, ingredient.Carbohydrate: 20}},
		{label.US, "saturated fat free", ingredient.SaturatedFat, 0.5, -2, figures{ingredient.Fat: 5}},
		{label.US, "saturated fat free", ingredient.TransFat, 0.5, -2, figures{ingredient.Fat: 5}},
		{label.US, "low cholesterol", ingredient.CholesterolMG, 20, -1, nil},
		{label.US, "low cholesterol", ingredient.SaturatedFat, 2, -1, figures{ingredient.Fat: 5}},
		{label.US, "cholesterol free", ingredient.CholesterolMG, 2, -2, nil},
		{label.US, "cholesterol free", ingredient.SaturatedFat, 2, -1, figures{ingredient.Fat: 5}},
		{label.US, "low sodium", ingredient.SodiumMG, 140, -1, nil},
		{label.US, "very low sodium", ingredient.SodiumMG, 35, -1, nil},
		{label.US, "sodium free", ingredient.SodiumMG, 5, -2, nil},
		{label.US, "low calorie", ingredient.Carbohydrate, 10, -1, nil},    // 40 kcal
		{label.US, "calorie free", ingredient.Carbohydrate, 1.25, -2, nil}, // 5 kcal
		{label.US, "sugar free", ingredient.TotalSugars, 0.5, -2, figures{ingredient.Carbohydrate: 5}},
		{label.US, "sugar free", ingredient.AddedSugars, 0, -1, figures{ingredient.Carbohydrate: 5, ingredient.TotalSugars: 0.4}},
		{label.US, "no added sugar", ingredient.AddedSugars, 0, -1, figures{ingredient.Carbohydrate: 5, ingredient.TotalSugars: 5}},
		{label.US, "good source of calcium", ingredient.CalciumMG, 130, +1, nil},
		{label.US, "good source of calcium", ingredient.CalciumMG, 260, -2, nil},
		{label.US, "high in calcium", ingredient.CalciumMG, 260, +1, nil},
		{label.US, "good source of fiber", ingredient.Fibre, 2.8, +1, figures{ingredient.Carbohydrate: 20}},
		{label.US, "high in iron", ingredient.IronMG, 3.6, +1, nil},
		{label.US, "good source of vitamin D", ingredient.VitaminDUG, 2, +1, nil},
		{label.US, "high in potassium", ingredient.PotassiumMG, 940, +1, nil},
		{label.EU, "low energy", ingredient.Carbohydrate, 10, -1, nil}, // 40 kcal
		{label.EU, "fat-free", ingredient.Fat, 0.5, -1, nil},
		{label.EU, "low fat", ingredient.Fat, 3, -1, nil},
		{label.EU, "low saturated fat", ingredient.SaturatedFat, 1.5, -1, figures{ingredient.Fat: 5, ingredient.Carbohydrate: 60}},
		{label.EU, "low saturated fat", ingredient.TransFat, 1.5, -1, figures{ingredient.Fat: 5, ingredient.Carbohydrate: 60}},
		{label.EU, "sugars-free", ingredient.TotalSugars, 0.5, -1, figures{ingredient.Carbohydrate: 5}},
		{label.EU, "low sugars", ingredient.TotalSugars, 5, -1, figures{ingredient.Carbohydrate: 9}},
		{label.EU, "low sodium or salt", ingredient.SodiumMG, 120, -1, nil},
		{label.EU, "source of fibre", ingredient.Fibre, 3, +1, figures{ingredient.Carbohydrate: 20}},
		{label.EU, "high fibre", ingredient.Fibre, 6, +1, figures{ingredient.Carbohydrate: 20}},
		{label.EU, "source of protein", ingredient.Protein, 6, +1, figures{ingredient.Carbohydrate: 44}}, // 24 of 200 kcal
		{label.EU, "high protein", ingredient.Protein, 10, +1, figures{ingredient.Carbohydrate: 40}},     // 40 of 200 kcal
		{label.EU, "source of calcium", ingredient.CalciumMG, 120, +1, nil},
		{label.EU, "high calcium", ingredient.CalciumMG, 240, +1, nil},
		{label.EU, "source of vitamin D", ingredient.VitaminDUG, 0.75, +1, nil},
		{label.EU, "high iron", ingredient.IronMG, 4.2, +1, nil},
		{label.EU, "source of potassium", ingredient.PotassiumMG, 300, +1, nil},
		{label.EU, "very low sodium or salt", ingredient.SodiumMG, 40, -1, nil},
		{label.EU, "sodium-free or salt-free", ingredient.SodiumMG, 5, -1, nil},
		{label.EU, "saturated fat-free", ingredient.SaturatedFat, 0.1, -1, figures{ingredient.Fat: 5}},
		{label.EU, "with no added sugars", ingredient.AddedSugars, 0, -1, figures{ingredient.Carbohydrate: 5, ingredient.TotalSugars: 5}},
	} {
		at := func(v float64) bool {
			set := figures{c.column: max(0, v)}
			for k, x := range c.also {
				if k != c.column {
					set[k] = x
				}
			}
			return claim(t, labelOf(t, plain(set), c.region), c.claim).Met
		}
		// The share-of-energy claims move their own bound by a trace, which off covers.
		assert.Equal(t, c.kept == 1, at(c.limit+off*10), "%s %s above %v", c.region, c.claim, c.limit)
		assert.Equal(t, c.kept != -2, at(c.limit), "%s %s at %v", c.region, c.claim, c.limit)
		if c.limit > 0 {
			assert.Equal(t, c.kept < 0, at(c.limit-off*10), "%s %s below %v", c.region, c.claim, c.limit)
		}
	}
}

// 21 CFR 101.54 and 101.9(c)(7)(i): the protein is corrected for its quality,
// at most by 1.00; so too little misses and enough leaves it open.
func TestProteinClaimsWaitForTheQualityOfTheProtein(t *testing.T) {
	for g, want := range map[float64][2]bool{4.9: {false, false}, 5: {true, false}, 9.9: {true, false}, 10: {true, true}} {
		l := labelOf(t, plain(map[ingredient.Column]float64{ingredient.Protein: g}), label.US)
		for i, name := range []string{"good source of protein", "high protein"} {
			c := claim(t, l, name)
			assert.False(t, c.Met, name)
			assert.Equal(t, want[i], c.Incomplete, "%s at %v g", name, g)
		}
		assert.Nil(t, line(t, l, "protein").DVPercent)
	}
}

// 21 CFR 101.13(h): more than 13 g fat, 4 g saturated fat, 60 mg cholesterol or
// 480 mg sodium in the reference amount or the serving.
func TestDisclosureHasItsTriggers(t *testing.T) {
	for word, c := range map[string]struct {
		column ingredient.Column
		limit  float64
	}{"for fat content": {ingredient.Fat, 13}, "saturated fat": {ingredient.SaturatedFat, 4}, "cholesterol": {ingredient.CholesterolMG, 60}, "sodium": {ingredient.SodiumMG, 480}} {
		beside := func(v float64) string {
			set := map[ingredient.Column]float64{ingredient.CalciumMG: 300, c.column: v}
			if c.column == ingredient.SaturatedFat {
				set[ingredient.Fat] = 10
			}
			return claim(t, labelOf(t, plain(set), label.US), "high in calcium").Disclosure.String()
		}
		assert.NotContains(t, beside(c.limit), "See nutrition information", word)
		assert.Contains(t, beside(c.limit+0.001), "See nutrition information", word)
		assert.Contains(t, beside(c.limit+0.001), word)
	}
	// A tub of one serving of 190 % of the reference amount counts whole.
	food := plain(map[ingredient.Column]float64{ingredient.CalciumMG: 300, ingredient.CholesterolMG: 40})
	food.TubML = 304
	assert.Contains(t, claim(t, labelOf(t, food, label.US), "high in calcium").Disclosure.String(), "cholesterol")
}

// 21 CFR 101.62(b)(4): 25 % less; 101.56(b): a third fewer calories or half the
// fat; Regulation (EC) No 1924/2006, Annex: 30 % less.
func TestReducedAndLightNeedTheirReference(t *testing.T) {
	rich := plain(map[ingredient.Column]float64{ingredient.Fat: 16, ingredient.Carbohydrate: 24, ingredient.TotalSugars: 20, ingredient.SodiumMG: 200})
	rich.Name = "Harbour cream"
	at := func(fat float64, r label.Region, name string) label.Claim {
		food := plain(map[ingredient.Column]float64{ingredient.Fat: fat, ingredient.Carbohydrate: 24, ingredient.TotalSugars: 20, ingredient.SodiumMG: 200})
		l, err := label.For(food, r, label.Options{Reference: &rich})
		require.NoError(t, err)
		return claim(t, l, name)
	}
	assert.True(t, at(12, label.US, "reduced fat").Met)
	assert.Contains(t, at(12, label.US, "reduced fat").Disclosure.String(), "“Harbour cream”")
	assert.False(t, at(12.001, label.US, "reduced fat").Met)
	assert.False(t, at(12, label.US, "reduced sugar").Met)
	assert.True(t, at(8, label.US, "light").Met)
	assert.False(t, at(8.001, label.US, "light").Met)
	assert.True(t, at(11.2, label.EU, "reduced fat").Met)
	assert.False(t, at(11.201, label.EU, "reduced fat").Met)

	// Of 200 kcal a quarter from fat: a third less energy is 133.3 kcal.
	sweet := plain(map[ingredient.Column]float64{ingredient.Fat: 5, ingredient.Carbohydrate: 38.75, ingredient.SodiumMG: 200})
	for carb, want := range map[float64]bool{22.083: true, 22.084: false} { // 45 + 4 × carb
		l, err := label.For(plain(map[ingredient.Column]float64{ingredient.Fat: 5, ingredient.Carbohydrate: carb}), label.US, label.Options{Reference: &sweet})
		require.NoError(t, err)
		assert.Equal(t, want, claim(t, l, "light").Met, carb)
	}
	for mg, want := range map[float64]bool{150: true, 150.01: false} {
		l, err := label.For(plain(map[ingredient.Column]float64{ingredient.SodiumMG: mg}), label.EU, label.Options{Reference: &sweet})
		require.NoError(t, err)
		assert.Equal(t, want, claim(t, l, "reduced sodium or salt").Met, mg)
	}

	lean := plain(map[ingredient.Column]float64{ingredient.Fat: 3})
	l, err := label.For(plain(map[ingredient.Column]float64{ingredient.Fat: 1}), label.US, label.Options{Reference: &lean})
	require.NoError(t, err)
	assert.False(t, claim(t, l, "reduced fat").Met, "a food that is low itself is no reference")

	l = labelOf(t, rich, label.US)
	assert.False(t, claim(t, l, "light").Met)
	assert.Contains(t, claim(t, l, "light").Conditions[0].What.String(), "which was not given")
}

// 21 CFR 101.60–62: what is free of something is so per reference amount and per
// labelled serving, here a tub of 190 %.
func TestFreeCountsTheLabelledServingToo(t *testing.T) {
	for g, want := range map[float64]bool{0.49 / 1.9: true, 0.51 / 1.9: false} {
		food := plain(map[ingredient.Column]float64{ingredient.Fat: g})
		food.TubML = 304
		assert.Equal(t, want, claim(t, labelOf(t, food, label.US), "fat free").Met, g)
	}
}

func TestAnUnknownFigureLeavesAClaimOpen(t *testing.T) {
	food := plain(nil)
	in := *food.Lines[0].Ingredient
	in.Cells[ingredient.SodiumMG] = ingredient.Cell{}
	in.Derived = "ash: made up" // bounds no mineral
	food.Lines = []label.Used{{Ingredient: &in, Grams: 100}}
	c := claim(t, labelOf(t, food, label.US), "low sodium")
	assert.False(t, c.Met)
	assert.True(t, c.Incomplete)
	in.Cells[ingredient.CalciumMG] = ingredient.Cell{}
	high := claim(t, labelOf(t, food, label.US), "high in calcium")
	assert.False(t, high.Met)
	assert.True(t, high.Incomplete)
	in.Cells[ingredient.SodiumMG] = ingredient.Known(141)
	c = claim(t, labelOf(t, food, label.US), "low sodium")
	assert.False(t, c.Incomplete)
	assert.InDelta(t, 1, c.Conditions[0].Miss, 1e-9)
}

// 21 CFR 135.110(a): the fat of a mix is milk's; 135.115: the goat's milk ones
// are of goats alone. 135.140 and 135.160 are made while stirring.
func TestStandardsAreReadWhole(t *testing.T) {
	names := func(f label.Food) map[string]bool {
		out := map[string]bool{}
		for _, n := range labelOf(t, f, label.US).Names {
			if n.Of == "whole food" {
				out[n.Name] = n.Met
			}
		}
		return out
	}
	of := func(more ...portion) label.Food {
		base := []portion{{"milk_whole", 400}, {"cream_heavy", 350}, {"nfdm_regular", 50}, {"sugar", 160}}
		return label.Food{Lines: lines(t, label.DensePhase, append(base, more...)...), DensityGPerML: 0.60, TubML: 500}
	}
	assert.True(t, names(of())["ice cream"])
	assert.Equal(t, "Ice cream", labelOf(t, of(), label.US).ProposedName)
	assert.False(t, names(of(portion{"oil_coconut", 30}))["ice cream"])
	mixed := names(of(portion{"milk_goat", 30}))
	assert.False(t, mixed["goat's milk ice cream"])

	ice := label.Food{Lines: lines(t, label.DensePhase, portion{"lemon_juice", 200}, portion{"sugar", 250}, portion{"water", 500}), DensityGPerML: 0.9, TubML: 500}
	assert.True(t, names(ice)["water ice"])
	assert.True(t, strings.HasPrefix(labelOf(t, ice, label.US).ProposedName, "Water ice"))
	ice.Lines = append(ice.Lines, lines(t, "foam", portion{"egg_white", 30})...)
	assert.False(t, names(ice)["water ice"], "the foam is folded in")
}

// 21 CFR part 135 (older print): berries from 6 %, citrus and nuts from 2 %,
// other fruit from 10 %.
func TestANameTellsOnlyOfWhatThereIsEnoughOf(t *testing.T) {
	for id, least := range map[string]float64{"raspberry": 6, "lemon_juice": 2, "hazelnut": 2, "mango": 10} {
		at := func(pct float64) *label.Label {
			food := label.Food{Name: "Sea foam " + strings.Split(id, "_")[0], DensityGPerML: 0.6, TubML: 900,
				Lines: lines(t, label.DensePhase, portion{id, pct}, portion{"milk_whole", 100 - pct})}
			return labelOf(t, food, label.US)
		}
		assert.Contains(t, at(least).ProposedName, " with ", id)
		assert.NotContains(t, at(least-0.01).ProposedName, " with ", id)
		assert.Contains(t, at(least-0.01).Notes.String(), "is too little to be named", id)
		assert.NotContains(t, at(least).Notes.String(), "is too little to be named", id)
	}
	rum := label.Food{DensityGPerML: 0.6, TubML: 900, Lines: lines(t, label.DensePhase, portion{"rum_40", 4}, portion{"milk_whole", 96})}
	assert.Contains(t, labelOf(t, rum, label.US).ProposedName, "with rum")
}

// What characterises stands in the name, and what the maker calls it first.
func TestANameTellsOfWhatCharacterises(t *testing.T) {
	name := func(maker string, of ...portion) string {
		rest := 100.0
		for _, p := range of {
			rest -= p.g
		}
		food := label.Food{Name: maker, DensityGPerML: 0.6, TubML: 900, Lines: lines(t, label.DensePhase, append(of, portion{"milk_whole", rest})...)}
		return labelOf(t, food, label.US).ProposedName
	}
	few := []portion{{"mango", 8}, {"lemon_juice", 3}}
	assert.NotContains(t, name("Sea foam", few...), "lemon", "more mango, and that is too little")
	assert.Contains(t, name("Sea foam and lemon", few...), "with lemon", "the maker's word")
	enough := []portion{{"mango", 14}, {"raspberry", 8}, {"lemon_juice", 3}}
	assert.Regexp(t, "with mango.* and raspberr", name("Sea foam", enough...))
	assert.Regexp(t, "with lemon.* and mango", name("Lemon tide", enough...))
	assert.Contains(t, name("Sea foam", portion{"lemon_juice", 3}), "with lemon")
	assert.Regexp(t, "with hazelnut", name("Sea foam", portion{"mango", 8}, portion{"hazelnut", 4}), "nuts are no rival of fruit")
}

// One limit for name, notes and, in say, the card.
func TestNameAndNotesTellOfAlcoholFromOneLimit(t *testing.T) {
	at := limits.AlcoholTold.Steps[0].At / 0.334 // g of rum, USDA SR28 NDB 14050: 33.4 % by weight
	for k, told := range map[float64]bool{0.4: false, 0.98: false, 1.02: true, 3: true} {
		food := label.Food{Name: "Test", DensityGPerML: 0.6, TubML: 900, Lines: lines(t, label.DensePhase, portion{"rum_40", k * at}, portion{"milk_whole", 100 - k*at})}
		l := labelOf(t, food, label.US)
		notes := l.Notes.String()
		assert.Equal(t, told, strings.Contains(l.ProposedName, "rum"), "%g", k)
		assert.Equal(t, told, strings.Contains(notes, "not for children"), "%g", k)
		assert.Equal(t, !told, strings.Contains(notes, "some will want to know"), "%g", k)
	}
}
