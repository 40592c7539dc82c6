package raster

import (
	"image"
	stddraw "image/draw"
	"math"

	"ripplewright/internal/show/draw"
)

// outline puts the coverage of the closed rings of points into the mask.
func (p *Painter) outline(points []draw.Point, scale float64) {
	box := p.open(Bounds(points, scale))
	if box.Empty() {
		return
	}
	x, y := float64(box.Min.X), float64(box.Min.Y)
	down := false
	for _, a := range points {
		switch {
		case a.Lifts():
			down = false
		case down:
			p.ink.LineTo(float32(a.X*scale-x), float32(a.Y*scale-y))
		default:
			p.ink.ClosePath()
			p.ink.MoveTo(float32(a.X*scale-x), float32(a.Y*scale-y))
			down = true
		}
	}
	p.shut(box)
}

// open begins an outline within the given box of pixels, and returns the part of
// the box on the picture: the rasterizer's corner is its corner.
func (p *Painter) open(x0, y0, x1, y1 float64) image.Rectangle {
	w, h := p.img.Rect.Dx(), p.img.Rect.Dy()
	box := image.Rect(clampInt(math.Floor(x0), 0, w), clampInt(math.Floor(y0), 0, h),
		clampInt(math.Ceil(x1), 0, w), clampInt(math.Ceil(y1), 0, h))
	if !box.Empty() {
		p.ink.Reset(box.Dx(), box.Dy())
	}
	return box
}

// shut ends the outline: its coverage is in the mask.
func (p *Painter) shut(box image.Rectangle) {
	p.ink.ClosePath()
	p.ink.DrawOp = stddraw.Src
	p.ink.Draw(&p.mask, box, image.Opaque, image.Point{})
	p.touch(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y)
}

// Bounds is the smallest upright box around points, stretched by scale; x0 lies beyond x1
// where there are none.
func Bounds(points []draw.Point, scale float64) (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, a := range points {
		if !a.Lifts() {
			x0, x1 = math.Min(x0, a.X*scale), math.Max(x1, a.X*scale)
			y0, y1 = math.Min(y0, a.Y*scale), math.Max(y1, a.Y*scale)
		}
	}
	return x0, y0, x1, y1
}

func clampInt(v float64, lo, hi int) int {
	if !(v > float64(lo)) {
		return lo
	}
	if v > float64(hi) {
		return hi
	}
	return int(v)
}

// fillBox fills an opaque upright rectangle whose sides lie on pixels, such as a
// background, and reports whether points were one.
func (p *Painter) fillBox(points []draw.Point, c draw.Colour, scale float64) bool {
	if len(points) != 4 || c.A != 255 {
		return false
	}
	a, b := points[0], points[2]
	if points[1] != (draw.Point{X: b.X, Y: a.Y}) || points[3] != (draw.Point{X: a.X, Y: b.Y}) {
		return false
	}
	for _, v := range [...]float64{a.X, a.Y, b.X, b.Y} {
		if v*scale != math.Trunc(v*scale) {
			return false
		}
	}
	w, h := p.img.Rect.Dx(), p.img.Rect.Dy()
	x0, x1 := clampInt(math.Min(a.X, b.X)*scale, 0, w), clampInt(math.Max(a.X, b.X)*scale, 0, w)
	y0, y1 := clampInt(math.Min(a.Y, b.Y)*scale, 0, h), clampInt(math.Max(a.Y, b.Y)*scale, 0, h)
	if x0 >= x1 || y0 >= y1 {
		return true
	}
	first := p.img.Pix[y0*p.img.Stride+4*x0 : y0*p.img.Stride+4*x1]
	first[0], first[1], first[2], first[3] = c.R, c.G, c.B, 255
	for n := 4; n < len(first); n *= 2 {
		copy(first[n:], first[:n])
	}
	for y := y0 + 1; y < y1; y++ {
		copy(p.img.Pix[y*p.img.Stride+4*x0:], first)
	}
	return true
}
