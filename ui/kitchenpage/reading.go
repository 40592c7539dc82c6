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

// readingRow is where the syrup's reading is typed, and what comes of it.
type readingRow struct {
	p          *Page
	probe      *kit.Number
	pan        *kit.Number
	fields     *fyne.Container
	came       *widget.Label
	keep, drop *kit.Pad
	answer     *fyne.Container
	object     *fyne.Container
}

// coolest to hottest is the range of the probe, °C: that of the design's setting.
const coolest, hottest = 100, 150

func newReadingRow(p *Page) *readingRow {
	r := &readingRow{p: p}
	r.probe, r.pan = kit.NewNumber("°C", coolest, hottest, 1), kit.NewNumber("g", 1, design.MaxGrams, 0)
	r.probe.Step, r.pan.Step = 1, 1
	r.probe.OnChanged, r.pan.OnChanged = func(float64) { r.try() }, func(float64) { r.try() }
	r.fields = container.NewHBox(large("The syrup reached"), r.probe, large("and weighs, without the pan,"), r.pan)
	r.came = page.Prose("")
	r.came.SizeName = theme.SizeNameSubHeadingText
	r.keep, r.drop = kit.NewPad("Keep", r.kept), kit.NewPad("Put back", r.dropped)
	r.answer = container.NewBorder(nil, nil, nil, container.NewHBox(r.drop, r.keep), r.came)
	r.object = container.NewVBox(r.fields, r.answer)
	return r
}

func large(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.SizeName = theme.SizeNameSubHeadingText
	return l
}

// fill shows the reading that the making reckons with.
func (r *readingRow) fill() {
	if r.p.now.Process == nil || r.p.trial != nil {
		return
	}
	now := stove.ReadingOf(r.p.now)
	r.probe.ShowValue(now.ProbeC)
	r.pan.ShowValue(now.WeighedG)
}

// show is about step; nil: none. What was typed and not kept stays in view
// whatever the step.
func (r *readingRow) show(step *process.Step) {
	r.fields.Hidden = step == nil || !stove.Takes(step.Code)
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
	if t.Caution != "" {
		text = t.Caution
	}
	kit.SetText(r.came, text)
	r.keep.ShowPad("Keep", t.Caution == "")
	r.drop.ShowPad("Put back", true)
	r.answer.Show()
}

// try computes what follows from what was typed.
func (r *readingRow) try() {
	p := r.p
	if p.now.Process == nil {
		return
	}
	t, err := stove.Try(p.host.Model(), page.Reads, p.job, p.now, stove.Reading{ProbeC: r.probe.Value(), WeighedG: r.pan.Value()})
	if err != nil {
		p.host.Say(page.Sentence(err.Error()))
		return
	}
	p.trial = &t
	if t.Design.Equal(p.now.Design) {
		p.trial = nil
	}
	p.show()
	p.told("kitchen reading solids=%.1f steps=%d", t.Result.Syrup.SolidsPercent, len(t.Steps))
}

// kept writes the reading into the design, as one step of undo.
func (r *readingRow) kept() {
	if t := r.p.trial; t != nil {
		r.p.host.Commit(t.Design, t.Name())
		r.p.Show()
		r.p.focus()
	}
}

func (r *readingRow) dropped() {
	r.p.trial = nil
	r.probe.ShowValue(math.NaN())
	r.fill()
	r.p.show()
	r.p.focus()
}
