package say_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/answer/shop"
	"ripplewright/internal/answer/whole"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/price"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// shopping is the list of some batches of the quay's custard, by invented prices.
func shopping(t *testing.T, batches int, packs ...price.Pack) (shop.List, model.Cost) {
	t.Helper()
	b := price.NewBook("kr", packs)
	d := market.Plain()
	d.Batch.Basis = design.BasisAsWritten
	r, err := model.New(market.Library(t)).Priced(b).Evaluate(d)
	require.NoError(t, err)
	return shop.For([]shop.Order{{Design: d, Result: &r, Batches: batches}}, b), r.Cost
}

func bought(l shop.List, id string) say.Bought {
	for i := range l.Items {
		if it := &l.Items[i]; it.Ingredient.ID == id || it.Eggs != nil && id == price.Eggs {
			return say.Buy(say.Style{Currency: "kr"}, it)
		}
	}
	return say.Bought{}
}

func TestAListSaysPacksMoneyAndWhatIsLeft(t *testing.T) {
	l, _ := shopping(t, 4, price.Pack{Ingredient: "sugar", Price: 12, Grams: 1000, Note: "mill"}, price.Pack{Ingredient: price.Eggs, Price: 30, Pieces: 12})
	// 4 × (95 + 180) g; 4 × 6 eggs for 90 g yolk, 165 g white: 5.29 and 5.
	assert.Equal(t, say.Bought{What: "Sugar (mill)", Need: "1100 g", Buy: "2 packs of 1000 g", Pays: "kr\u00a024.00", Left: "900 g, worth kr\u00a010.80"}, bought(l, "sugar"))
	assert.Equal(t, say.Bought{What: "Eggs, US large", Need: "24 eggs", Buy: "2 packs of 12", Pays: "kr\u00a060.00", Left: "2.8 yolks and 4 whites, worth kr\u00a09.00"}, bought(l, price.Eggs))
	assert.Equal(t, say.Bought{What: "Water", Need: "240 g", Buy: "from the tap", Pays: "nothing", Left: say.Unknown}, bought(l, "water"))
	assert.Equal(t, say.Bought{What: "Whole milk", Need: "1680 g", Buy: "1680 g", Pays: say.Unknown, Left: say.Unknown}, bought(l, "milk_whole"))
	assert.Equal(t, "You pay at least kr\u00a084.00: kr\u00a064.20 goes into the bowls, kr\u00a019.80 is left over. Without a price: heavy cream (36 % fat) and whole milk.",
		say.ShopTotal(say.Usual, &l))
	assert.Equal(t, "22 eggs (US large) would do if what one batch leaves over goes into the next.", say.ShopEggs(say.Usual, &l))

	none, cost := shopping(t, 1)
	assert.Equal(t, "No ingredient has a price yet.", say.ShopTotal(say.Usual, &none))
	assert.Empty(t, shop.Offers(&cost), "of what nobody knows the cost of there is no price")
	assert.Contains(t, say.Cost(say.Usual, &cost), "No ingredient has a price yet")
}

func TestACostThatIsAtLeastMakesThePriceAtLeastAndTheMarginAtMost(t *testing.T) {
	_, cost := shopping(t, 1, price.Pack{Ingredient: "sugar", Price: 12, Grams: 1000})
	offers := shop.Offers(&cost)
	require.NotEmpty(t, offers)
	for _, o := range offers {
		assert.InDelta(t, o.Margin, price.Margin(cost.PerTub, o.Price), 1e-12)
		margin, sells := say.Offer(say.Usual, &cost, o)
		assert.Contains(t, sells, "≥ kr")
		assert.Contains(t, say.OfferLine(margin, sells), margin+" takes ≥")
	}
	assert.Contains(t, say.Margin(say.Usual, &cost, 40), "the margin is at most 9")
	assert.Contains(t, say.Margin(say.Usual, &cost, 0), "needs a selling price")
	assert.Contains(t, say.Cost(say.Usual, &cost), "The ingredients cost at least kr")
	cost.Missing = nil
	assert.NotContains(t, say.Margin(say.Usual, &cost, 40), "at most")
	assert.NotContains(t, say.Cost(say.Usual, &cost), "at least")
	in := &ingredient.Ingredient{ID: "syrup", Name: "Quay syrup"}
	cost.Missing, cost.Unweighed = []*ingredient.Ingredient{in}, []*ingredient.Ingredient{in}
	assert.Contains(t, say.Cost(say.Usual, &cost), "How much the pack weighs is not known of Quay syrup: give its grams.")
}

func TestTheEggLedgerNamesEachPhaseAndWhatKeeps(t *testing.T) {
	d := market.Plain()
	d.Batch.Basis = design.BasisAsWritten
	d.Dense.Lines[2].Grams, d.Foam.Lines[0].Grams = 6*17, 4*33 // USDA SR28 NDB 01125 and 01124
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	text := say.EggLedger(say.Usual, process.EggsOf(d, &r))
	// 2 to 4 days, 12 months: USDA FSIS, egg storage chart, as reprinted in 2018.
	assert.Equal(t, "Crack 6 eggs (US large): the custard uses 6 yolks and the foam 4 whites. "+
		"About 2 whites (66 g) left over: they keep 2 to 4 days in the refrigerator, 12 months frozen.", text)
	d.Dense.Lines[2].Grams, d.Foam.Lines[0].Grams = 4*17, 5*33
	r, err = model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	text = say.EggLedger(say.Usual, process.EggsOf(d, &r))
	assert.Contains(t, text, "About 1 yolk (17 g) left over: they keep 2 to 4 days in the refrigerator; do not freeze them plain.")
	assert.Equal(t, "There are no eggs to crack.", say.EggLedger(say.Usual, process.Eggs{}))
	d.Dense.Lines[2].Grams = 0
	r, err = model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	assert.Contains(t, say.EggLedger(say.Usual, process.EggsOf(d, &r)), "Crack 5 eggs (US large): the foam uses 5 whites. About 5 yolks (85 g) left over")
}

func TestWhatGivesForWholeEggsIsSaid(t *testing.T) {
	d := market.Plain()
	w, err := whole.Of(model.New(market.Library(t)), d, 0)
	require.NoError(t, err)
	require.Len(t, w.List, 2)
	assert.Contains(t, say.Whole(say.Usual, d, &w.List[0]), "the foam goes from 40 % to ")
	assert.Contains(t, say.Whole(say.Usual, d, &w.List[1]), "Tubs and ratio stay")
	for why := whole.NoEggs; why <= whole.Refused; why++ {
		assert.NotEmpty(t, say.WholeUnable(say.Usual, w.Before.Eggs, whole.Unable{Why: why, Err: assert.AnError}), "%d", why)
	}
	assert.Equal(t, "1 tub filled to 80 %", say.TubsFilledTo(say.Usual, design.Tubs{Count: 1, FillPercent: 80}))
}
