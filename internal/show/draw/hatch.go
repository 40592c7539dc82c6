package draw

import "math"

// A Hatch is the texture of a filled band.
type Hatch int

// The textures, named for the way their lines run.
const (
	Plain   Hatch = iota
	Rising        // like a slash
	Falling       // like a backslash
	Crossed       // both
	Dots
	Level // horizontal lines
)

// Texture strokes hatch h inside the closed outline, with lines gap units
// apart. The outline must have no gaps.
func (d *List) Texture(outline []Point, h Hatch, gap float64, l Stroke) {
	if len(outline) < 3 || gap <= 0 {
		return
	}
	switch h {
	case Rising:
		d.hatch(outline, 1, -1, gap, false)
	case Falling:
		d.hatch(outline, 1, 1, gap, false)
	case Crossed:
		d.hatch(outline, 1, -1, gap, false)
		d.hatch(outline, 1, 1, gap, false)
	case Level:
		d.hatch(outline, 1, 0, gap, false)
	case Dots:
		d.hatch(outline, 1, 0, gap, true)
		l.Width *= 1.8
	default:
		return
	}
	d.EndStroke(l)
}

// hatch adds to the open path the parts inside outline of parallel lines along
// (ux, uy). Lines are counted from the list's origin, so a band that grows
// does not make its texture crawl.
func (d *List) hatch(outline []Point, ux, uy, gap float64, dots bool) {
	n := math.Hypot(ux, uy)
	ux, uy = ux/n, uy/n
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range outline {
		v := p.Y*ux - p.X*uy // distance across the lines
		lo, hi = math.Min(lo, v), math.Max(hi, v)
	}
	var room [32]float64
	for k := math.Ceil(lo / gap); k*gap <= hi; k++ {
		v := k * gap
		cuts := room[:0]
		for i, a := range outline {
			b := outline[(i+1)%len(outline)]
			va, vb := a.Y*ux-a.X*uy-v, b.Y*ux-b.X*uy-v
			if (va < 0) == (vb < 0) {
				continue
			}
			f := va / (va - vb)
			s := (a.X+(b.X-a.X)*f)*ux + (a.Y+(b.Y-a.Y)*f)*uy
			j := len(cuts)
			cuts = append(cuts, s)
			for ; j > 0 && cuts[j-1] > s; j-- {
				cuts[j] = cuts[j-1]
			}
			cuts[j] = s
		}
		for i := 0; i+1 < len(cuts); i += 2 {
			if dots {
				off := gap / 2 * math.Mod(math.Abs(k), 2)
				for m := math.Ceil((cuts[i] - off) / gap); m*gap+off <= cuts[i+1]; m++ {
					s := m*gap + off
					x, y := s*ux-v*uy, s*uy+v*ux
					d.To(x, y)
					d.To(x, y)
					d.Lift()
				}
				continue
			}
			d.To(cuts[i]*ux-v*uy, cuts[i]*uy+v*ux)
			d.To(cuts[i+1]*ux-v*uy, cuts[i+1]*uy+v*ux)
			d.Lift()
		}
	}
}
