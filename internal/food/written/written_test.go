package written_test

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
)

// expected is one line of the lists: what it means, "?" or "-".
type expected struct {
	text, id string
	grams    float64
}

// lists reads testdata/NAME.
func lists(t *testing.T, name string) map[string][]expected {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name)
	require.NoError(t, err)
	all, list := map[string][]expected{}, ""
	for _, line := range strings.Split(strings.TrimRight(string(data), "\n"), "\n") {
		switch title, isList := strings.CutPrefix(line, "== "); {
		case isList:
			list = title
		case list == "" || strings.TrimSpace(line) == "":
		default:
			text, means, ok := strings.Cut(line, " => ")
			e := expected{text: text, id: "-"}
			if ok {
				id, grams, weighed := strings.Cut(means, " ")
				e.id = id
				if weighed {
					e.grams, err = strconv.ParseFloat(grams, 64)
					require.NoError(t, err, line)
				}
			}
			all[list] = append(all[list], e)
		}
	}
	return all
}

// apart is how far grams may be from the lists': a spoon of SR28 is printed to
// 0.1 g, and its cup and its spoon differ by up to 4 %.
const apart = 0.04

// tally reads every list as a whole and counts lines right, asked about though they
// say one thing, and taken for something else.
func tally(t *testing.T, name string) (count, right, asked, wrong int) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for title, list := range lists(t, name) {
		var text []string
		for _, e := range list {
			text = append(text, e.text)
		}
		got := r.Read(strings.Join(text, "\n"))
		for _, e := range list {
			count++
			var l *written.Said
			if len(got) > 0 && got[0].Text == strings.TrimSpace(e.text) {
				l, got = &got[0], got[1:]
			}
			switch {
			case l == nil && (e.id == "-" || e.id == "!"), l != nil && e.id == "!" && !l.Taken():
				right++
			case l != nil && strings.HasPrefix(e.id, "?") && !l.Taken():
				if offer := e.id[1:]; offer != "" && (len(l.Meanings) == 0 || l.Meanings[0] != offer) {
					asked++
					t.Logf("%s: %q asks (%d) and offers %v, for %s", title, e.text, l.Doubt, l.Meanings, offer)
				} else {
					right++
				}
			case l != nil && l.Taken() && l.Ingredient.ID == e.id && math.Abs(l.Grams.Value-e.grams) <= apart*e.grams:
				right++
			case l != nil && !l.Taken():
				asked++
				t.Logf("%s: %q asks (%d), for %s %v g", title, e.text, l.Doubt, e.id, e.grams)
			case l == nil:
				wrong++
				t.Logf("%s: %q is passed over, for %s", title, e.text, e.id)
			default:
				wrong++
				t.Logf("%s: %q is taken for %s, %v g, for %s %v g", title, e.text, l.Ingredient.ID, l.Grams.Value, e.id, e.grams)
			}
		}
		assert.Empty(t, got, "%s: lines of nothing", title)
	}
	return count, right, asked, wrong
}

func TestListsAreReadAsTheyAreMeantAndNeverSilentlyWrong(t *testing.T) {
	for _, name := range strings.Fields("lists heldout kitchens strangers strangers2 strangers3 strangers4 strangers5 strangers6 fresh1 fresh2 fresh3 fresh4 fresh5 fresh6 fresh7 fresh8 fresh9 fresh10 fresh11 fresh12 fresh13 fresh14 fresh15 fresh16 fresh17 fresh18 fresh19 fresh20 fresh21 fresh22 fresh23 fresh24") {
		if testing.Short() && name != "lists" {
			continue
		}
		name += ".txt"
		count, right, asked, wrong := tally(t, name)
		t.Logf("%s: %d lines, %d right, %d asked about without need, %d wrong", name, count, right, asked, wrong)
		assert.Zero(t, wrong)
		assert.GreaterOrEqual(t, float64(right)/float64(count), 0.95)
	}
}

func TestAPlainAmountIsReadInEachMeasure(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "EU", Size: "M"})
	// NIST SP 811 (2008), Appendix B.8, as printed there to its seven digits.
	for text, grams := range map[string]float64{
		"1 lb sugar": 453.5924, "1 oz sugar": 28.34952, "1 US pint water": 473.1765 * 1.001, "1 gallon water": 3785.412 * 1.001,
		"2 yolks": 2 * 17.4, "2 large yolks": 2 * 20.3, "1 L water": 1001, "half a dozen yolks": 6 * 17.4,
	} {
		l, ok := r.Line(text)
		require.True(t, ok, text)
		assert.Zero(t, l.Doubt, text)
		assert.InEpsilon(t, grams, l.Grams.Value, 1e-3, text)
	}
}

