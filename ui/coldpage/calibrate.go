package coldpage

import (
	"context"
	"math"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// calibrator asks for one measured time, finds the factor away from the
// window's thread, and shows what it changes before it is kept.
type calibrator struct {
	p       *Page
	kind    cold.MeasurementKind
	typed   map[string]*kit.NumberField // by the path of a measurement's field
	word    *widget.Label
	table   *kit.Figures
	busy    *widget.ProgressBarInfinite
	compute *kit.Button
	keep    *kit.Button
	dialog  *dialog.CustomDialog

	work  *newest.Answers[coldview.Calibration, coldview.Found]
	found coldview.Found
}

// calibrate opens the dialog.
func (p *Page) calibrate(kind cold.MeasurementKind) *calibrator {
	c := &calibrator{p: p, kind: kind, typed: map[string]*kit.NumberField{},
		word: page.Prose(""), table: kit.NewFigures(say.T("before"), say.T("after")), busy: widget.NewProgressBarInfinite()}
	c.work = newest.NewAnswers(p.host.Post, func(ctx context.Context, q coldview.Calibration) (coldview.Found, error) { return q.Find(ctx) }, c.done)
	c.busy.Stop()
	c.busy.Hide()
	c.table.Hide()
	form := container.New(layout.NewFormLayout())
	var numbers []*kit.NumberField
	for _, f := range cold.MeasurementFields(kind) {
		n := page.NumberField(f.Unit, f.Min, f.Max, 1)
		n.OnChanged, n.Submits = func(float64) { c.forget() }, true
		c.typed[f.Path], numbers = n, append(numbers, n)
		form.Add(widget.NewLabel(say.Capital(say.Of(f.About))))
		form.Add(n)
	}
	kit.LineUp(numbers...)
	if kind == cold.CoreAt && p.answer != nil {
		c.typed["start_c"].ShowValue(math.Round(10*p.answer.Harden.StartC) / 10)
		c.typed["core_c"].ShowValue(p.answer.Harden.MoveC)
	}
	c.compute = kit.NewButton(say.T("Compute"), c.run)
	c.compute.Importance = widget.HighImportance
	c.keep = kit.NewButton(say.T("Keep"), c.accept)
	c.keep.Disable()
	body := container.NewVBox(page.Prose(say.HowToMeasure(kind)), form, c.busy, c.word, c.table)
	buttons := container.NewHBox(layout.NewSpacer(), kit.NewCancel(say.T("Cancel"), c.close), c.compute, c.keep)
	c.dialog = dialog.NewCustomWithoutButtons(say.CalibrationTitle(kind, p.kitchen.Name), container.NewBorder(nil, buttons, nil, nil, kit.NewRoll(body)), p.host.Window())
	c.dialog.SetOnClosed(mishap.Func(c.work.Stop))
	c.dialog.Resize(page.Room(p.host.Window().Canvas(), 37, 31))
	c.dialog.Show()
	p.host.Window().Canvas().Focus(c.typed[cold.MeasurementFields(kind)[0].Path].Focusable())
	return c
}

// forget drops what was found: the measurement has changed.
func (c *calibrator) forget() {
	c.work.Stop()
	c.makeMain(c.compute, c.keep)
	c.keep.Disable()
	c.table.Hide()
	c.tell("")
}

// tell ends the waiting with what there is to say.
func (c *calibrator) tell(text string) {
	c.busy.Stop()
	c.busy.Hide()
	c.word.SetText(text)
}

// makeMain makes one button the one that is meant next.
func (c *calibrator) makeMain(yes, no *kit.Button) {
	yes.Importance, no.Importance = widget.HighImportance, widget.MediumImportance
	yes.Refresh()
	no.Refresh()
}

// run finds the factor and the plan with it.
func (c *calibrator) run() {
	m := cold.Measurement{Kind: c.kind}
	for _, f := range cold.MeasurementFields(c.kind) {
		n := c.typed[f.Path]
		*f.At(&m).(*float64) = n.Value()
		if n.Problem() != nil {
			*f.At(&m).(*float64) = math.NaN()
		}
	}
	c.forget()
	if wrong := coldview.Measurable(page.Reads, m, &c.p.kitchen); wrong != "" {
		c.tell(wrong)
		return
	}
	c.busy.Show()
	c.busy.Start()
	r := *c.p.host.Result() // the session's is overwritten by the next
	c.work.Ask(coldview.Calibration{Design: c.p.host.Design(), Result: &r, Kitchen: c.p.kitchen, Measurement: m})
}

func (c *calibrator) done(_ coldview.Calibration, found coldview.Found, err error) {
	if err != nil {
		c.tell(say.NotCalibrated(page.Reads, c.kind, err))
		return
	}
	c.found = found
	c.tell(say.Calibrated(page.Reads, c.kind, coldview.PlaceOf(&found.Kitchen, c.kind).Factor))
	c.table.ShowFigures(coldview.ChangeRows(page.Reads, c.kind, &found.Before, &found.After))
	c.table.Show()
	c.makeMain(c.keep, c.compute)
	c.keep.Enable()
}

// accept keeps what was found, and what was before for Undo.
func (c *calibrator) accept() {
	c.p.replaced.Remember(c.p.kitchen, c.kind)
	at := coldview.PlaceOf(&c.found.Kitchen, c.kind)
	c.p.setFactor(c.kind, at.Factor, at.Measured, say.CalibrationStep(page.Reads, at.Measured))
	c.close()
}

func (c *calibrator) close() { c.dialog.Hide() }
