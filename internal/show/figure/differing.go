package figure

import (
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/say"
)

// differing are the tables that two designs are compared by, with the place in
// JSON of each column.
var differing = []struct {
	table *Table
	at    []string
}{
	{&Phases, []string{"dense.", "foam.", "blend."}},
	{&Syrup, []string{"foam.syrup."}},
	{&Batch, []string{"batch.dense.", "batch.foam."}},
	{&Eggs, []string{"eggs."}},
	{&Cost, []string{"cost."}},
}

// Differing returns every figure that two results do not share, in the order of
// the tables. Both are of any designs.
func Differing(before, after *model.Result) []Change {
	var out []Change
	for _, p := range Beside {
		if x, y := p.Row.Of(before, p.Column), p.Row.Of(after, p.Column); !x.same(y) {
			out = append(out, Change{p.Key, p.Name(), x, y, p.Row})
		}
	}
	return out
}

// A Place is a figure of one column, as it stands in JSON.
type Place struct {
	Key    string
	Row    *Row
	Column int

	column string // of the table, in English
}

// Name is column and figure: "Custard: Fat".
func (p *Place) Name() string { return say.Capital(say.Of(p.column)) + ": " + say.Of(p.Row.Name) }

// Beside are the figures by which designs are laid side by side, in the order of
// the tables.
var Beside = func() []Place {
	var out []Place
	for _, d := range differing {
		for i := range d.table.Rows {
			f := &d.table.Rows[i]
			if d.table == &Phases && slices.Contains(twice, f.Key) {
				continue
			}
			for column, at := range d.at {
				if f.In(column) {
					out = append(out, Place{at + f.Key, f, column, d.table.Columns[column]})
				}
			}
		}
	}
	return out
}()

func (v Value) same(o Value) bool {
	same := func(x, y float64) bool { return x == y || x != x && y != y }
	return same(v.Value, o.Value) && same(v.Low, o.Low) && same(v.High, o.High) && v.Bound == o.Bound && v.Word == o.Word && v.Currency == o.Currency
}
