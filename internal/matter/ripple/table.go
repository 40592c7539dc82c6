package ripple

import (
	"math"
	"sync"

	"ripplewright/internal/matter/num"
)

// table is a stroke's backward map for pictures: following every pixel back
// through the Runge–Kutta steps costs several times as much. It holds the map to
// second order about the nodes of a square grid that covers the cut and a margin.
// A stroke bends the fluid over centimetres and a cell is at most tableCellMM, so
// the table errs by some micrometres. Single points (Cut.Origin) never go through
// it.
type table struct {
	w, h       float64 // mm
	nx         int     // nodes in a row
	perX, perY float64 // cells per mm
	patch      []patch
	exact      stroked
	wall       *chord // beyond whose wall the fluid is at rest, or nil
}

// patch is the motion about one node: where the fluid came from less where it is,
// in mm, by the powers of the distances s and t from the node, in cells.
type patch struct {
	x, y  cubic
	rough bool
}

type cubic struct{ one, s, t, ss, st, tt, sss, sst, stt, ttt float32 }

func (c *cubic) at(s, t float32) float32 {
	return c.one + s*(c.s+s*(c.ss+s*c.sss+t*c.sst)+t*(c.st+t*c.stt)) + t*(c.t+t*(c.tt+t*c.ttt))
}

// tableCellMM is the largest cell of a table, mm. Nodes go margin cells beyond
// the walls, so that slopes at a wall are as good as any.
const (
	tableCellMM  = 1.2
	tableErrorMM = 0.004
	margin       = 2
)

// newTable tabulates s for the cut's box.
func newTable(o outline, s stroked) *table {
	cx, cy := int(math.Ceil(o.w/tableCellMM)), int(math.Ceil(o.h/tableCellMM))
	t := &table{w: o.w, h: o.h, nx: cx + 1, perX: float64(cx) / o.w, perY: float64(cy) / o.h, exact: s}
	if c, ok := s.flow.(chord); ok {
		t.wall = &c
		s.flow = c.beyond()
	}
	nx := cx + 1 + 2*margin
	move := make([][2]float64, nx*(cy+1+2*margin))
	num.Parallel(cy+1+2*margin, func(j int) {
		xs, ys := make([]float64, nx), make([]float64, nx)
		y := float64(j-margin) / t.perY
		for i := range xs {
			xs[i], ys[i] = float64(i-margin)/t.perX, y
		}
		s.pull(xs, ys)
		for i := range xs {
			move[j*nx+i] = [2]float64{xs[i] - float64(i-margin)/t.perX, ys[i] - y}
		}
	})
	t.patch = make([]patch, t.nx*(cy+1))
	num.Parallel(cy+1, func(j int) {
		for i := 0; i <= cx; i++ {
			p, at := &t.patch[j*t.nx+i], (j+margin)*nx+i+margin
			var ex, ey float64
			p.x, ex = expansion(move, at, nx, 0)
			p.y, ey = expansion(move, at, nx, 1)
			p.rough = !(ex+ey < tableErrorMM)
		}
	})
	t.spreadRough()
	return t
}

// spreadRough makes the neighbours of rough nodes rough as well: where differences
// see that they cannot follow the stroke, they err about how far that goes.
func (t *table) spreadRough() {
	was := make([]bool, len(t.patch))
	for i := range t.patch {
		was[i] = t.patch[i].rough
	}
	for i, rough := range was {
		if !rough {
			continue
		}
		for _, n := range [...]int{i - t.nx - 1, i - t.nx, i - t.nx + 1, i - 1, i + 1, i + t.nx - 1, i + t.nx, i + t.nx + 1} {
			if n >= 0 && n < len(was) {
				t.patch[n].rough = true
			}
		}
	}
}

