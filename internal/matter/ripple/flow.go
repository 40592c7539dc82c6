package ripple

import (
	"math"
	"sync"
)

// flow is a steady motion of the cut whose stream function ψ vanishes on the
// walls: u = ∂ψ/∂y, v = −∂ψ/∂x. The fastest point of the handle's path moves at 1,
// so time is that point's travel, in mm.
type flow interface {
	// velocities fills u and v for the points x, y; all four have one length.
	velocities(x, y, u, v []float64)
	// travel returns how far the handle carries the fluid beside it, signed, and
	// the longest time step that keeps the determinant of eight strokes within
	// 1e-3 of 1 (the tests measure it), both in mm.
	travel() (dist, step float64)
}

// stroked is a flow for the time of its stroke.
type stroked struct{ flow }

// pull replaces each point by the one that the stroke carries there.
func (s stroked) pull(xs, ys []float64) {
	dist, step := s.travel()
	carry(s.flow, xs, ys, -dist, step)
}

// chunk is how many points are carried at once. Going through the stages for many
// points at a time, not through the points one by one, keeps the processor busy:
// within one point each operation waits for the one before.
const chunk = 128

// stages are the buffers of a Runge–Kutta step. They are kept because a call
// through an interface would put new ones on the heap each time.
type stages struct{ mx, my, u, v, su, sv [chunk]float64 }

var stagePool = sync.Pool{New: func() any { return new(stages) }}

// carry moves the points along f for the signed time dist, in steps of at most
// maxStep, by the classical fourth-order Runge–Kutta rule.
func carry(f flow, xs, ys []float64, dist, maxStep float64) {
	n := int(math.Ceil(math.Abs(dist)/maxStep - 1e-9))
	h := dist / float64(max(n, 1))
	b := stagePool.Get().(*stages)
	defer stagePool.Put(b)
	for len(xs) > 0 {
		m := min(chunk, len(xs))
		x, y := xs[:m], ys[:m]
		mx, my, u, v, su, sv := b.mx[:m], b.my[:m], b.u[:m], b.v[:m], b.su[:m], b.sv[:m]
		for i := 0; i < n; i++ {
			f.velocities(x, y, su, sv)
			for k := range x {
				mx[k], my[k] = x[k]+h/2*su[k], y[k]+h/2*sv[k]
			}
			f.velocities(mx, my, u, v)
			for k := range x {
				su[k], sv[k] = su[k]+2*u[k], sv[k]+2*v[k]
				mx[k], my[k] = x[k]+h/2*u[k], y[k]+h/2*v[k]
			}
			f.velocities(mx, my, u, v)
			for k := range x {
				su[k], sv[k] = su[k]+2*u[k], sv[k]+2*v[k]
				mx[k], my[k] = x[k]+h*u[k], y[k]+h*v[k]
			}
			f.velocities(mx, my, u, v)
			for k := range x {
				x[k] += h / 6 * (su[k] + u[k])
				y[k] += h / 6 * (sv[k] + v[k])
			}
		}
		xs, ys = xs[m:], ys[m:]
	}
}

// soft is the step that all strokes are built of, S(t) = t/√(1+t²), with S′.
func soft(t float64) (s, ds float64) {
	r := 1 / math.Sqrt(1+t*t)
	return t * r, r * r * r
}

// profile is a smooth function on 0 … size that is 0 at both ends, as piecewise
// parabolas that share value and slope where they meet. Its slope is that of the
// very parabolas, so a stream function made of profiles has no divergence at all.
type profile struct {
	perMM float64
	// cell holds the value and slope at the cell's start, and its bend, per mm.
	cell [profileCells]struct{ v, d, half, bend float64 }
}

const profileCells = 256

// newProfile tabulates the function whose slope per mm is slope. What slope leaves
// at the far end, a rounding of the table, is spread evenly.
func newProfile(size float64, slope func(t float64) float64) *profile {
	p := &profile{perMM: profileCells / size}
	width := size / profileCells
	var d [profileCells + 1]float64
	left := 0.0
	for i := range d {
		d[i] = slope(float64(i) * width)
		if i > 0 {
			left += (d[i-1] + d[i]) / 2 * width
		}
	}
	v := 0.0
	for i := range p.cell {
		d0, d1 := d[i]-left/size, d[i+1]-left/size
		c := &p.cell[i]
		c.v, c.d, c.bend = v, d0, (d1-d0)/width
		c.half = c.bend / 2
		v += (d0 + d1) / 2 * width
	}
	return p
}

