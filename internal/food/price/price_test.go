package price_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/form/flaw"
)

func named(id string) *ingredient.Ingredient { return &ingredient.Ingredient{ID: id} }

func large(t *testing.T) egg.Size {
	t.Helper()
	size, err := egg.Find("US", "large")
	require.NoError(t, err)
	return size
}

// A dozen for 3.00 is 0.25 an egg, and a large egg holds 50 g (USDA SR28 NDB
// 01123), 17 g of it yolk (NDB 01125). That yolk and white cost by weight alike
// is a convention of ours.
func TestEggsAreBoughtByTheDozenAndCostByWeight(t *testing.T) {
	b := price.NewBook("€", []price.Pack{{Ingredient: "egg_whole", Price: 3, Pieces: 12}})
	size := large(t)
	for id, each := range map[string]float64{"egg_whole": 0.25, "egg_yolk": 0.25 * 17 / 50, "egg_white": 0.25 * 33 / 50} {
		grams := map[string]float64{"egg_whole": size.EdibleG, "egg_yolk": size.YolkG, "egg_white": size.WhiteG}[id]
		per := b.PerGram(named(id), size, ingredient.Cell{})
		require.True(t, per.Known, id)
		assert.InDelta(t, each, grams*per.Value, 1e-12, id)
	}
	carton := b.PerGram(named("egg_white_past"), size, ingredient.Cell{})
	assert.False(t, carton.Known, "a carton of white is another thing")
	own := price.NewBook("", append(b.Packs(), price.Pack{Ingredient: "egg_white", Price: 4, Grams: 1000}))
	assert.InDelta(t, 0.004, own.PerGram(named("egg_white"), size, ingredient.Cell{}).Value, 1e-15, "its own pack comes first")
}

func TestAPackHoldsGramsMillilitresOrPieces(t *testing.T) {
	milk := named("milk_whole")
	milk.Density = ingredient.Known(1.03)
	size := large(t)
	assert.Equal(t, ingredient.Known(1030), price.Pack{ML: 1000}.InGrams(milk, size))
	assert.Equal(t, ingredient.Cell{}, price.Pack{ML: 1000}.InGrams(named("oil"), size), "nobody knows its density")
	assert.Equal(t, ingredient.Known(500), price.Pack{Grams: 500}.InGrams(milk, size))
	assert.Equal(t, ingredient.Known(32), price.Pack{Pieces: 4, PieceG: 8}.InGrams(named("lemon_peel"), size))
	assert.Equal(t, ingredient.Cell{}, price.Pack{Pieces: 4}.InGrams(named("lemon_peel"), size))
}

func TestTheBookCountsBeforeALineAndNothingIsFree(t *testing.T) {
	b := price.NewBook("", []price.Pack{{Ingredient: "sugar", Price: 1.5, Grams: 1000}, {Ingredient: "oil", Price: 9, ML: 500}, {Ingredient: "water", Grams: 1000}})
	size := large(t)
	assert.InDelta(t, 0.0015, b.PerGram(named("sugar"), size, ingredient.Known(2)).Value, 1e-15)
	assert.InDelta(t, 0.002, b.PerGram(named("honey"), size, ingredient.Known(2)).Value, 1e-15, "an older file's own")
	assert.InDelta(t, 0.002, b.PerGram(named("oil"), size, ingredient.Known(2)).Value, 1e-15, "a pack that nobody can weigh says nothing")
	assert.Equal(t, ingredient.Known(0), b.PerGram(named("water"), size, ingredient.Cell{}), "free because somebody said so")
	assert.Equal(t, ingredient.Known(0), price.Book{}.PerGram(named(price.Tap), size, ingredient.Cell{}), "from the tap")
	assert.Equal(t, ingredient.Known(0.002), price.Book{}.PerGram(named(price.Tap), size, ingredient.Known(2)), "a line says what it costs")
	assert.Equal(t, ingredient.Cell{}, price.NewBook("", []price.Pack{{Ingredient: price.Tap, Price: 1, ML: 500}}).PerGram(named(price.Tap), size, ingredient.Cell{}), "bottled, in mL of what has no density here")
	assert.False(t, b.PerGram(named("honey"), size, ingredient.Cell{}).Known)
	assert.False(t, price.Book{}.PerGram(named("sugar"), size, ingredient.Cell{}).Known)
}

