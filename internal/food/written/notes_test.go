package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// What was done to a food may stand behind its weight, a component before a colon, and what a
// record measures whole or is toasted later is no other food. Grams by USDA SR28: NDB 09078 (100 g a
// cup, whole), 19116 (7.2 g a regular one), 19177 (7 g an envelope), 09216 (6 g a tablespoon).
func TestWordsAroundAFoodThatLeaveItWhatItIs(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string]float64{
		"mango 450g peeled": 450, "pistachios 110g raw shelled": 110, "mango 450 g, peeled": 450, "whites 90 g cold": 90, "Praline: almonds 100 g": 100, "Custard base: 500 g whole milk": 500, "Swirl: raspberries 80 g": 80,
		"4 cups whole cranberries": 400, "20 regular marshmallows, toasted": 144, "50 g rolled oats, toasted": 50, "1 env. unflavored gelatin": 7, "2 envs. gelatin": 14, "1 T. orange rind, grated": 6,
		"2 g xanthan gum if u have it": 2, "1 jar (7 oz) marshmallow creme": 198.4,
	} {
		l, ok := r.Line(text)
		assert.True(t, ok && l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.1, text)
	}
	for _, text := range []string{
		"mango 450g frozen", "mango 3 peeled", "almonds 110 g salted", "hazelnuts 100 g toasted", "milk 500 g cold", "mango 450g peeled 300g", "Praline: almonds", "Praline: 100 g", "Praline: hazelnuts and cream 100 g", "Cost: almonds 100 g", "Price: 100 g sugar",
		"Meringue: whites 120 g, sugar 240 g", "Instead: almonds 100 g", "Half: almonds 100 g", "100 g sugar, toasted", "200 g toasted marshmallows", "200 g whole mango", "1 jar marshmallow creme", "1 tbsp orange rind",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.False(t, l.Taken(), text)
	}
}

// Notes of a stall and a kitchen that weigh nothing are passed over; one that names a food of this
// batch, or weighs something, is not. common practice, no source.
func TestNotesBesideARecipeArePassedOver(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"Batch no. 14 / Tuesday", "sweeten more?? check with Jo", "Ice and rock salt for the freezer", "crushed ice and rock salt to pack the freezer", "price: 3.50 small / 5 large", "napkins, lids, spoons", "paper cups and lids",
		"(more salt next time)", "less sugar next time", "sold out by 2pm, make 2x", "mould no. 7, 80 ml, sticks in cupboard", "scoop no. 20",
	} {
		_, ok := r.Line(text)
		assert.False(t, ok, text)
	}
	for _, text := range []string{
		"batch no. 14 sugar 200 g", "check with Jo about the sugar", "rock salt", "rock salt to finish", "rock salt for the caramel", "2 cups rock salt for the freezer", "price: sugar 2.50", "cups, spoons", "napkins, wafers", "lids, 100 g sugar",
		"more salt", "use 50 g less sugar next time", "30 g dextrose, next time 35", "sold out of cream", "mould no. 7, 80 ml cream", "mould no. 7, 80 ml caramel",
	} {
		_, ok := r.Line(text)
		assert.True(t, ok, text)
	}
}
