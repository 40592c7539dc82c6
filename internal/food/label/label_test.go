package label_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
)

// portion is an ingredient by id with its grams.
type portion struct {
	id string
	g  float64
}

func lines(t testing.TB, phase string, of ...portion) []label.Used {
	t.Helper()
	lib := market.Library(t)
	var out []label.Used
	for _, p := range of {
		in, ok := lib.Find(p.id)
		require.True(t, ok, p.id)
		out = append(out, label.Used{Ingredient: in, Grams: p.g, Phase: phase})
	}
	return out
}

// ripple is the hazelnut ripple of the invented market stall Saltmarsh Quay:
// 720 g of custard and 374 g of foam, in tubs of 473 mL.
func ripple(t testing.TB) label.Food {
	dense := label.Food{Name: "Hazelnut ripple", WaterOffG: 33.2, DensityGPerML: 0.92, TubML: 473,
		Lines: lines(t, label.DensePhase, portion{"milk_whole", 380}, portion{"cream_heavy", 140}, portion{"egg_yolk", 85},
			portion{"sugar", 70}, portion{"hazelnut_roasted", 55}, portion{"nfdm_regular", 18}, portion{"tapioca_starch", 4}, portion{"salt", 1.2})}
	foam := lines(t, "foam", portion{"egg_white", 140}, portion{"sugar", 150}, portion{"honey", 70}, portion{"water", 45},
		portion{"lemon_juice", 6}, portion{"egg_white_dried_powder", 4})
	food := dense
	food.Lines = append(append([]label.Used(nil), dense.Lines...), foam...)
	food.WaterOffG += 41
	food.DensityGPerML = 0.55
	food.Dense = &dense
	return food
}

func labelOf(t *testing.T, f label.Food, r label.Region) *label.Label {
	t.Helper()
	l, err := label.For(f, r, label.Options{})
	require.NoError(t, err)
	return l
}

func line(t *testing.T, l *label.Label, key string) label.PanelLine {
	t.Helper()
	for _, x := range l.Lines {
		if x.Key == key {
			return x
		}
	}
	t.Fatalf("no line %q", key)
	return label.PanelLine{}
}

func TestServingIsTwoThirdsOfACupAtTheFinishedDensity(t *testing.T) {
	l := labelOf(t, ripple(t), label.US)
	assert.InDelta(t, 160*0.55, l.ServingG, 1e-9)
	assert.Equal(t, "2/3 cup (88g)", l.ServingMeasure)
	assert.Equal(t, "about 3 servings per container", l.ServingsText)
	assert.Equal(t, 3.0, l.ServingsPerContainer)
}

// 21 CFR 101.9(b)(6) and (b)(12)(i): under 200 % of the reference amount one
// serving, to 300 % two columns, above one column.
func TestContainerDecidesTheColumns(t *testing.T) {
	for _, c := range []struct {
		ml       float64
		columns  string
		measure  string
		servings string
	}{
		{120, "single", "1 container (66g)", ""},
		{319, "single", "1 container (175g)", ""},
		{320, "dual", "2/3 cup (88g)", "2 servings per container"},
		{480, "dual", "2/3 cup (88g)", "3 servings per container"},
		{481, "single", "2/3 cup (88g)", "about 3 servings per container"},
		{1000, "single", "2/3 cup (88g)", "about 6 servings per container"},
	} {
		food := ripple(t)
		food.TubML = c.ml
		l := labelOf(t, food, label.US)
		assert.Equal(t, c.columns, l.Columns, "%v mL", c.ml)
		assert.Equal(t, c.measure, l.ServingMeasure, "%v mL", c.ml)
		assert.Equal(t, c.servings, l.ServingsText, "%v mL", c.ml)
		assert.Equal(t, c.columns == "dual", len(l.Second) > 0)
	}
}

