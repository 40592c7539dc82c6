package coldpage

import (
	"context"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// calibrator asks for one measured time, finds the factor away from the
// window's thread, and shows what it changes before it is kept.
type calibrator struct {
	p       *Page
	kind    cold.MeasurementKind
	minutes *kit.Number
	core    *kit.Number
	start   *kit.Number
	word    *widget.Label
	table   *kit.Figures
	busy    *widget.ProgressBarInfinite
	compute *kit.Button
	keep    *kit.Button
	dialog  *dialog.CustomDialog

	cancel context.CancelFunc
	found  cold.Profile
}

// calibrate opens the dialog.
func (p *Page) calibrate(kind cold.MeasurementKind) *calibrator {
	c := &calibrator{p: p, kind: kind, cancel: func() {},
		minutes: kit.NewNumber("min", 1, 6000, 0), core: kit.NewNumber("°C", -40, 0, 1), start: kit.NewNumber("°C", -30, 40, 1),
		word: page.Prose(""), table: kit.NewFigures("before", "after"), busy: widget.NewProgressBarInfinite()}
	c.busy.Stop()
	c.busy.Hide()
	c.table.Hide()
	for _, n := range [...]*kit.Number{c.minutes, c.core, c.start} {
		n.OnChanged = func(float64) { c.forget() }
	}
	form := container.New(layout.NewFormLayout())
	add := func(name string, n *kit.Number) { form.Add(widget.NewLabel(name)); form.Add(n) }
	intro := "Take a tub of this design, filled as it says, from the freezer and stand it on the counter. How long is it until the outer ring scoops just right?"
	if kind == cold.CoreAt {
		intro = "Stand a tub of this design, filled as it says, in the freezer with a thermometer in its core."
		add("It goes in at", c.start)
		add("Its core is at", c.core)
		if p.answer != nil {
			c.start.ShowValue(math.Round(10*p.answer.Harden.StartC) / 10)
			c.core.ShowValue(p.answer.Harden.MoveC)
		}
	}
	add("After", c.minutes)
	c.compute = kit.NewButton("Compute", c.run)
	c.compute.Importance = widget.HighImportance
	c.keep = kit.NewButton("Keep", c.accept)
	c.keep.Disable()
	close := kit.NewCancel("Cancel", c.close)
	body := container.NewVBox(page.Prose(intro), form, c.busy, c.word, c.table)
	content := container.NewBorder(nil, container.NewHBox(layout.NewSpacer(), close, c.compute, c.keep), nil, nil, container.NewVScroll(body))
	c.dialog = dialog.NewCustomWithoutButtons("Calibrate the "+placeName(kind)+" of “"+p.kitchen.Name+"”", content, p.host.Window())
	c.dialog.SetOnClosed(mishap.Func(func() { c.cancel() }))
	c.dialog.Resize(fyne.NewSize(520, 430))
	c.dialog.Show()
	p.host.Window().Canvas().Focus(firstOf(kind, c))
	return c
}

func firstOf(kind cold.MeasurementKind, c *calibrator) fyne.Focusable {
	if kind == cold.CoreAt {
		return c.start.Focusable()
	}
	return c.minutes.Focusable()
}

// forget drops what was found: the measurement has changed.
func (c *calibrator) forget() {
	c.cancel()
	c.makeMain(c.compute, c.keep)
	c.keep.Disable()
	c.table.Hide()
	c.word.SetText("")
	c.busy.Stop()
	c.busy.Hide()
}

// makeMain makes one button the one that is meant next.
func (c *calibrator) makeMain(yes, no *kit.Button) {
	yes.Importance, no.Importance = widget.HighImportance, widget.MediumImportance
	yes.Refresh()
	no.Refresh()
}

// run finds the factor and the plan with it.
func (c *calibrator) run() {
	m := cold.Measurement{Kind: c.kind, Minutes: c.minutes.Value(), CoreC: c.core.Value(), StartC: c.start.Value()}
	c.forget()
	for _, n := range [...]*kit.Number{c.minutes, c.core, c.start} {
		needed := n == c.minutes || c.kind == cold.CoreAt
		if needed && (n.Problem() != nil || math.IsNaN(n.Value())) {
			c.word.SetText("Fill in the fields above first.")
			return
		}
	}
	if c.kind == cold.CoreAt && !(m.CoreC < m.StartC && m.CoreC > c.p.kitchen.Freezer.AirC) {
		c.word.SetText("The core must be colder than at the start and warmer than the freezer's air, " + celsius(c.p.kitchen.Freezer.AirC) + ".")
		return
	}
	ctx, cancel := context.WithCancel(context.Background())
	c.cancel = cancel
	c.busy.Show()
	c.busy.Start()
	d, r, k := c.p.host.Design(), *c.p.host.Result(), c.p.kitchen
	plan := func(k cold.Profile) (cold.Answer, error) {
		return mishap.Answer(func() (cold.Answer, error) { return cold.Plan(ctx, d, &r, k, cold.Options{NoPictures: true}) })
	}
	mishap.Go(func() {
		found, err := mishap.Answer(func() (cold.Profile, error) { return cold.Calibrate(ctx, d, &r, k, m) })
		var before, after cold.Answer
		if err == nil {
			before, err = plan(k)
		}
		if err == nil {
			after, err = plan(found)
		}
		c.p.host.Post(func() {
			if ctx.Err() == nil {
				c.done(found, &before, &after, err)
			}
		})
	})
}

func (c *calibrator) done(found cold.Profile, before, after *cold.Answer, err error) {
	c.busy.Stop()
	c.busy.Hide()
	if err != nil {
		c.word.SetText(minus(page.Sentence(err.Error())))
		return
	}
	c.found = found
	at := placeOf(&c.found, c.kind)
	c.word.SetText("With heat going " + page.Number(at.Factor, 2) + " times as fast in the " + placeName(c.kind) + ", the tub takes the time you measured. What that changes:")
	c.table.ShowFigures(changes(c.kind, before, after))
	c.table.Show()
	c.makeMain(c.keep, c.compute)
	c.keep.Enable()
}

// changes lists the times that a calibration moves.
func changes(kind cold.MeasurementKind, before, after *cold.Answer) []kit.Figure {
	row := func(name string, of func(*cold.Answer) cold.Range, minutes float64) kit.Figure {
		f := kit.Figure{Name: name}
		for _, a := range [...]*cold.Answer{before, after} {
			r := of(a)
			cell := say.Reached(page.Reads, minutes*r.Value)
			if r.Known() {
				cell += " (" + page.Reads.DurationSpan(minutes*r.Low, minutes*r.High) + ")"
			}
			f.Cells = append(f.Cells, cell)
		}
		return f
	}
	if kind == cold.ScoopedWell {
		return []kit.Figure{
			row("Outer ring scoops", func(a *cold.Answer) cold.Range { return a.Counter.From }, 1),
			row("Whole tub scoops", func(a *cold.Answer) cold.Range { return a.Counter.Whole }, 1),
			row("Outer ring too soft", func(a *cold.Answer) cold.Range { return a.Counter.To }, 1),
		}
	}
	return []kit.Figure{
		row("Custard can be swirled", func(a *cold.Answer) cold.Range { return a.StillFreeze.Dense.Ready }, 1),
		row("Tub can be moved", func(a *cold.Answer) cold.Range { return a.Harden.MoveHours }, 60),
		row("Tub can be stored", func(a *cold.Answer) cold.Range { return a.Harden.Hours }, 60),
	}
}

// accept keeps what was found, and what was before for Undo.
func (c *calibrator) accept() {
	p := c.p
	p.undo[p.kitchen.Name+placeName(c.kind)] = p.kitchen
	at := placeOf(&c.found, c.kind)
	p.setFactor(c.kind, at.Factor, at.Measured, "calibration, "+minus(at.Measured))
	c.close()
}

func (c *calibrator) close() { c.dialog.Hide() }
