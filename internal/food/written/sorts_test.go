package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// Where a fruit, a nut or a tea grew, why it is there and what grade it is leaves it the
// record's; another food or another shape of it does not. common practice, no source.
func TestSortsReasonsAndGradesLeaveTheFood(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"15 g black tea leaves (Earl Grey)", "500 g apples (Granny Smith)", "500 g Bramley apples", "100 g Bronte pistachios", "200 g sour cherries, Morello",
		"1 tbsp vodka (keeps it scoopable)", "1 g salt (balances the sweetness)", "20 g lemon juice, cuts the sweetness",
		"3/4 cup pure maple syrup (grade B if you can get it)", "2 large eggs, grade A", "100 g honey (if possible)",
		"150 g roasted unsalted pistachios, ground to a paste", "100 g almonds, finely ground",
	} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
	}
	for _, text := range []string{
		"10 g black tea leaves (peppermint)", "500 g pears (tinned)", "100 g hazelnuts (praline)", "100 g hazelnuts (paste)", "100 g sugar (Victoria)", "100 g english toffee",
		"20 g honey (makes 30 g)", "20 g honey (adds 10 g water)", "100 g walnuts (black if you have them)", "100 g sugar, coconut if you can get it", "1/2 cup cream of coconut",
	} {
		l, _ := r.Line(text)
		assert.False(t, l.Taken(), text)
	}
}

// A cup of what is ground behind its comma was filled before: USDA SR28, NDB 12061, 143 g
// whole and 95 g ground.
func TestACupIsFilledBeforeItIsGround(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	l, _ := r.Line("1 cup almonds, ground")
	assert.Equal(t, written.HowFull, l.Doubt)
	l, _ = r.Line("1 cup ground almonds")
	assert.True(t, l.Taken())
	assert.InDelta(t, 95, l.Grams.Value, 0.1)
}

// Heavy cream and half-and-half are names of the US (21 CFR 131.150 and 131.180): their pint
// is its pint of 473 mL (NIST SP 811, 2008, Appendix B.8).
func TestAPintOfAnAmericanNameIsTheAmericanPint(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{"1 pint cold heavy cream", "1 pt. half & half"} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, 473.2, l.ML, 0.1, text)
	}
	for _, text := range []string{"1 pint whole milk", "1 pint light cream"} {
		l, _ := r.Line(text)
		assert.Equal(t, written.PintOf, l.Doubt, text)
	}
}

// The size of a vessel is no amount of a food, and a title may go on behind its comma.
func TestVesselsAndLongTitlesArePassedOver(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{"Doubled for the 6 qt. freezer!!", "Scaled down for my 1.5 quart machine", "fits a 2-quart mould"} {
		_, ok := r.Line(text)
		assert.False(t, ok, text)
	}
	for _, text := range []string{"1 pint bowl of raspberries", "Add 2 cups cream", "1 qt bowl with sugar", "Doubled the 100 g sugar"} {
		l, ok := r.Line(text)
		assert.True(t, ok && !l.Taken(), text)
	}
	const rest = "\n100 g sugar\n2 yolks\n"
	assert.Len(t, r.Read("Peach ice cream, the way Aunt Ruth did it"+rest), 2)
	assert.Len(t, r.Read("peaches, from the garden"+rest), 3)
}
