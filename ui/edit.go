package ui

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// eggSizes are the sizes to choose from, with how they read.
func eggSizes() (sizes []design.EggSize, names []string) {
	for _, system := range egg.Systems() {
		for _, s := range egg.Sizes(system) {
			sizes = append(sizes, design.EggSize{System: s.System, Size: s.Name})
			names = append(names, say.EggOfSize(page.Reads, s))
		}
	}
	return sizes, names
}

// selectOf is a choice among names, showing one of them, that tells of another by its
// place.
func selectOf(names []string, now int, chosen func(i int)) *kit.Select {
	s := kit.NewSelect(names, nil)
	if now >= 0 {
		s.SetSelectedIndex(now)
	}
	s.OnChanged = mishap.With(func(string) {
		if i := s.SelectedIndex(); i >= 0 {
			chosen(i)
		}
	})
	return s
}

// choose is selectOf for a word of the design.
func choose(choices []say.Choice, now string, chosen func(value string)) *kit.Select {
	i := slices.IndexFunc(choices, func(c say.Choice) bool { return c.Value == now })
	return selectOf(say.NamesOf(choices), i, func(i int) { chosen(choices[i].Value) })
}

// editDesign asks for what is chosen once for a design: its name and notes, the
// tub's fill and shape, what is scaled, the eggs' size and the altitude. Each
// is a step of undo; name and notes when the dialog closes.
func (w *Window) editDesign() {
	d := w.Design()
	name, notes := kit.NewTextField(), kit.NewTextArea(3)
	name.SetText(d.Name)
	notes.SetText(d.Notes)
	fill := w.knob("", "tubs.fill_percent", say.T("fill"), 1, 0)
	altitude := w.knob("", "kitchen.altitude_m", say.T("altitude"), 10, 0)
	fill.show(d)
	altitude.show(d)
	kit.AlignSlides(fill.Slide, altitude.Slide)
	eggs, sizes := eggSizes()
	form := widget.NewForm(
		widget.NewFormItem(say.T("Name"), name),
		widget.NewFormItem(say.T("Notes"), notes),
		widget.NewFormItem(say.T("Batch"), choose(say.Bases(), string(d.Batch.Basis), func(b string) {
			d := w.Design()
			d.Batch.Basis = design.Basis(b)
			w.Commit(d, say.T("batch basis"))
		})),
		widget.NewFormItem(say.T("Tub filled"), fill.Slide),
		widget.NewFormItem(say.T("Tub shape"), choose(say.Shapes(), string(d.Tubs.Shape), func(s string) {
			d := w.Design()
			d.Tubs.Shape = design.Shape(s)
			w.Commit(d, say.T("tub shape"))
		})),
		widget.NewFormItem(say.T("Counted eggs"), selectOf(sizes, slices.Index(eggs, d.Eggs), func(i int) {
			d := w.Design()
			d.Eggs = eggs[i]
			w.Commit(d, say.T("egg size"))
		})),
		widget.NewFormItem(say.T("Altitude"), altitude.Slide))
	var dg *dialog.CustomDialog
	done := func() {
		dg.Hide()
		d := w.Design()
		if n := strings.TrimSpace(name.Text); n != "" {
			d.Name = n
		}
		d.Notes = notes.Text
		if now := w.Design(); d.Name != now.Name || d.Notes != now.Notes {
			w.Commit(d, say.T("name and notes"))
		}
	}
	name.OnSubmitted = mishap.With(func(string) { done() })
	dg = kit.Ask(w.win, say.T("The design"), container.NewPadded(form), kit.Answer{Name: say.T("Done"), Role: kit.ByReturn, Do: done})
	dg.Resize(fyne.NewSize(max(640, 44*theme.TextSize()), 0)) // an egg with its parts in two units
	w.win.Canvas().Focus(name)
}
