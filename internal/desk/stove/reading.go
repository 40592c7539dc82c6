package stove

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/desk/making"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// Readings are what a cook has read, by what it is; what is not there was not
// read.
type Readings map[process.Reading]float64

// ReadingOf returns what a making reckons with, NaN where nobody has read it.
func ReadingOf(m say.Making, of process.Reading) float64 {
	syrup := &m.Design.Foam.Syrup
	switch {
	case of == process.SyrupC && m.Process.Syrup.Present:
		return m.Process.Syrup.ReadingC
	case of == process.SyrupG && syrup.WeighedG > 0:
		return syrup.WeighedG * m.Result.Foam.Portion.Factor
	case of == process.FoamC && m.Process.Foam.Read:
		return m.Process.Foam.PeakC
	}
	return math.NaN()
}

// Trial is a making with readings in it, beside the one it was made from.
type Trial struct {
	making.Job
	Making  say.Making
	Figures []Shift            // that read otherwise now
	Steps   []process.StepCode // from the reading on, whose words are others now
	Caution string             // why the reading cannot be; "" where it can
	Nothing bool               // it changes nothing
	Fixed   bool               // the grams of the batch stay from now on, see Fixed
	Fresh   Readings           // that the making did not reckon with before
	read    process.Reading
}

// Shift is a figure before and after, as text.
type Shift struct{ Name, Before, After string }

// Fixed returns d with its lines as they are in the pan: what was scaled to
// the tubs is written as it was weighed out, and fills what it fills.
func Fixed(d design.Design, r *model.Result) design.Design {
	if d.Batch.Basis != design.BasisTubs {
		return d
	}
	d.Batch.Basis = design.BasisAsWritten
	for _, l := range r.Lines {
		d = d.WithGrams(l.Part, l.Index, l.Grams)
	}
	d.Foam.Syrup.WeighedG *= r.Foam.Portion.Factor
	return d
}

// Try returns what becomes of base with readings. The design of base stays as it
// is. What was weighed out is in the pan and does not change; the tubs that it
// fills do.
func Try(m *model.Model, s say.Style, base making.Job, now say.Making, read Readings) (Trial, error) {
	t := Trial{Job: making.Job{Kitchen: base.Kitchen, BowlReadC: base.BowlReadC}}
	d := now.Design
	fresh := read.fresh(now)
	t.Fresh = Readings{}
	for _, of := range fresh {
		t.Fresh[of] = read[of]
	}
	for _, of := range fresh {
		if of != process.FoamC && of != process.SyrupMin { // which are in no design
			t.Fixed = d.Batch.Basis == design.BasisTubs
			d = Fixed(d, now.Result)
			break
		}
	}
	for _, of := range fresh {
		if why := t.take(&d, now, of, read[of]); why != say.Believed {
			t.Caution = say.NotBelieved(s, of, why)
		}
	}
	if t.Nothing = len(fresh) == 0; !t.Nothing {
		t.read = fresh[0]
	}
	result, err := m.Evaluate(d)
	if err != nil {
		return Trial{}, err
	}
	t.Design, t.Result = d, &result
	t.Making = making.At(t.Job, now.Cold)
	for _, w := range result.Warnings {
		if w.Code == "weighed_too_heavy" && t.Caution == "" {
			t.Caution = say.Warning(s, w)
		}
	}
	if !t.Nothing {
		t.Figures = figuresOf(s, now.Result, &result)
		t.Steps = t.changed(s, now)
	}
	return t, nil
}

// fresh returns the readings that a making does not reckon with, in the order
// of the steps.
func (read Readings) fresh(now say.Making) []process.Reading {
	var out []process.Reading
	for _, step := range now.Process.Steps {
		for _, of := range now.Process.Readings(step.Code) {
			v, ok := read[of]
			if was := ReadingOf(now, of); ok && v != was && !(math.IsNaN(v) && math.IsNaN(was)) {
				out = append(out, of)
			}
		}
	}
	return out
}

