package report

import (
	"encoding/json"
	"io"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/compare"
	"ripplewright/internal/work/design"
)

// Difference is one design beside another.
type Difference struct {
	Files         [2]string
	Before, After *model.Result
	Of            compare.Differences
}

// name is an ingredient's name in the kitchen; its id where a library lacks it.
func (d Difference) name(id string) string {
	for _, r := range [...]*model.Result{d.After, d.Before} {
		for i := range r.Lines {
			if r.Lines[i].Ingredient.ID == id {
				return say.Kitchen(r.Lines[i].Ingredient)
			}
		}
	}
	return id
}

// figures are those that differ; changes of a digit that nobody reads are left
// out of the text.
func (d Difference) figures() []figure.Change { return figure.Differing(d.Before, d.After) }

// Same reports whether nothing differs.
func (d Difference) Same() bool { return d.Of.None() && len(d.figures()) == 0 }

// WriteText writes what differs.
func (d Difference) WriteText(w io.Writer) error {
	p := &page{w: w}
	if d.Same() {
		p.line("%s", say.SameDesign.String())
		return p.err
	}
	p.line("%s", say.FromTo(d.Files[0], d.Files[1]))
	list := func(head string, texts []string) {
		if len(texts) == 0 {
			return
		}
		p.line("")
		p.line("%s:", head)
		for _, t := range texts {
			p.line("    %s", t)
		}
	}
	list(say.LinesDiffer.String(), say.LineDifferences(Reads, d.Of, d.name))
	var settings []string
	for _, s := range d.Of.Settings {
		settings = append(settings, say.SettingDifference(Reads, s))
	}
	list(say.SettingsDiffer.String(), settings)
	p.line("")
	var rows []say.TableRow
	for _, c := range d.figures() {
		was, is := c.Text(Reads)
		from, to := c.Bands(Reads)
		if was == is && from == to {
			continue
		}
		rows = append(rows, say.TableRow{Name: c.Name, Cells: []string{was, is}})
		if from != "" || to != "" {
			rows = append(rows, say.TableRow{Name: figure.Between(), Cells: []string{from, to}})
		}
	}
	if len(rows) == 0 {
		p.line("%s", say.FiguresDifferNot.String())
		return p.err
	}
	p.line("%s:", say.FiguresDiffer.String())
	p.lines([]string{say.T("before"), say.T("after")}, rows)
	return p.err
}

// MarshalJSON writes it: each line with its part and ingredient, before and
// after null where a design has no such line; settings by their place in the
// file; figures by their key in evaluate --json.
func (d Difference) MarshalJSON() ([]byte, error) {
	lines, settings, figures, own, order := []dict{}, []dict{}, []dict{}, []dict{}, []string{}
	for _, l := range d.Of.Lines {
		lines = append(lines, dict{"part": l.Part.String(), "ingredient": l.Ingredient(), "name": d.name(l.Ingredient()), "before": lineJSON(l.Before), "after": lineJSON(l.After)})
	}
	for _, p := range d.Of.Reordered {
		order = append(order, p.String())
	}
	for _, s := range d.Of.Settings {
		settings = append(settings, dict{"path": s.Field.Path, "unit": s.Field.Unit, "before": settingJSON(s.Field, &s.Before), "after": settingJSON(s.Field, &s.After)})
	}
	for _, o := range d.Of.Own {
		own = append(own, dict{"id": o.ID, "before": o.Before != nil, "after": o.After != nil})
	}
	for _, c := range d.figures() {
		figures = append(figures, dict{"key": c.Key, "name": c.Name, "before": valueJSON(c.Before), "after": valueJSON(c.After),
			"before_band": valueBandJSON(c.Before), "after_band": valueBandJSON(c.After)})
	}
	return json.Marshal(dict{"files": d.Files, "same": d.Same(), "lines": lines, "reordered": order, "settings": settings, "own": own, "figures": figures})
}

// valueJSON is a figure's number, its word where it has none.
func valueJSON(v figure.Value) any {
	if v.Word != "" && !v.Known() {
		return v.Word
	}
	return Number(v.Value)
}

// valueBandJSON is a figure's band, null where it has none.
func valueBandJSON(v figure.Value) any {
	return endsJSON(v.Banded() && v.Bound == figure.Exact, v.Low, v.High)
}

func endsJSON(has bool, low, high float64) any {
	if !has {
		return nil
	}
	return Ends{Number(low), Number(high)}
}

func lineJSON(l *design.Line) any {
	switch {
	case l == nil:
		return nil
	case l.Count > 0:
		return dict{"count": Number(l.Count), "of": string(l.CountOf), "note": l.Note}
	}
	return dict{"grams": Number(l.Grams), "note": l.Note}
}

func settingJSON(f setting.Field[design.Design], d *design.Design) any {
	switch v := f.At(d).(type) {
	case *float64:
		return Number(*v)
	case *int:
		return *v
	case *int64:
		return *v
	}
	return f.Text(d)
}
