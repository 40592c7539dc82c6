package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// What stands on pages, sheets and letters beside a recipe is passed over, unless it names a food
// that may be a line of it. common practice, no source.
func TestWhatStandsBesideARecipeIsPassedOver(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"Jump to Video", "Print Recipe", "Cook Mode", "Leave a comment", "Select all", "Course: Dessert", "Author: Jo B.", "Source: some tiktok", "Adapted from: Gran's book 1962",
		"> Best, F.", "Love, Nan", "Kind regards, Fergus", "xoxo Ruthie", "Sum\t1007.5\t", "Subtotal | 900 g | 90 %", "Total: 4,570 g", "p. 43", "buy more vanilla!!", "running low on cocoa", "BATCH A / 06-14 / freezer 2",
		"Mount the whites separately and put in the freezer for one night.", "Toast walnuts at 350F, 8 to 10 min.", "Keeps two weeks in a jam jar in the fridge.", "Brown the butter", "Sweat the rhubarb until soft",
	} {
		l, ok := r.Line(text)
		assert.False(t, ok, "%s: %v", text, l.Doubt)
	}
	for _, text := range []string{
		"Sum: 900 g cream", "Source: 2 cups cream", "best butter", "PX", "Nutella", "buy vanilla", "Batch A cream", "Batch B: sugar 200", "p. 43 sugar", "Toast crumbs", "Brown sugar", "brown rice flour", "hold the salt", "2 jam jars of honey",
		"1 jam jar of cream", "Save a few raspberries", "out of sugar, use 100 g honey", "dry milk", "43 cream", "Bottle of cream", "Print 200 g sugar", "Cheers 100 ml rum",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok && !l.Taken(), text)
	}
}

// A number by itself is that of a page where it stands first or last, and no part of the amount
// below it.
func TestTheNumberOfAPage(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, lines := range map[string]int{
		"43\n400 g sugar\n2 yolks": 2, "400 g sugar\n2 yolks\n117": 2, "400 g sugar\n43\n2 yolks": 3, "1\n400 g sugar\n2 yolks": 3, "10\n1/2 cup sugar\n2 yolks": 3, "10\n½ cup sugar\n2 yolks": 3, "43\n400 g sugar": 2, "- 7 -\n400 g sugar\n2 yolks": 2,
	} {
		assert.Len(t, r.Read(text), lines, text)
	}
}

// What a chat puts before a line and behind it hides no line.
func TestWhoWroteALine(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string]float64{
		"[7:14 PM] Jo: 1/2 cup sugar": 100, "[7:14\u202fPM] Auntie Jo: 100 g sugar": 100, "7:14 pm Jo: 100 g sugar": 100, "Dana: half a cup of sugar": 100, "Dana: a cup of sugar lol": 200, "100 g sugar sorry": 100, "100 g sugar :)": 100,
	} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.1, text)
	}
	all := r.Read("Dana: ok so\nDana: whole milk 300 ml\nMike: is it for saturday?\nMike: nope, just a whisk\nDana: some sugar\nDana: 2 yolks")
	if assert.Len(t, all, 3) {
		assert.Equal(t, "milk_whole", all[0].Ingredient.ID)
		assert.Equal(t, []string{"sugar"}, all[1].Meanings)
		assert.True(t, all[2].Taken())
	}
	for _, text := range []string{"Topping: 100 g moon\nTopping: cream", "Instead: 100 g sugar\nInstead: 2 yolks", "Sugar: 100\nSugar: 200", "[7:14 PM] Frozen: 100 g raspberries\n2 eggs?", "nope, no cream\nyeah and sugar"} {
		for _, l := range r.Read(text) {
			assert.False(t, l.Taken(), text)
		}
		assert.Len(t, r.Read(text), 2, text)
	}
}