// take puts one reading into the design, or says why it cannot be.
func (t *Trial) take(d *design.Design, now say.Making, of process.Reading, v float64) say.Doubt {
	r := now.Result
	switch of {
	case process.SyrupC:
		d.Foam.Syrup.CookTemperatureC = v - now.Process.Syrup.ProbeOffsetK
	case process.SyrupG:
		d.Foam.Syrup.WeighedG = known(v)
	case process.FoamC:
		t.BowlReadC = known(v)
		if now.Process.Syrup.Present && v > now.Process.Syrup.TrueC {
			return say.TooMuch
		}
	case process.SyrupMin:
		w := now.Process.Syrup.FlameW(v, now.Process.Kitchen)
		if math.IsNaN(w) {
			return say.Believed
		}
		t.Kitchen.Stove.FlameW = w
		t.Kitchen.Stove.FlameMeasured = say.FlameMeasured(now.Process.Syrup.MassG, v)
		if t.Kitchen.Validate() != nil {
			return say.TooLittle
		}
	case process.CustardG:
		return weighed(d, now, v)
	case process.CustardCupG:
		return aired(&d.Dense.OverrunPercent, v, r.Dense.Body.MixGPerML)
	case process.FoamCupG:
		return aired(&d.Foam.OverrunPercent, v, r.Foam.Body.MixGPerML)
	}
	return say.Believed
}

// known is v, or 0 where nobody has read it.
func known(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// weighed finds what the stove has driven off a custard that weighs g.
func weighed(d *design.Design, now say.Making, g float64) say.Doubt {
	if math.IsNaN(g) {
		return say.Believed
	}
	p := &now.Result.Dense
	in := p.Portion.MadeG + p.WaterOffG*p.Portion.Factor
	off := in - p.Portion.MadeG + now.Process.Custard.WeighedG - g
	switch {
	case off < -scaleSlack*in:
		return say.TooMuch
	case off > now.Process.Custard.WaterG+now.Process.Custard.WaterOffG:
		return say.TooLittle
	}
	d.Dense.StoveLossPercent = math.Max(0, 100*off/in)
	return say.Believed
}

// scaleSlack is a kitchen scale's step beside a pan of custard: common practice,
// no source.
const scaleSlack = 0.005

func aired(overrun *float64, g, density float64) say.Doubt {
	if math.IsNaN(g) {
		return say.Believed
	}
	v := process.OverrunPercent(g, density)
	if v < -scaleSlack*100 {
		return say.TooMuch
	}
	*overrun = math.Max(0, v)
	return say.Believed
}

// watched are the figures that a reading decides.
var watched = []struct {
	of     say.Message // says whose the figure is
	table  *figure.Table
	key    string
	column int
}{
	{"%s", &figure.Syrup, "solids_percent", 0},
	{"Custard: %s", &figure.Phases, "overrun_percent", figure.Custard},
	{"Custard: %s", &figure.Phases, "initial_freezing_point_c", figure.Custard},
	{"Custard: %s", &figure.Phases, "texture", figure.Custard},
	{"Foam: %s", &figure.Phases, "overrun_percent", figure.Foam},
	{"Foam: %s", &figure.Phases, "initial_freezing_point_c", figure.Foam},
	{"Foam: %s", &figure.Phases, "hardness", figure.Foam},
	{"Foam: %s", &figure.Phases, "texture", figure.Foam},
	{"%s", &figure.Phases, "tubs_filled", figure.Tub},
}

func figuresOf(s say.Style, before, after *model.Result) []Shift {
	var out []Shift
	for _, w := range watched {
		row := w.table.Row(w.key)
		f := Shift{say.T(w.of, say.Of(row.Name)), text(s, row, row.Of(before, w.column)), text(s, row, row.Of(after, w.column))}
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

// changed returns the steps, from the first reading on, whose words or
// quantities were others before. What was done before is done.
func (t *Trial) changed(s say.Style, a say.Making) []process.StepCode {
	b := t.Making
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
		for _, r := range b.Process.Readings(step.Code) {
			follows = follows || r == t.read
		}
		if follows && before[step.Code] != of(b, i) {
			out = append(out, step.Code)
		}
	}
	return out
}

// Name names the change of keeping a trial.
func (t *Trial) Name() string { return say.Reading(t.read) }
