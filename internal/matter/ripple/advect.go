package ripple

import (
	"math"

	"ripplewright/internal/matter/num"
)

// InterfaceByAdvectionMM returns the length of the interface, mm, by a way apart from
// the lines of Measure: the interface of the layout is carried forward through the
// strokes, and points are put in wherever it stretches, until neighbours are within
// stepMM of each other. It checks Measure and is not as quick.
func (c *Cut) InterfaceByAdvectionMM(stepMM float64) float64 {
	pieces := c.start.contour(c.level)
	sums := make([]float64, len(pieces))
	num.Parallel(len(pieces), func(k int) { sums[k] = c.stretched(pieces[k], stepMM) })
	sum := 0.0
	for _, s := range sums {
		sum += s
	}
	return sum
}

// segment is a straight piece of the layout's interface, mm.
type segment struct{ x0, y0, x1, y1 float64 }

// stretched returns how long a piece has become.
func (c *Cut) stretched(s segment, step float64) float64 {
	at := []float64{0, 0.5, 1}
	for {
		xs, ys := make([]float64, len(at)), make([]float64, len(at))
		for i, t := range at {
			xs[i], ys[i] = s.x0+t*(s.x1-s.x0), s.y0+t*(s.y1-s.y0)
		}
		c.push(xs, ys)
		next := at[:1:1]
		sum := 0.0
		for i := 1; i < len(at); i++ {
			d := math.Hypot(xs[i]-xs[i-1], ys[i]-ys[i-1])
			sum += d
			if d > step && at[i]-at[i-1] > 1e-7 {
				next = append(next, (at[i-1]+at[i])/2)
			}
			next = append(next, at[i])
		}
		if len(next) == len(at) {
			return sum
		}
		at = next
	}
}

// push carries points forward through the strokes.
func (c *Cut) push(xs, ys []float64) {
	for i := len(c.maps) - 1; i >= 0; i-- {
		switch m := c.maps[i].(type) {
		case stroked:
			dist, step := m.travel()
			carry(m.flow, xs, ys, dist, step)
		case Twist:
			m.Inverse().pull(xs, ys)
		}
	}
}

// contour returns the pieces of the line where the height is level, inside the cut,
// by marching squares; a saddle's middle decides.
func (h *relief) contour(level float64) []segment {
	var all []segment
	for j := range h.ny {
		for i := range h.nx {
			at := j*(h.nx+1) + i
			f := [4]float64{h.node[at] - level, h.node[at+1] - level, h.node[at+h.nx+2] - level, h.node[at+h.nx+1] - level}
			corner := [4][2]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}}
			var cut [][2]float64
			for k := range f {
				n := (k + 1) % 4
				if (f[k] > 0) == (f[n] > 0) {
					continue
				}
				t := f[k] / (f[k] - f[n])
				cut = append(cut, [2]float64{
					(float64(i) + corner[k][0] + t*(corner[n][0]-corner[k][0])) / h.perX,
					(float64(j) + corner[k][1] + t*(corner[n][1]-corner[k][1])) / h.perY,
				})
			}
			if len(cut) == 4 && (f[0]+f[1]+f[2]+f[3] > 0) != (f[0] > 0) {
				cut = append(cut[3:], cut[:3]...) // it cuts off the first corner and the third
			}
			for k := 0; k+1 < len(cut); k += 2 {
				a, b := cut[k], cut[k+1]
				if h.out.depth((a[0]+b[0])/2, (a[1]+b[1])/2) > 0 {
					all = append(all, segment{a[0], a[1], b[0], b[1]})
				}
			}
		}
	}
	return all
}