// A note in a table's last column, the part that is eaten, a sort and what would do as well leave
// the weight; the tablespoon of Australia has 20 mL: AS 1325 (1972), from memory.
func TestNotesThatLeaveTheWeight(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string]float64{
		"Egg yolks\t90 g\tabout 5": 90, "Matcha\t12 g\tceremonial not needed": 12, "70% dark chocolate | 90 g": 90, "200 g raspberries (frozen is fine)": 200, "100 ml lime juice (bottled ok)": 102.3,
		"2 ripe avocados (about 300 g flesh)": 300, "1 pineapple (600 g peeled)": 600, "1 tablespoon (20 ml) lemon juice": 20.6, "2 tbsp (40 ml) lemon juice": 41.2, "1/4 teasp. salt": 1.5, "1 cup sugar + 2 tbsp": 225, "1 (15 oz) container ricotta, whole milk": 425.2,
		"milk chocolate, 35% cocoa, 150 g": 150, "200 g white chocolate (30% cocoa butter)": 200, "matcha powder 15 g": 15, "150g raspberries + extra to serve": 150, "Egg yolk, past. | 0.400 kg": 400, "Whole milk (3.6% fat) 610 g": 610, "milk 3.8 % 500 g": 500, "lemon juice 200 g (from about 5 lemons of Amalfi)": 200, "2 g locust bean gum, hydrate at 85C": 2, "100 g sugar, bring to a boil": 100, "1 cup (8 oz) whole milk": 244, "cherries sour, without stones - 500 gr": 500, "3 tbsp dark maple syrup": 59, "2 medium bananas, very brown": 236, "100 g whole hazelnuts": 100, "like 1/4 tsp salt": 1.5,
	} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.015*grams, text)
	}
	for _, text := range []string{
		"Egg yolks\t90 g\tabout 12", "Matcha\t12 g\tnot needed", "Salted butter\t12 g\tbutter not needed", "1 tablespoon (30 ml) lemon juice", "1 teaspoon (20 ml) lemon juice", "2 ripe avocados (about 300 g with skin)", "milk chocolate, 55% cocoa, 150 g",
		"1 cup sugar + 2 eggs", "milk 4.5 % 500 g", "milk 1.5 % 500 g", "100 g sugar, cut by a third", "200 g whole milk, boil down to 100", "100 g raisins, soak in rum", "100 g sugar, whisk half in", "1 cup (7 oz) whole milk", "100 g butter, without it", "100 g sugar (honey works too)", "100 g dark honey syrup", "200 g raspberries, frozen", "like 4 or 5 yolks",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok && !l.Taken(), text)
	}
}

// A first line without an amount is a title where it names a dish, whose it is or which making;
// what may be a food to add is asked about.
func TestATitleNamesADish(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	const rest = "\n100 g sugar\n2 yolks\n"
	for _, title := range []string{
		"Rocky road", "Aunt Carol's butter pecan", "Ginger & treacle", "PEANUT BUTTER CUP - v3 (less sweet)", "Mint stracciatella", "Mango lassi pops", "Vanilla, scaled x4", "Honeycomb", "Pistachio - the Bronte one",
		"SALTED CARAMEL / 5 L mix", "Fior di latte v7 - 12/03", "Strawberry wk23 - prep Thu, churn Fri", "Cookies & cream pie (serves 8)", "Butter pecan", "Sam's birthday cake ice cream", "BATCH A / 06-14 / freezer 2", "Batch A choc - Sat market",
		"Banana ice cream?? 1st try", "Cherry sauce from cousin Vlado", "★ PISTACHIO ★", "Raspberry coulis", "Olive oil & sea salt",
	} {
		assert.Len(t, r.Read(title+rest), 2, title)
	}
	for _, line := range []string{
		"Vanilla", "Dulce de leche", "Stracciatella 200", "Honeycomb (100 g)", "Yolks no. 4", "Goat's milk", "Confectioners' sugar", "Salt & pepper", "Lyle's golden syrup", "cream and sugar", "Wed cream 200 g", "Duck eggs 4",
		"honey (Saturday market)", "Pie crust 1", "Cream for Saturday", "Brownies, 6", "ginger & lime", "Sugar & cream, whipped", "Gran's jam", "Captain Morgan's rum", "SALTED CARAMEL / 5 L",
	} {
		assert.Len(t, r.Read(line+rest), 3, line)
	}
	for text, lines := range map[string]int{
		"Tahini date\n\n100 g sugar\n2 yolks": 2, "Brown bread\n \n100 g sugar\n2 yolks": 2, "Brown bread\n\n100 g sugar\n\n2 yolks": 3, "Vanilla\n\n100 g sugar\n2 yolks": 3, "Tahini date\n\nsugar\n2 yolks": 3, "Tahini 2 g\n\n100 g sugar\n2 yolks": 3,
		"tahini date\n\n100 g sugar\n2 yolks": 3, "Tahini, a little\n\n100 g sugar\n2 yolks": 3, "Un pizzico di sale\n\n100 g sugar\n2 yolks": 3,
	} {
		assert.Len(t, r.Read(text), lines, text)
	}
}

