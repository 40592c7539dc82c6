package ripple

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"ripplewright/internal/matter/num"
)

// puller is a stroke read backwards: it replaces points, in mm, by where their
// fluid came from.
type puller interface{ pull(xs, ys []float64) }

// Cut is a stirred tub, cut. It does not change and may be shared.
type Cut struct {
	*stirred
	set   Settings
	level float64 // foam is where start is above it
}

// stirred is what a cut is whatever its share of foam: the strokes, and the layout
// before them as a height.
type stirred struct {
	out   outline
	maps  []puller // last stroke first
	start *relief

	tables sync.Once
	drawn  []puller // see forPictures
}

// Stir lays out the phases and prepares the strokes. The error wraps a
// *FieldError.
func Stir(s Settings) (*Cut, error) {
	if err := s.Validate(); err != nil {
		return nil, fmt.Errorf("stirring: %w", err)
	}
	c := &Cut{set: s.clone(), stirred: &stirred{out: s.Tub.outline(s.View)}}
	for i := len(s.Strokes) - 1; i >= 0; i-- {
		m := s.Strokes[i].place(c.out, s.View, s.Seed, i)
		if m.flow != nil {
			c.maps = append(c.maps, stroked{m.flow})
		}
		for j := len(m.twists) - 1; j >= 0; j-- {
			c.maps = append(c.maps, m.twists[j])
		}
	}
	c.start = newRelief(c.out, s.Layout.field(c.out, s.View, s.Seed))
	c.level = c.start.level(s.FoamFraction)
	return c, nil
}

// WithFoam returns the same tub with another share of foam, for nearly nothing: the
// strokes stay, and so does the layout's height; it is cut at another level. The
// error wraps a *FieldError.
func (c *Cut) WithFoam(fraction float64) (*Cut, error) {
	s := c.set
	s.FoamFraction = fraction
	if err := s.Validate(); err != nil {
		return nil, fmt.Errorf("stirring: %w", err)
	}
	return &Cut{stirred: c.stirred, set: s, level: c.start.level(fraction)}, nil
}

func (s Settings) clone() Settings {
	s.Strokes = slices.Clone(s.Strokes)
	return s
}

// Settings returns what the cut was made from.
func (c *Cut) Settings() Settings { return c.set.clone() }

// SizeMM returns the size of the box around the cut.
func (c *Cut) SizeMM() (width, height float64) { return c.out.w, c.out.h }

// Origin returns where the fluid at a point lay before the first stroke, in mm.
func (c *Cut) Origin(x, y float64) (float64, float64) {
	xs, ys := [1]float64{x}, [1]float64{y}
	c.pull(xs[:], ys[:])
	return xs[0], ys[0]
}

// Foam reports whether a point, in mm, is foam.
func (c *Cut) Foam(x, y float64) bool {
	x, y = c.Origin(x, y)
	return c.start.at(x, y) > c.level
}

func (c *Cut) pull(xs, ys []float64) {
	for _, m := range c.maps {
		m.pull(xs, ys)
	}
}

// relief is a layout's height on a grid of square cells over the box around the
// cut, bilinear between nodes.
type relief struct {
	out    outline
	nx, ny int // cells
	perX   float64
	perY   float64
	node   []float64
	slope  float64 // steepest rise, per mm
	low    float64 // lowest and highest node
	high   float64

	// area is how much of the cut, in cells, has a height in each of reliefBins equal
	// steps from low to high; all is their sum.
	area [reliefBins + 2]float64
	all  float64
}

// Cells of a relief: so many along the longer and the shorter side, and smaller than
// a layout's details in wide tubs too. A cell of a pint's cut is 0.35 mm.
const (
	reliefCells  = 240
	reliefFlat   = 60
	reliefCellMM = 0.4
	reliefBins   = 2048
)

