package card

import (
	"context"
	"image"
	"image/color"
	"math"

	"golang.org/x/image/draw"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// imageOf paints the sheets one under the other on white, at dots per inch.
// pages are the same pixels, sheet by sheet. The error is ctx's.
func imageOf(ctx context.Context, sheets []*sheet, dpi float64) (whole *image.RGBA, pages []image.Image, err error) {
	k := dpi / 25.4
	w, h := 0, 0
	for _, s := range sheets {
		w = max(w, int(math.Round(s.w*k)))
		h += int(math.Round(s.h * k))
	}
	whole = image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(whole, whole.Bounds(), image.White, image.Point{}, draw.Src)
	top := 0
	for i, s := range sheets {
		high := int(math.Round(s.h * k))
		if i > 0 { // where one page ends
			line := image.Rect(0, top, w, top+1)
			draw.Draw(whole, line, image.NewUniform(color.Gray{0xd0}), image.Point{}, draw.Src)
		}
		page := whole.SubImage(image.Rect(0, top, w, top+high)).(*image.RGBA)
		r := &rasterPage{img: page, k: k, top: float64(top)}
		for _, m := range s.marks {
			if err := ctx.Err(); err != nil {
				return nil, nil, err
			}
			r.put(m)
		}
		pages = append(pages, &image.RGBA{Pix: page.Pix, Stride: page.Stride, Rect: image.Rect(0, 0, w, high)})
		top += high
	}
	return whole, pages, nil
}

// rasterPage paints marks on an image, k pixels to the mm.
type rasterPage struct {
	img *image.RGBA
	k   float64
	top float64 // of the page on the image, pixels
	ink vector.Rasterizer
	off image.Point // of the rasterizer's corner
}

func (r *rasterPage) put(m mark) {
	switch m := m.(type) {
	case words:
		r.words(m)
	case shape:
		r.shape(m.rings, m.colour)
	case stroke:
		r.shape(outlineOf(m), m.colour)
	case picture:
		to := image.Rect(r.px(m.x), r.py(m.y), r.px(m.x+m.w), r.py(m.y+m.h))
		draw.CatmullRom.Scale(r.img, to, m.image, m.image.Bounds(), draw.Over, nil)
	}
}

func (r *rasterPage) px(x float64) int { return int(math.Round(x * r.k)) }
func (r *rasterPage) py(y float64) int { return int(math.Round(y*r.k + r.top)) }

// open begins an outline within the given box, in pixels. It reports false
// where nothing of it is on the image.
func (r *rasterPage) open(x0, y0, x1, y1 float64) bool {
	box := image.Rect(int(math.Floor(x0)), int(math.Floor(y0)), int(math.Ceil(x1)), int(math.Ceil(y1))).Inset(-1)
	box = box.Intersect(r.img.Bounds().Inset(-2000)) // the rasterizer clips; this only bounds its memory
	if box.Intersect(r.img.Bounds()).Empty() {
		return false
	}
	r.off = box.Min
	r.ink.Reset(box.Dx(), box.Dy())
	r.ink.DrawOp = draw.Over
	return true
}

func (r *rasterPage) close(c color.NRGBA) {
	size := r.ink.Size()
	r.ink.Draw(r.img, image.Rectangle{r.off, r.off.Add(size)}, image.NewUniform(c), image.Point{})
}

func (r *rasterPage) shape(rings [][]at, c color.NRGBA) {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, ring := range rings {
		for _, p := range ring {
			x, y := p.x*r.k, p.y*r.k+r.top
			x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
		}
	}
	if !(x0 <= x1) || !r.open(x0, y0, x1, y1) {
		return
	}
	for _, ring := range rings {
		for i, p := range ring {
			x, y := float32(p.x*r.k-float64(r.off.X)), float32(p.y*r.k+r.top-float64(r.off.Y))
			if i == 0 {
				r.ink.MoveTo(x, y)
			} else {
				r.ink.LineTo(x, y)
			}
		}
		r.ink.ClosePath()
	}
	r.close(c)
}

// words paints text from its outlines, unhinted, so that every letter stands
// where the PDF has it.
func (r *rasterPage) words(m words) {
	size := m.size * point * r.k // pixels to the em
	x, y := m.x*r.k, m.y*r.k+r.top
	if !r.open(x-size, y-1.2*size, x+m.width(m.text)*r.k+size, y+0.4*size) {
		return
	}
	o := faces()[m.face]
	o.Lock()
	defer o.Unlock()
	k := size / o.units / 64
	x -= float64(r.off.X)
	y -= float64(r.off.Y)
	for _, c := range m.text {
		g := o.glyph(c)
		segments, err := o.font.LoadGlyph(&o.buf, g.index, o.upem, nil)
		if err != nil {
			segments = nil // a sign without an outline, such as a space
		}
		to := func(p fixed.Point26_6) (float32, float32) {
			return float32(x + float64(p.X)*k), float32(y + float64(p.Y)*k)
		}
		for _, s := range segments {
			ax, ay := to(s.Args[0])
			switch s.Op {
			case sfnt.SegmentOpMoveTo:
				r.ink.ClosePath()
				r.ink.MoveTo(ax, ay)
			case sfnt.SegmentOpLineTo:
				r.ink.LineTo(ax, ay)
			case sfnt.SegmentOpQuadTo:
				bx, by := to(s.Args[1])
				r.ink.QuadTo(ax, ay, bx, by)
			case sfnt.SegmentOpCubeTo:
				bx, by := to(s.Args[1])
				cx, cy := to(s.Args[2])
				r.ink.CubeTo(ax, ay, bx, by, cx, cy)
			}
		}
		r.ink.ClosePath()
		x += g.advance * size
	}
	r.close(m.colour)
}

// outlineOf returns the rings that a stroke covers, all of one sense, so that
// where they overlap they stay filled.
func outlineOf(s stroke) [][]at {
	var rings [][]at
	h := s.width / 2
	for _, line := range dashed(s.line, s.dash) {
		for i, p := range line {
			rings = append(rings, circle(p, h))
			if i == 0 {
				continue
			}
			q := line[i-1]
			l := math.Hypot(p.x-q.x, p.y-q.y)
			if l == 0 {
				continue
			}
			nx, ny := -(p.y-q.y)/l*h, (p.x-q.x)/l*h
			rings = append(rings, []at{{q.x - nx, q.y - ny}, {p.x - nx, p.y - ny}, {p.x + nx, p.y + ny}, {q.x + nx, q.y + ny}})
		}
	}
	return rings
}

func circle(p at, r float64) []at {
	const n = 12
	ring := make([]at, n)
	for i := range ring {
		a := 2 * math.Pi * float64(i) / n
		ring[i] = at{p.x + r*math.Cos(a), p.y + r*math.Sin(a)}
	}
	return ring
}

// dashed cuts a line into the dashes of a pattern of on and off lengths.
func dashed(line []at, pattern []float64) [][]at {
	total := 0.0
	for _, l := range pattern {
		total += l
	}
	if total <= 0 || len(line) < 2 {
		return [][]at{line}
	}
	var out [][]at
	dash := []at{line[0]}
	on, i, left := true, 0, pattern[0]
	for j := 1; j < len(line); j++ {
		p, q := line[j-1], line[j]
		l := math.Hypot(q.x-p.x, q.y-p.y)
		for l > left {
			f := left / l
			p = at{p.x + (q.x-p.x)*f, p.y + (q.y-p.y)*f}
			l -= left
			if on {
				out = append(out, append(dash, p))
			}
			on = !on
			dash = []at{p}
			i = (i + 1) % len(pattern)
			left = max(pattern[i], 1e-6)
		}
		left -= l
		dash = append(dash, q)
	}
	if on && len(dash) > 1 {
		out = append(out, dash)
	}
	return out
}
