package ripple

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check"
)

var everyMotion = []string{"plunge", "fold", "eight", "drag", Mixed}

// determinant follows a point back through all strokes and returns the product of
// the strokes' determinants, by differences within each stroke: after eight strokes
// neighbours are too far apart for one difference over all.
func determinant(c *Cut, x, y float64) float64 {
	const e = 1e-5
	det := 1.0
	for _, m := range c.maps {
		xs, ys := []float64{x + e, x - e, x, x, x}, []float64{y, y, y + e, y - e, y}
		m.pull(xs, ys)
		det *= ((xs[0]-xs[1])*(ys[2]-ys[3]) - (ys[0]-ys[1])*(xs[2]-xs[3])) / (4 * e * e)
		x, y = xs[4], ys[4]
	}
	return det
}

func TestEightStrokesKeepAreaToOneInAThousand(t *testing.T) {
	check.Long(t)
	for _, v := range []View{Side, Top} {
		for _, motion := range everyMotion {
			worst := 0.0
			for seed := uint64(1); seed <= 3; seed++ {
				s := settings(t, v, Dollops, motion, 8, seed)
				if seed == 3 && v == Side {
					s.Tub = RoundTub(150, 14)
				}
				c := stir(t, s)
				for y := 1.017; y < c.out.h; y += 2.3 {
					for x := 1.013; x < c.out.w; x += 2.3 {
						if c.out.depth(x, y) > 0.5 {
							worst = math.Max(worst, math.Abs(determinant(c, x, y)-1))
						}
					}
				}
			}
			t.Logf("%s, %s: |det − 1| up to %.1e", v, motion, worst)
			assert.LessOrEqual(t, worst, 1e-3, "%s, %s", v, motion)
		}
	}
}

func TestVelocityIsTheCurlOfTheStreamFunction(t *testing.T) {
	// No divergence, by differences, away from the creases of the tables.
	for _, v := range []View{Side, Top} {
		for kind := range kindNames {
			f := Stroke{Kind: Kind(kind), DepthMM: 50}.place(saltmarsh.outline(v), v, 7, 2).flow
			if f == nil {
				continue
			}
			const e = 1e-6
			for x := 10.0137; x < 75; x += 6.1 {
				for y := 10.0171; y < 75; y += 6.1 {
					var u, w [4]float64
					f.velocities([]float64{x + e, x - e, x, x}, []float64{y, y, y + e, y - e}, u[:], w[:])
					assert.InDelta(t, 0, (u[0]-u[1]+w[2]-w[3])/(2*e), 1e-7, "%s, %s at %g, %g", v, Kind(kind), x, y)
				}
			}
		}
	}
}

func TestStrokesMoveAtMostAboutOne(t *testing.T) {
	for _, v := range []View{Side, Top} {
		for kind := range kindNames {
			o := saltmarsh.outline(v)
			f := Stroke{Kind: Kind(kind)}.place(o, v, 7, 2).flow
			if f == nil {
				continue
			}
			peak := 0.0
			for x := 0.5; x < o.w; x++ {
				for y := 0.5; y < o.h; y++ {
					var u, w [1]float64
					f.velocities([]float64{x}, []float64{y}, u[:], w[:])
					peak = math.Max(peak, math.Hypot(u[0], w[0]))
				}
			}
			assert.InDelta(t, 1, peak, 0.25, "%s, %s", v, Kind(kind))
		}
	}
}

func TestWallPointsStayOnTheWall(t *testing.T) {
	for _, motion := range everyMotion {
		c := stir(t, settings(t, Side, Dollops, motion, 12, 5))
		for s := 0.0; s <= 1; s += 0.02 {
			x, _ := c.Origin(0, s*c.out.h)
			assert.InDelta(t, 0, x, 1e-9)
			x, _ = c.Origin(c.out.w, s*c.out.h)
			assert.InDelta(t, c.out.w, x, 1e-9)
			_, y := c.Origin(s*c.out.w, 0)
			assert.InDelta(t, 0, y, 1e-9)
			_, y = c.Origin(s*c.out.w, c.out.h)
			assert.InDelta(t, c.out.h, y, 1e-9)
		}
		for _, tub := range []Tub{saltmarsh, BoxTub(120, 80, 15, 60)} {
			s := settings(t, Top, Dollops, motion, 12, 5)
			s.Tub = tub
			c = stir(t, s)
			for y := 0.5; y < c.out.h; y++ {
				lo, hi := c.out.span(y)
				for _, x := range []float64{lo, hi} {
					ox, oy := c.Origin(x, y)
					assert.InDelta(t, 0, c.out.depth(ox, oy), 1e-6, "%s at %g, %g", motion, x, y)
				}
			}
		}
	}
}

func TestInsideComesFromInside(t *testing.T) {
	for _, motion := range everyMotion {
		for _, v := range []View{Side, Top} {
			c := stir(t, settings(t, v, Dollops, motion, MaxStrokes, 9))
			for y := 0.5; y < c.out.h; y += 1.7 {
				lo, hi := c.out.span(y)
				for x := lo + 0.05; x < hi; x += 1.7 {
					ox, oy := c.Origin(x, y)
					assert.Greater(t, c.out.depth(ox, oy), -1e-6)
				}
			}
		}
	}
}
