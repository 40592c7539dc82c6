package ripple

import "math"

// chord is a stroke seen from above, along a straight line across the tub, with
// the fluid returning on both sides:
//
//	ψ = (1 − q²)² S(η/s),  q = X² + Y²
//
// η is the distance from the line. X and Y measure how far a point lies past the
// straight part of the walls, in corner radii, so q = 1 on the wall, where the
// fluid is at rest. Corners sharper than half the shorter half side lie outside
// q = 1: a spoon handle does not reach them, and they stay at rest.
type chord struct {
	cx, cy     float64 // middle of the cut, mm
	ax, ay     float64 // half length of the straight walls, mm
	rho        float64 // radius of the corners of q = 1, mm
	nx, ny, at float64 // the line: nx·x + ny·y = at about the middle, |n| = 1
	s          float64 // half width, mm
	scale      float64 // makes the peak speed 1
	dist, step float64 // mm
	rest       float64 // the q from which on the fluid is at rest
}

func newChord(o outline, angle, at, s, dist float64) chord {
	rho := math.Max(o.corner, math.Min(o.w, o.h)/4)
	c := chord{cx: o.w / 2, cy: o.h / 2, ax: o.w/2 - rho, ay: o.h/2 - rho, rho: rho,
		at: at, s: s, scale: 1, rest: 1, dist: dist, step: stepsOf * math.Min(s, rho/3.5)}
	c.ny, c.nx = math.Sincos(angle)
	const n = 65
	var x, y, u, v [n]float64
	for i := range x {
		t := (float64(i)/(n-1) - 0.5) * math.Hypot(o.w, o.h)
		x[i], y[i] = c.cx+at*c.nx-t*c.ny, c.cy+at*c.ny+t*c.nx
	}
	c.velocities(x[:], y[:], u[:], v[:])
	peak := 0.0
	for i := range u {
		peak = math.Max(peak, math.Hypot(u[i], v[i]))
	}
	c.scale = 1 / peak
	return c
}

func (c chord) velocities(xs, ys, u, v []float64) {
	perRho2, perS := 1/(c.rho*c.rho), 1/c.s
	ys, u, v = ys[:len(xs)], u[:len(xs)], v[:len(xs)]
	for i := range xs {
		x, y := xs[i]-c.cx, ys[i]-c.cy
		px, py := x-clamp(x, -c.ax, c.ax), y-clamp(y, -c.ay, c.ay)
		q := (px*px + py*py) * perRho2
		if q >= c.rest {
			u[i], v[i] = 0, 0
			continue
		}
		e := 1 - q*q
		s, ds := soft((c.nx*x + c.ny*y - c.at) * perS)
		ds *= e * e * perS
		s *= -8 * e * q * perRho2
		u[i] = c.scale * (s*py + ds*c.ny)
		v[i] = -c.scale * (s*px + ds*c.nx)
	}
}

// still reports whether the point lies where the fluid is at rest.
func (c *chord) still(x, y float64) bool {
	x, y = math.Abs(x-c.cx)-c.ax, math.Abs(y-c.cy)-c.ay
	x, y = max(x, 0), max(y, 0)
	return x*x+y*y >= c.rho*c.rho
}

// beyond returns c with the formula of its motion taken a little beyond the wall,
// so that a table has no crease to follow there.
func (c chord) beyond() chord {
	c.rest = 1.3
	return c
}

func (c chord) travel() (float64, float64) { return c.dist, c.step }
