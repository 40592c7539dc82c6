package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/figurespage"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// leadTo goes to what causes a warning.
func (w *Window) leadTo(x model.Warning) { w.lead(w.Model().Cause(w.Result(), x)) }

// lead goes to a place in the file: the keyboard is on
// the line, the setting or the list, and it is in sight.
func (w *Window) lead(where string) {
	for kit.Dismiss(w.win.Canvas()) {
	}
	w.turnTo(places.Bench)
	switch where {
	case "foam.syrup.weighed_g": // it stands nowhere but in the dialog of the scale
		w.bench.foam.syrupDialog()
		w.event("led to %s", where)
		return
	case "eggs": // yolks without their whites, or the other way
		w.askWholeEggs()
		w.event("led to %s", where)
		return
	}
	focus := func(f fyne.Focusable) {
		w.win.Canvas().Focus(f)
		w.event("led to %s", where)
	}
	for _, l := range w.lists() {
		var i int
		of := fmt.Sprint(l.part)
		if n, _ := fmt.Sscanf(where, of+".lines[%d]", &i); n == 1 && i < len(l.rows) {
			if s, ok := l.scroll(); ok {
				page.ScrollTo(s, l.rows[i].name)
			}
			focus(l.rows[i].name)
			return
		}
	}
	for _, k := range w.knobs() {
		if k.Path == where || strings.HasPrefix(k.Path, where+".") && !w.isList(where) {
			focus(k.Focusable())
			return
		}
	}
	if where == "serving.temperature_c" {
		focus(w.bench.rail)
		return
	}
	if l := w.listAt(where); l != nil {
		if s, ok := l.scroll(); ok {
			page.ScrollTo(s, l.title)
		}
		focus(l.entry)
		return
	}
	w.event("led to %s", where)
	w.editDesign() // what is chosen once for a design
}

// knobs are the sliders of the bench.
func (w *Window) knobs() []*knob {
	b := w.bench
	return append(append(append([]*knob{}, b.dense.knobs...), b.foam.knobs...), b.tub.knobs...)
}

// listAt is the list that a place in the file is, or lies in; nil where it is none.
func (w *Window) listAt(where string) *lineList {
	switch {
	case strings.HasPrefix(where, "dense"):
		return w.listOf(design.DensePart)
	case strings.HasPrefix(where, "foam.syrup"):
		return w.listOf(design.SyrupPart)
	case strings.HasPrefix(where, "foam"):
		return w.listOf(design.FoamPart)
	}
	return nil
}

func (w *Window) isList(where string) bool { return w.listAt(where) != nil }

// askWhy shows all warnings, each with the way to what causes it, and leads on to all
// figures.
func (w *Window) askWhy() {
	r := w.Result()
	var dg *dialog.CustomDialog
	told := container.NewVBox()
	if learnt := strings.Join(say.Taught(page.Reads, r), " "); learnt != "" {
		told.Add(page.Prose(learnt))
	}
	told.Add(figurespage.Warnings(r.Warnings, w.leadTo))
	dg = kit.Ask(w.win, say.WhatToKnow.String(), page.Scrolled(told),
		kit.Answer{Name: say.AllFigures.String(), Do: func() {
			dg.Hide()
			w.turnTo(places.Figures)
		}},
		kit.Answer{Name: say.Close.String(), Role: kit.ByEscape})
	size := w.win.Canvas().Size()
	dg.Resize(fyne.NewSize(min(size.Width-4*theme.Padding(), 52*theme.TextSize()), min(size.Height-4*theme.Padding(), 36*theme.TextSize())))
}

// askHow tells how the figures of the phases come about.
func (w *Window) askHow() {
	listed := figure.List(page.Reads, w.Result())
	figurespage.AskHow(w, listed, figure.Phases.Heads(), figure.Phases.Row("initial_freezing_point_c"))
}
