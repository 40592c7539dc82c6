// Package beside lays designs side by side: what each has of every line, of the
// settings in which they differ and of every figure, with a mark where not all are
// the same.
package beside

import (
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/compare"
	"ripplewright/internal/work/design"
)

// A Side is one of the designs.
type Side struct {
	Name   string // of its file or version
	Design design.Design
	Result *model.Result
}

// A Row is one thing, with what each side has of it.
type Row struct {
	Key     string // its place in JSON, a promise
	Name    string
	Unit    string
	Cells   []string     // as read
	Values  []any        // a number, a word, or nil for nothing
	Bands   []string     // as read, "" for none; nil where no side has one
	Ends    [][2]float64 // of a figure's band, NaN for none
	Differs bool         // in value or band
}

// Table is all rows, by what they are.
type Table struct {
	Names                    []string
	Lines, Settings, Figures []Row
}

// Of lays sides, of which there is one at least, side by side.
func Of(s say.Style, sides []Side) Table {
	t := Table{}
	for _, x := range sides {
		t.Names = append(t.Names, x.Name)
	}
	t.Lines = lines(s, sides)
	t.Settings = settings(s, sides)
	t.Figures = figures(s, sides)
	return t
}

// Same reports whether all sides are the same in everything.
func (t Table) Same() bool {
	for _, rows := range [...][]Row{t.Lines, t.Settings, t.Figures} {
		if slices.ContainsFunc(rows, func(r Row) bool { return r.Differs }) {
			return false
		}
	}
	return true
}

// Part is the rows of one kind, of which there are some.
type Part struct {
	Head string
	Rows []Row
}

// Parts are all rows, or those only that differ, kind by kind.
func (t Table) Parts(only bool) []Part {
	var out []Part
	for _, p := range [...]Part{{say.LinesDiffer.String(), t.Lines}, {say.SettingsDiffer.String(), t.Settings}, {say.FiguresDiffer.String(), t.Figures}} {
		if only {
			p.Rows = slices.DeleteFunc(slices.Clone(p.Rows), func(r Row) bool { return !r.Differs })
		}
		if len(p.Rows) > 0 {
			out = append(out, p)
		}
	}
	return out
}

// Laid are rows for a table, those that differ with the mark before their names, each
// with its band on the line under it.
func Laid(rows []Row) []say.TableRow {
	var out []say.TableRow
	for _, r := range rows {
		out = append(out, say.TableRow{Name: say.DifferingName(r.Name, r.Differs), Unit: r.Unit, Cells: r.Cells})
		if r.Bands != nil {
			out = append(out, say.TableRow{Name: figure.Between(), Cells: r.Bands})
		}
	}
	return out
}

// lines pairs the lines of one ingredient in the order they come: the second sugar of
// one design stands beside the second of another.
func lines(s say.Style, sides []Side) []Row {
	type place struct {
		part design.Part
		of   string
		nth  int
	}
	var order []place
	found := map[place][]*model.BatchLine{}
	for k, x := range sides {
		seen := map[place]int{}
		for i := range x.Result.Lines {
			l := &x.Result.Lines[i]
			at := place{l.Part, l.Ingredient.ID, 0}
			seen[at]++
			at.nth = seen[at]
			if found[at] == nil {
				found[at] = make([]*model.BatchLine, len(sides))
				order = append(order, at)
			}
			found[at][k] = l
		}
	}
	slices.SortStableFunc(order, func(a, b place) int { return int(a.part) - int(b.part) })
	var out []Row
	for _, at := range order {
		r := Row{Key: at.part.String() + "." + at.of}
		for _, l := range found[at] {
			if l == nil {
				r.Cells, r.Values = append(r.Cells, ""), append(r.Values, nil)
				continue
			}
			r.Name = say.Capital(say.Part(at.part)) + ": " + say.Kitchen(l.Ingredient)
			r.Cells, r.Values = append(r.Cells, s.Mass(l.Grams)), append(r.Values, l.Grams)
		}
		r.Differs = differ(r.Cells)
		out = append(out, r)
	}
	return out
}

// settings are those in which one side is not as the first.
func settings(s say.Style, sides []Side) []Row {
	var out []Row
	for _, f := range design.Fields() {
		r := Row{Key: f.Path, Name: say.Capital(say.SettingName(f.Path)), Unit: s.Gauge(f.Unit).Unit}
		for _, x := range sides {
			d := x.Design
			r.Cells = append(r.Cells, say.SettingText(s, compare.Setting{Field: f, Before: d, After: d}))
			r.Values = append(r.Values, value(f.At(&d)))
		}
		if r.Differs = differ(r.Cells); r.Differs {
			out = append(out, r)
		}
	}
	return out
}

func value(at any) any {
	switch v := at.(type) {
	case *float64:
		return *v
	case *int:
		return *v
	case *int64:
		return *v
	case *string:
		return *v
	}
	return nil
}

// figures are all that any side has.
func figures(s say.Style, sides []Side) []Row {
	var out []Row
	for _, f := range figure.Beside {
		r := Row{Key: f.Key, Name: f.Name()}
		any := false
		var values []figure.Value
		for _, x := range sides {
			v := f.Row.Of(x.Result, f.Column)
			values, r.Ends = append(values, v), append(r.Ends, [2]float64{v.Low, v.High})
			any = any || v.Known() || v.Word != ""
			r.Cells = append(r.Cells, f.Row.Text(s, v))
			switch {
			case v.Known():
				r.Values = append(r.Values, v.Value)
			case v.Word != "":
				r.Values = append(r.Values, v.Word)
			default:
				r.Values = append(r.Values, nil)
			}
		}
		r.Bands = f.Row.Bands(s, values...)
		if r.Differs = differ(r.Cells) || differ(r.Bands); any {
			out = append(out, r)
		}
	}
	return out
}

// differ reports whether not all that is read is the same.
func differ(cells []string) bool {
	return slices.ContainsFunc(cells, func(c string) bool { return c != cells[0] })
}
