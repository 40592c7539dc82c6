// Package compare tells in what two designs differ: lines, settings and own
// ingredients. It gives facts; package say words them, and the figures that
// follow are package figure's.
package compare

import (
	"slices"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/work/design"
)

// Differences are all between two designs, in the order of a design file.
type Differences struct {
	Lines     []LineChange
	Reordered []design.Part // whose lines are the same ones in another order
	Settings  []Setting
	Own       []Own
}

// LineChange is a line that only one design has, or that says something else in the
// other. One of the two may be nil.
type LineChange struct {
	Part          design.Part
	Before, After *design.Line
}

// Ingredient is what the line is of.
func (l LineChange) Ingredient() string {
	if l.After != nil {
		return l.After.Ingredient
	}
	return l.Before.Ingredient
}

// Setting is a field whose value differs.
type Setting struct {
	Field         setting.Field[design.Design]
	Before, After design.Design // that hold the values
}

// Own is an own ingredient that differs; nil where a design has none of its id.
type Own struct {
	ID            string
	Before, After *ingredient.Ingredient
}

// None reports whether the designs are the same.
func (d Differences) None() bool {
	return len(d.Lines) == 0 && len(d.Reordered) == 0 && len(d.Settings) == 0 && len(d.Own) == 0
}

// Between returns what turns a into b. It is empty exactly if a.Equal(b), but
// for the order of own ingredients, which says nothing.
func Between(a, b design.Design) Differences {
	var d Differences
	for _, p := range design.Parts {
		lines, reordered := between(p, a.Lines(p), b.Lines(p))
		d.Lines = append(d.Lines, lines...)
		if reordered {
			d.Reordered = append(d.Reordered, p)
		}
	}
	for _, f := range design.Fields() {
		if f.Text(&a) != f.Text(&b) {
			d.Settings = append(d.Settings, Setting{f, a, b})
		}
	}
	d.Own = own(a.Own, b.Own)
	return d
}

// between pairs the lines of one ingredient in the order they come, lines that
// are the same first.
func between(p design.Part, a, b []design.Line) (out []LineChange, reordered bool) {
	partner := make([]int, len(a)) // in b, -1 for none
	taken := make([]bool, len(b))
	for i := range a {
		partner[i] = -1
	}
	for _, fits := range [...]func(x, y design.Line) bool{
		func(x, y design.Line) bool { return x == y },
		func(x, y design.Line) bool { return x.Ingredient == y.Ingredient },
	} {
		for i := range a {
			for j := range b {
				if partner[i] < 0 && !taken[j] && fits(a[i], b[j]) {
					partner[i], taken[j] = j, true
				}
			}
		}
	}
	last := -1
	for i, j := range partner {
		switch {
		case j < 0:
			out = append(out, LineChange{p, &a[i], nil})
			continue
		case a[i] != b[j]:
			out = append(out, LineChange{p, &a[i], &b[j]})
		}
		reordered = reordered || j < last
		last = max(last, j)
	}
	for j := range b {
		if !taken[j] {
			out = append(out, LineChange{p, nil, &b[j]})
		}
	}
	return out, reordered
}

func own(a, b []*ingredient.Ingredient) (out []Own) {
	find := func(list []*ingredient.Ingredient, id string) *ingredient.Ingredient {
		if i := slices.IndexFunc(list, func(in *ingredient.Ingredient) bool { return in.ID == id }); i >= 0 {
			return list[i]
		}
		return nil
	}
	for _, x := range a {
		if y := find(b, x.ID); y == nil || !x.Equal(y) {
			out = append(out, Own{x.ID, x, y})
		}
	}
	for _, y := range b {
		if find(a, y.ID) == nil {
			out = append(out, Own{y.ID, nil, y})
		}
	}
	return out
}
