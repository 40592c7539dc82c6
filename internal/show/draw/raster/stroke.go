package raster

import (
	"math"

	"ripplewright/internal/show/draw"
)

// stroke draws points joined by straight lines, with gaps where the pen lifts.
func (p *Painter) stroke(points []draw.Point, l draw.Stroke, scale float64) {
	width := l.Width * scale
	colour := l.Colour
	if width < 1 { // thinner than a pixel: paler rather than thinner
		colour = draw.Fade(colour, width)
		width = 1
	}
	if colour.A == 0 {
		return
	}
	pattern := l.Dash.Pattern()
	dash := dasher{pattern: pattern, unit: width}
	for i := 0; i+1 < len(points); i++ {
		a, b := points[i], points[i+1]
		if a.Lifts() || b.Lifts() {
			dash.restart()
			continue
		}
		ax, ay, bx, by := a.X*scale, a.Y*scale, b.X*scale, b.Y*scale
		if pattern == nil {
			p.segment(ax, ay, bx, by, width/2)
		} else {
			dash.along(p, ax, ay, bx, by)
		}
	}
	p.blend(colour)
}

// A dasher cuts a polyline into its dashes, carrying the phase from one segment
// to the next.
type dasher struct {
	pattern []float64
	unit    float64
	i       int     // place in pattern; even is ink
	used    float64 // how much of pattern[i] is behind us, in pixels
}

func (s *dasher) restart() { s.i, s.used = 0, 0 }

func (s *dasher) along(p *Painter, ax, ay, bx, by float64) {
	length := math.Hypot(bx-ax, by-ay)
	if length == 0 || length > 1e5 {
		return
	}
	for at := 0.0; at < length; {
		end := math.Min(length, at+s.pattern[s.i]*s.unit-s.used)
		if s.i%2 == 0 {
			f, g := at/length, end/length
			p.segment(ax+(bx-ax)*f, ay+(by-ay)*f, ax+(bx-ax)*g, ay+(by-ay)*g, s.unit/2)
		}
		s.used += end - at
		if s.used >= s.pattern[s.i]*s.unit-1e-9 {
			s.i, s.used = (s.i+1)%len(s.pattern), 0
		}
		at = end
	}
}

// segment adds to the mask the coverage of a round-ended line of half-width r
// pixels: a pixel whose middle is a distance e from the line is covered by
// r + ½ − e, between 0 and 1. Where lines overlap the larger coverage counts.
func (p *Painter) segment(ax, ay, bx, by, r float64) {
	w, h := p.img.Rect.Dx(), p.img.Rect.Dy()
	reach := r + .5
	// Far outside, numbers lose their meaning before the clip below sees them.
	const far = 1e6
	if math.Abs(ax) > far || math.Abs(ay) > far || math.Abs(bx) > far || math.Abs(by) > far {
		return
	}
	if ay > by {
		ax, ay, bx, by = bx, by, ax, ay
	}
	y0, y1 := max(0, int(math.Floor(ay-reach))), min(h, int(math.Ceil(by+reach)))
	dx, dy := bx-ax, by-ay
	square := dx*dx + dy*dy
	inverse := 0.0
	if square > 0 {
		inverse = 1 / square
	}
	inner, outer := math.Max(0, r-.5), reach
	inner, outer = inner*inner, outer*outer
	left, right := w, 0
	for y := y0; y < y1; y++ {
		cy := float64(y) + .5
		// Only the part of the line within reach of this row can touch it.
		lo, hi := math.Min(ax, bx), math.Max(ax, bx)
		if dy > 0 {
			f := math.Max(0, (cy-reach-ay)/dy)
			g := math.Min(1, (cy+reach-ay)/dy)
			xf, xg := ax+dx*f, ax+dx*g
			lo, hi = math.Min(xf, xg), math.Max(xf, xg)
		}
		x0, x1 := max(0, int(math.Floor(lo-reach))), min(w, int(math.Ceil(hi+reach)))
		if x0 >= x1 {
			continue
		}
		left, right = min(left, x0), max(right, x1)
		row := p.mask.Pix[y*w : y*w+w]
		qy := cy - ay
		for x := x0; x < x1; x++ {
			qx := float64(x) + .5 - ax
			t := (qx*dx + qy*dy) * inverse
			if t < 0 {
				t = 0
			} else if t > 1 {
				t = 1
			}
			ex, ey := qx-t*dx, qy-t*dy
			e := ex*ex + ey*ey
			if e >= outer {
				continue
			}
			cover := uint8(255)
			if e > inner {
				if part := reach - math.Sqrt(e); part < 1 {
					cover = uint8(255*part + .5)
				}
			}
			if cover > row[x] {
				row[x] = cover
			}
		}
	}
	if left < right && y0 < y1 {
		p.touch(left, y0, right, y1)
	}
}
