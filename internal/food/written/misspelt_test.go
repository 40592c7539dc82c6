package written_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// takenAndReadAs holds lines to the food that each is taken for, "" for none, and to what its
// misspelt words are read as.
func takenAndReadAs(t *testing.T, lines map[string][2]string) {
	t.Helper()
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, want := range lines {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.Equal(t, want[0] != "", l.Taken(), text)
		if l.Taken() {
			assert.Equal(t, want, [2]string{l.Ingredient.ID, l.ReadAs}, text)
		}
		assert.Equal(t, text, l.Text)
	}
}

// A slip of the fingers, two neighbours swapped or a letter doubled or lost of two, is read as
// the one food that it can be of, and what it is read as is said.
func TestASlipIsReadAsTheOneWordItCanBeOf(t *testing.T) {
	takenAndReadAs(t, map[string][2]string{
		"150 g granualted sugar": {"sugar", "granulated"}, "1 cup heavvy cream": {"cream_heavy", "heavy"}, "1 tsp vanila extract": {"vanilla_extract", "vanilla"}, "2 tsp cornstrach": {"cornstarch", "cornstarch"},
		"250 ml whole mlik and": {}, "100 g suggar": {"sugar", "sugar"}, "1 tbsp lemmon jiuce": {"lemon_juice", "lemon, juice"}, "1 teaspon lemon juice": {"lemon_juice", "teaspoon"}, "2 tabelspoons honey": {"honey", "tablespoons"}, "80 g wlanuts": {"walnut", "walnuts"}, "200 g rapsberries, frozen": {}, "40 g HONYE": {"honey", "honey"},
		"1 cup butermilk, low-fat": {"buttermilk_lowfat", "buttermilk"}, "30 g dextrosse": {"dextrose_monohydrate", "dextrose"}, "250 g mascarponne": {"mascarpone", "mascarpone"}, "250 g whole milk": {"milk_whole", ""},
	})
}

// A common misspelling that is no other word of a kitchen is read as the word that is meant, and
// that is said: those of the list, and no others.
func TestACommonMisspellingIsReadAsTheWordThatIsMeant(t *testing.T) {
	takenAndReadAs(t, map[string][2]string{
		"100 g suger": {"sugar", "sugar"}, "110 g caster suger": {"sugar", "sugar"}, "5 egg yokes": {"egg_yolk", "yolks"}, "1 egg yoke": {"egg_yolk", "yolk"}, "5 yoks": {"egg_yolk", "yolks"}, "250 g mascapone": {"mascarpone", "mascarpone"},
		"1 tsp cinammon": {"cinnamon", "cinnamon"}, "100 g white choclate": {"chocolate_white", "chocolate"}, "300 g rasberries": {"raspberry", "raspberries"}, "100 g Rasberry": {"raspberry", "raspberry"}, "200 g avacado": {"avocado", "avocado"},
		"1 stick unsalted buter": {"butter_unsalted", "butter"}, "1 cup marshmellow creme": {}, "200 g marshmellows": {"marshmallows", "marshmallows"}, "50 g dessicated coconut": {"coconut_dried", "desiccated"},
		"1 can (14 oz) sweetend condenced milk": {"condensed_milk_sweet", "sweetened, condensed"}, "1 tsp venilla extract": {"vanilla_extract", "vanilla"}, "2 tsp ground cardamon": {"cardamom", "cardamom"}, "300 g strawberrys": {"strawberry", ""},
	})
}

// A letter that is missing, changed or put in may be of another food, and so may what is a word
// by itself, or has several readings: they are asked about. Suger, mascapone and cinammon stood
// here until they were listed as common misspellings.
func TestWhatMayBeAnotherWordStaysADoubt(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"100 ml sherry", "200 g sherries", "50 g pearls", "1/4 cup coco powder", "1 cup hevy cream", "100 ml desert wine", "100 g heavy crema", "100 ml late", "200 ml latte",
		"30 g pecns", "1 cup sugr", "200 g currents", "100 g floor", "30 g bery", "100 g ample syrup", "100 g caned pumpkin", "200 g cartoon egg whites", "100 g slated butter", "1 tbsp supper fine sugar", "1 cup reeds currant", "100 g diary cream",
		"100 g leeches", "100 g mlik", "20 g nust", "250 ml mlkk", "100 g craem", "2 heaped tbsp suggar", "100 g suggar, doubled", "1 can vanila", "100 g vanila suggar", "2 bananas, sliecd", "100 g panna", "100 g sucer", "100 g butterr and suggar",
		"1 tsp cream of tarter", "50 ml liquer", "100 g almons", "2 tsp tumeric", "100 g carmel", "1 can macha", "100 g suger, doubled", "100 g sugre", "2 heaped tbsp suger", "100 g cherry yogart", "100 g yolc", "50 ml advocado", "50 g merange",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.False(t, l.Taken(), text)
		assert.Empty(t, l.ReadAs, text)
	}
}
