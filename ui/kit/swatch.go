package kit

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/draw"
)

// A Swatch is a sample of a phase: its colour, with bubbles if it is foam.
type Swatch struct {
	widget.BaseWidget
	colour  draw.Colour
	bubbles bool
}

// NewSwatch returns a sample without a colour yet.
func NewSwatch(bubbles bool) *Swatch {
	s := &Swatch{bubbles: bubbles}
	s.ExtendBaseWidget(s)
	return s
}

// ShowColour puts c on screen.
func (s *Swatch) ShowColour(c draw.Colour) {
	if c != s.colour {
		s.colour = c
		s.Refresh()
	}
}

// CreateRenderer implements fyne.Widget.
func (s *Swatch) CreateRenderer() fyne.WidgetRenderer {
	s.ExtendBaseWidget(s)
	return newSketch(func() fyne.Size {
		return fyne.NewSize(2.6*theme.TextSize(), 1.8*theme.TextSize())
	}, func(d *draw.List, w, h float64) {
		drawSwatch(d, draw.Rect{X0: 1, Y0: 1, X1: w - 1, Y1: h - 1}, s.colour, s.bubbles, draw.Blend(s.colour, readable(s.colour), .45))
	})
}

// drawSwatch draws a sample of a phase, bubbles and edge in the colour shade.
func drawSwatch(d *draw.List, b draw.Rect, c draw.Colour, bubbles bool, shade draw.Colour) {
	d.Box(b, c)
	if bubbles {
		r := math.Min(b.Dy(), b.Dx()) * .16
		for _, p := range [...][2]float64{{.25, .3}, {.7, .25}, {.5, .7}, {.85, .72}, {.13, .75}} {
			d.Arc(b.X0+p[0]*b.Dx(), b.Y0+p[1]*b.Dy(), r, r, 0, 2*math.Pi)
			d.EndStroke(draw.Stroke{Width: .9, Colour: shade})
		}
	}
	d.Outline(b, draw.Stroke{Width: 1, Colour: shade})
}
