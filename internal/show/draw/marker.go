package draw

import "math"

// A Marker is the shape of a point on a curve.
type Marker int

// The shapes.
const (
	NoMarker Marker = iota
	Disc
	Square
	Triangle
	Diamond
	Plus
	Cross
)

// Marker draws shape m about (x, y) with half-width r: filled shapes with an
// outline of colour edge, the two open ones as strokes of l.
func (d *List) Marker(m Marker, x, y, r float64, l Stroke) {
	switch m {
	case Disc:
		d.Arc(x, y, r, r, 0, 2*math.Pi)
	case Square:
		d.boxPath(Rect{x - .88*r, y - .88*r, x + .88*r, y + .88*r})
	case Triangle:
		d.To(x, y-1.15*r)
		d.To(x+1.1*r, y+.8*r)
		d.To(x-1.1*r, y+.8*r)
	case Diamond:
		d.To(x, y-1.2*r)
		d.To(x+1.2*r, y)
		d.To(x, y+1.2*r)
		d.To(x-1.2*r, y)
	case Plus:
		d.To(x-r, y)
		d.To(x+r, y)
		d.Lift()
		d.To(x, y-r)
		d.To(x, y+r)
		d.EndStroke(Stroke{Width: l.Width, Colour: l.Colour})
		return
	case Cross:
		q := .8 * r
		d.To(x-q, y-q)
		d.To(x+q, y+q)
		d.Lift()
		d.To(x-q, y+q)
		d.To(x+q, y-q)
		d.EndStroke(Stroke{Width: l.Width, Colour: l.Colour})
		return
	default:
		return
	}
	d.EndFill(l.Colour)
}
