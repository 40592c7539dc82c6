package card

import (
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
)

// point is a typographic point, in mm.
const point = 25.4 / 72

// style is how text is set.
type style struct {
	face   draw.Face
	size   float64 // pt
	colour draw.Colour
}

func (st style) in(c draw.Colour) style { st.colour = c; return st }
func (st style) bold() style            { st.face = draw.SansBold; return st }

// width returns the length of s set in this style, in mm.
func (st style) width(s string) float64 { return face.Width(st.face, s) * st.size * point }

// cap returns the height of a capital, in mm.
func (st style) cap() float64 { return face.CapHeight * st.size * point }

func (st style) put(p *draw.List, x, y float64, a draw.Align, s string) {
	p.Write(draw.Text{At: draw.Point{X: x, Y: y}, S: s, Size: st.size * point, Align: a, Rise: draw.Baseline, Face: st.face, Colour: st.colour})
}

// write sets s with its baseline at y, from x on, and returns where it ends.
func write(p *draw.List, x, y float64, st style, s string) float64 {
	st.put(p, x, y, draw.Left, s)
	return x + st.width(s)
}

// writeRight sets s so that it ends at x.
func writeRight(p *draw.List, x, y float64, st style, s string) { st.put(p, x, y, draw.Right, s) }

// writeCentre sets s about x.
func writeCentre(p *draw.List, x, y float64, st style, s string) { st.put(p, x, y, draw.Centre, s) }

// fill colours an upright rectangle.
func fill(p *draw.List, x, y, w, h float64, c draw.Colour) {
	p.Box(draw.Rect{X0: x, Y0: y, X1: x + w, Y1: y + h}, c)
}

// frame draws the edge of a rectangle, of the given width, inside it and with
// sharp corners.
func frame(p *draw.List, x, y, w, h, width float64, c draw.Colour) {
	fill(p, x, y, w, width, c)
	fill(p, x, y+h-width, w, width, c)
	fill(p, x, y, width, h, c)
	fill(p, x+w-width, y, width, h, c)
}

// disc fills a circle.
func disc(p *draw.List, x, y, r float64, c draw.Colour) {
	p.Marker(draw.Disc, x, y, r, draw.Line{Colour: c})
}
