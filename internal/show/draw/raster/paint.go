// Package raster turns a draw.List into pixels.
//
// Fills are golang.org/x/image/vector's, through our mask. Strokes and clipped
// pictures are ours, since BenchmarkLibraries found rasterx 15 to 45 times and
// x/image/draw 3 times slower at them.
package raster

import (
	"encoding/binary"
	"image"

	"golang.org/x/image/vector"

	"ripplewright/internal/show/draw"
)

// A Painter turns drawings into pixels. Its buffers are reused: after the first
// picture of a size it allocates nothing. The zero Painter is ready.
//
// Strokes are drawn by the distance of each pixel near a segment from that
// segment, which costs in proportion to the ink, not to the area.
type Painter struct {
	img   *image.RGBA
	mask  image.Alpha // coverage of the mark being drawn, 0 outside dirty
	dirty image.Rectangle
	ink   vector.Rasterizer

	across []spot // of the picture being shown
	bands  [4]band
}

// Resize makes the painter's picture w by h pixels and returns it, with
// whatever was painted before. It is the same image every time until the size changes,
// and the pixels of another size lie in the same memory while that has room for them.
func (p *Painter) Resize(w, h int) *image.RGBA {
	w, h = max(w, 1), max(h, 1)
	if p.img == nil || p.img.Rect.Dx() != w || p.img.Rect.Dy() != h {
		n := 4 * w * h
		if p.img == nil || cap(p.img.Pix) < n {
			p.img = &image.RGBA{Pix: make([]uint8, n)}
		}
		p.On(&image.RGBA{Pix: p.img.Pix[:n], Stride: 4 * w, Rect: image.Rect(0, 0, w, h)})
	}
	return p.img
}

// On makes img, whose corner is at 0, 0, the painter's picture.
func (p *Painter) On(img *image.RGBA) {
	p.img = img
	if p.mask.Rect != img.Rect {
		w, n := img.Rect.Dx(), img.Rect.Dx()*img.Rect.Dy()
		if cap(p.mask.Pix) < n {
			p.mask.Pix = make([]uint8, n)
		}
		p.mask = image.Alpha{Pix: p.mask.Pix[:n], Stride: w, Rect: img.Rect}
	}
}

// Clear fills the picture with c.
func (p *Painter) Clear(c draw.Colour) {
	r, g, b, a := premultiply(c)
	pix := p.img.Pix
	if len(pix) == 0 {
		return
	}
	pix[0], pix[1], pix[2], pix[3] = r, g, b, a
	for n := 4; n < len(pix); n *= 2 {
		copy(pix[n:], pix[:n])
	}
}

// Paint draws the marks of d, but not its texts, stretched by scale pixels per
// drawing unit, over what is already there. Marks are clipped to the picture.
func (p *Painter) Paint(d *draw.List, scale float64) {
	for i := range d.Marks {
		m := &d.Marks[i]
		switch {
		case m.Line.Width > 0:
			p.stroke(m.Points, m.Line, scale)
		case m.Picture != nil:
			p.outline(m.Points, scale)
			p.showPicture(m.Picture, m.Frame, scale)
		case m.Fill.A > 0:
			if p.fillBox(m.Points, m.Fill, scale) {
				continue
			}
			p.outline(m.Points, scale)
			p.blend(m.Fill)
		}
	}
}

// touch widens the part of the mask to be blended.
func (p *Painter) touch(x0, y0, x1, y1 int) {
	p.dirty = p.dirty.Union(image.Rect(x0, y0, x1, y1).Intersect(p.img.Rect))
}

// blend lays c over the picture through the mask, and clears the mask.
func (p *Painter) blend(c draw.Colour) {
	cr, cg, cb, ca := uint32(c.R), uint32(c.G), uint32(c.B), uint32(c.A)
	w := p.img.Rect.Dx()
	for y := p.dirty.Min.Y; y < p.dirty.Max.Y; y++ {
		row := p.mask.Pix[y*w+p.dirty.Min.X : y*w+p.dirty.Max.X]
		pix := p.img.Pix[y*p.img.Stride+4*p.dirty.Min.X:]
		for i := 0; i < len(row); i++ {
			m := row[i]
			if m == 0 {
				for i+8 < len(row) && binary.LittleEndian.Uint64(row[i+1:]) == 0 {
					i += 8 // most of a curve's box is empty
				}
				continue
			}
			row[i] = 0
			q := pix[4*i : 4*i+4 : 4*i+4]
			a := uint32(m) * ca // of 255²
			if a == 255*255 {
				q[0], q[1], q[2], q[3] = c.R, c.G, c.B, 255
				continue
			}
			rest := 255*255 - a
			q[0] = uint8((cr*a + uint32(q[0])*rest + 32512) / 65025)
			q[1] = uint8((cg*a + uint32(q[1])*rest + 32512) / 65025)
			q[2] = uint8((cb*a + uint32(q[2])*rest + 32512) / 65025)
			q[3] = uint8((255*a + uint32(q[3])*rest + 32512) / 65025)
		}
	}
	p.dirty = image.Rectangle{}
}

func toRGBA(img image.Image) *image.RGBA {
	b := img.Bounds()
	out := image.NewRGBA(image.Rect(0, 0, b.Dx(), b.Dy()))
	for y := 0; y < b.Dy(); y++ {
		for x := 0; x < b.Dx(); x++ {
			out.Set(x, y, img.At(b.Min.X+x, b.Min.Y+y))
		}
	}
	return out
}

func premultiply(c draw.Colour) (r, g, b, a uint8) {
	f := uint32(c.A)
	m := func(v uint8) uint8 { return uint8((uint32(v)*f + 127) / 255) }
	return m(c.R), m(c.G), m(c.B), c.A
}
