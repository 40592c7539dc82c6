package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// tubColumn is the middle: the design's name, the tub cut open, the ratio slider
// under it, as wide as the tub, and what is filled.
type tubColumn struct {
	w      *Window
	name   *nameButton
	view   *kit.TubView
	knobs  []*knob
	foot   *kit.Lines
	cut    *cutter
	object fyne.CanvasObject
}

func newTubColumn(w *Window) *tubColumn {
	t := &tubColumn{w: w, view: kit.NewTubView(),
		foot: kit.NewLines(2, fyne.TextAlignCenter, theme.SizeNameCaptionText, fyne.TextStyle{})}
	t.cut = newCutter(w, t)
	t.name = newNameButton("", w.editDesign)
	t.name.Icon = theme.DocumentCreateIcon()
	t.name.Alignment = widget.ButtonAlignCenter
	rows := container.New(keep(layout.NewCustomPaddedVBoxLayout(2)))
	var slides []*kit.Slide
	knob := func(name, path, what string, step float64, hint string) *knob {
		k := w.knob(name, path, what, step, 0)
		t.knobs = append(t.knobs, k)
		slides = append(slides, k.Slide)
		rows.Add(w.hints.Wrap(k.Slide, hint))
		return k
	}
	knob(say.T("Foam"), "blend.foam_volume_percent", say.T("foam share"), 1, say.FoamHint.String())
	knob(say.T("Tubs"), "tubs.count", say.T("tub count"), 1, say.TubsHint.String()).Logarithmic()
	knob(say.T("Each"), "tubs.volume_ml", say.T("tub size"), 10, say.EachHint.String()).Logarithmic()
	kit.AlignSlides(slides...)
	all := kit.NewButtonWithIcon("", theme.ListIcon(), func() { w.turnTo(places.Figures) })
	all.Importance = widget.LowImportance
	rows.Add(container.NewBorder(nil, nil, nil, container.NewVBox(w.hints.Wrap(all, say.AllFiguresHint.String())), t.foot))
	name := container.New(nameLayout{t.name}, w.hints.Wrap(t.name, say.DesignHint.String()))
	t.object = container.NewBorder(name, rows, nil, nil, t.view)
	return t
}

func (t *tubColumn) show(d design.Design, r *model.Result) {
	t.name.show(d.Name)
	for _, k := range t.knobs {
		k.show(d)
	}
	t.foot.ShowTexts(say.TubLines(page.Reads, d, r))
	t.cut.show(d, r)
}

// nameLayout gives a name all the width there is, but asks for little.
type nameLayout struct{ name *nameButton }

// Layout implements fyne.Layout.
func (l nameLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	l.name.cut(size.Width - 2*theme.InnerPadding())
	o[0].Resize(size)
}

// MinSize implements fyne.Layout.
func (l nameLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(10*theme.TextSize(), o[0].MinSize().Height)
}