func TestAPackSaysOneThingThatItHolds(t *testing.T) {
	for want, p := range map[string]price.Pack{
		"":                                        {Ingredient: "sugar", Price: 1, Grams: 1000},
		`price of "a": say what the pack holds`:   {Ingredient: "a", Price: 1},
		"only one of them":                        {Ingredient: "a", Price: 1, Grams: 1, ML: 1},
		"ingredient: must not be empty":           {Price: 1, Grams: 1},
		`price: −1 is outside 0 to 1000000`:       {Ingredient: "a", Price: -1, Grams: 1},
		"pack_ml: must be a finite number":        {Ingredient: "a", ML: math.NaN()},
		"piece_g: is needed":                      {Ingredient: "lemon_peel", Pieces: 2},
		"piece_g: is of a pack that is counted":   {Ingredient: "a", Grams: 2, PieceG: 1},
		"note: must be UTF-8 text":                {Ingredient: "a", Grams: 2, Note: "\xff"},
		`price of "\u009bb": price: must be a fi`: {Ingredient: "\u009bb", Price: math.Inf(1), Grams: 2},
	} {
		err := p.Check()
		if want == "" {
			require.NoError(t, err)
			continue
		}
		require.ErrorContains(t, err, want)
	}
	require.NoError(t, price.Pack{Ingredient: price.Eggs, Price: 3, Pieces: 12}.Check())
	assert.NotEmpty(t, price.NotCurrency("much too long"))
	assert.NotEmpty(t, price.NotCurrency("a\nb"))
	assert.Empty(t, price.NotCurrency("€"))
}

// Common practice, no source: a margin is of the price, a markup of the cost. A
// tub that costs 3 and sells at 10 leaves 70 %.
func TestMarginIsOfThePrice(t *testing.T) {
	assert.InDelta(t, 0.7, price.Margin(3, 10), 1e-15)
	assert.InDelta(t, -0.5, price.Margin(3, 2), 1e-15)
	assert.True(t, math.IsNaN(price.Margin(3, 0)))
	assert.True(t, math.IsNaN(price.Selling(3, 1)))
	for _, m := range []float64{-1, 0, 0.3, 0.7, 0.999} {
		assert.InDelta(t, m, price.Margin(3, price.Selling(3, m)), 1e-12, "each undoes the other")
	}
}

// Half a gram of saffron, half a pod of vanilla: packs may hold less than one.
func TestAPackMayHoldLessThanOne(t *testing.T) {
	in, size := named("saffron"), large(t)
	in.Density = ingredient.Known(0.4)
	assert.Equal(t, ingredient.Known(0.5), price.Pack{Grams: 0.5}.InGrams(in, size))
	assert.Equal(t, ingredient.Known(0.2), price.Pack{ML: 0.5}.InGrams(in, size))
	assert.Equal(t, ingredient.Known(0.1), price.Pack{Pieces: 0.5, PieceG: 0.2}.InGrams(in, size))
	assert.Equal(t, ingredient.Known(25), price.Pack{Pieces: 0.5}.InGrams(named("egg_whole"), size))
	for _, p := range []price.Pack{{Grams: 0.5}, {ML: 0.5}, {Pieces: 0.5, PieceG: 0.2}} {
		p.Ingredient = "saffron"
		require.NoError(t, p.Check())
	}
	b := price.NewBook("", []price.Pack{{Ingredient: price.Eggs, Price: 1, Pieces: 0.5}})
	_, ok := b.For("egg_yolk")
	assert.True(t, ok)
	assert.InDelta(t, 0.5, price.Margin(0.25, 0.5), 1e-15)
}

func TestLimitsAreThoseThatAreSaid(t *testing.T) {
	ok := price.Pack{Ingredient: "a", Price: price.Most, Grams: 1e6}
	require.NoError(t, ok.Check())
	over := ok
	over.Grams = 1e6 + 1
	require.ErrorContains(t, over.Check(), "pack_g: 1000001 g is outside 0 to 1000000 g")
	assert.Empty(t, price.NotCurrency("12345678"))
	assert.NotEmpty(t, price.NotCurrency("123456789"))
	assert.Equal(t, "price: is dear", (&price.FieldError{Field: "price", Err: flaw.New("is dear")}).Error())
	assert.Equal(t, "line 1: price: is dear", (&price.FieldError{Line: 1, Field: "price", Err: flaw.New("is dear")}).Error())
}

func TestBooksAreTheSameIfCurrencyAndPacksAre(t *testing.T) {
	sugar := price.Pack{Ingredient: "sugar", Price: 1, Grams: 1000}
	b := price.NewBook("€", []price.Pack{sugar})
	assert.True(t, b.Equal(price.NewBook("€", []price.Pack{{Ingredient: "sugar", Price: 9, Grams: 1}, sugar})), "the last counts")
	assert.False(t, b.Equal(price.NewBook("kr", []price.Pack{sugar})))
	assert.False(t, b.Equal(price.NewBook("€", nil)))
}
