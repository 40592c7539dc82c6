package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// A numbered step of the method that weighs what stands above already says nothing more; one
// that weighs anything else may be all that tells of it.
func TestAStepIsPassedOverOnlyWhereItsAmountsStandAbove(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	const list = "4 egg whites\n240 g caster sugar\n1 stick unsalted butter\n1 cup light brown sugar\n200 g skim milk\n"
	for _, step := range []string{
		"1. Whisk the whites with 60 g of the sugar to soft peaks, then add the rest spoon by spoon.", "1. Melt 1 stick butter with 1 cup sugar over med heat, 4 min", "2. Whisk the 4 egg whites.",
	} {
		assert.Len(t, r.Read(list+step), 5, step)
	}
	for _, step := range []string{
		"1. Melt 1 stick butter with 1/2 cup sugar", "1. Whisk 60 g of the honey into the whites", "1. Stir 300 ml heavy cream into the sugar", "1. Skim milk 200 g", "1. Fold in 100 g Nutella and 240 g caster sugar", "Melt 1 stick butter with 1 cup sugar",
		"1. Add a pinch of salt to the whites", "1. Toast crumbs 240 g", "1. Whip cream 200 g", "1. Add a splash of limoncello to the sugar",
	} {
		assert.Len(t, r.Read(list+step), 6, step)
	}
}

// What cans and packets hold may be called anything, "can" is no verb behind a number.
func TestAPackOfAnUnknownBrandIsAskedAbout(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{"1 can Eagle Brand", "2 packets Dream Whip", "1 unopened can Eagle Brand", "1 small can Carnation", "1 jar Fluff"} {
		l, ok := r.Line(text)
		assert.True(t, ok && !l.Taken(), text)
	}
	_, ok := r.Line("6 people can eat this")
	assert.False(t, ok)
}

// What a page, a chat or a bill says around a line weighs nothing, and hides no line.
func TestStampsPricesAndRatings(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"[14/06/2024, 18:02] Mum: 250 g sugar", "[6/14/24, 6:02:11 PM] Mum: 250 g sugar", "14/06/2024, 18:02 - Auntie Jo: 250 g sugar", "[14/06/2024, 18:02] 250 g sugar",
		"sugar - 0.25 kg - €0.95/kg", "250 g sugar £1.10 per kg", "Sugar – 250 g – 2 € each", "1 1/4 cups super-fine sugar",
	} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, 250, l.Grams.Value, 0.5, text)
	}
	for _, text := range []string{
		"[14/06/2024, 18:02] Frozen: 250 g raspberries", "[14/06/2024, 18:02] Skip: 250 g sugar", "[14/06/2024, 18:02] Mum: salt", "sugar $2", "Strawberries – 2 trays – €9 each", "cream for the 2 l machine", "cream 23 Mar",
		"Kahlua for the 2 l machine", "salt (no iodine) 23 Mar", "5 stars 200 g", "sugar of cane 80 g", "cream of milk 100 g", "20 g rye flour", "1 tbsp red miso", "sugar to dust",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok && !l.Taken(), text)
	}
	for _, text := range []string{"★★★★★ 4.8 from 213 votes", "4.8 (213 reviews)", "recipe for the 1,5 L machine", "Trial B (no sucrose) 23 Mar", "[14/06/2024, 18:02] Mum: here it is love x"} {
		_, ok := r.Line(text)
		assert.False(t, ok, text)
	}
	for _, title := range []string{"BATCH 14 – FIOR DI LATTE – 10 kg", "CHOCOLATE SAUCE"} {
		assert.Len(t, r.Read(title+"\n100 g sugar\n2 yolks"), 2, title)
	}
	for _, line := range []string{"BATCH 14 – CREAM – 10 kg", "chocolate sauce", "Batch 2: Kahlua 200 ml"} {
		assert.Len(t, r.Read(line+"\n100 g sugar\n2 yolks"), 3, line)
	}
}

// The kind may stand behind an "of", as in other tongues.
func TestTheKindBehindAnOf(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, id := range map[string]string{"Milk of cow whole: 520 gr": "milk_whole", "Oil of olive extra virgin: 70 gr": "oil_olive", "milk of coconut 200 g": "coconut_milk", "butter of peanut 30 g": "peanut_butter"} {
		l, _ := r.Line(text)
		if assert.True(t, l.Taken(), text) {
			assert.Equal(t, id, l.Ingredient.ID, text)
		}
	}
}

// What is done to foods that stand above, or to parts of them, weighs nothing; what may be a line
// of its own, or a change of one, is kept.
func TestWhatIsDoneToFoodsAboveIsNoLine(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	above := "100 g raisins\n6 cl dark rum\n200 g sugar\n4 medium peaches\n"
	for text, kept := range map[string]bool{
		"raisins in the rum the night before": false, "sit peaches w/ half the sugar 1 hr": false, "whisk yolks with half the sugar": false,
		"raisins in the bourbon the night before": true, "dates in the rum the night before": true, "raisins in rum": true, "raisins": true, "use half the sugar instead": true, "half the sugar": true,
		"whisk in half the honey": true, "whisk in 60 g sugar": true, "rest of the sugar for the top": true,
	} {
		assert.Len(t, r.Read(above+text), map[bool]int{false: 4, true: 5}[kept], text)
	}
}
