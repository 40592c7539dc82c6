package stove

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/desk/making"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
)

// Reading is what the syrup came to.
type Reading struct {
	ProbeC   float64 // what the maker's probe shows, °C
	WeighedG float64 // the syrup of the whole batch without its pan, g; NaN: not weighed
}

// ReadingOf returns the reading that a making reckons with.
func ReadingOf(m say.Making) Reading {
	r := Reading{m.Process.Syrup.ReadingC, math.NaN()}
	if m.Design.Foam.Syrup.WeighedG > 0 {
		r.WeighedG = m.Design.Foam.Syrup.WeighedG * m.Result.Foam.Portion.Factor
	}
	return r
}

// Takes reports whether a step has a reading.
func Takes(code process.StepCode) bool { return code == process.BoilSyrup }

// Trial is a making with a reading in it, beside the one it was made from.
type Trial struct {
	making.Job
	Making  say.Making
	Figures []Figure           // that read otherwise now
	Steps   []process.StepCode // from the reading on, whose words are others now
	Caution string             // why the reading cannot be; "" where it can
}

// Figure is a figure before and after, as text.
type Figure struct{ Name, Before, After string }

// Try returns what becomes of base with a reading. The design of base stays as
// it is. The design holds weights as written, the pan those of the batch.
func Try(m *model.Model, s say.Style, base making.Job, now say.Making, r Reading) (Trial, error) {
	d := now.Design
	d.Foam.Syrup.CookTemperatureC = r.ProbeC - now.Process.Syrup.ProbeOffset
	d.Foam.Syrup.WeighedG = 0
	if r.WeighedG > 0 {
		d.Foam.Syrup.WeighedG = r.WeighedG / now.Result.Foam.Portion.Factor
	}
	result, err := m.Evaluate(d)
	if err != nil {
		return Trial{}, err
	}
	t := Trial{Job: making.Job{Design: d, Result: &result, Kitchen: base.Kitchen}}
	t.Making = making.At(t.Job, now.Cold)
	for _, w := range result.Warnings {
		if w.Code == "weighed_too_heavy" {
			t.Caution = say.Warning(s, w)
		}
	}
	t.Figures = figuresOf(s, now.Result, &result)
	t.Steps = changed(s, now, t.Making)
	return t, nil
}

// watched are the figures that a boil decides.
var watched = []struct {
	of     string // before the name, where it is not the syrup's
	table  *figure.Table
	key    string
	column int
}{
	{"", &figure.Syrup, "solids_percent", 0},
	{"Foam: ", &figure.Phases, "initial_freezing_point_c", figure.Foam},
	{"Foam: ", &figure.Phases, "hardness", figure.Foam},
	{"Foam: ", &figure.Phases, "texture", figure.Foam},
}

func figuresOf(s say.Style, before, after *model.Result) []Figure {
	var out []Figure
	for _, w := range watched {
		row := w.table.Row(w.key)
		f := Figure{w.of + row.Name, text(s, row, row.Of(before, w.column)), text(s, row, row.Of(after, w.column))}
		if f.Before != f.After {
			out = append(out, f)
		}
	}
	return out
}

// text writes a figure to its finest digit: its band is of what both sides of
// the comparison share.
func text(s say.Style, row *figure.Row, v figure.Value) string {
	v.Low, v.High = math.NaN(), math.NaN()
	return row.Text(s, v)
}

// changed returns the steps of b, from the reading on, whose words or quantities
// a has not. What was done before is done.
func changed(s say.Style, a, b say.Making) []process.StepCode {
	type words struct {
		say.Titled
		things string
	}
	of := func(m say.Making, i int) words {
		step := &m.Process.Steps[i]
		w := words{Titled: say.Step(s, m, step)}
		for _, q := range say.Quantities(s, m, step) {
			w.things += q.Amount + q.Name
		}
		return w
	}
	before := map[process.StepCode]words{}
	for i, step := range a.Process.Steps {
		before[step.Code] = of(a, i)
	}
	var out []process.StepCode
	follows := false
	for i, step := range b.Process.Steps {
		follows = follows || Takes(step.Code)
		if follows && before[step.Code] != of(b, i) {
			out = append(out, step.Code)
		}
	}
	return out
}

// Name names the change of keeping a trial.
func (t *Trial) Name() string {
	if t.Design.Foam.Syrup.WeighedG > 0 {
		return "syrup weighed"
	}
	return "syrup's temperature"
}
