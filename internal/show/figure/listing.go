package figure

import (
	"slices"
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/show/say"
)

// Between names the line of a figure's band.
func Between() string { return say.Indent + say.T("between") }

// twice are figures that Phases has under another key, for JSON.
var twice = []string{"dense_left_over_ml", "foam_left_over_ml"}

// Listed is a line of a table and the figure that it tells.
type Listed struct {
	say.TableRow
	Of *Row
}

// Lined are the lines of all.
func Lined(all []Listed) []say.TableRow {
	out := make([]say.TableRow, len(all))
	for i := range all {
		out[i] = all[i].TableRow
	}
	return out
}

// All lays out every figure of the phases and the tub, each with its band: a
// name, a unit and cells for custard, foam and tub.
func All(s say.Style, r *model.Result) []say.TableRow { return Lined(List(s, r)) }

// List is All with the figures behind the lines.
func List(s say.Style, r *model.Result) []Listed {
	var out []Listed
	add := func(f *Row, name string, values ...Value) {
		l := f.Line(s, values...)
		l.Name = name
		out = append(out, Listed{l, f})
		if slices.ContainsFunc(values, func(v Value) bool { return v.Banded() && (f.WithBand || v.Made) }) {
			out = append(out, Listed{f.Band(Between(), s, values...), f})
		}
	}
	for i := range Phases.Rows {
		f := &Phases.Rows[i]
		if slices.Contains(twice, f.Key) {
			continue
		}
		add(f, say.Of(f.Name), f.Values(r, Custard, Foam, Tub)...)
		if f.Key == "mono_disaccharides_percent" {
			for _, k := range Kinds.Present(r) {
				add(k, say.Indent+say.Of(k.Name), k.Values(r, Custard, Foam, Tub)...)
			}
		}
	}
	if r.Syrup.Present && !r.Absent(&r.Foam) {
		for i := range Syrup.Rows {
			f := &Syrup.Rows[i]
			add(f, say.Of(f.Name), none, f.Of(r, 0), none)
		}
	}
	return out
}

// Computed says how a figure comes about: what it is, with its values, from what, by
// which equation, after whom, and what its band covers.
func (f *Row) Computed(s say.Style, lines []Listed, heads []string) []say.Titled {
	out := []say.Titled{}
	add := func(title, text string) {
		if text = strings.TrimSpace(text); text != "" {
			out = append(out, say.Titled{Title: title, Text: text})
		}
	}
	for _, l := range lines {
		if l.Of != f {
			continue
		}
		var cells []string
		for i, c := range l.Cells {
			if c != "" && c != say.Unknown && i < len(heads) {
				cells = append(cells, say.FigureIs(heads[i], c, l.Unit))
			}
		}
		add(say.Capital(strings.TrimSpace(l.Name)), strings.Join(cells, "; "))
	}
	if !strings.Contains(f.Help, "null") { // a word for JSON alone
		add(say.FigureMeans.String(), s.Text(say.Of(f.Help)))
	}
	add(say.FigureFrom.String(), s.Text(say.Of(f.Inputs)))
	add(say.FigureBy.String(), s.Text(say.Of(f.Equation)))
	add(say.FigureAfter.String(), f.Source)
	add(say.FigureBand.String(), s.Text(say.Of(f.Origin.Band)))
	return out
}

// Axis is the title of an axis of the figure: "hardness, kPa".
func (f *Row) Axis(s say.Style) string {
	_, unit := f.parts(s, 0, 0)
	return say.WithUnit(say.Lower(say.Of(f.Name)), unit)
}

// Values returns the row's figures in some columns.
func (f *Row) Values(r *model.Result, columns ...int) []Value {
	out := make([]Value, len(columns))
	for i, c := range columns {
		out[i] = f.Of(r, c)
	}
	return out
}

// Food lays out the nutrition, per 100 g and per serving, under heads.
func Food(s say.Style, r *model.Result) (heads []string, lines []say.TableRow) {
	heads, all := FoodList(s, r)
	return heads, Lined(all)
}

// FoodList is Food with the figures behind the lines.
func FoodList(s say.Style, r *model.Result) (heads []string, lines []Listed) {
	serving := Servings.Row("serving_g")
	heads = []string{say.Of(Nutrition.Columns[Per100G]), say.T("per %s serving", serving.Text(s, serving.Of(r, 0)))}
	for i := range Nutrition.Rows {
		f := &Nutrition.Rows[i]
		lines = append(lines, Listed{f.Line(s, f.Values(r, Per100G, PerServing)...), f})
	}
	return heads, lines
}

// GramMore lays out what a gram more of each line does: a row for each line of
// the design, under heads with their units.
func GramMore(s say.Style, r *model.Result) (heads []string, rows [][]string) {
	rows = make([][]string, len(r.Lines))
	columns := make([]int, len(r.Lines))
	for i := range columns {
		columns[i] = i
	}
	for _, f := range gramMore() {
		l := f.Line(s, f.Values(r, columns...)...)
		heads = append(heads, say.WithUnit(say.Of(f.Short), l.Unit))
		for i := range rows {
			rows[i] = append(rows[i], l.Cells[i])
		}
	}
	return heads, rows
}

// gramMore are the figures of GramMore.
func gramMore() []*Row {
	return []*Row{Lines.Row("grams"), PerGram.Row("initial_freezing_point_c"), PerGram.Row("hardness_percent"),
		PerGram.Row("sweetness_sucrose_percent"), PerGram.Row("density_g_per_ml")}
}

// GramMoreOf lists what a row of GramMore tells of one line of the design, under its head.
func GramMoreOf(s say.Style, r *model.Result, line int) (heads []string, all []Listed) {
	for _, f := range gramMore() {
		l := f.Line(s, f.Of(r, line))
		l.Name = say.Of(f.Name)
		all = append(all, Listed{l, f})
	}
	return []string{say.Kitchen(r.Lines[line].Ingredient)}, all
}

// ListOf lays out the known figures of a table of one column.
func ListOf(s say.Style, r *model.Result, t *Table) (all []Listed) {
	for i := range t.Rows {
		f := &t.Rows[i]
		if v := f.Of(r, 0); v.Known() {
			l := f.Line(s, v)
			l.Name = say.Of(f.Name)
			all = append(all, Listed{l, f})
		}
	}
	return all
}
