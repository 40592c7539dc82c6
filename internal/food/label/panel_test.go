package label_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/mix"
)

// rich is 100 g with every figure that a panel declares.
func rich() label.Food {
	food := plain(map[ingredient.Column]float64{
		ingredient.Water: 50, ingredient.Protein: 6.38, ingredient.Fat: 10, ingredient.SaturatedFat: 6, ingredient.TransFat: 0.6,
		ingredient.CholesterolMG: 97, ingredient.Carbohydrate: 20, ingredient.Fibre: 5, ingredient.TotalSugars: 12, ingredient.AddedSugars: 9,
		ingredient.Alcohol: 3, ingredient.SodiumMG: 960, ingredient.VitaminDUG: 1.5, ingredient.CalciumMG: 150, ingredient.IronMG: 2.7, ingredient.PotassiumMG: 705,
	})
	food.Lines[0].Ingredient.NitrogenFactor = ingredient.Known(6.38)
	return food
}

// Worked by hand. Regulation (EU) No 1169/2011: Annex I (protein is nitrogen ×
// 6.25, carbohydrate without fibre, salt is sodium × 2.5), Annex XIV (17 × 15 +
// 17 × 6.25 + 37 × 10 + 29 × 3 + 8 × 5 = 858.25 kJ; 4 × 15 + 4 × 6.25 + 9 × 10 +
// 7 × 3 + 2 × 5 = 206 kcal), Annex XIII (reference intakes, from memory).
func TestEveryLineOfTheEUDeclaration(t *testing.T) {
	l := labelOf(t, rich(), label.EU)
	want := [][3]string{
		{"energy_kj", "858 kJ", "10 %"}, {"energy_kcal", "206 kcal", "10 %"}, {"fat", "10 g", "14 %"}, {"saturates", "6.0 g", "30 %"},
		{"carbohydrate", "15 g", "6 %"}, {"sugars", "12 g", "13 %"}, {"fibre", "5.0 g", ""}, {"protein", "6.3 g", "13 %"}, {"salt", "2.4 g", "40 %"},
	}
	var got [][3]string
	for _, x := range l.Lines {
		got = append(got, [3]string{x.Key, x.Text, x.DVText})
	}
	assert.Equal(t, want, got)
	assert.InDelta(t, 858.25, l.Lines[0].Amount, 1e-9)
}

// Worked by hand: 4 × 6.38 + 4 × 20 + 9 × 10 + 7 × 3 = 216.52 kcal by 21 CFR
// 101.9(c)(1)(i)(B); Daily Values of (c)(8)(iv) and (c)(9). The reference amount
// of this food is 100 g.
func TestEveryLineOfTheNutritionFacts(t *testing.T) {
	l := labelOf(t, rich(), label.US)
	want := [][3]string{
		{"calories", "220", ""}, {"total_fat", "10g", "13%"}, {"saturated_fat", "6g", "30%"}, {"trans_fat", "0.5g", ""},
		{"cholesterol", "95mg", "32%"}, {"sodium", "960mg", "42%"}, {"total_carbohydrate", "20g", "7%"}, {"dietary_fiber", "5g", "18%"},
		{"total_sugars", "12g", ""}, {"added_sugars", "Includes 9g Added Sugars", "18%"}, {"protein", "6g", ""},
		{"vitamin_d", "1.5mcg", "8%"}, {"calcium", "150mg", "10%"}, {"iron", "2.7mg", "15%"}, {"potassium", "705mg", "15%"},
	}
	var got [][3]string
	for _, x := range l.Lines {
		got = append(got, [3]string{x.Key, x.Text, x.DVText})
	}
	assert.Equal(t, want, got)
	assert.InDelta(t, 216.52, l.Lines[0].Amount, 1e-9)
}

// 21 CFR 101.9(c)(6)(i) does not name xanthan; the EU counts all fibre.
func TestAGumOutsideTheListIsNoUSFibre(t *testing.T) {
	for _, id := range []string{"xanthan_gum", "agar_powder"} {
		food := label.Food{Lines: lines(t, "", portion{id, 5}, portion{"water", 95}), DensityGPerML: 1, TubML: 1000}
		assert.Equal(t, "0g", line(t, labelOf(t, food, label.US), "dietary_fiber").Text, id)
		assert.Greater(t, line(t, labelOf(t, food, label.EU), "fibre").Amount, 3.8, id)
	}
	food := label.Food{Lines: lines(t, "", portion{"guar_gum", 5}, portion{"water", 95}), DensityGPerML: 1, TubML: 1000}
	assert.Equal(t, "6g", line(t, labelOf(t, food, label.US), "dietary_fiber").Text) // 160 g × 5 % × 77.3 %
}

// 21 CFR 101.9(c)(1)(i)(C) and (F): fibre at 2, xylitol at 2.4 kcal/g, the rest
// of the carbohydrate at 4. Worked by hand: 4 × (20 − 5 − 8) + 2 × 5 + 2.4 × 8.
func TestFibreCountsAtTwoBesideSugarAlcohols(t *testing.T) {
	food := plain(map[ingredient.Column]float64{ingredient.Carbohydrate: 20, ingredient.Fibre: 5, ingredient.Polyols: 8})
	food.Lines[0].Ingredient.Polyol = mix.Xylitol
	assert.InDelta(t, 57.2, line(t, labelOf(t, food, label.US), "calories").Amount, 1e-9)
}

// 21 CFR 101.9(c)(2)(i)–(ii), (c)(3), (c)(6) and (c)(8)(iii): each line that may
// go stays at its limit and goes just below it.
func TestALineGoesBelowItsLimitOnly(t *testing.T) {
	for key, c := range map[string]struct {
		column ingredient.Column
		limit  float64
	}{
		"saturated_fat": {ingredient.Fat, 0.5}, "trans_fat": {ingredient.Fat, 0.5}, "cholesterol": {ingredient.CholesterolMG, 2},
		"dietary_fiber": {ingredient.Fibre, 1}, "total_sugars": {ingredient.TotalSugars, 1}, "added_sugars": {ingredient.AddedSugars, 1},
		"vitamin_d": {ingredient.VitaminDUG, 0.4}, "calcium": {ingredient.CalciumMG, 26}, "iron": {ingredient.IronMG, 0.36}, "potassium": {ingredient.PotassiumMG, 94},
	} {
		stays := func(v float64) bool {
			l, err := label.For(plain(map[ingredient.Column]float64{ingredient.Carbohydrate: 30, c.column: v}), label.US, label.Options{OmitInsignificant: true})
			require.NoError(t, err)
			for _, x := range l.Lines {
				if x.Key == key {
					return true
				}
			}
			return false
		}
		assert.True(t, stays(c.limit), key)
		assert.False(t, stays(c.limit-1e-6), key)
	}
}
