package kitchenpage

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/desk/stove"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// readingRow is where a step's readings are typed, and what comes of them.
type readingRow struct {
	p          *Page
	asks       []*ask
	fields     *fyne.Container
	came       *widget.Label
	keep, drop *kit.Pad
	answer     *fyne.Container
	object     *fyne.Container
}

// ask is the field of one reading.
type ask struct {
	of    process.Reading
	words *widget.Label
	field *kit.NumberField
}

// coolest to hottest is the range of the probe in the syrup, °C: that of the
// design's setting. The foam is no hotter.
const coolest, hottest = 100, 150

func newReadingRow(p *Page) *readingRow {
	r := &readingRow{p: p, fields: container.NewHBox()}
	grams := func() *kit.NumberField { return page.NumberField("g", 1, design.MaxGrams, 0) }
	for _, x := range []struct {
		of    process.Reading
		field *kit.NumberField
	}{
		{process.CustardG, grams()},
		{process.CustardCupG, grams()},
		{process.SyrupC, page.NumberField("°C", coolest, hottest, 1)},
		{process.SyrupG, grams()},
		{process.SyrupMin, page.NumberField("min", 0.5, 240, 1)},
		{process.FoamC, page.NumberField("°C", 0, hottest, 1)},
		{process.FoamCupG, grams()},
	} {
		x.field.Step = 1
		x.field.OnChanged = func(float64) { r.try() }
		a := &ask{x.of, large(say.AskReading(page.Reads, x.of)), x.field}
		r.asks = append(r.asks, a)
		r.fields.Add(a.words)
		r.fields.Add(a.field)
	}
	r.readAnew()
	r.came = page.Prose("")
	r.came.SizeName = theme.SizeNameSubHeadingText
	r.keep, r.drop = kit.NewPad(say.T("Keep"), r.kept), kit.NewPad(say.T("Put back"), r.dropped)
	r.answer = container.NewBorder(nil, nil, nil, container.NewHBox(r.drop, r.keep), r.came)
	r.object = container.NewVBox(r.fields, r.answer)
	return r
}

// readAnew words the fields in the maker's units.
func (r *readingRow) readAnew() {
	for _, a := range r.asks {
		a.words.SetText(say.AskReading(page.Reads, a.of))
		a.field.Reading(say.ReadingGauge(page.Reads, a.of, a.field.Unit))
	}
}

func large(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.SizeName = theme.SizeNameSubHeadingText
	return l
}

// fill shows the readings that the making reckons with.
func (r *readingRow) fill() {
	if r.p.now.Process == nil || r.p.trial != nil {
		return
	}
	for _, a := range r.asks {
		a.field.ShowValue(stove.ReadingOf(r.p.now, a.of))
	}
}

// show is about step; nil: none. What was typed and not kept stays in view
// whatever the step.
func (r *readingRow) show(step *process.Step) {
	var here []process.Reading
	if step != nil {
		here = r.p.making().Process.Readings(step.Code)
	}
	r.fields.Hidden = len(here) == 0
	for _, a := range r.asks {
		hidden := true
		for _, of := range here {
			hidden = hidden && of != a.of
		}
		a.words.Hidden, a.field.Hidden = hidden, hidden
	}
	if r.p.trial == nil {
		r.answer.Hide()
		return
	}
	t := r.p.trial
	var came []string
	for _, f := range t.Figures {
		came = append(came, say.Became(f.Name, f.Before, f.After))
	}
	text := say.ReadsOtherwise(t.Steps)
	if len(came) > 0 {
		text = strings.Join(came, "; ") + ". " + text
	}
	if t.Fixed {
		text += " " + say.KeepsGrams.String()
	}
	if t.Caution != "" {
		text = t.Caution
	}
	kit.SetText(r.came, text)
	r.keep.ShowPad(say.T("Keep"), t.Caution == "")
	r.drop.ShowPad(say.T("Put back"), true)
	r.answer.Show()
}

// try computes what follows from what was typed.
func (r *readingRow) try() {
	p := r.p
	if p.now.Process == nil {
		return
	}
	read := stove.Readings{}
	for _, a := range r.asks {
		read[a.of] = a.field.Value()
	}
	t, err := stove.Try(p.host.Model(), page.Reads, p.job, p.now, read)
	if err != nil {
		p.host.Say(say.Sentence(say.Flaw(err)))
		return
	}
	p.trial = &t
	if t.Nothing {
		p.trial = nil
	}
	p.show()
	p.told("kitchen reading solids=%.1f steps=%d", t.Result.Syrup.SolidsPercent, len(t.Steps))
}

// kept writes the readings into the design, as one step of undo. What a
// thermometer shows in the foam is of this batch and in no design.
func (r *readingRow) kept() {
	t := r.p.trial
	if t == nil {
		return
	}
	r.p.bowlReadC = t.BowlReadC
	if r.p.keeping != nil {
		for of, v := range t.Fresh {
			r.p.keeping(of, v, r.p.now.Design)
		}
	}
	if t.Kitchen != r.p.job.Kitchen {
		k, _ := r.p.kitchens.For(r.p.job.Design.Kitchen.Profile) // without what batches teach, which is not kept here
		k.Stove.FlameW, k.Stove.FlameMeasured = t.Kitchen.Stove.FlameW, t.Kitchen.Stove.FlameMeasured
		if err := r.p.kitchens.Keep(k, k.Name); err != nil {
			r.p.host.Say(say.Sentence(say.Flaw(err)))
		}
	}
	if t.Design.Equal(r.p.now.Design) {
		r.p.now, r.p.job, r.p.trial = t.Making, t.Job, nil
		r.fill()
		r.p.show()
	} else {
		r.p.host.Commit(t.Design, t.Name())
		r.p.Show()
	}
	r.p.focus()
}

func (r *readingRow) dropped() {
	r.p.trial = nil
	for _, a := range r.asks {
		a.field.ShowValue(math.NaN())
	}
	r.fill()
	r.p.show()
	r.p.focus()
}
