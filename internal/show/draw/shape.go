package draw

import (
	"image"
	"math"
)

// Segment strokes one straight line.
func (d *List) Segment(l Stroke, x0, y0, x1, y1 float64) {
	d.To(x0, y0)
	d.To(x1, y1)
	d.EndStroke(l)
}

// Box fills an upright rectangle.
func (d *List) Box(r Rect, c Colour) {
	d.boxPath(r)
	d.EndFill(c)
}

// Show lays img over an upright rectangle.
func (d *List) Show(img image.Image, r Rect) {
	d.boxPath(r)
	d.EndPicture(img, r)
}

// Outline strokes an upright rectangle.
func (d *List) Outline(r Rect, l Stroke) {
	d.boxPath(r)
	d.To(r.X0, r.Y0)
	d.EndStroke(l)
}

func (d *List) boxPath(r Rect) {
	d.To(r.X0, r.Y0)
	d.To(r.X1, r.Y0)
	d.To(r.X1, r.Y1)
	d.To(r.X0, r.Y1)
}

// Arc adds points of an ellipse about (cx, cy) to the open path, from angle a0
// to a1 in radians, measured from the x axis towards y (clockwise on screen).
func (d *List) Arc(cx, cy, rx, ry, a0, a1 float64) {
	n := int(math.Ceil(math.Abs(a1-a0) / (2 * math.Pi) * (16 + 8*math.Sqrt(math.Max(rx, ry)))))
	for i := 0; i <= n; i++ {
		s, c := math.Sincos(a0 + (a1-a0)*float64(i)/float64(n))
		d.To(cx+rx*c, cy+ry*s)
	}
}

// RoundBox adds a rectangle with corners of radius r to the open path.
func (d *List) RoundBox(b Rect, r float64) {
	r = math.Min(r, math.Min(b.Dx(), b.Dy())/2)
	d.Arc(b.X0+r, b.Y0+r, r, r, math.Pi, 1.5*math.Pi)
	d.Arc(b.X1-r, b.Y0+r, r, r, 1.5*math.Pi, 2*math.Pi)
	d.Arc(b.X1-r, b.Y1-r, r, r, 0, .5*math.Pi)
	d.Arc(b.X0+r, b.Y1-r, r, r, .5*math.Pi, math.Pi)
	d.To(b.X0, b.Y0+r) // a stroke goes all round
}
