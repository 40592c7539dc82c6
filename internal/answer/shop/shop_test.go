package shop_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/shop"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/work/design"
)

// quay is invented, as are its prices: six yolks and four whites of large eggs.
func quay() design.Design {
	d := design.New()
	d.Batch.Basis = design.BasisAsWritten
	d.Dense.Lines = []design.Line{{Ingredient: "milk_whole", Grams: 600}, {Ingredient: "egg_yolk", Count: 6, CountOf: design.Yolks}, {Ingredient: "sugar", Grams: 110}}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Count: 4, CountOf: design.Whites}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 190}, {Ingredient: "water", Grams: 60}}
	return d
}

var prices = price.NewBook("€", []price.Pack{
	{Ingredient: "milk_whole", Price: 1.2, ML: 1000}, {Ingredient: "egg_whole", Price: 3, Pieces: 12}, {Ingredient: "sugar", Price: 1.5, Grams: 1000},
})

func order(t *testing.T, m *model.Model, d design.Design, batches int) shop.Order {
	t.Helper()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	return shop.Order{Design: d, Result: &r, Batches: batches}
}

func item(t *testing.T, l shop.List, id string) shop.Item {
	t.Helper()
	for _, it := range l.Items {
		if it.Ingredient.ID == id || it.Eggs != nil && id == price.Eggs {
			return it
		}
	}
	t.Fatalf("%s is not on the list", id)
	return shop.Item{}
}

func TestPacksAreBoughtWholeAndWhatIsLeftIsWorthWhatItCost(t *testing.T) {
	m := model.New(market.Library(t)).Priced(prices)
	l := shop.For([]shop.Order{order(t, m, quay(), 4)}, prices)
	sugar := item(t, l, "sugar") // 4 × 300 g of both lines
	assert.InDelta(t, 1200, sugar.NeedG, 1e-9)
	assert.Equal(t, 2, sugar.Packs)
	assert.InDelta(t, 800, sugar.LeftG, 1e-9)
	assert.InDelta(t, 3, sugar.Paid.Value, 1e-12)
	assert.InDelta(t, 1.2, sugar.Worth.Value, 1e-12)
	milk := item(t, l, "milk_whole") // 2400 g are 2.33 L at 1.03 g/mL
	assert.Equal(t, 3, milk.Packs)
	water := item(t, l, "water")
	assert.True(t, water.FromTap())
	assert.Equal(t, ingredient.Known(0), water.Paid)
	require.Empty(t, l.Missing(), "what runs from the tap is paid for with nothing")
	assert.Equal(t, "€", l.Currency)
	assert.InDelta(t, l.Paid, l.Used+l.Worth, 1e-12)
}

// A large egg gives one yolk and one white, 17 g and 33 g (USDA SR28 NDB 01125
// and 01124).
func TestEggsAreCrackedWholeForEachBatchAndBoughtByTheDozen(t *testing.T) {
	m := model.New(market.Library(t)).Priced(prices)
	whites := quay()
	whites.Dense.Lines[1].Count, whites.Foam.Lines[0].Count = 2, 6
	l := shop.For([]shop.Order{order(t, m, quay(), 3), order(t, m, whites, 1)}, prices)
	eggs := item(t, l, price.Eggs)
	require.NotNil(t, eggs.Eggs)
	assert.Equal(t, 3*6+6, eggs.Eggs.Crack)
	assert.Equal(t, 20, eggs.Eggs.Pooled, "20 yolks, 18 whites")
	assert.InDelta(t, 4, eggs.Eggs.Over.Yolks, 1e-9)
	assert.InDelta(t, 6, eggs.Eggs.Over.Whites, 1e-9)
	assert.Equal(t, 2, eggs.Packs)
	assert.Equal(t, ingredient.Known(0), eggs.Eggs.Left)
	assert.InDelta(t, 6, eggs.Paid.Value, 1e-12)
	assert.InDelta(t, (4*17+6*33)*3./12/50, eggs.Worth.Value, 1e-9, "what is over is worth what it weighs of an egg")

	carton := price.NewBook("€", append(prices.Packs(), price.Pack{Ingredient: "egg_white", Price: 4, Grams: 1000}))
	l = shop.For([]shop.Order{order(t, m.Priced(carton), quay(), 1)}, carton)
	assert.Equal(t, 6, item(t, l, price.Eggs).Eggs.Crack)
	assert.InDelta(t, 132, item(t, l, "egg_white").NeedG, 1e-9, "the whites come from their own pack")
}

