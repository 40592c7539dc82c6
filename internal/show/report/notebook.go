package report

import (
	"io"
	"math"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
)

// Batches are those of a notebook beside what was forecast of them.
type Batches struct {
	File     string // of the notebook
	Notebook *batch.Notebook
	Taught   *learn.Posterior
}

// WriteText writes a small table for each batch.
func (l Batches) WriteText(w io.Writer) error {
	p := &page{w: w}
	if len(l.Notebook.Batches) == 0 {
		p.line("%s: %s", l.File, say.NoBatches.String())
	}
	for i := range l.Notebook.Batches {
		if i > 0 {
			p.line("")
		}
		p.batch(i, &l.Notebook.Batches[i], l.Taught)
	}
	if text := say.BatchesCutOff(Reads, l.Notebook.CutOff); text != "" {
		p.line("")
		p.line("%s", text)
	}
	return p.err
}

// batch writes one of them.
func (p *page) batch(i int, b *batch.Batch, taught *learn.Posterior) {
	p.line("%s", say.BatchTitle(b))
	pairs := taught.Pairs(i, b)
	if len(pairs) == 0 {
		p.line("  %s", say.NothingMeasured.String())
	} else {
		rows := []string{left("", batchColumn) + "\t" + say.BatchPairHeads()[1] + "\t" + say.BatchPairHeads()[2]}
		for k := range pairs {
			q := &pairs[k]
			rows = append(rows, left("  "+say.BatchMeasured(q.Path), batchColumn)+"\t"+say.BatchValue(Reads, q.Path, q.Expected)+"\t"+say.BatchGot(Reads, q))
		}
		p.table(rows)
	}
	if b.Words != "" {
		p.line("  %s", b.Words)
	}
}

// batchColumn is the width of what was measured, letters.
const batchColumn = 28

// MarshalJSON writes file, batches, off and cut_off. A batch has what the file says of it
// by the keys of the file, and pairs: what was measured beside its forecast.
func (l Batches) MarshalJSON() ([]byte, error) {
	batches := []object{}
	for i := range l.Notebook.Batches {
		batches = append(batches, batchObject(i, &l.Notebook.Batches[i], l.Taught))
	}
	cut := l.Notebook.CutOff
	if cut == nil {
		cut = []int{}
	}
	return object{{"file", l.File}, {"batches", batches}, {"off", words(l.Notebook.Off)}, {"cut_off_lines", cut}}.MarshalJSON()
}

func batchObject(i int, b *batch.Batch, taught *learn.Posterior) object {
	o := object{}
	for _, f := range batch.Entries() {
		switch text := f.Text(b); {
		case f.Path == "off":
		case f.Kind() == setting.KindList:
			o.put(f.Path, words(*f.Of(b).(*[]string)))
		case text == "":
			o.put(f.Path, nil)
		case f.Kind() == setting.KindNumber:
			v, _ := f.Of(b).(setting.Maybe).Get()
			o.put(f.Path, Number(v))
		default:
			o.put(f.Path, text)
		}
	}
	pairs := []object{}
	for _, q := range taught.Pairs(i, b) {
		pairs = append(pairs, object{{"path", q.Path}, {"word", word(q.Word)}, {"expected", Number(q.Expected)}, {"measured", Number(q.Measured)},
			{"low", Number(q.Low)}, {"high", Number(q.High)}, {"slip", q.Slip}})
	}
	o.put("pairs", pairs)
	return o
}

func words(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

// Learnt is what batches teach.
type Learnt struct {
	File     string
	Notebook *batch.Notebook
	Taught   *learn.Posterior
	Next     batch.Forecast // of the design as it is, as published
}

// WriteText writes the table of factors, the slips and what to measure next.
func (l Learnt) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("%s: %s", l.File, Reads.Count(l.Taught.Batches, "batch", "batches"))
	p.line("")
	width := 0
	for f := range learn.NumFactors {
		width = max(width, len([]rune(say.Learnt(f))))
	}
	row := func(cells []string) string {
		text := left(cells[0], width)
		for _, c := range cells[1:] {
			text += "\t" + c
		}
		return text
	}
	rows := []string{row(say.LearntHeads())}
	for f := range learn.NumFactors {
		rows = append(rows, row(say.LearntRow(Reads, l.Taught, f)))
	}
	p.table(rows)
	p.line("%s", say.LearntHow.String())
	slips := l.Taught.Slips()
	p.line("")
	if len(slips) == 0 {
		p.line("%s", say.NoSlips.String())
	}
	for i := range slips {
		p.line("%s", say.Slip(Reads, &l.Notebook.Batches[slips[i].Batch], &slips[i]))
	}
	for _, text := range say.NextBatch(Reads, l.Taught, &l.Next) {
		p.line("%s", text)
	}
	p.line("")
	p.asked(l.Taught, &l.Next)
	return p.err
}