// What is read of grams does not depend on spaces, bullets, case or the sign
// before the decimals.
func TestDressingALineChangesNothing(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, in := range market.Library(t).All() {
		if strings.ContainsAny(in.Kitchen(), "%(") {
			continue
		}
		plain, ok := r.Line("12.5 g " + in.Kitchen())
		require.True(t, ok)
		require.NotNil(t, plain.Ingredient, in.Kitchen())
		for _, text := range []string{"12,5 g " + in.Kitchen(), "  - 12.5g " + strings.ToUpper(in.Kitchen()), "12 1/2 g of " + in.Kitchen(), in.Kitchen() + ": 12½ g", "• 12.5 grams " + in.Kitchen() + ", divided"} {
			dressed, ok := r.Line(text)
			require.True(t, ok, text)
			require.Equal(t, plain.Ingredient, dressed.Ingredient, text)
			assert.Equal(t, plain.Doubt, dressed.Doubt, text)
			assert.InDelta(t, 12.5, dressed.Grams.Value, 1e-9, text)
		}
	}
}

func FuzzLines(f *testing.F) {
	for _, s := range []string{"250 g whole milk", "1 ½ tbsp lemon juice (20 g)", "2 x 3 14-oz can milk", "1/0 cup sugar", "½⅓ - 3% milk\x00", "a a half dozen (", "- 1. 1) [ ] 5", "Item\tg\t%\tCost\nSugar\t1,250\t50\t2\nSalt\t1\t1\t1", "in grams\nsalt 4", "1.250,5 g sugar"} {
		f.Add(s)
	}
	lib := market.Shelf()
	r := written.New(lib, written.Eggs{System: "US", Size: "large"})
	f.Fuzz(func(t *testing.T, s string) {
		for _, l := range r.Read(s) {
			if l.Grams.Known && !(l.Grams.Value > 0 && l.Grams.Value <= 1e6) {
				t.Fatalf("%q weighs %v g", l.Text, l.Grams.Value)
			}
			if l.Taken() && (l.Ingredient == nil || !l.Grams.Known || l.Basis == 0) {
				t.Fatalf("%q is taken for nothing", l.Text)
			}
		}
	})
}

// An X before letters is a size, before a number a multiplication: USDA SR28, NDB
// 01123, an extra large egg is 56 g without its shell. A food by itself is a line
// without an amount, never a heading.
func TestWhatWasOnceReadWronglyWithoutADoubt(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for text, grams := range map[string]float64{"3 XL eggs": 168, "2x100 g sugar": 200, "2 x 100 g sugar": 200, "4 x yolks": 68} {
		l, ok := r.Line(text)
		require.True(t, ok, text)
		assert.True(t, l.Taken(), text)
		assert.InDelta(t, grams, l.Grams.Value, 0.5, text)
	}
	l, ok := r.Line("cream")
	assert.True(t, ok)
	assert.NotZero(t, l.Doubt)
	_, ok = r.Line("Custard")
	assert.False(t, ok, "a heading")
}

// What may be one thing or another is asked about: crossed out, bounded, scaled, per piece,
// two numbers with nothing between them.
func TestWhatIsNotPlainlyOneThingIsADoubt(t *testing.T) {
	r := written.New(market.Library(t), written.Eggs{System: "US", Size: "large"})
	for _, text := range []string{
		"~~100~~ 120 g sugar", "<s>100</s> 120 g sugar", "1\u03360\u03360\u0336 g sugar", "100 120 g sugar", "2 250 g sugar", "100/120 g sugar", "100|120 g sugar", "1/2/3 cup sugar",
		"11/2 tsp salt", ">100 g sugar", "\u2264100 g sugar", "100 g sugar (was 120 g)", "100 g (120 g) sugar", "100 g sugar, about 1 cup", "100 g sugar, doubled", "100 g sugar (x2)",
		"397 g tin condensed milk, half of it", "100 g sugar?", "100 g sugar, leave out", "100 g yolks (12)", "2 eggs (120 g)", "3 whites (90 g each)", "Half: 100 g sugar",
		"one fifty g sugar", "Sum: 900 g cream", "Frozen: 100 g raspberries", "Instead: 100 g sugar", "1/2 cup bourbon, rum or brandy", "chocolate milk 1 cup", "200 mg milk, whole",
		"sugar | 100 g | 200 g", "100 g sugar (28/11)", "1 cup brown sugar, not packed", "200 g white",
	} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.NotZero(t, l.Doubt, text)
	}
	for text, grams := range map[string]float64{"2 400 g tins condensed milk": 800, "1&frac12; cups sugar": 299.9, "sugar | 100 g | 20 %": 100, "2 eggs, 50 g each": 100,
		"half of 300 g sugar": 150, "one hundred and fifty grams of sugar": 150, "1 cup sugar plus 2 tablespoons": 224.9} {
		l, ok := r.Line(text)
		assert.True(t, ok, text)
		assert.Zero(t, l.Doubt, text)
		assert.InEpsilon(t, grams, l.Grams.Value, 0.01, text)
	}
}
