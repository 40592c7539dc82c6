package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// The columns of a pasted table are what its head says: weights, prices, shares of the
// whole. A text may say of all its bare numbers that they are grams.
func TestTheHeadOfATableSaysWhatItsColumnsAre(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string][]float64{
		"Product\tkg\nwhole milk\t2.900\nsugar\t0,620":                     {2900, 620},
		"\tBatch A (g)\nraspberries\t600\nguar gum\t2":                     {600, 2},
		"Item\tQty\tUnit\tCost\nwater\t520\tg\t0.00\nhoney\t2\ttbsp\t1.20": {520, 42.4},
		"Item\tkg\t€/kg\nsugar\t2.500\t1.10":                               {2500},
		"| Ingredient | g | % |\n|---|---|---|\n| sugar | 250 | 12.5 |\n| whole milk | 1,250 | 62.5 |\n| heavy cream | 500 | 25 |": {250, 1250, 500},
		"everything in grams sorry\nsugar 180\nsalt 4\nTotal 184\nserves 8":                                                        {180, 4},
		"whole milk 400\n(all amounts in g)": {400},
	} {
		got := r.Read(text)
		require.Len(t, got, len(grams), text)
		for i, g := range grams {
			require.True(t, got[i].Taken(), got[i].Text)
			assert.InDelta(t, g, got[i].Grams.Value, 0.05, got[i].Text)
		}
	}
	// Two weights, two numbers of which one is a fat or is not told, grams that are written with
	// a comma and nothing to prove them, what may be counted, another head, no head.
	for _, text := range []string{
		"Ingredient\tBatch A (g)\tBatch B (g)\nsugar\t100\t150", "Ingredient\tg\t%\nwhole milk\t500\t3.5\nheavy cream\t200\t36\nunsalted butter\t80\t82", "Ingredient\tg\tkcal\nsugar\t100\t400",
		"Ingredient\tg\nwhole milk\t1,250", "Product\tg\nbanana\t2\negg\t3", "Ingredient\tg\nIngredient\toz\nsugar\t7", "Ingredient\tg\nTopping:\nsugar\t3",
		"all liquids in grams\nsugar 20", "all in grams or ml\nwhole milk 400", "in grams\negg yolks 6\nbanana 2\ngelatine leaves 5",
	} {
		got := r.Read(text)
		require.NotEmpty(t, got, text)
		for _, l := range got {
			assert.False(t, l.Taken(), l.Text)
		}
	}
}

// Commission Regulation (EC) No 589/2008, Article 4: S, M, L and XL are classes of the EU; those of
// the US are words (AMS 56). Beside a weight the size does not matter.
func TestALetterIsNoSizeOfTheUS(t *testing.T) {
	us := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	eu := written.New(market.Library(t), written.Eggs{System: "EU", Size: "L"})
	for _, text := range []string{"4 eggs (M)", "4 M eggs", "3 eggs, size L", "egg yolks, 6 M", "2 whites, S"} {
		l, _ := us.Line(text)
		assert.Equal(t, written.SizeOfEurope, l.Doubt, text)
		l, _ = eu.Line(text)
		assert.True(t, l.Taken(), text)
	}
	for text, grams := range map[string]float64{"4 eggs (M) (200 g)": 200, "4 medium eggs": 176, "4 large (size L) eggs": 200} {
		l, _ := us.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.5, text)
	}
}

// A food that begins as a verb does is no sentence, nor is a row of a table; what has no
// amount and no food is passed over.
func TestAFoodThatBeginsAsAVerbIsNeverPassedOver(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{"Skim milk;540,0", "skim milk powder\t48\t4.8%", "Skim milk", "Fold powder\t20", "12 c cream, whip to peaks", "Contains: 100 g sugar", "Cook's chocolate 100 g", "2nd batch sugar 100 g", "Freeze in a 2 lb tin of milk", "Age 100 g cheese"} {
		_, ok := r.Line(text)
		assert.True(t, ok, text)
	}
	for _, text := range []string{"Skim the foam", "Allergens: MILK", "Kcal per portion: 96", "TUB PRICE £4.50", "2nd prize 1998!!", "Feeds about 20 kids", "Age 6 h at 4 °C before churning", "Freeze overnight in a 2lb loaf tin.", "Syrup to 118–121 °C, pour in thin stream",
		"You leave the almonds one night in the warm milk.", "~ steep 8 min, no more ~", "too sweet! cut sugar next time", "Vanilla v4 - less sweet!!"} {
		_, ok := r.Line(text)
		assert.False(t, ok, text)
	}
}

// What one hand writes otherwise than another, by the same measures: SR28, NDB 01056 (a cup of
// sour cream is 230 g), 01017 (a spoon of cream cheese is 14.5 g, whipped 10 g), 02030 (a spoon
// of ground pepper is 2.3 g).
func TestTheSameSaidOtherwise(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string]float64{
		"150 ml soured cream": 145.8, "3 tbsp cream cheese": 43.5, "1/4 tsp black pepper": 0.575, "sugar 15 dkg": 150, "1.200,0 g sugar": 1200, "1,250.5 g sugar": 1250.5, "2 tbsp mild honey": 42.4,
		"ok so its 500ml whole milk": 515.5, "okay so you need one liter of whole milk": 1031, "strawberries 1 kg, must be very ripe": 1000,
	} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.1, text)
	}
	for _, text := range []string{"100 g sugar, should be more", "100 g strawberries, must be frozen", "1.250,5,6 g sugar", "2 tbsp sour cream", "o 5 g salt", "1 tsp black peppercorns"} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.False(t, l.Taken(), text)
	}
	for _, l := range r.Read("o 250 g sugar\no 100 g honey") {
		assert.True(t, l.Taken(), l.Text) // a round bullet, pasted as a letter
	}
}
