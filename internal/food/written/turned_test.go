package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// A word before or behind a food makes another record of it only where the line says that it was
// weighed so; otherwise it is asked about.
func TestWordsBehindAFood(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, id := range map[string]string{
		"Hazelnuts, roasted 150 g": "hazelnut_roasted", "Hazelnuts roasted 150 g": "hazelnut_roasted", "150 g hazelnuts, roasted": "", "Hazelnuts 150 g, roasted": "", "Hazelnuts 150 g (roasted)": "",
		"sesame seeds toasted 2 tbsp": "sesame_seeds", "almonds, toasted 50 g": "almond", "milk condensed sweet 150 g": "condensed_milk_sweet", "chocolate milk dark 100 g": "", "milk chocolate white 100 g": "",
		"1 tbsp freshly grated ginger": "ginger_fresh", "1 tbsp ginger, freshly grated": "ginger_fresh", "1 tbsp ginger": "", "500 ml whole milk, lactose free": "lactose_free_milk", "500 ml skim milk, lactose free": "", "500 ml lactose-free 2% milk": "",
		"250 ml lemon juice (abt. 6 lemons)": "lemon_juice", "250 ml lemon juice (abt 60 g)": "", "pulp of 8 passion fruit": "", "pulp of 8 passion fruit (150 g)": "passion_fruit",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.Equal(t, id != "", l.Taken(), text)
		if id != "" && l.Ingredient != nil {
			assert.Equal(t, id, l.Ingredient.ID, text)
		}
	}
}

// A range of percentages means what either end does.
func TestARangeOfPercentagesMayBeTwoRecords(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, ids := range map[string][]string{
		"400 ml cream (30-35 %)": {"cream_light_whipping", "cream_heavy"}, "400 ml cream, 30 to 35 % fat": {"cream_light_whipping", "cream_heavy"}, "400 ml cream (35–36 %)": {"cream_heavy"},
		"200 g dark chocolate (60-70%)": {"chocolate_dark_60_69", "chocolate_dark_70_85"}, "200 g dark chocolate (70–85% cacao)": {"chocolate_dark_70_85"},
	} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.Equal(t, ids, l.Meanings, text)
		assert.Equal(t, len(ids) == 1, l.Taken(), text)
	}
}

// What may be an ingredient is never passed over, in whichever language; what names no food is.
func TestWhatIsPassedOver(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, kept := range map[string]bool{
		"panna montata q.b.": true, "sucre glace selon goût": true, "du sel et du poivre": true, "un peu de sel.": true, "e poi panna fresca.": true, "pistacchi tritati, q.b.": true,
		"slivered pistachios for topping": true, "slivered pistachios for top": true, "don't forget the salt": true, "Label: sugar, milk": true, "ok cream": true, "!! toasted nuts": true,
		"With compliments of the Lakeside Café": false, "Label: gluten free, vegan": false, "ok?? dont over churn": false, "!! grind nuts while still warm": false,
	} {
		_, ok := r.Line(text)
		assert.Equal(t, kept, ok, text)
	}
}
