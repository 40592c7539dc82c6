package label_test

import (
	"math"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
)

// own is a maker's own ingredient.
func own(name string, us, eu []string) label.Used {
	in := &ingredient.Ingredient{ID: "own", Name: name, Own: true, AllergensUS: us, AllergensEU: eu}
	return label.Used{Ingredient: in, Grams: 50}
}

func foodOf(lines ...label.Used) label.Food {
	return label.Food{Lines: lines, DensityGPerML: 1, TubML: 500}
}

// FD&C Act 403(w) with FALCPA 2004 and the FASTER Act 2021 (sesame); FDA
// guidance of January 2025 (the animal of milk and egg); Regulation (EU) No
// 1169/2011, Annex II, whose cereals and nuts are named by kind.
func TestAllergensReachBothRegionsFromEitherList(t *testing.T) {
	for _, c := range []struct{ us, eu, contains, emphasised string }{
		{"", "nuts:hazelnut", "Contains: tree nuts (hazelnut).", "HAZELNUT"},
		{"tree_nut:hazelnut", "", "Contains: tree nuts (hazelnut).", "HAZELNUT"},
		{"hazelnuts", "", "Contains: tree nuts (hazelnut).", "HAZELNUT"},
		{"", "eggs; gluten_cereals:wheat; gluten_cereals:barley", "Contains: egg, wheat.", "(EGGS) (WHEAT) (BARLEY)"},
		{"milk:goat", "", "Contains: goat milk.", "(MILK)"},
		{"milk; milk:goat", "", "Contains: milk, goat milk.", "(MILK)"},
		{"", "Soya", "Contains: soy.", "(SOYBEANS)"},
		{"Sesame", "", "Contains: sesame.", "(SESAME)"},
		{"", "sulphites; celery; mustard; lupin; molluscs", "", "(SULPHITES) (CELERY) (MUSTARD) (LUPIN) (MOLLUSCS)"},
		{"milk; tree_nut:almond", "milk; nuts:hazelnut", "Contains: milk, tree nuts (almond, hazelnut).", "(HAZELNUT) (ALMOND)"},
		{"none", "none", "", ""},
	} {
		split := func(s string) []string {
			if s == "" {
				return nil
			}
			return strings.Split(s, "; ")
		}
		food := foodOf(own("paste", split(c.us), split(c.eu)))
		assert.Equal(t, c.contains, labelOf(t, food, label.US).Contains, c.us+"|"+c.eu)
		assert.Contains(t, labelOf(t, food, label.EU).IngredientsText, c.emphasised, c.us+"|"+c.eu)
	}
}

func TestUnstatedAllergensAreNotNone(t *testing.T) {
	warned := func(u label.Used, r label.Region) string {
		return labelOf(t, foodOf(u), r).Warnings.String()
	}
	assert.Equal(t, "Allergens are not stated for quay paste.", labelOf(t, foodOf(own("Quay paste", nil, nil)), label.US).Contains)
	milk := lines(t, "", portion{"milk_whole", 50})[0]
	assert.Equal(t, "Contains: milk. Allergens are not stated for quay paste.", labelOf(t, foodOf(milk, own("Quay paste", nil, nil)), label.US).Contains)
	none := []string{"none"}
	assert.Contains(t, warned(own("Quay paste", nil, nil), label.US), "The allergens of Quay paste are not stated")
	assert.NotContains(t, warned(own("Quay paste", none, nil), label.US), "allergens")
	assert.Contains(t, warned(own("Quay paste", []string{"milk"}, nil), label.EU), "follow the US list")
	assert.Contains(t, warned(own("Quay nut paste", []string{"tree_nut"}, nil), label.US), "the rules ask which kind")
	assert.Contains(t, warned(own("Hazelnut brittle", none, none), label.US), "has hazelnut in its name")
	assert.Contains(t, warned(own("Tahini", none, none), label.US), "has sesame in its name")
	for _, plant := range []string{"Coconut milk", "Oat cream", "Cocoa butter"} {
		assert.NotContains(t, warned(own(plant, none, none), label.US), "has milk in its name", plant)
	}
	with := own("Fudge", []string{"milk"}, []string{"milk"})
	with.Ingredient.Parts = "cream, sugar, wheat flour"
	assert.Contains(t, warned(with, label.EU), "Fudge has wheat in its name")
}

// A word that only says "nuts" does not name the nut, so the kind follows.
func TestKindIsNamedWhereTheListSaysOnlyNuts(t *testing.T) {
	l := labelOf(t, foodOf(own("chopped nuts", nil, []string{"nuts:pecan"})), label.EU)
	assert.Equal(t, "Ingredients: chopped nuts (PECAN).", l.IngredientsText)
}