func newRelief(o outline, f func(x, y float64) float64) *relief {
	cell := min(math.Max(o.w, o.h)/reliefCells, math.Min(o.w, o.h)/reliefFlat, reliefCellMM)
	nx, ny := int(math.Ceil(o.w/cell)), int(math.Ceil(o.h/cell))
	h := &relief{out: o, nx: nx, ny: ny, perX: float64(nx) / o.w, perY: float64(ny) / o.h, node: make([]float64, (nx+1)*(ny+1))}
	num.Parallel(ny+1, func(j int) {
		row := h.node[j*(nx+1) : (j+1)*(nx+1)]
		for i := range row {
			row[i] = f(float64(i)/h.perX, float64(j)/h.perY)
		}
	})
	h.low, h.high = h.node[0], h.node[0]
	steepest := 0.0
	for j := 0; j <= ny; j++ {
		row := h.node[j*(nx+1) : (j+1)*(nx+1)]
		next := h.node[min(j+1, ny)*(nx+1):][:nx+1]
		for i, v := range row {
			if v < h.low {
				h.low = v
			}
			if v > h.high {
				h.high = v
			}
			right := (row[min(i+1, nx)] - v) * h.perX
			up := (next[i] - v) * h.perY
			if s := right*right + up*up; s > steepest {
				steepest = s
			}
		}
	}
	h.slope = math.Sqrt(steepest)
	h.survey()
	return h
}

// at returns the height at a point of the box; outside it, that of the edge's
// cells, extended.
func (h *relief) at(x, y float64) float64 {
	gx, gy := x*h.perX, y*h.perY
	cx, cy := min(max(int(gx), 0), h.nx-1), min(max(int(gy), 0), h.ny-1)
	s, t := gx-float64(cx), gy-float64(cy)
	at := cy*(h.nx+1) + cx
	a, b := h.node[at], h.node[at+1]
	c, d := h.node[at+h.nx+1], h.node[at+h.nx+2]
	a += s * (b - a)
	c += s * (d - c)
	return a + t*(c-a)
}

// survey fills area: each cell's heights are taken as evenly spread between its
// lowest and its highest corner.
func (h *relief) survey() {
	if h.high == h.low {
		return
	}
	per := reliefBins / (h.high - h.low)
	area := h.area[:] // first its steps from bin to bin
	for j := 0; j < h.ny; j++ {
		y := (float64(j) + 0.5) / h.perY
		from, to := h.out.span(y)
		for i := 0; i < h.nx; i++ {
			in := 1.0
			if x := float64(i) + 0.5; h.out.corner > 0 && (x < from*h.perX+1 || x > to*h.perX-1) {
				if in = min(max(0.5+h.perX*h.out.depth(x/h.perX, y), 0), 1); in == 0 {
					continue
				}
			}
			h.all += in
			at := j*(h.nx+1) + i
			a, b := h.node[at], h.node[at+1]
			c, d := h.node[at+h.nx+1], h.node[at+h.nx+2]
			// A plane's heights over a square spread like this to second order.
			mid, half := (a+b+c+d)/4, (math.Abs(b+d-a-c)+math.Abs(c+d-a-b))/4+1e-12
			from, to := max((mid-half-h.low)*per, 0), min((mid+half-h.low)*per, reliefBins)
			rate := in / (to - from)
			first, last := int(from), int(to)
			area[first] += rate * (float64(first+1) - from)
			area[first+1] += rate * (from - float64(first))
			area[last] -= rate * (float64(last+1) - to)
			area[last+1] -= rate * (to - float64(last))
		}
	}
	for b := 1; b < len(area); b++ {
		area[b] += area[b-1]
	}
}

// level returns the height above which the given share of the cut lies: the exact
// quantile of what survey found.
func (h *relief) level(share float64) float64 {
	if share <= 0 {
		return h.high + 1
	}
	if share >= 1 {
		return h.low - 1
	}
	left := share * h.all
	for b := reliefBins; b >= 0; b-- {
		if left <= h.area[b] {
			return h.low + (float64(b)+1-left/h.area[b])*(h.high-h.low)/reliefBins
		}
		left -= h.area[b]
	}
	return h.low
}
