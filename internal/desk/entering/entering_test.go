package entering_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/entering"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

func reader(t *testing.T) *entering.Reader {
	return entering.New(market.Library(t), design.New().Eggs, "en", (*ingredient.Ingredient).Kitchen)
}

func TestALineThatSaysOneThingIsTaken(t *testing.T) {
	r := reader(t)
	for text, want := range map[string]design.Line{
		"250 g whole milk": {Ingredient: "milk_whole", Grams: 250},
		"2 yolks":          {Ingredient: "egg_yolk", Count: 2, CountOf: design.Yolks},
		"3 egg whites":     {Ingredient: "egg_white", Count: 3, CountOf: design.Whites},
		"30 g egg yolk":    {Ingredient: "egg_yolk", Grams: 30},
		"1/2 cup sugar":    {Ingredient: "sugar", Grams: 100}, // USDA SR28, NDB 19335: a cup weighs 200 g
		"2,5 g salt":       {Ingredient: "salt", Grams: 2.5},
	} {
		e, ok := r.Line(text)
		require.True(t, ok, text)
		require.True(t, e.Taken(), text)
		assert.Equal(t, want, e.Choices[0].Line, text)
	}
}

// What is not said is left to a hand: no such line is taken, and the amount that
// was said stays with each thing it may be of.
func TestADoubtIsAChoice(t *testing.T) {
	r := reader(t)
	e, ok := r.Line("50 g hon")
	require.True(t, ok)
	assert.False(t, e.Taken())
	require.NotEmpty(t, e.Choices)
	assert.Equal(t, design.Line{Ingredient: "honey", Grams: 50}, e.Choices[0].Line)

	e, _ = r.Line("200 g cream")
	assert.False(t, e.Taken())
	require.Greater(t, len(e.Choices), 1)
	for _, c := range e.Choices {
		assert.Equal(t, 200.0, c.Line.Grams, c.Of.ID)
	}

	e, _ = r.Line("whole milk")
	assert.False(t, e.Taken())
	assert.True(t, e.Unweighed())
	assert.Zero(t, e.Choices[0].Line.Grams)

	e, _ = r.Line("200 g moon dust")
	assert.False(t, e.Taken())
	assert.Empty(t, e.Choices)
}

func TestNoMoreChoicesThanCanBeRead(t *testing.T) {
	e, _ := reader(t).Line("10 g c")
	assert.Len(t, e.Choices, entering.MostChoices)
	seen := map[string]bool{}
	for _, c := range e.Choices {
		assert.False(t, seen[c.Of.ID])
		seen[c.Of.ID] = true
	}
}

func TestAListIsReadLineByLine(t *testing.T) {
	all := reader(t).Text("For the custard:\n250 g whole milk\n\n2 to 3 yolks\n100 g gold leaf\n")
	require.Len(t, all, 3)
	assert.True(t, all[0].Taken())
	assert.False(t, all[1].Taken())
	assert.False(t, all[2].Taken())
}

func FuzzNothingIsTakenWithoutAnAmount(f *testing.F) {
	for _, s := range []string{"250 g whole milk", "1/2 cup sugar", "a pinch of salt", "milk", "−3 g salt", "1,000 g sugar"} {
		f.Add(s)
	}
	r := entering.New(market.Library(f), design.New().Eggs, "en", (*ingredient.Ingredient).Kitchen)
	f.Fuzz(func(t *testing.T, s string) {
		if e, ok := r.Line(s); ok && e.Taken() && e.Choices[0].Line.Grams <= 0 && e.Choices[0].Line.Count <= 0 {
			t.Fatalf("%q is taken with no amount", s)
		}
	})
}

// A German maker's lines are read in German; what is typed of a name finds it.
func TestGermanLinesAreReadWhereGermanIsSpoken(t *testing.T) {
	names := map[string]string{"whole milk": "Vollmilch", "egg yolks": "Eigelb", "honey": "Honig"}
	r := entering.New(market.Library(t), design.New().Eggs, "de", func(in *ingredient.Ingredient) string {
		if name, ok := names[in.Kitchen()]; ok {
			return name
		}
		return in.Kitchen()
	})
	for text, want := range map[string]design.Line{
		"250 g Vollmilch": {Ingredient: "milk_whole", Grams: 250},
		"2 Eigelb":        {Ingredient: "egg_yolk", Count: 2, CountOf: design.Yolks},
		"60 g whole milk": {Ingredient: "milk_whole", Grams: 60},
	} {
		e, ok := r.Line(text)
		require.True(t, ok, text)
		require.True(t, e.Taken(), text)
		assert.Equal(t, want, e.Choices[0].Line, text)
	}
	e, _ := r.Line("50 g Vollm")
	assert.False(t, e.Taken())
	require.NotEmpty(t, e.Choices)
	assert.Equal(t, design.Line{Ingredient: "milk_whole", Grams: 50}, e.Choices[0].Line)
	assert.False(t, r.For(market.Library(t), design.New().Eggs, "en"))
}