// expansion returns the powers about node at of move, whose rows are n long, from
// differences over the nodes around it, and about the largest fourth-order term
// that they leave out within half a cell, in mm.
func expansion(move [][2]float64, at, n, k int) (c cubic, left float64) {
	f := func(i, j int) float64 { return move[at+j*n+i][k] }
	o := f(0, 0)
	w, e, s, t := f(-1, 0), f(1, 0), f(0, -1), f(0, 1)
	ww, ee, ss, tt := f(-2, 0), f(2, 0), f(0, -2), f(0, 2)
	tw, te, sw, se := f(-1, 1), f(1, 1), f(-1, -1), f(1, -1)
	c = cubic{
		one: float32(o),
		s:   float32((8*(e-w) - (ee - ww)) / 12),
		t:   float32((8*(t-s) - (tt - ss)) / 12),
		ss:  float32((e - 2*o + w) / 2),
		st:  float32((te - se - tw + sw) / 4),
		tt:  float32((t - 2*o + s) / 2),
		sss: float32((ee - 2*e + 2*w - ww) / 12),
		sst: float32((te - 2*t + tw - se + 2*s - sw) / 4),
		stt: float32((te - 2*e + se - tw + 2*w - sw) / 4),
		ttt: float32((tt - 2*t + 2*s - ss) / 12),
	}
	return c, (math.Abs(ee-4*e+6*o-4*w+ww)+math.Abs(tt-4*t+6*o-4*s+ss))/384 +
		math.Abs(te+tw+se+sw-2*(t+s+e+w)+4*o)/64
}

// pull replaces each point by the one that the stroke carries there.
func (t *table) pull(xs, ys []float64) {
	ys = ys[:len(xs)]
	lastX, lastY := t.nx-1, len(t.patch)/t.nx-1
	var some *rough
	for k, x := range xs {
		y := ys[k]
		if t.wall != nil && t.wall.still(x, y) {
			continue
		}
		gx, gy := x*t.perX, y*t.perY
		i, j := min(int(gx+0.5), lastX), min(int(gy+0.5), lastY)
		p := &t.patch[j*t.nx+i]
		if p.rough {
			if some == nil {
				some = roughPool.Get().(*rough)
				some.n = 0
			}
			some.add(t.exact, xs, ys, k)
			continue
		}
		a, b := float32(gx-float64(i)), float32(gy-float64(j))
		xs[k] = clamp(x+float64(p.x.at(a, b)), 0, t.w)
		ys[k] = clamp(y+float64(p.y.at(a, b)), 0, t.h)
	}
	if some != nil {
		some.flush(t.exact, xs, ys)
		roughPool.Put(some)
	}
}

// rough gathers points that a table cannot carry, to follow them back together.
type rough struct {
	n    int
	at   [chunk]int
	x, y [chunk]float64
}

var roughPool = sync.Pool{New: func() any { return new(rough) }}

func (r *rough) add(s stroked, xs, ys []float64, k int) {
	r.at[r.n], r.x[r.n], r.y[r.n] = k, xs[k], ys[k]
	if r.n++; r.n == chunk {
		r.flush(s, xs, ys)
	}
}

func (r *rough) flush(s stroked, xs, ys []float64) {
	s.pull(r.x[:r.n], r.y[:r.n])
	for i, k := range r.at[:r.n] {
		xs[k], ys[k] = r.x[i], r.y[i]
	}
	r.n = 0
}

// forPictures returns the strokes backwards with the integrated ones tabulated.
func (c *Cut) forPictures() []puller {
	c.tables.Do(func() {
		for _, m := range c.maps {
			switch s := m.(type) {
			case stroked:
				m = newTable(c.out, s)
			case Twist:
				m = quickTwist(s)
			}
			c.drawn = append(c.drawn, m)
		}
	})
	return c.drawn
}

// quickTwist is a Twist for pictures, with the sine and cosine from a table. It
// errs by some nanometres.
type quickTwist Twist

func (t quickTwist) pull(xs, ys []float64) {
	ys = ys[:len(xs)]
	perR2 := 1 / (t.RadiusMM * t.RadiusMM)
	angle := -t.AngleRad * turnSteps / (2 * math.Pi)
	for i, x := range xs {
		dx, dy := x-t.XMM, ys[i]-t.YMM
		s := 1 - (dx*dx+dy*dy)*perR2
		if s <= 0 {
			continue
		}
		a := angle*s*s + turnSteps/2 + 0.5 // |Angle| stays below half a turn
		n := int(a)
		d := (a - 0.5 - float64(n)) * (2 * math.Pi / turnSteps)
		at := &turns[n&(turnSteps-1)]
		sin := at.sin + d*(at.cos-d/2*at.sin)
		cos := at.cos - d*(at.sin+d/2*at.cos)
		xs[i], ys[i] = t.XMM+cos*dx-sin*dy, t.YMM+sin*dx+cos*dy
	}
}

const turnSteps = 256

// turns holds the sine and cosine of a turn's steps from −π on.
var turns = func() (t [turnSteps]struct{ sin, cos float64 }) {
	for i := range t {
		t[i].sin, t[i].cos = math.Sincos(2 * math.Pi * (float64(i)/turnSteps - 0.5))
	}
	return t
}()
