package wishing

import (
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// A Pack is what one pack of an ingredient holds, g.
type Pack struct {
	Ingredient string // id
	Grams      float64
}

// Weighed returns the ingredients of d that are known, each once, in its order.
func Weighed(m *model.Model, d design.Design) (all []*ingredient.Ingredient) {
	lib := m.Library().With(d.Own)
	for _, part := range design.Parts {
		for _, l := range d.Lines(part) {
			if in, ok := lib.Find(l.Ingredient); ok && !slices.Contains(all, in) {
				all = append(all, in)
			}
		}
	}
	return all
}

// PackOf returns what a pack of an ingredient holds as the maker prices it, g, and
// false where nobody priced it or the pack cannot be told in grams.
func PackOf(m *model.Model, d design.Design, id string) (grams float64, ok bool) {
	in, found := m.Library().With(d.Own).Find(id)
	pack, priced := m.Prices().For(id)
	if !found || !priced {
		return 0, false
	}
	size, _ := egg.Find(d.Eggs.System, d.Eggs.Size) // unknown, a pack of eggs is
	holds := pack.InGrams(in, size)
	return holds.Value, holds.Known
}
