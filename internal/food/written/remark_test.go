package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// Each word of a remark has to be known to change neither the food nor how much of it there
// is. common practice, no source.
func TestARemarkIsAccountedForWordByWord(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"200 ml heavy cream, very cold, straight from the fridge", "200 ml heavy cream, whipped to stiff peaks", "200 g strawberries, washed and patted dry", "100 g walnuts, broken up by hand",
		"3 egg yolks (keep the whites for the foam)", "5 g salt, the fine one", "50 g sugar, for the syrup", "1/2 cup lemon juice (from about 3 lemons)", "40 g pistachios, unsalted", "80 g almonds, toasted and chopped",
		"500 g peeled, pitted peaches", "800 g peeled and cored ripe pears", "200 g large, ripe bananas", "1/2 cup milk chocolate chips", "1 cup graham cracker crumbs", "1 cup pecan halves", "1 cup mini marshmallows", "1 tbsp sugar (level)", "1 carton (1 l) whole milk", "1 can (15 oz) pumpkin",
		"100 g sugar, added a spoonful at a time", "125 g unsalted butter in cubes", "100 g apples with skin", "1/2 cup lemon juice from 3 lemons", "220g caster sugar, sifted twice", "50 g dry roasted hazelnuts (no salt)",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok && l.Taken(), text)
	}
	for _, text := range []string{
		"300 g strawberries, weighed with their leaves", "100 g sugar, mixed with cocoa", "200 ml heavy cream, whipped with the sugar", "2 eggs, only the yolks",
		"60 g honey (or maple syrup)", "100 g sugar, or another sweet thing", "200 g egg whites, from a carton", "100 g sugar; more if the fruit is sour", "250 g raspberries, a few set aside",
		"200 g peaches, from a tin", "100 g hazelnuts, toasted", "100 g pistachios, salted", "50 g banana chips", "white of egg, dry, 10 g", "1 tsp salt, heaped", "1 tbsp (heaped) sugar", "100 g mini eggs", "100 g apricot kernels", "100 g/l sugar", "1 tsp flaked salt", "I cup sugar",
		"1 tin (400 g) peaches", "1 jar (350 g) sour cherries", "500 g carton egg whites",
		"100 g strawberries with sugar", "200 g peaches in syrup", "100 g almonds covered in chocolate", "Water to make 1000 g", "1/2 cup lemon juice from concentrate", "100 g honey with comb",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.False(t, l.Taken(), text)
	}
}

// A sentence of the method says nothing of how much is weighed, unless it does. common
// practice, no source.
func TestASentenceIsPassedOverUnlessItHasAnAmount(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"Whisk the yolks with the sugar until pale.", "Stir in the cream", "Zest the lemons.", "Mix everything.", "Roast until golden", "Bake for 25-30 min at 180 C / 350 F", "Pour into a 9x5 inch loaf pan and freeze 6 h", "1. Heat the milk to 80 °C.", "Then slowly pour in the syrup",
		"Divide between 6 glasses", "No salt", "Keeps two weeks in the freezer.", "This makes a lot", "Laisser refroidir puis turbiner.", "Never use UHT cream",
	} {
		_, ok := r.Line(text)
		assert.False(t, ok, text)
	}
	for _, text := range []string{
		"Add a pinch of salt.", "Whip 300 ml cream", "Beat three eggs with the sugar.", "Beat an egg.", "Stir in a can of condensed milk", "Add the remaining 100 g sugar", "Add sugar to taste", "Flaky salt.", "Vanilla.",
		"the rest of the sugar", "Salt to taste", "fresh raspberries to serve", "Some mint leaves.", "3 lg. egg whites, room temp.", "Zest, grated", "Mature cheddar", "Toast crumbs", "Mix of berries 200 g",
	} {
		_, ok := r.Line(text)
		assert.True(t, ok, text)
	}
}

// A line in another language is asked about, with the food that it names.
func TestAnotherLanguageIsOfferedItsFood(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, id := range map[string]string{"250 ml Vollmilch": "milk_whole", "50 cl de lait entier": "milk_whole", "6 jaunes d'œufs": "egg_yolk", "1 Prise Salz": "salt", "150 g di zucchero": "sugar",
		"3 claras de huevo": "egg_white", "250 ml heavy creme": "cream_heavy"} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.Equal(t, written.Unknown, l.Doubt, text)
		if assert.NotEmpty(t, l.Meanings, text) {
			assert.Equal(t, id, l.Meanings[0], text)
		}
	}
}

// Amounts behind a name add up where a plus joins them.
func TestAmountsBehindANameAddUp(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{"sugar: 250 g + 50 g", "sugar 250 g + 50 g", "sugar - 250 g plus 50 g", "250 g + 50 g sugar"} {
		l, ok := r.Line(text)
		assert.True(t, ok && l.Taken(), text)
		assert.InDelta(t, 300, l.Grams.Value, 1e-9, text)
	}
	l, _ := r.Line("sugar: 200 + 50 g")
	assert.False(t, l.Taken(), "200 of what?")
}