func TestEggsOfTwoSizesAreTwoThingsToBuy(t *testing.T) {
	m := model.New(market.Library(t)).Priced(prices)
	small := quay()
	small.Eggs.Size = "small"
	l := shop.For([]shop.Order{order(t, m, quay(), 1), order(t, m, small, 1)}, prices)
	n := 0
	for _, it := range l.Items {
		if it.Eggs != nil {
			n++
			assert.Equal(t, 6, it.Eggs.Crack)
		}
	}
	assert.Equal(t, 2, n)
}

func TestALinesOwnPriceIsPaidByWeight(t *testing.T) {
	d := quay()
	d.Dense.Lines[2].Price = ingredient.Known(2)
	m := model.New(market.Library(t))
	l := shop.For([]shop.Order{order(t, m, d, 2)}, price.Book{})
	sugar := item(t, l, "sugar")
	assert.Zero(t, sugar.Packs)
	assert.True(t, math.IsNaN(sugar.LeftG))
	assert.InDelta(t, 0.6*2, sugar.Paid.Value, 1e-12)
	assert.InDelta(t, 0, sugar.Worth.Value, 1e-12)
	l = shop.For([]shop.Order{order(t, m, d, 2), order(t, m, quay(), 1)}, price.Book{})
	assert.False(t, item(t, l, "sugar").Paid.Known, "the other design says nothing of it")
	assert.Len(t, l.Missing(), len(l.Items)-1, "of all but water")
}

func TestTwoThingsOfOneNameStayTwo(t *testing.T) {
	lib := market.Library(t)
	base, ok := lib.Find("honey")
	require.True(t, ok)
	heath, meadow := *base, *base
	heath.ID, meadow.ID = "quay_honey", "quay_honey"
	meadow.Density = ingredient.Known(1.5)
	m := model.New(lib)
	with := func(in *ingredient.Ingredient) shop.Order {
		d := quay().WithLineAdded(design.DensePart, design.Line{Ingredient: "quay_honey", Grams: 40})
		d.Own = []*ingredient.Ingredient{in}
		return order(t, m, d, 1)
	}
	again := heath
	l := shop.For([]shop.Order{with(&heath), with(&meadow), with(&again)}, price.Book{})
	var need []float64
	for _, it := range l.Items {
		if it.Ingredient.ID == "quay_honey" {
			need = append(need, it.NeedG)
		}
	}
	assert.Equal(t, []float64{80, 40}, need)
}

func TestNothingIsLostBetweenShopAndBowl(t *testing.T) {
	lib := market.Library(t)
	r := rand.New(rand.NewSource(9))
	all := lib.All()
	for range 200 {
		var packs []price.Pack
		for _, in := range all {
			p := price.Pack{Ingredient: in.ID, Price: 20 * r.Float64()}
			switch r.Intn(4) {
			case 0:
				p.Grams = 1 + 2000*r.Float64()
			case 1:
				p.ML = 1 + 2000*r.Float64()
			case 2:
				p.Pieces, p.PieceG = float64(1+r.Intn(30)), 1+80*r.Float64()
			default:
				continue
			}
			packs = append(packs, p)
		}
		book := price.NewBook("", packs)
		m := model.New(lib).Priced(book)
		var orders []shop.Order
		need := map[string]float64{}
		for range 1 + r.Intn(3) {
			d := quay()
			for range r.Intn(8) {
				d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: all[r.Intn(len(all))].ID, Grams: 300 * r.Float64()})
			}
			o := order(t, m, d, 1+r.Intn(5))
			for _, l := range o.Result.Lines {
				need[l.Ingredient.ID] += float64(o.Batches) * l.Grams
			}
			orders = append(orders, o)
		}
		l := shop.For(orders, book)
		listed, wanted := 0.0, 0.0
		for _, g := range need {
			wanted += g
		}
		for _, it := range l.Items {
			listed += it.NeedG
			if it.Packs > 0 && it.Eggs == nil {
				require.GreaterOrEqual(t, it.LeftG, -1e-6, it.Ingredient.ID)
				require.Less(t, it.LeftG, it.PackG.Value, "%s: not a pack too many", it.Ingredient.ID)
				require.InDelta(t, float64(it.Packs)*it.PackG.Value, it.NeedG+it.LeftG, 1e-6, it.Ingredient.ID)
			}
			if e := it.Eggs; e != nil && it.Packs > 0 {
				require.GreaterOrEqual(t, e.Left.Value, 0.0)
				require.Less(t, e.Left.Value, it.Pack.Pieces)
				require.LessOrEqual(t, e.Pooled, e.Crack)
			}
			if it.Paid.Known {
				require.InDelta(t, it.Paid.Value, it.Used.Value+it.Worth.Value, 1e-9, it.Ingredient.ID)
			}
		}
		require.InDelta(t, wanted, listed, 1e-6)
		require.InDelta(t, l.Paid, l.Used+l.Worth, 1e-6)
	}
}