// Over 150 and under 200 % of the reference amount a second column may be
// chosen, 21 CFR 101.9(b)(6).
func TestASecondColumnMayBeChosenBetweenOneAndAHalfAndTwoServings(t *testing.T) {
	for _, c := range []struct {
		ml      float64
		allowed bool
	}{{230, false}, {240, false}, {245, true}, {319, true}, {320, true}, {480, true}, {500, false}} {
		food := ripple(t)
		food.TubML = c.ml
		l, err := label.For(food, label.US, label.Options{SecondColumn: true})
		if !c.allowed {
			require.ErrorContains(t, err, "no second column", "%v mL", c.ml)
			continue
		}
		require.NoError(t, err)
		assert.Equal(t, "dual", l.Columns)
		require.Len(t, l.Second, len(l.Lines))
		first, second := l.Lines[0].Amount, l.Second[0].Amount // calories
		if c.ml < 320 {
			assert.Equal(t, "2/3 cup", l.SecondColumn)
			assert.InEpsilon(t, 160/c.ml, second/first, 1e-9)
		} else {
			assert.Equal(t, label.PerContainer, l.SecondColumn)
			assert.InEpsilon(t, c.ml/160, second/first, 1e-9)
		}
	}
}

func TestPanelLinesStandInTheOrderOfTheRule(t *testing.T) {
	var keys []string
	for _, x := range labelOf(t, ripple(t), label.US).Lines {
		keys = append(keys, x.Key)
	}
	assert.Equal(t, strings.Fields(`calories total_fat saturated_fat trans_fat cholesterol sodium total_carbohydrate dietary_fiber
		total_sugars added_sugars protein vitamin_d calcium iron potassium`), keys) // 21 CFR 101.9(c)–(d)
	keys = nil
	for _, x := range labelOf(t, ripple(t), label.EU).Lines {
		keys = append(keys, x.Key)
	}
	assert.Equal(t, strings.Fields(`energy_kj energy_kcal fat saturates carbohydrate sugars fibre protein salt`), keys) // Annex XV
}

// Worked by hand from the decimals of 100 g of the custard in
// testdata/tables/worked_mix_nutrition.csv.
func TestDensePhaseAgreesWithTheWorkedMix(t *testing.T) {
	food := *ripple(t).Dense
	l := labelOf(t, food, label.US)
	per100 := 100 / l.ServingG
	for key, want := range map[string]float64{"total_fat": 16.651056, "protein": 6.139764, "cholesterol": 155.840278,
		"total_carbohydrate": 16.328042, "added_sugars": 9.702778, "calcium": 128.815000,
		"calories": 4*6.139764 + 4*16.328042 + 9*16.651056} {
		assert.InDelta(t, want, line(t, l, key).Amount*per100, 1e-5, key)
	}
}

// Xylitol 2.4 kcal/g, 21 CFR 101.9(c)(1)(i)(F); 10 kJ and 2.4 kcal/g,
// Regulation (EU) No 1169/2011, Annex XIV; erythritol 0 in both.
func TestSugarAlcoholsCountAtTheirOwnEnergy(t *testing.T) {
	for id, want := range map[string]struct{ us, kcal, kj float64 }{
		"xylitol": {2.4, 2.4, 10}, "sorbitol": {2.6, 2.4, 10}, "maltitol": {2.1, 2.4, 10}, "erythritol": {0, 0, 0},
	} {
		food := label.Food{Lines: lines(t, "", portion{id, 50}, portion{"water", 50}), DensityGPerML: 1, TubML: 1000}
		us := labelOf(t, food, label.US)
		assert.InDelta(t, 80*want.us, line(t, us, "calories").Amount, 1e-9, id)
		assert.Contains(t, us.EnergyMethod.String(), "(C)")
		assert.Equal(t, "80g", line(t, us, "sugar_alcohol").Text)
		eu := labelOf(t, food, label.EU)
		assert.InDelta(t, 50*want.kcal, line(t, eu, "energy_kcal").Amount, 1e-9, id)
		assert.InDelta(t, 50*want.kj, line(t, eu, "energy_kj").Amount, 1e-9, id)
	}
}

