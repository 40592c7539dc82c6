// Package draw is a picture as a list: filled outlines, strokes and pictures, and
// texts over them, in units of the maker's choice, x to the right and y down. A unit
// is a Fyne pixel at scale 1 on screen and a millimetre on paper.
//
// Packages raster, pdf and svg put a list on their device. The window lets raster
// paint the marks and the toolkit set the texts; a list therefore keeps the two
// apart. Texts stay strings with an anchor, because every device has its own fonts.
// Curves, dashes, hatches and round boxes are made here and nowhere else.
package draw

import (
	"image"
	"math"
)

// A Point is a place on a List. A point whose X or Y is NaN lifts the pen: the
// path goes on from the point after it.
type Point struct{ X, Y float64 }

var lift = Point{math.NaN(), math.NaN()}

// Lifts reports whether p is a gap in a path rather than a place.
func (p Point) Lifts() bool { return math.IsNaN(p.X) || math.IsNaN(p.Y) }

// A Rect is an upright rectangle, Y0 above Y1.
type Rect struct{ X0, Y0, X1, Y1 float64 }

// Dx is the width of r.
func (r Rect) Dx() float64 { return r.X1 - r.X0 }

// Dy is the height of r.
func (r Rect) Dy() float64 { return r.Y1 - r.Y0 }

// A Stroke says how a stroke looks. Ends and joins are always round.
type Stroke struct {
	Width  float64 // in units of the list; 0 draws nothing
	Dash   Dash
	Colour Colour
}

// A Mark is one thing to put on the device: a stroke along Points if Line has a
// width; otherwise the closed outline Points, of one or more rings with lifts between,
// filled with Fill or, if Picture is set, showing that picture stretched over Frame.
// An outline should not cross itself: where it does, the overlap may stay empty.
type Mark struct {
	Points  []Point
	Line    Stroke
	Fill    Colour
	Picture image.Image
	Frame   Rect
}

// Pieces calls each with every run of m's points between lifts.
func (m *Mark) Pieces(each func([]Point)) {
	from := 0
	for i := 0; i <= len(m.Points); i++ {
		if i < len(m.Points) && !m.Points[i].Lifts() {
			continue
		}
		if i > from {
			each(m.Points[from:i])
		}
		from = i + 1
	}
}

// A List is a picture: marks to be drawn in order, and then texts over them. Reset
// and refill one List rather than making new ones: after the first time it allocates
// nothing. The points of its marks are valid until the next Reset.
type List struct {
	W, H  float64 // size
	Marks []Mark
	Texts []Text

	pool []Point // the points of all marks
	from int     // where the open path begins in pool
}

// Reset empties d and gives it a size.
func (d *List) Reset(w, h float64) {
	d.W, d.H = w, h
	d.Marks, d.Texts, d.pool, d.from = d.Marks[:0], d.Texts[:0], d.pool[:0], 0
}

// To adds a point to the open path.
func (d *List) To(x, y float64) { d.pool = append(d.pool, Point{x, y}) }

// Lift begins another piece of the open path.
func (d *List) Lift() { d.pool = append(d.pool, lift) }

// EndStroke strokes the open path.
func (d *List) EndStroke(l Stroke) { d.end(Mark{Line: l}) }

// EndFill fills the open path.
func (d *List) EndFill(c Colour) { d.end(Mark{Fill: c}) }

// EndPicture shows img inside the open path, stretched over frame.
func (d *List) EndPicture(img image.Image, frame Rect) { d.end(Mark{Picture: img, Frame: frame}) }

func (d *List) end(m Mark) {
	m.Points = d.pool[d.from:len(d.pool):len(d.pool)]
	d.from = len(d.pool)
	if len(m.Points) > 0 {
		d.Marks = append(d.Marks, m)
	}
}

// Write adds a text.
func (d *List) Write(t Text) {
	if t.S != "" {
		d.Texts = append(d.Texts, t)
	}
}

// Place adds what is on part, scaled by k, with its upper left corner at (x, y).
// What d has of texts stands over the marks of part too.
func (d *List) Place(part *List, x, y, k float64) {
	for _, m := range part.Marks {
		for _, p := range m.Points {
			d.To(x+k*p.X, y+k*p.Y)
		}
		m.Line.Width *= k
		f := m.Frame
		m.Frame = Rect{x + k*f.X0, y + k*f.Y0, x + k*f.X1, y + k*f.Y1}
		d.end(m)
	}
	for _, t := range part.Texts {
		t.At = Point{x + k*t.At.X, y + k*t.At.Y}
		t.Size *= k
		d.Write(t)
	}
}

// PlaceTurned adds what is on part as Place does at its own size, turned clockwise
// by turn radians about the point of part at (cx, cy), which comes to (x, y). It has
// no pictures, which no device turns.
func (d *List) PlaceTurned(part *List, x, y, cx, cy, turn float64) {
	sin, cos := math.Sincos(turn)
	to := func(p Point) Point {
		dx, dy := p.X-cx, p.Y-cy
		return Point{x + dx*cos - dy*sin, y + dx*sin + dy*cos}
	}
	for _, m := range part.Marks {
		if m.Picture != nil {
			panic("draw: a picture cannot be turned")
		}
		for _, p := range m.Points {
			q := to(p) // a lift stays one: NaN
			d.To(q.X, q.Y)
		}
		d.end(m)
	}
	for _, t := range part.Texts {
		t.At, t.Turn = to(t.At), t.Turn+turn
		d.Write(t)
	}
}
