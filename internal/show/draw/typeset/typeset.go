// Package typeset sets type on lists in millimetres: lines, paragraphs that break
// at words, and what stands under each other.
package typeset

import (
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
)

// Point is a typographic point, in mm.
const Point = 25.4 / 72

// Style is how text is set.
type Style struct {
	Face   draw.Face
	Size   float64 // pt
	Colour draw.Colour
}

// Type is a face at a size in points, in a colour.
func Type(f draw.Face, size float64, c draw.Colour) Style { return Style{f, size, c} }

// In is the style in another colour.
func (st Style) In(c draw.Colour) Style { st.Colour = c; return st }

// Bold is the style in the bold face.
func (st Style) Bold() Style { st.Face = draw.SansBold; return st }

// Width returns the length of s set in this style, in mm.
func (st Style) Width(s string) float64 { return face.Width(st.Face, s) * st.Size * Point }

// Cap returns the height of a capital, in mm.
func (st Style) Cap() float64 { return face.CapHeight * st.Size * Point }

func (st Style) put(p *draw.List, x, y float64, a draw.Align, s string) {
	p.Write(draw.Text{At: draw.Point{X: x, Y: y}, S: s, Size: st.Size * Point, Align: a, Rise: draw.Baseline, Face: st.Face, Colour: st.Colour})
}

// Write sets s with its baseline at y, from x on, and returns where it ends.
func Write(p *draw.List, x, y float64, st Style, s string) float64 {
	st.put(p, x, y, draw.Left, s)
	return x + st.Width(s)
}

// WriteRight sets s so that it ends at x.
func WriteRight(p *draw.List, x, y float64, st Style, s string) { st.put(p, x, y, draw.Right, s) }

// WriteCentre sets s about x.
func WriteCentre(p *draw.List, x, y float64, st Style, s string) { st.put(p, x, y, draw.Centre, s) }

// Fill colours an upright rectangle.
func Fill(p *draw.List, x, y, w, h float64, c draw.Colour) {
	p.Box(draw.Rect{X0: x, Y0: y, X1: x + w, Y1: y + h}, c)
}

// Frame draws the edge of a rectangle, of the given width, inside it and with
// sharp corners.
func Frame(p *draw.List, x, y, w, h, width float64, c draw.Colour) {
	Fill(p, x, y, w, width, c)
	Fill(p, x, y+h-width, w, width, c)
	Fill(p, x, y, width, h, c)
	Fill(p, x+w-width, y, width, h, c)
}

// Disc fills a circle.
func Disc(p *draw.List, x, y, r float64, c draw.Colour) {
	p.Marker(draw.Disc, x, y, r, draw.Stroke{Colour: c})
}
