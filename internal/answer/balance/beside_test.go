package balance

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/label"
	"ripplewright/internal/work/design"
)

// proposed is what changing d into to brings beside.
func proposed(t *testing.T, m *model.Model, d, to design.Design) *Beside {
	t.Helper()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	is, err := m.Evaluate(to)
	require.NoError(t, err)
	p := &Proposal{Design: to, Result: is}
	found, err := Compare(background, d, &r, cold.Default(), []*Proposal{p})
	require.NoError(t, err)
	Told([]*Proposal{p}, found)
	return p.Beside
}

func TestAProposalTellsWhatItChangesOnTheLabelAndElsewhere(t *testing.T) {
	m := models(t)
	d := design.New()
	d.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: 300}, {Ingredient: "cream_heavy", Grams: 200}, {Ingredient: "egg_yolk", Grams: 90}, {Ingredient: "sugar", Grams: 90},
	}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 165}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 170}, {Ingredient: "water", Grams: 60}}
	d.Foam.OverrunPercent = 300

	// The trade's Code for Edible Ices asks 5 % milk fat of a dairy ice cream; the guide of
	// the UK 2.5 % of a milk ice with 6 % of milk's other solids.
	lean := d.WithGrams(design.DensePart, 0, 480).WithGrams(design.DensePart, 1, 20)
	b := proposed(t, m, d, lean)
	assert.True(t, hasName(b.NamesLost, "dairy ice cream", label.EU), "%v", b.NamesLost)
	assert.True(t, hasName(b.NamesGained, "milk ice (UK guide)", label.EU), "%v", b.NamesGained)
	back := proposed(t, m, lean, d)
	assert.True(t, hasName(back.NamesGained, "dairy ice cream", label.EU))
	assert.True(t, hasName(back.NamesLost, "milk ice (UK guide)", label.EU))

	// FD&C Act 201(qq) and Regulation (EU) No 1169/2011, annex II: nuts, told by their kind.
	b = proposed(t, m, d, d.WithLineAdded(design.DensePart, design.Line{Ingredient: "hazelnut_roasted", Grams: 40}))
	assert.Equal(t, []string{"nuts:hazelnut", "tree_nut:hazelnut"}, b.AllergensGained)
	assert.Empty(t, b.AllergensLost)

	sweet := proposed(t, m, d, d.WithGrams(design.DensePart, 3, 210))
	assert.Contains(t, sweet.CautionsGained, "too_sweet")
	assert.Less(t, sweet.Contrast.After, 0.5*sweet.Contrast.Before)
	assert.Less(t, sweet.Minutes.After, sweet.Minutes.Before)
	for _, line := range append(sweet.Declared, sweet.DeclaredEU...) {
		assert.True(t, line.Changed(), line.Key)
	}
	assert.Len(t, sweet.Declared, 3)
	assert.Len(t, sweet.DeclaredEU, 2, "energy and sugars of 100 g: Regulation (EU) No 1169/2011, article 30(1)")

	same := proposed(t, m, d, d)
	assert.Empty(t, append(same.CautionsGained, same.AllergensGained...))
	assert.Empty(t, append(same.NamesGained, same.NamesLost...))
	for _, line := range append(same.Declared, same.DeclaredEU...) {
		assert.False(t, line.Changed(), line.Key)
	}
	assert.Equal(t, same.Minutes.Before, same.Minutes.After)
}

func hasName(of []label.Name, name string, region label.Region) bool {
	for _, n := range of {
		if n.Name == name && n.Region == region {
			return true
		}
	}
	return false
}

func TestAComparisonEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(background)
	cancel()
	d := market.Honey()
	r, err := models(t).Evaluate(d)
	require.NoError(t, err)
	_, err = Compare(ctx, d, &r, cold.Default(), []*Proposal{{Design: d, Result: r}})
	assert.ErrorIs(t, err, context.Canceled)
}
