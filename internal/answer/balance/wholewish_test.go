package balance

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/design"
)

// A custard of yolks and milk alone, whose solids are those of five and a half yolks:
// either the yolks are whole or the wish is met, by what weighs more.
func TestWholeEggsAreWeighedBesideOtherWishes(t *testing.T) {
	m := models(t)
	d := design.New()
	d.Batch.Basis = design.BasisAsWritten
	d.Dense.Lines = []design.Line{{Ingredient: "milk_whole", Grams: 500}, {Ingredient: "egg_yolk", Count: 5, CountOf: design.Yolks}, {Ingredient: "sugar", Grams: 90}}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Count: 5, CountOf: design.Whites}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 170}, {Ingredient: "water", Grams: 60}}
	half, err := m.Sketch(d.WithLine(design.DensePart, 1, design.Line{Ingredient: "egg_yolk", Count: 5.5, CountOf: design.Yolks}))
	require.NoError(t, err)
	locks := Locks{Lines: map[LineAt]bool{{design.DensePart, 0}: true, {design.DensePart, 2}: true, {design.FoamPart, 0}: true}}
	ask := Ask{Wishes: []Wish{exactly(CustardFat, &half)}, WholeEggs: true, NoSwaps: true, Locks: locks, Cautions: []string{}}
	for _, c := range []struct {
		weight     float64
		whole, fat bool
	}{{0, true, false}, {0.01, false, true}, {100, true, false}} {
		ask.EggsWeight = c.weight
		a, err := Balance(background, m, d, ask)
		require.NoError(t, err)
		assert.False(t, a.Met)
		assert.Equal(t, c.fat, a.Outcomes[0].Met, "%g", c.weight)
		yolks := a.Nearest.Result.Eggs.Yolks
		assert.Equal(t, c.whole, offWhole(yolks) < pieceMost, "%g: %g yolks", c.weight, yolks)
		if c.weight > 0 {
			require.Len(t, a.Outcomes, 2)
			assert.Equal(t, c.whole, a.Outcomes[1].Met)
		}
	}
}

// Packs of cream likewise: a fat that asks for a pack and a half.
func TestWholePacksAreWeighedBesideOtherWishes(t *testing.T) {
	m := models(t)
	d := design.New()
	d.Batch.Basis = design.BasisAsWritten
	d.Dense.Lines = []design.Line{{Ingredient: "milk_whole", Grams: 500}, {Ingredient: "cream_heavy", Grams: 250}, {Ingredient: "egg_yolk", Grams: 90}, {Ingredient: "sugar", Grams: 90}}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 165}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 170}, {Ingredient: "water", Grams: 60}}
	half, err := m.Sketch(d.WithGrams(design.DensePart, 1, 375))
	require.NoError(t, err)
	locks := Locks{Lines: map[LineAt]bool{{design.DensePart, 0}: true, {design.DensePart, 2}: true, {design.DensePart, 3}: true, {design.FoamPart, 0}: true}}
	ask := Ask{Wishes: []Wish{exactly(CustardFat, &half)}, Packs: map[string]float64{"cream_heavy": 250}, NoSwaps: true, Locks: locks, Cautions: []string{}}
	for weight, want := range map[float64]float64{0.01: 375, 100: 500} {
		ask.PacksWeight = weight
		a, err := Balance(background, m, d, ask)
		require.NoError(t, err)
		g := a.Nearest.Design.Dense.Lines[1].Grams
		if weight < 1 {
			assert.InDelta(t, want, g, 4)
		} else {
			assert.Zero(t, offWhole(g/250), "%g g", g)
		}
		assert.Equal(t, weight < 1, a.Outcomes[0].Met)
		assert.Equal(t, weight > 1, a.Outcomes[1].Met)
	}
}

// What a caution weighs decides whether it is passed for a wish.
func TestCautionsAreWeighedBesideWishes(t *testing.T) {
	m := models(t)
	d, _ := eightLevers(t)
	sweet := Wish{Of: CustardSweetness, Low: 24, High: 26, Weight: 1, AtC: d.Serving.TemperatureC}
	value := func(weight float64) float64 {
		a, err := Balance(background, m, d, Ask{Wishes: []Wish{sweet}, Cautions: []string{"too_sweet"}, CautionsWeight: weight})
		require.NoError(t, err)
		return a.Nearest.Result.Dense.SweetnessPercent
	}
	light, heavy := value(0.01), value(100)
	assert.Greater(t, light, heavy+0.5, "a caution that weighs little gives way")
}

func TestSolidsAndFatOfTheTubAreThoseOfBothPhases(t *testing.T) {
	m := models(t)
	d, _ := eightLevers(t)
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	s, err := m.Sketch(d)
	require.NoError(t, err)
	w := Wish{}
	assert.InDelta(t, r.Nutrition.Per100G[3].Known, TubFat.of(&s, &w), 0.02, "the label's fat, with its own sum")
	tub := &r.Blend
	want := (tub.Dense.MassG*CustardSolids.of(&s, &w) + tub.Foam.MassG*FoamSolids.of(&s, &w)) / (tub.Dense.MassG + tub.Foam.MassG)
	assert.InDelta(t, want, TubSolids.of(&s, &w), 1e-9)
}