// mostAsked is how many measurements are proposed.
const mostAsked = 4

func (p *page) asked(taught *learn.Posterior, next *batch.Forecast) {
	list := taught.Ask(next)
	if len(list) == 0 {
		p.line("%s", say.AskedNothing.String())
		return
	}
	p.line("%s:", say.AskedMost.String())
	for i := range list[:min(mostAsked, len(list))] {
		p.line("  %s", say.Ask(Reads, &list[i]))
	}
}

// MarshalJSON writes file, batches, factors, slips, next and ask.
func (l Learnt) MarshalJSON() ([]byte, error) {
	prior := learn.Prior()
	factors := []object{}
	for f := range learn.NumFactors {
		low, _, high := prior.Factors[f].Band(f)
		nowLow, v, nowHigh := l.Taught.Factors[f].Band(f)
		unit := "points"
		switch {
		case f.IsRatio():
			unit = "ratio"
		case f == learn.Probe || f == learn.FreezerK:
			unit = "K"
		}
		factors = append(factors, object{{"factor", f.String()}, {"name", say.Learnt(f)}, {"unit", unit}, {"on", !l.Taught.Off[f]},
			{"prior", object{{"low", Number(low)}, {"high", Number(high)}}}, {"data", l.data(f)},
			{"value", Number(v)}, {"low", Number(nowLow)}, {"high", Number(nowHigh)}, {"width_left", Number(l.Taught.Narrower(f))}})
	}
	slips := []string{}
	for _, o := range l.Taught.Slips() {
		slips = append(slips, say.Slip(Reads, &l.Notebook.Batches[o.Batch], &o))
	}
	band := func(low, v, high float64) object {
		return object{{"low", Number(low)}, {"value", Number(v)}, {"high", Number(high)}}
	}
	return object{{"file", l.File}, {"batches", l.Taught.Batches}, {"factors", factors}, {"slips", slips},
		{"next", object{{"minutes_out", band(l.Taught.Minutes(&l.Next))}, {"hardness_kpa", band(l.Taught.HardnessKPa(&l.Next))}}}, {"ask", questions(l.Taught, &l.Next)}}.MarshalJSON()
}

// questions are what measuring next time would be worth.
func questions(taught *learn.Posterior, next *batch.Forecast) []object {
	out := []object{}
	for _, q := range taught.Ask(next) {
		out = append(out, object{{"path", q.Path}, {"minutes_width_left", Number(q.MinutesLeftFraction)}, {"hardness_width_left", Number(q.HardnessLeftFraction)}, {"sentence", say.Ask(Reads, &q)}})
	}
	return out
}

// data is what each measurement says alone of a factor.
func (l Learnt) data(f learn.Factor) []object {
	out := []object{}
	for _, o := range l.Taught.Observations {
		if o.Of != f {
			continue
		}
		low, v, high := o.In()
		chance := math.Round(1000*o.Chance) / 1000
		out = append(out, object{{"batch", l.Notebook.Batches[o.Batch].ID}, {"path", o.Path}, {"value", Number(v)}, {"low", Number(low)}, {"high", Number(high)},
			{"chance_no_slip", Number(chance)}, {"slip", o.Slip()}})
	}
	return out
}

// Added is a batch that was just written down, and what it says.
type Added struct {
	File     string
	Logged   learn.Logged
	Notebook *batch.Notebook
	Taught   *learn.Posterior
}

// at is its place in the notebook.
func (a Added) at() int {
	for i := range a.Notebook.Batches {
		if a.Notebook.Batches[i].ID == a.Logged.Entry.ID {
			return i
		}
	}
	return -1
}

// slips are those of this batch.
func (a Added) slips() []string {
	out := []string{}
	for _, o := range a.Taught.Slips() {
		if o.Batch == a.at() {
			out = append(out, say.Slip(Reads, &a.Notebook.Batches[o.Batch], &o))
		}
	}
	return out
}

// WriteText writes the batch beside its forecast, its slips and what to measure next.
func (a Added) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("%s", say.BatchWritten(a.File))
	p.batch(a.at(), &a.Logged.Whole, a.Taught)
	if a.Logged.OtherDesign {
		p.line("%s", say.BatchOtherDesign.String())
	}
	for _, text := range a.slips() {
		p.line("%s", text)
	}
	p.line("")
	p.asked(a.Taught, &a.Logged.Whole.Forecast)
	return p.err
}

// MarshalJSON writes file, batch, other_design, slips and ask.
func (a Added) MarshalJSON() ([]byte, error) {
	return object{{"file", a.File}, {"batch", batchObject(a.at(), &a.Logged.Whole, a.Taught)}, {"other_design", a.Logged.OtherDesign},
		{"slips", a.slips()}, {"ask", questions(a.Taught, &a.Logged.Whole.Forecast)}}.MarshalJSON()
}