// Annex VIII, item 4 (from memory): over 100 % the share is told in words.
func TestQUIDFollowsTheName(t *testing.T) {
	food := label.Food{Name: "Passion fruit ripple", WaterOffG: 60, DensityGPerML: 1, TubML: 500,
		Lines: lines(t, label.DensePhase, portion{"passion_fruit", 120}, portion{"sugar", 30})}
	assert.Contains(t, labelOf(t, food, label.EU).IngredientsText, "passion fruit (133 g per 100 g of the finished food)")
	food.WaterOffG = 0
	assert.Contains(t, labelOf(t, food, label.EU).IngredientsText, "passion fruit (80 %)")
	food.Lines = lines(t, label.DensePhase, portion{"passion_fruit", 4.44}, portion{"sugar", 95.56})
	assert.Contains(t, labelOf(t, food, label.EU).IngredientsText, "passion fruit (4.4 %)")
}

// What the proposed name tells of is told in percent too.
func TestQUIDFollowsTheProposedName(t *testing.T) {
	food := ripple(t)
	food.Name = "Number seven"
	l := labelOf(t, food, label.EU)
	require.Contains(t, l.ProposedName, "roasted hazelnuts")
	assert.Contains(t, l.IngredientsText, "HAZELNUTS (5 %)")
}

func TestNotesFollowWhatIsInTheFood(t *testing.T) {
	notes := func(r label.Region, of ...portion) string {
		food := label.Food{Name: "Test", Lines: lines(t, label.DensePhase, of...), DensityGPerML: 1, TubML: 900}
		return labelOf(t, food, r).Notes.String()
	}
	assert.Contains(t, notes(label.US, portion{"honey", 5}, portion{"sugar", 95}), "not for infants under 12 months")
	rum := notes(label.US, portion{"rum_40", 10}, portion{"sugar", 90})
	assert.Contains(t, rum, "Alcohol: 3.3 % by weight") // 10 g × 33.4 %, USDA SR28 NDB 14050
	assert.Contains(t, notes(label.EU, portion{"wine_table", 10}, portion{"sugar", 90}), "over 10 mg/kg as total SO2")
	assert.Contains(t, notes(label.US, portion{"wine_table", 10}, portion{"sugar", 90}), "from 10 ppm")
	assert.Contains(t, notes(label.EU, portion{"xylitol", 12}, portion{"milk_whole", 88}), "laxative")
	assert.NotContains(t, notes(label.EU, portion{"xylitol", 10}, portion{"milk_whole", 90}), "laxative")
	plain := notes(label.US, portion{"milk_whole", 90}, portion{"sugar", 10})
	for _, word := range []string{"Honey", "Alcohol", "ulfite", "laxative"} {
		assert.NotContains(t, plain, word)
	}
}

func TestThePortionOfTheMakerIsUsedWhereItTellsItsGrams(t *testing.T) {
	food := ripple(t)
	for words, want := range map[string]float64{"2 scoops (80 g)": 80, "62.5g": 62.5, "1 boule (82,5 g)": 82.5, "one scoop": 88, "": 88} {
		food.Portion = words
		l := labelOf(t, food, label.EU)
		assert.InDelta(t, want, l.ServingG, 1e-9, words)
		assert.InDelta(t, line(t, l, "fat").Amount*want/100, l.Second[2].Amount, 1e-9, words)
	}
	food.Portion = "one scoop"
	assert.Contains(t, labelOf(t, food, label.EU).Notes.String(), "gives no grams")
	food.Portion = "one bucket (5000 g)"
	assert.InDelta(t, 88, labelOf(t, food, label.EU).ServingG, 1e-9, "more than the tub holds")
	assert.Contains(t, labelOf(t, food, label.EU).Notes.String(), "gives no grams that a tub holds")
	food.TubML, food.Portion = 120, ""
	assert.Equal(t, "1 portion per pack", labelOf(t, food, label.EU).ServingsText)
}

// Method (A) knows no sugar alcohol, so its energy is that of (F), and an own
// ingredient that tells of alcohol leaves the energy open.
func TestEnergyIsNeverLeftOutSilently(t *testing.T) {
	food := label.Food{Lines: lines(t, "", portion{"xylitol", 100}), DensityGPerML: 1, TubML: 1000, EnergyMethod: label.Specific}
	l := labelOf(t, food, label.US)
	assert.InDelta(t, 160*2.4, line(t, l, "calories").Amount, 1e-9)
	assert.False(t, line(t, l, "calories").Incomplete)
	assert.Contains(t, l.EnergyMethod.String(), "sugar alcohols by (F)")

	soaked, err := ingredient.FromPack("soaked", "Rum raisins", ingredient.Pack{PerG: 100, Fat: ingredient.Known(1), Carbohydrate: ingredient.Known(60), Protein: ingredient.Known(2)})
	require.NoError(t, err)
	l = labelOf(t, foodOf(label.Used{Ingredient: soaked, Grams: 100}), label.US)
	assert.True(t, line(t, l, "calories").Incomplete)
	plain := *soaked
	plain.Name = "Raisins with ginger"
	l = labelOf(t, foodOf(label.Used{Ingredient: &plain, Grams: 100}), label.US)
	assert.False(t, line(t, l, "calories").Incomplete)
}