// Thousands are proven by decimals with the other sign, or by a total that they alone come to.
func TestATextProvesItsThousands(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"Whole milk\t1,250 g\nSugar\t250 g\nTOTAL\t1,500 g", "whole milk 1,250 g\nsugar 250 g\nTotal: 1500 g", "whole milk 1,250 g\nguar gum 2.5 g", "whole milk 1.250 g\nguar gum 2,5 g", "whole milk 1,250 g\nsugar 0.25 kg",
	} {
		l := r.Read(text)[0]
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, 1250, l.Grams.Value, 1e-9, text)
	}
	for _, text := range []string{
		"Whole milk\t1,250 g\nSugar\t250 g\nTOTAL\t1,700 g", "whole milk 1,250 g\nsugar 250 g", "whole milk 1,250 g\nguar gum 2,5 g", "whole milk 1,250 g\nguar gum 2,5 g\nsalt 1.5 g", "guar 1,250 g\nsalt 2.000 g\nsugar 1.5 g",
		"whole milk 1,250 g\nchurned 11.06\n", "guar gum 1,250 g\nsalt 2 g\nTotal 3,25 g",
	} {
		l := r.Read(text)[0]
		assert.Equal(t, written.Thousands, l.Doubt, text)
	}
}

// What begins as a heading or with a verb and weighs a food is no heading and no step.
func TestAHeadingThatWeighsIsALine(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{"For the syrup: 200 g sugar", "Ingredients: 200 g sugar"} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, 200, l.Grams.Value, 1e-9, text)
	}
	for _, text := range []string{
		"For the syrup: 200 g sugar, 100 ml water", "for the sauce 200 g sugar", "Cook 200 g sugar", "Method: whisk 4 yolks", "Heat cream 500", "Puree de framboise 1500", "Whip cream 250", "Soak 4 leaves gelatine", "Stir 2 spoons of sugar in",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok && !l.Taken(), text)
	}
	for _, text := range []string{"Ingredients (makes 1 litre)", "Ingredients for 8", "Cook Time: 20 mins", "For the 2 quart freezer", "Whip on speed 4", "Bake at 180", "#icecream #homemade", "Mum x", "xx", "hey! for 2 pints u need", "Overrun 35%", "pH 4.1", "Subject: FW: lemon ice", "Mom 3:02 PM"} {
		_, ok := r.Line(text)
		assert.False(t, ok, text)
	}
}

// A cup of grated chocolate is no cup of chips: USDA SR28 weighs one of 132 g (NDB 19078) and
// chips of 168 g (NDB 19120).
func TestACupOfGratedChocolateIsNoneOfChips(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{"1 cup grated semisweet chocolate", "1 cup milk chocolate, shaved"} {
		l, _ := r.Line(text)
		assert.Equal(t, written.HowFull, l.Doubt, text)
	}
	for text, grams := range map[string]float64{"1 cup milk chocolate chips": 168, "1 cup grated unsweetened chocolate": 132, "100 g milk chocolate, grated": 100} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.5, text)
	}
}

// A table with a column of measures, notes behind its shares, or numbers of its rows is read all the
// same, and so is one whose weights are of a kilogram of mix.
func TestTablesWithMeasuresNotesAndNumbers(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string][]float64{
		"Ingredient\tQty\tUnit\t%\tNotes\nWhole milk\t5.20\tkg\t65.0\tcold\nSugar\t2.40\tkg\t30.0\nSkim milk powder\t400\tg\t5\tlow heat\nTotal\t8.00\tkg\t100": {5200, 2400, 400},
		"No.\tRaw material\tg/kg mix\n1\tWater\t520\n2\tSugar\t140\n3\tDextrose\t36":                                                                            {520, 140, 36},
	} {
		all := r.Read(text)
		if assert.Len(t, all, len(grams), text) {
			for i, l := range all {
				assert.True(t, l.Taken(), l.Text)
				assert.InDelta(t, grams[i], l.Grams.Value, 1e-9, l.Text)
			}
		}
	}
	for _, l := range r.Read("Ingredient\tQty\tUnit\t%\nWhole milk\t5.20\tkg\t3.5\nSugar\t2.40\tkg\t30.0\nDextrose\t400\tg\t99") {
		assert.False(t, l.Taken(), l.Text)
	}
}
