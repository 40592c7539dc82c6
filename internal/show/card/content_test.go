package card

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

func TestTimesInTheColdArePrinted(t *testing.T) {
	d := market.Hazelnut()
	r := evaluated(t, d)
	a := timed(t, d, r)
	require.True(t, a.Counter.OK)
	step := func(c content, title string) string {
		for _, s := range c.steps {
			if s.Title == title {
				return s.Text
			}
		}
		t.Fatalf("no step %s", title)
		return ""
	}
	c := contentOf(d, r, Options{Region: label.US, Cold: a})
	assert.Contains(t, step(c, "Serve"), say.LeaveOut(say.Usual, &a.Counter))
	assert.Contains(t, step(c, "Freeze soft"), "25 mm")
	assert.Contains(t, step(c, "Harden"), say.Usual.Duration(60*a.Harden.Hours.Value))
}

// TestTheCardNeverPromises looks for a word that no computed figure supports.
func TestTheCardNeverPromises(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	for name, pages := range cards(t) {
		for _, s := range texts(pages) {
			assert.NotRegexp(t, `(?i)\bsafe(ly|ty)?\b`, s, name)
		}
	}
}

func TestStepsFollowTheDesign(t *testing.T) {
	has := func(steps []say.Titled, title string) bool {
		for _, s := range steps {
			if s.Title == title {
				return true
			}
		}
		return false
	}
	d := market.Hazelnut()
	r := evaluated(t, d)
	assert.True(t, has(stepsOf(d, r), "Egg and sugar"))
	assert.True(t, has(say.Cautions(say.Usual, d, r, "milk"), "Honey"))
	assert.True(t, has(say.Cautions(say.Usual, d, r, "milk"), "Nuts"))
	assert.False(t, has(say.Cautions(say.Usual, d, r, "milk"), "Alcohol"))
	d.Dense.Lines = []design.Line{{Ingredient: "oat_drink", Grams: 500}, {Ingredient: "sugar", Grams: 90}, {Ingredient: "rum_40", Grams: 40}}
	r = evaluated(t, d)
	assert.False(t, has(stepsOf(d, r), "Egg and sugar"), "no yolk to whisk")
	assert.True(t, has(say.Cautions(say.Usual, d, r, "egg"), "Alcohol"))
	assert.False(t, has(say.Cautions(say.Usual, d, r, "egg"), "Honey"))
}

// The ingredients are invented: what the stall Saltmarsh Quay buys in.
func TestCautionsReadAMakersOwnIngredients(t *testing.T) {
	d := market.Hazelnut()
	d.Dense.Lines = []design.Line{{Ingredient: "heather", Grams: 90}, {Ingredient: "crunch", Grams: 40}, {Ingredient: "melon", Grams: 300}}
	d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil
	d.Own = []*ingredient.Ingredient{
		{ID: "heather", Name: "Heather honey, raw", Own: true, AllergensUS: []string{"none"}},
		{ID: "crunch", Name: "Quay crunch", Own: true, AllergensEU: []string{"nuts:hazelnut"}},
		{ID: "melon", Name: "Honeydew melon", Own: true},
	}
	cautions := map[string]string{}
	for _, c := range say.Cautions(say.Usual, d, evaluated(t, d), "hazelnut") {
		cautions[c.Title] = c.Text
	}
	assert.Contains(t, cautions, "Honey")
	assert.Contains(t, cautions, "Nuts")
	assert.Contains(t, cautions["Allergens"], "those of Honeydew melon. Look on the pack.")

	d.Dense.Lines = d.Dense.Lines[2:]
	for _, c := range say.Cautions(say.Usual, d, evaluated(t, d), "") {
		assert.NotContains(t, []string{"Honey", "Nuts"}, c.Title)
	}
}

func stepsOf(d design.Design, r *model.Result) []say.Titled {
	p := process.Of(d, r, process.Default(), -18, nil)
	return say.Steps(say.Usual, say.Making{Design: d, Result: r, Process: &p})
}

// Card and label tell of alcohol from the same gram of rum on.
func TestCardAndLabelTellOfAlcoholAlike(t *testing.T) {
	told := map[bool]int{}
	for g := 4.0; g <= 40; g++ {
		d := market.Hazelnut().WithLineAdded(design.DensePart, design.Line{Ingredient: "rum_40", Grams: g})
		r := evaluated(t, d)
		l, err := label.For(r.Food(d), label.US, label.Options{})
		require.NoError(t, err)
		card := slices.ContainsFunc(say.Cautions(say.Usual, d, r, "milk"), func(c say.Titled) bool { return c.Title == "Alcohol" })
		assert.Equal(t, strings.Contains(l.Notes.String(), "not for children"), card, "%g g rum", g)
		told[card]++
	}
	assert.Positive(t, told[true])
	assert.Positive(t, told[false])
}