// A number in brackets before an amount is that of the line where the lines are numbered,
// and otherwise nobody knows; before what is counted it is how many.
func TestANumberInBracketsIsALinesOwnOrADoubt(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	got := r.Read("(1) 2 cups whole milk\n(2) 1 tsp vanilla extract")
	if assert.Len(t, got, 2) {
		assert.InDelta(t, 4.33, got[1].Grams.Value, 0.05) // USDA SR28, NDB 02050: 208 g a cup
		assert.True(t, got[1].Taken())
	}
	for _, text := range []string{"(5) 1 tsp vanilla extract", "(2) 400 g tins condensed milk"} {
		l, _ := r.Line(text)
		assert.Equal(t, written.Apart, l.Doubt, text)
	}
	l, _ := r.Line("(2) egg whites")
	assert.InDelta(t, 66, l.Grams.Value, 1e-9)
	l, _ = r.Line("60 g walnuts / pecans")
	assert.Equal(t, []string{"walnut", "pecan"}, l.Meanings)
}

// A spoon is the record's own where it has one, a can's ounces are asked about only where
// weight and volume differ, and a pint of berries is a basket: USDA SR28, NDB 19336 (8 g a
// tablespoon, unsifted) and 12118 (226 g a cup).
func TestARecordsOwnSpoonComesBeforeItsDensity(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string]float64{"3 tbsp icing sugar": 24, "2 tbsp egg white powder": 14, "1 can (13.5 oz) coconut milk": 382.7} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.1, text)
	}
	for _, text := range []string{"1 cup whisked heavy cream", "1/2 cup beaten egg whites", "1 cup pureed raspberries", "1/2 cup melted white chocolate"} {
		l, _ := r.Line(text)
		assert.Equal(t, written.HowFull, l.Doubt, text)
	}
	for text, grams := range map[string]float64{"1 cup heavy cream, whipped": 238, "1 cup raspberries, pureed": 123, "1 cup pureed strawberries": 232} { // NDB 01053, 09302, 09316
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.5, text)
	}
	l, _ := r.Line("1 can (12 oz) evaporated milk")
	assert.Equal(t, written.OunceOrFluid, l.Doubt)
	all := r.Read("1 cup sugar\n1 pint raspberries")
	assert.Equal(t, written.HowFull, all[1].Doubt)
}

// Titles, heads of tables and what people say to each other are no ingredients; a food in
// such a line, or an amount, is asked about.
func TestTitlesAndTalkArePassedOver(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"Mango sorbet", "salted caramel ice cream", "TEST 3 (better than 2, still icy)", "MIX B (10 kg)", "-- espuma --", "for 6 people", "5 stars!!!", "who has the list", "that's it!!", "Ingredient\tWeight\t%",
		"Trial\tIngredient\tg", "US Customary | Metric", "Nutrition: 312 kcal per serving",
	} {
		_, ok := r.Line(text)
		assert.False(t, ok, text)
	}
	for _, text := range []string{
		"basil if you have it", "TEST 3 100 g sugar", "mango sorbet, to serve", "2 tbsp hazelnut brittle", "100 g ice cream", "who brings the sugar", "2 stars, too sweet", "2 star anise", "kitchen roll", "200 g pumpkin", "100 g figs", "30 g whey",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok && !l.Taken(), text)
	}
	for text, grams := range map[string]float64{"A1\tsugar 180 g": 180, "1 can sweetened condensed milk 14oz": 396.9, "1 cup sugar 200 g": 200, "choc 70% 200 g": 200, "90 g yolk (5 ish)": 90} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.1, text)
	}
}

// Bare numbers at the end of a table's rows are shares where they are to the weights all in
// one relation.
func TestSharesWithoutASignAreNoAmounts(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, l := range r.Read("Whole milk\t540 g\t54,0\nSugar\t120 g\t12,0\nLocust bean gum\t2 g\t0,2") {
		assert.True(t, l.Taken(), l.Text)
	}
	for _, l := range r.Read("Whole milk\t540 g\t54,0\nSugar\t120 g\t200\nLocust bean gum\t2 g\t7") {
		assert.False(t, l.Taken(), l.Text)
	}
}

// The first line of a list may be its title; another hand's number before a line, or another
// number of eggs, is a doubt.
func TestTitlesAndBareNumbers(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	const rest = "\n100 g sugar\n2 yolks\n"
	for _, title := range []string{"Blackberry sorbet (double batch in brackets)", "BAKED ALASKA 40 PAX", "Lemon Semifreddo - serves 8", "Floating Island (Mother's)", "NOUGAT GLACE x 20 COVERS"} {
		assert.Len(t, r.Read(title+rest), 2, title)
	}
	for _, line := range []string{"6 tuorli", "equal parts egg whites and sugar", "vanilla sugar 1 bag", "sugar 20 dkg", "bit of salt", "Fleur de sel", "fresh basil", "star anise"} {
		assert.Len(t, r.Read(line+rest), 3, line)
	}
	many, _ := r.Line("4 yolks (5 if small)")
	assert.Equal(t, written.Range, many.Doubt)
	for _, text := range []string{"2  1 cup heavy cream", "1  2 cups whole milk", "600 g blackberries (1200 g)"} {
		l, _ := r.Line(text)
		assert.Equal(t, written.Apart, l.Doubt, text)
	}
	for text, grams := range map[string]float64{"1.0 cup - Heavy Cream": 238, "5.0 - Egg Yolks": 85, "5 large egg yolks 85 g": 85, "125 g egg whites (4 large)": 125, "2 eggs, 53-63 g": 100} {
		l, _ := r.Line(text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.5, text)
	}
}
