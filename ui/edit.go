package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// An option is one choice, in the words on screen.
type option[T comparable] struct {
	value T
	name  string
}

var bases = []option[design.Basis]{
	{design.BasisTubs, "Scale both phases to fill the tubs"},
	{design.BasisAsWritten, "Keep the grams as written"},
}

var shapes = []option[design.Shape]{
	{design.ShapeRound, "Round, as high as wide"},
	{design.ShapeShallow, "Round and shallow"},
	{design.ShapeRectangle, "Box"},
}

func eggSizes() []option[design.EggSize] {
	var all []option[design.EggSize]
	for _, system := range egg.Systems() {
		for _, s := range egg.Sizes(system) {
			all = append(all, option[design.EggSize]{design.EggSize{System: s.System, Size: s.Name},
				s.System + " " + s.Name + ": " + page.Reads.Mass(s.EdibleG) + ", yolk " + page.Reads.Mass(s.YolkG) + ", white " + page.Reads.Mass(s.WhiteG)})
		}
	}
	return all
}

// selectOf is a choice of options, showing now, that tells of a new one.
func selectOf[T comparable](options []option[T], now T, chosen func(T)) *kit.Select {
	var names []string
	for _, o := range options {
		names = append(names, o.name)
	}
	s := kit.NewSelect(names, nil)
	for i, o := range options {
		if o.value == now {
			s.SetSelectedIndex(i)
		}
	}
	s.OnChanged = mishap.With(func(string) {
		if i := s.SelectedIndex(); i >= 0 {
			chosen(options[i].value)
		}
	})
	return s
}

// editDesign asks for what is chosen once for a design: its name and notes, the
// tub's fill and shape, what is scaled, the eggs' size and the altitude. Each
// is a step of undo; name and notes when the dialog closes.
func (w *Window) editDesign() {
	d := w.Design()
	name, notes := kit.NewTextField(), kit.NewTextArea(3)
	name.SetText(d.Name)
	notes.SetText(d.Notes)
	fill := w.knob("", "tubs.fill_percent", "fill", 1, 0)
	altitude := w.knob("", "kitchen.altitude_m", "altitude", 10, 0)
	fill.show(d)
	altitude.show(d)
	kit.AlignSlides(fill.Slide, altitude.Slide)
	form := widget.NewForm(
		widget.NewFormItem("Name", name),
		widget.NewFormItem("Notes", notes),
		widget.NewFormItem("Batch", selectOf(bases, d.Batch.Basis, func(b design.Basis) {
			d := w.Design()
			d.Batch.Basis = b
			w.Commit(d, "batch basis")
		})),
		widget.NewFormItem("Tub filled", fill.Slide),
		widget.NewFormItem("Tub shape", selectOf(shapes, d.Tubs.Shape, func(s design.Shape) {
			d := w.Design()
			d.Tubs.Shape = s
			w.Commit(d, "tub shape")
		})),
		widget.NewFormItem("Counted eggs", selectOf(eggSizes(), d.Eggs, func(e design.EggSize) {
			d := w.Design()
			d.Eggs = e
			w.Commit(d, "egg size")
		})),
		widget.NewFormItem("Altitude", altitude.Slide))
	var dg *dialog.CustomDialog
	done := func() {
		dg.Hide()
		d := w.Design()
		if n := strings.TrimSpace(name.Text); n != "" {
			d.Name = n
		}
		d.Notes = notes.Text
		if now := w.Design(); d.Name != now.Name || d.Notes != now.Notes {
			w.Commit(d, "name and notes")
		}
	}
	name.OnSubmitted = mishap.With(func(string) { done() })
	dg = kit.Ask(w.win, "The design", container.NewPadded(form), kit.Answer{Name: "Done", Role: kit.ByReturn, Do: done})
	dg.Resize(fyne.NewSize(max(560, 38*theme.TextSize()), 0))
	w.win.Canvas().Focus(name)
}
