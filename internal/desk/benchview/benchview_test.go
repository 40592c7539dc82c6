package benchview

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

var nan = math.NaN()

func TestScalesTellOverrunLossAndSyrup(t *testing.T) {
	for name, c := range map[string]struct {
		find func() (float64, string)
		want float64
		word string
	}{
		"overrun":          {func() (float64, string) { return CupOverrun(say.Style{}, 250, 130, 10, 900) }, 100, "Overrun 100 %"},
		"overrun, lighter": {func() (float64, string) { return CupOverrun(say.Style{}, 130, 250, 10, 900) }, nan, "weigh again"},
		"overrun, absurd":  {func() (float64, string) { return CupOverrun(say.Style{}, 1000, 20, 0, 900) }, nan, "more than the 900 %"},
		"overrun, no cup":  {func() (float64, string) { return CupOverrun(say.Style{}, 10, 10, 10, 900) }, nan, "more than the empty"},
		"overrun, nothing": {func() (float64, string) { return CupOverrun(say.Style{}, nan, nan, 0, 900) }, nan, "Two weights"},
		"loss":             {func() (float64, string) { return StoveLoss(say.Style{}, 1500, 1440, 500, 60) }, 6, "Stove loss 6.0 %"},
		"loss, heavier":    {func() (float64, string) { return StoveLoss(say.Style{}, 1500, 1540, 500, 60) }, nan, "weigh again"},
		"loss, all gone":   {func() (float64, string) { return StoveLoss(say.Style{}, 1500, 600, 500, 60) }, nan, "more than the 60 %"},
		"syrup":            {func() (float64, string) { return SyrupWeight(say.Style{}, 700, 400, 1e6) }, 300, "300.0 g of syrup"},
		"syrup, none":      {func() (float64, string) { return SyrupWeight(say.Style{}, 400, 400, 1e6) }, 0, "thermometer"},
		"syrup, negative":  {func() (float64, string) { return SyrupWeight(say.Style{}, 300, 400, 1e6) }, nan, "weigh again"},
	} {
		got, words := c.find()
		if c.want != c.want {
			assert.True(t, got != got, name)
		} else {
			assert.InDelta(t, c.want, got, 1e-9, name)
		}
		assert.Contains(t, words, c.word, name)
	}
}

// A large egg of the US has 17 g of yolk and 33 g of white: USDA SR28, NDB 01125 and
// 01124, as package egg has them.
func TestEggsAreCountedAndWeighed(t *testing.T) {
	d := market.Honey()
	d.Eggs = design.EggSize{System: "US", Size: "large"}
	one := GramsOfOne(d, design.Yolks)
	require.InDelta(t, 17, one, 1.5)
	x := design.Line{Ingredient: design.Yolks.IngredientID(), Grams: 5*one + 1, Note: "from the farm"}
	assert.Equal(t, design.Yolks, PartOf(x))
	counted, ok := ToCount(d, x, design.Yolks)
	require.True(t, ok)
	assert.Equal(t, 5.0, Amount(counted))
	assert.Equal(t, "from the farm", counted.Note)
	back, ok := ToGrams(d, counted)
	require.True(t, ok)
	assert.InDelta(t, 5*one, Amount(back), 0.05)
	few, _ := ToCount(d, design.Line{Ingredient: x.Ingredient, Grams: 2}, design.Yolks)
	assert.Equal(t, 1.0, few.Count, "one at least")
	assert.Equal(t, design.Line{Ingredient: x.Ingredient}, Shape(design.Line{Ingredient: x.Ingredient, Grams: 3}))
	assert.Empty(t, PartOf(design.Line{Ingredient: "sugar"}))
	d.Eggs.Size = "ostrich"
	_, ok = ToGrams(d, counted)
	assert.False(t, ok)
}

func TestAnAmountKeepsItsUnit(t *testing.T) {
	eggs := Counted(design.Line{}, design.WholeEggs, 3)
	assert.Equal(t, 4.0, WithAmount(eggs, 4).Count)
	assert.Equal(t, design.Line{Ingredient: eggs.Ingredient}, WithAmount(eggs, 0), "no eggs are 0 g of egg")
	assert.Equal(t, 12.5, WithAmount(design.Line{Ingredient: "sugar", Grams: 3}, 12.5).Grams)
}

func TestAnotherIngredientKeepsTheGramsAndNotThePrice(t *testing.T) {
	d := market.Honey()
	x := design.Line{Ingredient: "sugar", Grams: 80, Price: ingredient.Known(2), Note: "sifted"}
	y := Put(d, x, "honey")
	assert.Equal(t, design.Line{Ingredient: "honey", Grams: 80, Note: "sifted"}, y)
	assert.Equal(t, x, Put(d, x, "sugar"), "the same again")
	assert.Equal(t, 50.0, Put(d, design.Line{}, "honey").Grams, "a new line")
	yolks := Put(d, x, string(design.Yolks))
	assert.Equal(t, math.Round(80/GramsOfOne(d, design.Yolks)), yolks.Count)
}

func TestNamesFitAMenu(t *testing.T) {
	lib := market.Library(t)
	assert.Equal(t, "whole milk", Name(lib, design.Line{Ingredient: "milk_whole"}))
	assert.Equal(t, "gone", Name(lib, design.Line{Ingredient: "gone"}), "what the library has not is called by its id")
	assert.Equal(t, "sugar", Brief("sugar"))
	assert.Equal(t, "sea buckthorn purée of the qua…", Brief("sea buckthorn purée of the quay, sieved twice"))
}
