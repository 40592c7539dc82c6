package raster

import (
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
		box := p.open(x-size, y-1.2*size, x+long+size, y+0.4*size)
		if box.Empty() {
			continue
		}
		face.Trace(&p.ink, t.Face, t.S, size, x-float64(box.Min.X), y-float64(box.Min.Y), float64(box.Dx()))
		p.shut(box)
		p.blend(t.Colour)
	}
}
