package page

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/chart"
)

// number writes v with so many decimals; "" where unknown, which the tables show
// as a dash of their own.
func number(v float64, decimals int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return chart.Number(v, decimals)
}

// amount writes the known part of a, with "≥" where some term is unknown.
func amount(a ingredient.Amount, decimals int) string {
	switch {
	case a.Nothing():
		return ""
	case a.Most-a.Known > 0.5*math.Pow10(-decimals):
		return "≥ " + number(a.Known, decimals)
	}
	return number(a.Known, decimals)
}

// band writes the band of a figure, "" where that is unknown.
func band(s model.Span, k float64, decimals int) string {
	if math.IsNaN(s.Value) {
		return ""
	}
	return number(k*s.Low, decimals) + " and " + number(k*s.High, decimals)
}

// heading is a section's title.
func heading(text string) *widget.Label {
	l := widget.NewLabelWithStyle(text, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	l.SizeName = theme.SizeNameSubHeadingText
	return l
}

// prose is text that wraps.
func prose(text string) *widget.Label {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

// bold is prose that stands out.
func bold(text string) *widget.Label {
	l := prose(text)
	l.TextStyle.Bold = true
	return l
}

// folding is a layout of two objects: side by side where both have room, one
// under the other where they have not, as with large text.
type folding struct{}

// MinSize implements fyne.Layout.
func (folding) MinSize(o []fyne.CanvasObject) fyne.Size {
	a, b := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(fyne.Max(a.Width, b.Width), a.Height+theme.Padding()+b.Height)
}

// Layout implements fyne.Layout.
func (folding) Layout(o []fyne.CanvasObject, size fyne.Size) {
	gap := theme.Padding()
	a, b := o[0].MinSize().Width, o[1].MinSize().Width
	first, second := size, size
	if at := fyne.NewPos(0, 0); a+gap+b <= size.Width {
		first.Width = a + (size.Width-gap-a-b)/2 // what is free is shared
		second.Width = size.Width - gap - first.Width
		o[1].Move(at.AddXY(first.Width+gap, 0))
	} else {
		first.Height = (size.Height - gap) / 2
		second.Height = first.Height
		o[1].Move(at.AddXY(0, first.Height+gap))
	}
	o[0].Move(fyne.NewPos(0, 0))
	o[0].Resize(first)
	o[1].Resize(second)
}

// scrolled puts objects under each other in a column that scrolls.
func scrolled(objects ...fyne.CanvasObject) *container.Scroll {
	return container.NewVScroll(container.NewPadded(container.NewVBox(objects...)))
}

// scrolledBothWays is scrolled that scrolls sideways too where large text makes
// a table wider than the column: the page then asks for no more than a small
// screen has.
func scrolledBothWays(objects ...fyne.CanvasObject) *container.Scroll {
	s := scrolled(objects...)
	s.Direction = container.ScrollBoth
	return s
}

// brief is a name cut to so many letters.
func brief(name string, letters int) string {
	r := []rune(name)
	if len(r) <= letters {
		return name
	}
	return strings.TrimRight(string(r[:letters-1]), " ,(") + "…"
}

// scrollTo scrolls s so that o, in it, is seen with a few lines below it.
func scrollTo(s *container.Scroll, o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	top := d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(s.Content).Y
	foot := top + o.Size().Height + 5*theme.TextSize()
	y := min(top, max(s.Offset.Y, foot-s.Size().Height))
	s.ScrollToOffset(fyne.NewPos(0, y))
}