func TestACartonOfEggIsNoShellEgg(t *testing.T) {
	d := quay().WithLineAdded(design.DensePart, market.Line("egg_whole", 150))
	carton := price.NewBook("", []price.Pack{{Ingredient: "egg_whole", Price: 4, Grams: 1000}})
	l := shop.For([]shop.Order{order(t, model.New(market.Library(t)).Priced(carton), d, 1)}, carton)
	shells := 0
	for _, it := range l.Items {
		switch {
		case it.Eggs != nil:
			shells++
			assert.Equal(t, 6, it.Eggs.Crack, "for the yolks")
			assert.Equal(t, price.Pack{}, it.Pack, "nobody priced eggs by the piece")
			assert.False(t, it.Paid.Known)
		case it.Ingredient.ID == "egg_whole":
			assert.InDelta(t, 150, it.NeedG, 1e-9)
			assert.Equal(t, 1, it.Packs)
		}
	}
	assert.Equal(t, 1, shells)
}

func TestEggsAreOneThingWhateverPartComesFirst(t *testing.T) {
	whole := design.Line{Ingredient: "egg_whole", Count: 2, CountOf: design.WholeEggs}
	first := quay()
	first.Dense.Lines = append([]design.Line{whole}, first.Dense.Lines...)
	m := model.New(market.Library(t)).Priced(prices)
	for name, d := range map[string]design.Design{"first": first, "last": quay().WithLineAdded(design.DensePart, whole)} {
		l := shop.For([]shop.Order{order(t, m, d, 1)}, prices)
		n := 0
		for _, it := range l.Items {
			if it.Eggs != nil {
				n++
				assert.Equal(t, 8, it.Eggs.Crack, name)
				assert.Equal(t, "egg_whole", it.Ingredient.ID, name)
			}
		}
		assert.Equal(t, 1, n, name)
	}
}

func TestALittleIsBoughtToo(t *testing.T) {
	m := model.New(market.Library(t)).Priced(prices)
	d := quay().WithLineAdded(design.DensePart, market.Line("salt", 0.5)).WithLineAdded(design.DensePart, market.Line("honey", 0))
	l := shop.For([]shop.Order{order(t, m, d, 1)}, prices)
	assert.InDelta(t, 0.5, item(t, l, "salt").NeedG, 1e-12)
	for _, it := range l.Items {
		assert.NotEqual(t, "honey", it.Ingredient.ID, "nothing is not bought")
	}
	half := price.NewBook("", []price.Pack{{Ingredient: price.Eggs, Price: 1, Pieces: 0.5}})
	eggs := item(t, shop.For([]shop.Order{order(t, model.New(market.Library(t)).Priced(half), quay(), 1)}, half), price.Eggs)
	assert.Equal(t, 12, eggs.Packs)
}

func TestWaterWithAPriceIsBought(t *testing.T) {
	bottled := price.NewBook("", []price.Pack{{Ingredient: "water", Price: 1, ML: 1500}})
	l := shop.For([]shop.Order{order(t, model.New(market.Library(t)).Priced(bottled), quay(), 1)}, bottled)
	water := item(t, l, "water")
	assert.False(t, water.FromTap())
	assert.Equal(t, 1, water.Packs)
}

func TestWhatIsUsedUpToTheLastGramTakesNoPackMore(t *testing.T) {
	exact := price.NewBook("", []price.Pack{{Ingredient: "sugar", Price: 1, Grams: 100}}) // 110 and 190 g
	l := shop.For([]shop.Order{order(t, model.New(market.Library(t)).Priced(exact), quay(), 1)}, exact)
	assert.Equal(t, 3, item(t, l, "sugar").Packs)
	assert.InDelta(t, 0, item(t, l, "sugar").LeftG, 1e-9)
}

// A tub that costs 3 sells for 6, 7.50, 10 and 15 at margins of 50, 60, 70 and 80 %.
func TestOffersAreWhatLeavesTheirMargins(t *testing.T) {
	offers := shop.Offers(&model.Cost{Priced: true, PerTub: 3})
	require.Len(t, offers, 4)
	for i, want := range []shop.Offer{{Margin: 0.5, Price: 6}, {Margin: 0.6, Price: 7.5}, {Margin: 0.7, Price: 10}, {Margin: 0.8, Price: 15}} {
		assert.InDelta(t, want.Margin, offers[i].Margin, 1e-12)
		assert.InDelta(t, want.Price, offers[i].Price, 1e-9)
	}
	assert.Empty(t, shop.Offers(&model.Cost{Priced: true, PerTub: math.NaN()}), "of no tub")
}
