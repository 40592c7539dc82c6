package design_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// The ingredients are invented, for the stall Saltmarsh Quay.
func own(id, name string) *ingredient.Ingredient {
	return &ingredient.Ingredient{ID: id, Name: name, Own: true}
}

func idsOf(d design.Design) []string {
	ids := []string{}
	for _, in := range d.Own {
		ids = append(ids, in.ID)
	}
	return ids
}

func TestADesignCarriesTheOwnIngredientsItUses(t *testing.T) {
	fig, paste := own("fig_paste", "Fig paste"), own("rye_crumb", "Rye crumb")
	lib := ingredient.NewLibrary([]*ingredient.Ingredient{{ID: "milk_whole", Name: "Milk"}, fig, paste})
	before := design.New().WithLineAdded(design.DensePart, design.Line{Ingredient: "milk_whole", Grams: 500})
	line := design.Line{Ingredient: "fig_paste", Grams: 50}

	d := before.WithLineAdded(design.DensePart, line).WithLineAdded(design.SyrupPart, line).WithOwn(lib, before)
	assert.Equal(t, []string{"fig_paste"}, idsOf(d), "the used one, once")
	require.Empty(t, before.Own)

	still := d.WithLineRemoved(design.SyrupPart, 0).WithOwn(lib, d)
	assert.Equal(t, []string{"fig_paste"}, idsOf(still))
	gone := still.WithLineRemoved(design.DensePart, 1).WithOwn(lib, still)
	assert.Empty(t, gone.Own, "with its last line")
	assert.True(t, before.Equal(gone))
}

func TestACopyInTheDesignWinsAndAWrittenOneStays(t *testing.T) {
	ours, theirs := own("fig_paste", "Fig paste, 2025"), own("fig_paste", "Fig paste, 2026")
	lib := ingredient.NewLibrary([]*ingredient.Ingredient{theirs})
	d := design.New()
	d.Own = []*ingredient.Ingredient{own("spare", "Written down, not used"), ours}
	d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "fig_paste", Grams: 50})
	got := d.WithOwn(lib, d)
	assert.Equal(t, []string{"spare", "fig_paste"}, idsOf(got))
	assert.Same(t, ours, got.Own[1])

	new := got.WithOwnReplaced(theirs)
	assert.Same(t, theirs, new.Own[1])
	assert.Same(t, ours, got.Own[1], "the old value keeps its own")
	assert.True(t, new.Equal(new.WithOwnReplaced(own("other", "Other"))))
}
