package design

import (
	"slices"

	"ripplewright/internal/food/ingredient"
)

// WithOwn returns d carrying a copy of each of the maker's own ingredients in
// lib that its lines name, so that it opens where lib lacks them. A copy that
// d carries already stays as it is, whatever lib has by now. The copy of an
// ingredient that before still used and d does not goes; one that neither
// uses stays: somebody wrote it down.
func (d Design) WithOwn(lib *ingredient.Library, before Design) Design {
	used, was := d.used(), before.used()
	var own []*ingredient.Ingredient
	carried := map[string]bool{}
	for _, in := range d.Own {
		if slices.Contains(used, in.ID) || !slices.Contains(was, in.ID) {
			own = append(own, in)
			carried[in.ID] = true
		}
	}
	for _, id := range used {
		if in, ok := lib.Find(id); ok && in.Own && !carried[id] {
			own = append(own, in)
		}
	}
	if !slices.Equal(own, d.Own) {
		d.Own = own
	}
	return d
}

// WithOwnReplaced returns d with in in place of the copy of that id, if d
// carries one.
func (d Design) WithOwnReplaced(in *ingredient.Ingredient) Design {
	if i := slices.IndexFunc(d.Own, func(o *ingredient.Ingredient) bool { return o.ID == in.ID }); i >= 0 {
		d.Own = slices.Clone(d.Own)
		d.Own[i] = in
	}
	return d
}

// used returns the ids that d's lines name, each once.
func (d *Design) used() []string {
	var ids []string
	for _, p := range Parts {
		for _, l := range d.Lines(p) {
			if !slices.Contains(ids, l.Ingredient) {
				ids = append(ids, l.Ingredient)
			}
		}
	}
	return ids
}
