package ui

import (
	"math"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/chart"
)

// number writes v with so many decimals, an en dash if unknown.
func number(v float64, decimals int) string { return chart.Number(v, decimals) }

// mass writes g grams, from ten thousand in kg; volume the same for mL.
func mass(g float64) string   { return large(g, "g", "kg") }
func volume(m float64) string { return large(m, "mL", "L") }

func large(v float64, unit, thousand string) string {
	switch {
	case v < 1e4 || math.IsNaN(v):
		return number(v, 0) + " " + unit
	case v < 1e5:
		return number(v/1000, 1) + " " + thousand
	}
	return number(v/1000, 0) + " " + thousand
}

func upper(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

// themed is a rectangle that takes its colour from the theme.
type themed struct {
	widget.BaseWidget
	rect *canvas.Rectangle
	name fyne.ThemeColorName
}

// CreateRenderer implements fyne.Widget.
func (t *themed) CreateRenderer() fyne.WidgetRenderer {
	t.ExtendBaseWidget(t)
	return &themedRenderer{t}
}

type themedRenderer struct{ t *themed }

func (r *themedRenderer) Layout(s fyne.Size)           { r.t.rect.Resize(s) }
func (r *themedRenderer) MinSize() fyne.Size           { return fyne.Size{} }
func (r *themedRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.t.rect} }
func (r *themedRenderer) Destroy()                     {}
func (r *themedRenderer) Refresh() {
	r.t.rect.FillColor = theme.ColorForWidget(r.t.name, r.t)
	r.t.rect.Refresh()
}
