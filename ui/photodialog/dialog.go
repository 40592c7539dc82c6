// Package photodialog is where a photograph of the cut is marked and measured, beside the
// computed cut.
package photodialog

import (
	"image"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/photo"
	"ripplewright/internal/desk/cutphoto"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Setup is what the dialog needs beside a Host.
type Setup struct {
	Told func(event string, args ...any) // what a test of the window waits for
	// Note takes what a picture shows into the batch that is being noted.
	Note func(a *cutphoto.Answer, view ripple.View)
}

// reading is one dialog.
type reading struct {
	host  page.Host
	setup Setup

	opening *newest.Answers[string, cutphoto.Opened]
	asking  *newest.Answers[cutphoto.Ask, *cutphoto.Answer]
	opened  *cutphoto.Opened
	answer  *cutphoto.Answer
	view    ripple.View

	marks      *marks
	which      *kit.Select
	pick       func(int)
	side       *kit.Select
	wide, high *kit.NumberField
	how, news  *widget.Label
	table      *kit.Figures
	below      *widget.Label
	computed   *canvas.Image
	heading    *widget.Label
	measure    *kit.Button
	note       *kit.Button
	dg         *dialog.CustomDialog
}

// Show opens the dialog for the picture at path.
func Show(h page.Host, s Setup, path string) { show(h, s, path) }

func show(h page.Host, s Setup, path string) *reading {
	r := &reading{host: h, setup: s}
	r.opening = newest.NewAnswers(h.Post, cutphoto.Open, r.shown)
	r.asking = newest.NewAnswers(h.Post, cutphoto.Read, r.answered)
	r.build()
	content := container.NewHSplit(container.NewClip(r.marks), page.Scrolled(r.how, r.which, r.side,
		container.NewGridWithColumns(2, widget.NewLabel(say.PhotoWide.String()), r.wide, widget.NewLabel(say.PhotoHigh.String()), r.high),
		r.measure, r.news, container.NewHScroll(r.table), r.below, r.heading, r.computed))
	content.Offset = 0.58
	r.dg = kit.Ask(h.Window(), say.PhotoAsk.String(), content, kit.Answer{Name: say.PhotoNote.String(), Role: kit.ByHand, Do: r.keep},
		kit.Answer{Name: say.Close.String(), Role: kit.ByEscape})
	r.dg.SetOnClosed(func() { r.opening.Stop(); r.asking.Stop() })
	room := h.Window().Canvas().Size()
	r.dg.Resize(fyne.NewSize(room.Width-4*theme.Padding(), room.Height-4*theme.Padding()))
	r.tell(say.PhotoOpening.String())
	r.opening.Ask(path)
	h.Window().Canvas().Focus(r.marks)
	return r
}

func (r *reading) told(event string, args ...any) { r.setup.Told(event, args...) }

// tell says what is going on, and takes no room where nothing is.
func (r *reading) tell(news string) {
	kit.SetText(r.news, news)
	if news == "" {
		r.news.Hide()
	} else {
		r.news.Show()
	}
}

// wrong says why nothing can be read.
func (r *reading) wrong(err error) {
	err = cutphoto.Worded(page.Reads, err)
	r.tell(say.Sentence(say.Flaw(err)))
	r.told("photo refused %v", err)
}

func (r *reading) build() {
	r.marks = newMarks(r.changed, func() { r.pick(r.marks.chosen) })
	r.which, r.pick = page.SelectOf(markNames(false), func(i int) { r.marks.choose(i) })
	r.pick(0)
	// A list to choose from, since the toolkit's round marks keep Escape for themselves.
	r.side = kit.NewSelect([]string{say.SideCut.String(), say.FromAbove.String()}, nil)
	r.side.SetSelectedIndex(0)
	r.side.OnChanged = mishap.With(func(string) { r.turn() })
	r.wide, r.high = page.NumberField("mm", ripple.MinFillMM, ripple.MaxSizeMM, 0), page.NumberField("mm", ripple.MinFillMM, ripple.MaxSizeMM, 0)
	for _, f := range []*kit.NumberField{r.wide, r.high} {
		f.Step = 1
		f.OnChanged = func(float64) { r.changed() }
	}
	r.how, r.news, r.below, r.heading = page.Prose(say.PhotoHow.String()), page.Bold(""), page.Prose(""), page.Small(say.PhotoComputed.String())
	r.table = kit.NewFigures(say.PhotoHeads()[1:]...)
	r.computed = canvas.NewImageFromImage(nil)
	r.computed.FillMode, r.computed.ScaleMode = canvas.ImageFillContain, canvas.ImageScaleFastest
	r.computed.SetMinSize(fyne.NewSize(0, 11*theme.TextSize()))
	r.measure = kit.NewButton(say.PhotoMeasure.String(), r.ask)
	r.measure.Importance = widget.HighImportance
	r.measure.Disable()
	r.clear()
	r.sizes()
}

// sizes puts the design's own millimetres into the fields.
func (r *reading) sizes() {
	a := cutphoto.NewAsk(r.host.Design(), r.host.Result(), r.view)
	r.wide.ShowValue(math.Round(a.WidthMM))
	r.high.ShowValue(math.Round(a.HeightMM))
	rim := a.Rim()
	how := say.PhotoHow.String()
	if rim {
		how = say.PhotoHowRim.String()
		r.high.Disable()
	} else {
		r.high.Enable()
	}
	kit.SetText(r.how, how)
	r.which.Options = markNames(rim)
	r.pick(r.marks.chosen)
}

// turn takes the other view.
func (r *reading) turn() {
	r.view = ripple.Side
	if r.side.Selected == say.FromAbove.String() {
		r.view = ripple.Top
	}
	r.sizes()
	r.changed()
}

// clear takes away what was measured.
func (r *reading) clear() {
	r.answer = nil
	for _, o := range []fyne.CanvasObject{r.table, r.below, r.heading, r.computed} {
		o.Hide()
	}
}

// changed drops an answer that is of other marks.
func (r *reading) changed() {
	r.asking.Stop()
	if r.answer != nil && r.opened != nil {
		r.marks.part = r.opened.Part
		r.marks.showPicture(r.opened.Small)
	}
	r.tell("")
	r.clear()
}

// shown takes the picture.
func (r *reading) shown(_ string, o cutphoto.Opened, err error) {
	if err != nil {
		r.wrong(err)
		return
	}
	r.opened = &o
	r.marks.places, r.marks.part = o.First(), r.opened.Part
	r.marks.showPicture(o.Small)
	r.tell("")
	r.measure.Enable()
	r.told("photo opened")
}

// ask has the picture measured.
func (r *reading) ask() {
	if r.opened == nil {
		return
	}
	a := cutphoto.NewAsk(r.host.Design(), r.host.Result(), r.view)
	a.Opened, a.Places = *r.opened, r.marks.places
	for _, x := range []struct {
		f  *kit.NumberField
		to *float64
	}{{r.wide, &a.WidthMM}, {r.high, &a.HeightMM}} {
		if v := x.f.Value(); !math.IsNaN(v) && x.f.Problem() == nil && v != math.Round(*x.to) {
			*x.to = v
		}
	}
	r.tell(say.PhotoReading.String())
	r.asking.Ask(a)
}

// answered shows what was found.
func (r *reading) answered(_ cutphoto.Ask, a *cutphoto.Answer, err error) {
	if err != nil {
		r.clear()
		r.wrong(err)
		return
	}
	r.answer = a
	r.tell("")
	r.marks.part = func(at photo.Point, size image.Point, magnified float64) *image.RGBA {
		return a.Part(r.opened, at, size, magnified)
	}
	r.marks.showPicture(a.Over)
	r.table.ShowFigures(a.Rows(page.Reads))
	r.below.SetText(a.Below(page.Reads))
	r.computed.Image = a.Drawn
	r.computed.Refresh()
	for _, o := range []fyne.CanvasObject{r.table, r.below, r.heading, r.computed} {
		o.Show()
	}
	r.told("photo read share=%.3f", a.Reading.FoamFraction.Value)
}

// keep notes what was found.
func (r *reading) keep() {
	if r.answer == nil {
		r.tell(say.PhotoFirst.String())
		return
	}
	r.setup.Note(r.answer, r.view)
	r.dg.Hide()
}
