package raster

import (
	"math"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/face"
)

// Write sets the texts of d over what is already there, in the faces of package
// face, letter for letter where a PDF has them.
func (p *Painter) Write(d *draw.List, scale float64) {
	for _, t := range d.Texts {
		size := t.Size * scale
		x, y := face.Start(t)
		x, y = x*scale, y*scale
		long := face.Width(t.Face, t.S) * size
		x0, y0, x1, y1 := x-size, y-1.2*size, x+long+size, y+0.4*size
		turn := func(x, y float64) (float64, float64) { return face.Turned(t, x, y, scale) }
		ax, ay := turn(x0, y0)
		bx, by := turn(x1, y0)
		cx, cy := turn(x0, y1)
		dx, dy := turn(x1, y1)
		box := p.open(min(ax, bx, cx, dx), min(ay, by, cy, dy), max(ax, bx, cx, dx), max(ay, by, cy, dy))
		if box.Empty() {
			continue
		}
		left, top := float64(box.Min.X), float64(box.Min.Y)
		if t.Turn == 0 {
			face.Trace(&p.ink, t.Face, t.S, size, x-left, y-top, float64(box.Dx()))
		} else {
			face.Trace(turned{&p.ink, func(x, y float32) (float32, float32) {
				u, v := turn(float64(x), float64(y))
				return float32(u - left), float32(v - top)
			}}, t.Face, t.S, size, x, y, math.Inf(1))
		}
		p.shut(box)
		p.blend(t.Colour)
	}
}

// turned is a pen whose hand goes elsewhere.
type turned struct {
	face.Pen
	to func(x, y float32) (float32, float32)
}

func (p turned) MoveTo(ax, ay float32) { p.Pen.MoveTo(p.to(ax, ay)) }
func (p turned) LineTo(bx, by float32) { p.Pen.LineTo(p.to(bx, by)) }
func (p turned) QuadTo(bx, by, cx, cy float32) {
	bx, by = p.to(bx, by)
	cx, cy = p.to(cx, cy)
	p.Pen.QuadTo(bx, by, cx, cy)
}

func (p turned) CubeTo(bx, by, cx, cy, dx, dy float32) {
	bx, by = p.to(bx, by)
	cx, cy = p.to(cx, cy)
	dx, dy = p.to(dx, dy)
	p.Pen.CubeTo(bx, by, cx, cy, dx, dy)
}
