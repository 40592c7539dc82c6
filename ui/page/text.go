package page

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/chart"
	"ripplewright/internal/ingredient"
	"ripplewright/internal/model"
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

// span writes a figure with its band.
func span(s model.Span, k float64, decimals int) string {
	if math.IsNaN(s.Value) {
		return ""
	}
	return number(k*s.Value, decimals) + " (" + number(k*s.Low, decimals) + " to " + number(k*s.High, decimals) + ")"
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

// scrolled puts objects under each other in a column that scrolls.
func scrolled(objects ...fyne.CanvasObject) *container.Scroll {
	return container.NewVScroll(container.NewPadded(container.NewVBox(objects...)))
}

// scrollTo scrolls s so that o, in it, is seen with a few lines below it.
func scrollTo(s *container.Scroll, o fyne.CanvasObject) {
	d := fyne.CurrentApp().Driver()
	top := d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(s.Content).Y
	foot := top + o.Size().Height + 5*theme.TextSize()
	y := min(top, max(s.Offset.Y, foot-s.Size().Height))
	s.ScrollToOffset(fyne.NewPos(0, y))
}
