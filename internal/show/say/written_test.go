package say_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/written"
	"ripplewright/internal/show/say"
)

func TestAWrittenLineSaysHowItsGramsCameOrWhatItLeavesOpen(t *testing.T) {
	lib := market.Library(t)
	r := written.New(lib, written.Eggs{System: "US", Size: "large"})
	name := func(id string) string { in, _ := lib.Find(id); return in.Kitchen() }
	for text, want := range map[string][2]string{
		"250 g whole milk":         {"as weighed", ""},
		"1 cup whole milk":         {"237 mL at 1.031 g/mL", ""},
		"1 tsp salt":               {"4.9 mL at 1.217 g/mL", ""}, // 6 g, USDA SR28, NDB 02047
		"2 tbsp tahini":            {"29.6 mL, of which its source weighs 1.014 g/mL", ""},
		"2 yolks":                  {"2 yolks of 17.0 g, US large", ""},
		"1 stick unsalted butter":  {"1 stick of 113 g", ""},
		"20 ladyfingers":           {"20 of 11 g each, as its source weighs one", ""},
		"2 medium bananas":         {"2 of 118 g each, as its source weighs one", ""},
		"10 marshmallows":          {"10 of 7.2 g each, as its source weighs one", ""},
		"2-3 tbsp honey":           {"", "it is a range: write one amount"},
		"50 g butter":              {"as weighed", "it may be unsalted butter or salted butter"},
		"a pinch of salt":          {"", "nobody knows what that measure weighs: write grams"},
		"150 g granualted sugar":   {"as weighed; read as “granulated”", ""},
		"1 cup heavvy craem":       {"237 mL at 1.006 g/mL; read as “heavy, cream”", ""},
		"100 g suger":              {"as weighed; read as “sugar”", ""},
		"100 g sugr":               {"", "no ingredient is called so; is it sugar?"},
		"1 cup brown sugar":        {"237 mL at 0.930 g/mL", "it weighs more or less by how it is filled or cut: write grams"},
		"100 g sugar, coconut":     {"as weighed", "its remark may make another food of it: coconut"},
		"2 tbsp very old dark rum": {"", "it says more than a name: choose what is meant"},
		"1 pint whole milk":        {"473 mL at 1.031 g/mL", "a pint is larger in Britain: write US pint, or millilitres"},
	} {
		l, ok := r.Line(text)
		require.True(t, ok, text)
		assert.Equal(t, want, [2]string{say.WrittenHow(say.Usual, &l), say.WrittenDoubt(&l, name)}, text)
	}
}

func TestEachDoubtHasItsOwnWords(t *testing.T) {
	seen := map[string]written.Doubt{}
	for d := written.NoAmount; d <= written.SizeOfEurope; d++ {
		words := say.WrittenDoubt(&written.Said{Doubt: d}, nil)
		assert.NotContains(t, seen, words, d)
		assert.NotEqual(t, "it is not clear", words, d)
		seen[words] = d
	}
}