// 21 CFR 101.9(c)(8)(iii) and (d)(7)(ii): of an amount declared as zero the
// percentage is zero too, though the unrounded one may round to more.
func TestAnAmountOfZeroHasNoPercentage(t *testing.T) {
	food := label.Food{Lines: lines(t, "", portion{"egg_yolk", 6.5}, portion{"sugar", 93.5}), DensityGPerML: 1, TubML: 1000} // 160 g: 1.8 to 2 % of 18 mg iron
	iron := line(t, labelOf(t, food, label.US), "iron")
	require.Less(t, iron.Amount, 0.36)
	require.Greater(t, iron.Amount, 0.18) // 1 %, which alone would round to 2 %
	assert.Equal(t, "0mg", iron.Text)
	assert.Equal(t, "0%", iron.DVText)
	fiber := line(t, labelOf(t, plain(map[ingredient.Column]float64{ingredient.Carbohydrate: 5, ingredient.Fibre: 0.49}), label.US), "dietary_fiber")
	assert.Equal(t, "0g", fiber.Text)
	assert.Equal(t, "0%", fiber.DVText) // 1.75 % of 28 g
}

// Tea and coffee are more than 99 % water and no water: they keep their place
// in the list when water is driven off.
func TestOnlyWaterIsDrivenOff(t *testing.T) {
	food := label.Food{Name: "Test", WaterOffG: 60, DensityGPerML: 1, TubML: 500,
		Lines: lines(t, label.DensePhase, portion{"tea_black_brewed", 50}, portion{"coffee_brewed", 40}, portion{"sugar", 45}, portion{"water", 30})}
	assert.Equal(t, "Ingredients: tea, sugar, coffee.", labelOf(t, food, label.US).IngredientsText)
}

// 21 CFR 135.110(f) (from memory).
func TestAnArtificialFlavourIsToldOf(t *testing.T) {
	food := foodOf(lines(t, label.DensePhase, portion{"milk_whole", 99}, portion{"vanilla_imitation", 1})...)
	assert.Contains(t, labelOf(t, food, label.US).Notes.String(), "Artificial vanilla flavor: a name that speaks")
}

// A second column keeps what the first alone would leave out.
func TestNothingGoesThatEitherColumnNeeds(t *testing.T) {
	food := label.Food{Lines: lines(t, "", portion{"sugar", 99.5}, portion{"hazelnut", 0.5}), DensityGPerML: 0.6, TubML: 470}
	l, err := label.For(food, label.US, label.Options{OmitInsignificant: true})
	require.NoError(t, err)
	require.Len(t, l.Second, len(l.Lines))
	for i := range l.Lines {
		assert.Equal(t, l.Lines[i].Key, l.Second[i].Key)
	}
	assert.Equal(t, "total_fat", l.Lines[1].Key)
	assert.Equal(t, "saturated_fat", l.Lines[2].Key, "0.3 g of fat in the serving, 0.9 g in the container")
}

// Whatever a maker writes in a list of allergens reaches the label, unless it
// says none.
func FuzzNoAllergenVanishes(f *testing.F) {
	for _, s := range []string{"milk", "tree_nut:hazelnut", ":almond", "Nuts", "gluten_cereals:rye", "none", "poppy seed", "milk:goat", "_", "fish:", "Eggs "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		in := &ingredient.Ingredient{ID: "own", Name: "x", Own: true, AllergensUS: []string{s}}
		got := label.Allergens(in, label.EU)
		words := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		if len(words) > 0 && words[0] != "none" {
			require.NotEmpty(t, got, "%q", s)
		}
		for _, a := range got {
			require.Equal(t, []string{a}, label.Allergens(&ingredient.Ingredient{ID: "own", Name: "x", AllergensEU: []string{a}}, label.EU), "read back")
		}
	})
}

// A portion is grams that are in the tub, or the words are not taken.
func FuzzPortion(f *testing.F) {
	for _, s := range []string{"2 scoops (80 g)", "82,5 g", "0 g", "0.0 g and 9 g", "g", "9g", "1" + strings.Repeat("0", 400) + " g", "1" + strings.Repeat("0", 300) + " g", "0." + strings.Repeat("0", 300) + "1 g"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		food := foodOf(own("milk", nil, nil))
		food.Portion = s
		l, err := label.For(food, label.EU, label.Options{})
		if err != nil {
			return
		}
		require.Greater(t, l.ServingG, 0.)
		require.LessOrEqual(t, l.ServingG, 500., "what is in the tub")
		require.False(t, math.IsNaN(l.ServingsPerContainer) || math.IsInf(l.ServingsPerContainer, 0))
	})
}
