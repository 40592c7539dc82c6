// Package chart turns numbers into marks: axes with round ticks, curves, bands
// and markers, on no particular device.
//
// A Plot is laid out into a Drawing, a flat list of filled outlines, strokes
// and texts in device-independent units (x to the right, y down; one unit is a
// Fyne pixel at scale 1, or whatever length a printer chooses). A Painter turns
// the outlines and strokes into pixels; a PDF writer can walk the same list.
// Texts stay strings with an anchor, because every device has its own fonts.
//
// Nothing here is told by colour alone: every line has a dash pattern, every
// band a hatch, every series may have a marker. An unknown value is NaN and
// leaves a gap; it is never drawn as zero.
package chart

import (
	"image"
	"image/color"
	"math"
)

// A Colour is red, green, blue and opacity, the opacity not multiplied in.
type Colour = color.NRGBA

// RGB returns the opaque colour written 0xRRGGBB.
func RGB(hex uint32) Colour {
	return Colour{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: 255}
}

// A Point is a place on a Drawing, in drawing units. A point whose X is NaN
// lifts the pen: the stroke goes on from the point after it.
type Point struct{ X, Y float64 }

// lift is the point that ends one sub-path of a stroke.
var lift = Point{math.NaN(), math.NaN()}

// Lifts reports whether p is a gap in a stroke rather than a place.
func (p Point) Lifts() bool { return math.IsNaN(p.X) || math.IsNaN(p.Y) }

// A Rect is an upright rectangle in drawing units, Y0 above Y1.
type Rect struct{ X0, Y0, X1, Y1 float64 }

// Dx is the width of r.
func (r Rect) Dx() float64 { return r.X1 - r.X0 }

// Dy is the height of r.
func (r Rect) Dy() float64 { return r.Y1 - r.Y0 }

// A Line says how a stroke looks. Caps and joins are always round.
type Line struct {
	Width  float64 // in drawing units; 0 draws nothing
	Dash   Dash
	Colour Colour
}

// A Mark is one thing to put on the device: a stroke along Points if Line has
// a width, otherwise the closed outline Points filled with Fill, or, if Picture
// is set, showing that picture stretched over Frame and clipped to the outline.
// An outline should not cross itself: where it does, the overlap may stay empty.
type Mark struct {
	Points  []Point
	Line    Line
	Fill    Colour
	Picture image.Image
	Frame   Rect
}

// An Align is the place of a text's anchor along the line of writing.
type Align int

// The anchors along the line.
const (
	Left Align = iota
	Centre
	Right
)

// A Rise is the place of a text's anchor across the line of writing.
type Rise int

// The anchors across the line.
const (
	Middle Rise = iota
	Above       // the anchor is at the foot of the text
	Below       // the anchor is at the top of the text
)

// A Text is one line of horizontal writing.
type Text struct {
	At     Point
	S      string
	Size   float64 // height of the font, in drawing units
	Align  Align
	Rise   Rise
	Bold   bool
	Colour Colour
}

// A Drawing is a picture as a list of marks, to be drawn in order, and then
// the texts over them. Reset and refill one Drawing rather than making new ones:
// after the first time it allocates nothing. The points of its marks are valid
// until the next Reset.
type Drawing struct {
	W, H  float64 // size, in drawing units
	Marks []Mark
	Texts []Text

	pool []Point // the points of all marks
	from int     // where the open path begins in pool

	penX, penY float64 // last point of the curve being clipped, drawn or not
}

// Reset empties d and gives it a size.
func (d *Drawing) Reset(w, h float64) {
	d.W, d.H = w, h
	d.Marks, d.Texts, d.pool, d.from = d.Marks[:0], d.Texts[:0], d.pool[:0], 0
}

// To adds a point to the open path.
func (d *Drawing) To(x, y float64) { d.pool = append(d.pool, Point{x, y}) }

// Lift begins another sub-path of the open path.
func (d *Drawing) Lift() { d.pool = append(d.pool, lift) }

// EndStroke closes the open path and strokes it.
func (d *Drawing) EndStroke(l Line) { d.end(Mark{Line: l}) }

// EndFill closes the open path and fills it.
func (d *Drawing) EndFill(c Colour) { d.end(Mark{Fill: c}) }

// EndPicture closes the open path and shows img inside it, stretched over frame.
func (d *Drawing) EndPicture(img image.Image, frame Rect) { d.end(Mark{Picture: img, Frame: frame}) }

func (d *Drawing) end(m Mark) {
	m.Points = d.pool[d.from:len(d.pool):len(d.pool)]
	d.from = len(d.pool)
	if len(m.Points) > 0 {
		d.Marks = append(d.Marks, m)
	}
}

// Segment strokes one straight line.
func (d *Drawing) Segment(l Line, x0, y0, x1, y1 float64) {
	d.To(x0, y0)
	d.To(x1, y1)
	d.EndStroke(l)
}

// Box fills an upright rectangle.
func (d *Drawing) Box(r Rect, c Colour) {
	d.boxPath(r)
	d.EndFill(c)
}

// Outline strokes an upright rectangle.
func (d *Drawing) Outline(r Rect, l Line) {
	d.boxPath(r)
	d.To(r.X0, r.Y0)
	d.EndStroke(l)
}

func (d *Drawing) boxPath(r Rect) {
	d.To(r.X0, r.Y0)
	d.To(r.X1, r.Y0)
	d.To(r.X1, r.Y1)
	d.To(r.X0, r.Y1)
}

// Arc adds points of an ellipse about (cx, cy) to the open path, from angle a0
// to a1 in radians, measured from the x axis towards y (clockwise on screen).
func (d *Drawing) Arc(cx, cy, rx, ry, a0, a1 float64) {
	n := int(math.Ceil(math.Abs(a1-a0) / (2 * math.Pi) * (16 + 8*math.Sqrt(math.Max(rx, ry)))))
	for i := 0; i <= n; i++ {
		s, c := math.Sincos(a0 + (a1-a0)*float64(i)/float64(n))
		d.To(cx+rx*c, cy+ry*s)
	}
}

// RoundBox adds a rectangle with corners of radius r to the open path.
func (d *Drawing) RoundBox(b Rect, r float64) {
	r = math.Min(r, math.Min(b.Dx(), b.Dy())/2)
	d.Arc(b.X0+r, b.Y0+r, r, r, math.Pi, 1.5*math.Pi)
	d.Arc(b.X1-r, b.Y0+r, r, r, 1.5*math.Pi, 2*math.Pi)
	d.Arc(b.X1-r, b.Y1-r, r, r, 0, .5*math.Pi)
	d.Arc(b.X0+r, b.Y1-r, r, r, .5*math.Pi, math.Pi)
	d.To(b.X0, b.Y0+r) // a stroke goes all round
}

// Write adds a text.
func (d *Drawing) Write(t Text) {
	if t.S != "" {
		d.Texts = append(d.Texts, t)
	}
}

// Fade returns c with its opacity multiplied by a, 0 to 1.
func Fade(c Colour, a float64) Colour {
	c.A = uint8(math.Round(float64(c.A) * math.Max(0, math.Min(1, a))))
	return c
}

// Blend returns the colour a fraction f of the way from a to b, channel by channel.
func Blend(a, b Colour, f float64) Colour {
	m := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + (float64(y)-float64(x))*f)) }
	return Colour{R: m(a.R, b.R), G: m(a.G, b.G), B: m(a.B, b.B), A: m(a.A, b.A)}
}