func TestAlcoholCarriesItsEnergy(t *testing.T) {
	food := label.Food{Lines: lines(t, "", portion{"rum_40", 100}), DensityGPerML: 0.95, TubML: 1000}
	rum := food.Lines[0].Ingredient.Cell(ingredient.Alcohol).Value
	l := labelOf(t, food, label.EU)
	assert.InDelta(t, 7*rum, line(t, l, "energy_kcal").Amount, 0.01) // Annex XIV
	assert.InDelta(t, 29*rum, line(t, l, "energy_kj").Amount, 0.01)
}

func TestUnknownFigureIsMarkedAndNamed(t *testing.T) {
	l := labelOf(t, ripple(t), label.US)
	trans := line(t, l, "trans_fat")
	assert.Equal(t, "0g", trans.Text)
	assert.True(t, trans.Incomplete)
	assert.Equal(t, []string{"hazelnut_roasted", "tapioca_starch"}, trans.Missing)
	assert.Contains(t, l.Warnings.String(), "Trans Fat is incomplete: no figure for roasted hazelnuts and tapioca starch")
	// The starch's 0.01 g of fat cannot change the saturated line.
	assert.False(t, line(t, l, "saturated_fat").Incomplete)
}

func TestStatementDescendsByWeightAsAdded(t *testing.T) {
	l := labelOf(t, ripple(t), label.US)
	assert.Equal(t, "Ingredients: whole milk, sugar, cream, egg whites, egg yolks, honey, roasted hazelnuts, nonfat dry milk, "+
		"lemon juice, tapioca starch, water, dried egg whites, salt.", l.IngredientsText)
	assert.Equal(t, "Contains: milk, egg, tree nuts (hazelnut).", l.Contains)
}

func TestEUStatementEmphasisesAllergensAndGivesTheNamedShare(t *testing.T) {
	l := labelOf(t, ripple(t), label.EU)
	var strong []string
	for _, r := range l.Ingredients {
		if r.Emphasis {
			strong = append(strong, r.Text)
		}
	}
	assert.Equal(t, []string{"milk", "milk", "egg", "egg", "hazelnuts", "milk", "egg"}, strong)
	assert.Contains(t, l.IngredientsText, "roasted HAZELNUTS (5 %)") // 55 g in 1094 g
}

func TestMilkAllergenIsNamedWhereTheWordHidesIt(t *testing.T) {
	in := &ingredient.Ingredient{ID: "casein", Name: "Casein", AllergensEU: []string{"milk"}, Own: true}
	food := label.Food{Lines: []label.Used{{Ingredient: in, Grams: 10}}, DensityGPerML: 1, TubML: 500}
	l := labelOf(t, food, label.EU)
	assert.Equal(t, "Ingredients: casein (MILK).", l.IngredientsText)
	assert.True(t, l.Ingredients[1].Emphasis)
}

// Figures of mixes built to sit on either side of the limits of 21 CFR
// 135.110(a)(2): the pair 12 % milkfat and 8 % nonfat milk solids, and 1.4 %
// egg yolk solids.
func TestNamesFollowTheStandards(t *testing.T) {
	base := []portion{{"milk_whole", 400}, {"cream_heavy", 350}, {"nfdm_regular", 50}, {"sugar", 160}}
	met := func(density float64, more ...portion) map[string]bool {
		food := label.Food{Lines: lines(t, label.DensePhase, append(append([]portion(nil), base...), more...)...), DensityGPerML: density, TubML: 500}
		out := map[string]bool{}
		for _, n := range labelOf(t, food, label.US).Names {
			out[n.Name] = n.Met
		}
		return out
	}
	plain := met(0.60)
	assert.True(t, plain["ice cream"])
	assert.False(t, plain["frozen custard (also french ice cream)"])
	yolk := met(0.60, portion{"egg_yolk", 60})
	assert.False(t, yolk["ice cream"])
	assert.True(t, yolk["frozen custard (also french ice cream)"])
	airy := met(0.50, portion{"egg_yolk", 60}) // 4.17 lb/gal
	assert.False(t, airy["frozen custard (also french ice cream)"])
	ice := label.Food{Lines: lines(t, "", portion{"lemon_juice", 200}, portion{"sugar", 250}, portion{"water", 500}, portion{"egg_white", 30}), DensityGPerML: 0.9, TubML: 500}
	for _, n := range labelOf(t, ice, label.US).Names {
		if n.Name == "water ice" {
			assert.True(t, n.Met)
		}
	}
}