// scale multiplies the function by k.
func (p *profile) scale(k float64) {
	for i := range p.cell {
		c := &p.cell[i]
		c.v, c.d, c.half, c.bend = k*c.v, k*c.d, k*c.half, k*c.bend
	}
}

// peaks returns the largest value and slope per mm, without sign, at the nodes.
func (p *profile) peaks() (v, d float64) {
	for i := range p.cell {
		v, d = math.Max(v, math.Abs(p.cell[i].v)), math.Max(d, math.Abs(p.cell[i].d))
	}
	return v, d
}

// cell is a flow between four walls, ψ = f(x) g(y), f and g being 0 on them.
type cell struct {
	f, g       *profile
	dist, step float64 // mm
}

func (c cell) velocities(x, y, u, v []float64) {
	f, g := c.f, c.g
	wide, high := 1/f.perMM, 1/g.perMM
	y, u, v = y[:len(x)], u[:len(x)], v[:len(x)]
	for i, px := range x {
		py := y[i]
		// A step may end a hair outside: the end parabolas serve there.
		ix, iy := int(px*f.perMM), int(py*g.perMM)
		if uint(ix) >= profileCells {
			ix = clampCell(ix)
		}
		if uint(iy) >= profileCells {
			iy = clampCell(iy)
		}
		cx, cy := &f.cell[ix&(profileCells-1)], &g.cell[iy&(profileCells-1)]
		tx, ty := px-float64(ix)*wide, py-float64(iy)*high
		u[i] = (cx.v + tx*(cx.d+tx*cx.half)) * (cy.d + ty*cy.bend)
		v[i] = -(cx.d + tx*cx.bend) * (cy.v + ty*(cy.d+ty*cy.half))
	}
}

func clampCell(i int) int { return min(max(i, 0), profileCells-1) }

func (c cell) travel() (float64, float64) { return c.dist, c.step }

// newLane returns a straight stroke between four walls. The handle moves along an
// axis l of length along, at place at of the other axis, a, of length across:
//
//	ψ = f(a) g(l),  f = S((a−at)/s) − the straight line that makes f 0 at both walls
//	                g = S(l/d) S((L−l)/d) · reach(l),  d = endOf s
//
// reach is 1 if floor is 0. Else it falls from 1 to 0 about floor, mm along l, and
// leaves what lies below at rest. level says that a is y and l is x.
func newLane(across, along, at, s, floor float64, level bool, dist float64) cell {
	lo, _ := soft(-at / s)
	hi, _ := soft((across - at) / s)
	f := newProfile(across, func(a float64) float64 {
		_, dv := soft((a - at) / s)
		return dv/s - (hi-lo)/across
	})
	d := endOf * s
	g := newProfile(along, func(l float64) float64 {
		p, dp := soft(l / d)
		q, dq := soft((along - l) / d)
		return reachSlope(p*q, (dp*q-p*dq)/d, l, floor, d)
	})
	_, steep := f.peaks()
	high, _ := g.peaks()
	f.scale(1 / (steep * high))
	c := cell{f: f, g: g, dist: dist, step: math.Min(stepsOf*s, math.Min(across, along)/9)}
	if level {
		c.f, c.g = g, f
	}
	return c
}

// newTurnover returns the stroke that folds everything above floor over once:
//
//	ψ = sin(πx/w) sin(πy/h) · reach(y)
func newTurnover(o outline, s, floor, dist float64) cell {
	f := newProfile(o.w, func(x float64) float64 { return math.Cos(math.Pi * x / o.w) })
	g := newProfile(o.h, func(y float64) float64 {
		v, dv := math.Sincos(math.Pi * y / o.h)
		return reachSlope(v, math.Pi/o.h*dv, y, floor, s)
	})
	fv, fd := f.peaks()
	gv, gd := g.peaks()
	f.scale(1 / math.Max(fv*gd, fd*gv))
	step := math.Min(o.w, o.h) / 9
	if floor > 0 {
		step = math.Min(step, stepsOf*s)
	}
	return cell{f: f, g: g, dist: dist, step: step}
}

// reachSlope returns the slope of a function with the given value and slope at t,
// times reach; see newLane.
func reachSlope(v, dv, t, floor, d float64) float64 {
	if floor <= 0 {
		return dv
	}
	r, dr := soft((t - floor) / d)
	return dv*(1+r)/2 + v*dr/(2*d)
}

// Of a stroke's length s.
const (
	stepsOf = 0.55 // its time step
	endOf   = 1.7  // the length over which the flow turns round at the walls
)
