package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// A cup of sugar is 200 g (USDA SR28, NDB 19335): a weight beside it that is a fifth off and
// more is of another cup, or of another food.
func TestAWeightBesideACupIsTakenWhereItIsNear(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{"1 cup (150 g) sugar", "1 cup sugar (160 g)", "1 cup (250 g) sugar", "1 stick (80 g) unsalted butter", "2 envelopes gelatin (3 g each)", "2 envelopes gelatin (3 g)"} {
		l, _ := r.Line(text)
		assert.Equal(t, written.Apart, l.Doubt, text)
	}
	for text, grams := range map[string]float64{"1 cup sugar (180 g)": 180, "1 cup (225 g) sugar": 225} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 1e-9, text)
	}
}

// Cans and envelopes behind the name count as those before it: NIST SP 811 (2008),
// Appendix B.8, 28.34952 g an ounce; an envelope of gelatin is 7 g (NDB 19177).
func TestContainersAreCountedBeforeAndBehindAName(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string]float64{
		"Sweetened condensed milk: 2 x 14 oz cans": 793.79, "condensed milk 2 14-oz cans": 793.79, "2 x 14 oz cans condensed milk": 793.79, "cream cheese: 2 x 8 oz packages": 453.59,
		"2 envelopes gelatin (7 g each)": 14, "2 envelopes gelatin (14 g total)": 14, "3 yolks (51 g in all)": 51, "whole milk 1 1/2 cup": 366,
	} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.2, text)
	}
	l, _ := r.Line("sugar 2 100 g")
	assert.False(t, l.Taken(), "two of 100 g, or 2,100 g")
}

// What only says the amount once more leaves it; a title says whose the dish is.
func TestAnAssuranceChangesNothing(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{"sugar 110g (yes really)", "110 g sugar (yes, that much)", "110 g sugar (not a typo, trust me)"} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
	}
	for _, text := range []string{"110 g sugar (yes, cane)", "110 g sugar (too much)", "110 g sugar (really 100)"} {
		l, _ := r.Line(text)
		assert.False(t, l.Taken(), text)
	}
	const rest = "\n100 g sugar\n2 yolks\n"
	for _, title := range []string{"Cookies + cream, my version", "Milk and honey (the Sicilian way)", "Rum & raisin, dad's style"} {
		assert.Len(t, r.Read(title+rest), 2, title)
	}
	for _, line := range []string{"cream, my way", "200 g cream, my way", "cookies and cream"} {
		assert.Len(t, r.Read(line+rest), 3, line)
	}
}

// A weight beside pieces is of each where the line says so, and of all where they can weigh so
// little: a small banana is 101 g and a peach 130 g (USDA SR28, NDB 09040 and 09236), three
// chocolate sandwich cookies are 36 g (NDB 18166).
func TestAWeightBesidePiecesIsOfEachOrOfAll(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string]float64{
		"3 bananas (100 g each)": 300, "peaches, 3 (150 g each)": 450, "2 bars (100 g each) dark chocolate 70%": 200, "3 slices pineapple (80 g each)": 240, "3 sheets gelatin (2 g each)": 6,
		"12 chocolate sandwich cookies (12 g per piece)": 144, "2 cans condensed milk (397 g per can)": 794, "3 bananas (300 g)": 300, "2-3 bananas (300 g)": 300, "3 sheets gelatin (6 g)": 6,
	} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 1e-9, text)
	}
	for _, text := range []string{
		"2-3 bars (100 g each) dark chocolate 70%", "2-3 bananas (100 g each)", "2 bars (100 g) dark chocolate 70%", "half the sugar (100 g)", "3 bananas (100 g)", "3 peaches (150 g)",
		"12 chocolate sandwich cookies (12 g)", "1/2 c. sugar or to taste", "6 eggs, divided",
	} {
		l, _ := r.Line(text)
		assert.False(t, l.Taken(), text)
	}
}