func TestRippleIsNotCalledByTheNameOfItsCustard(t *testing.T) {
	l := labelOf(t, ripple(t), label.US)
	for _, n := range l.Names {
		if n.Region == label.US && n.Of == "whole food" {
			assert.False(t, n.Met, n.Name)
		}
	}
	assert.Equal(t, "Frozen dairy dessert: custard with roasted hazelnuts rippled with egg-white foam", l.ProposedName)
}

func TestClaimsSayByHowMuchTheyMiss(t *testing.T) {
	l := labelOf(t, ripple(t), label.US)
	for _, c := range l.Claims {
		switch c.Claim {
		case "low sodium":
			assert.True(t, c.Met)
			assert.Contains(t, c.Disclosure.String(), "saturated fat and cholesterol") // over 4 g and 60 mg
			assert.Contains(t, c.Disclosure.String(), `"per serving"`)
		case "low fat":
			assert.False(t, c.Met)
			assert.InDelta(t, line(t, l, "total_fat").Amount-3, c.Conditions[0].Miss, 1e-9)
		}
	}
}

func TestShortPanelSaysWhatItLeavesOut(t *testing.T) {
	food := label.Food{Lines: lines(t, "", portion{"sugar", 100}, portion{"water", 300}), DensityGPerML: 1, TubML: 1000}
	l, err := label.For(food, label.US, label.Options{OmitInsignificant: true})
	require.NoError(t, err)
	assert.Equal(t, "Not a significant source of saturated fat, trans fat, cholesterol, dietary fiber, vitamin D, calcium, iron or potassium.", l.NotSignificant)
}

func TestEveryIngredientAloneHasALabel(t *testing.T) {
	for _, in := range market.Library(t).All() {
		for _, r := range []label.Region{label.US, label.EU} {
			for _, method := range []string{label.General, label.Specific} {
				food := label.Food{Name: in.Name, Lines: []label.Used{{Ingredient: in, Grams: 100}}, DensityGPerML: 0.6, TubML: 500, EnergyMethod: method}
				l := labelOf(t, food, r)
				for _, x := range l.Lines {
					assert.False(t, math.IsNaN(x.Amount) || math.IsInf(x.Amount, 0), "%s: %s", in.ID, x.Key)
				}
				_, err := json.Marshal(l)
				require.NoError(t, err, in.ID)
			}
		}
	}
}

func TestEnergyAgreesWithTheRecords(t *testing.T) {
	n := 0
	for _, in := range market.Library(t).All() {
		if in.Source != "USDA SR28" || !(in.AtwaterProtein.Known && in.AtwaterFat.Known && in.AtwaterCarbohydrate.Known) {
			continue
		}
		n++
		food := label.Food{Lines: []label.Used{{Ingredient: in, Grams: 100}}, DensityGPerML: 1, TubML: 1000, EnergyMethod: label.Specific}
		kcal, _ := food.Energy()
		want := in.Cell(ingredient.Energy).Value // SR28, from the same factors and its own rounding
		assert.InDelta(t, want, kcal.Known, max(5, 0.03*want), in.ID)
	}
	assert.GreaterOrEqual(t, n, 100)
}

func TestNothingIsDeclaredOfNothing(t *testing.T) {
	_, err := label.For(label.Food{}, label.US, label.Options{})
	require.EqualError(t, err, "label: the finished food weighs 0 g; there is nothing to declare")
	food := ripple(t)
	food.DensityGPerML = 0
	_, err = label.For(food, label.US, label.Options{})
	require.ErrorContains(t, err, "a serving needs the finished density")
	_, err = label.For(ripple(t), "moon", label.Options{})
	require.EqualError(t, err, `label: no rules are known for region "moon"`)
}

func BenchmarkLabel(b *testing.B) {
	food := ripple(b)
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		if _, err := label.For(food, label.US, label.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
