package ripple

import "math"

// table is a stroke's backward map at the nodes of a square grid over the box
// around the cut, for pictures: following every pixel back through the Runge–Kutta
// steps costs several times as much. A stroke bends the fluid over centimetres, a
// cell is tableCellMM, and the cubic between nodes then errs by some micrometres.
// Single points (Cut.Origin) never go through it.
type table struct {
	w, h   float64 // mm
	nx, ny int     // nodes, two more than the box needs on every side
	perX   float64 // cells per mm
	perY   float64
	move   [][2]float64 // where the fluid came from less where it is, mm
}

// tableCellMM is the largest cell of a table, mm.
const tableCellMM = 0.8

// newTable tabulates f for the cut's box.
func newTable(o outline, f puller) *table {
	cx, cy := int(math.Ceil(o.w/tableCellMM)), int(math.Ceil(o.h/tableCellMM))
	t := &table{w: o.w, h: o.h, nx: cx + 5, ny: cy + 5, perX: float64(cx) / o.w, perY: float64(cy) / o.h}
	t.move = make([][2]float64, t.nx*t.ny)
	parallel(cy+1, func(j int) {
		xs, ys := make([]float64, cx+1), make([]float64, cx+1)
		y := float64(j) / t.perY
		for i := range xs {
			xs[i], ys[i] = float64(i)/t.perX, y
		}
		f.pull(xs, ys)
		row := t.move[(j+2)*t.nx+2:]
		for i := range xs {
			row[i] = [2]float64{xs[i] - float64(i)/t.perX, ys[i] - y}
		}
	})
	t.extend(cx, cy)
	return t
}

// extend fills the nodes beyond the walls by continuing the cubic through the last
// four inside, so that a cell at a wall is as good as any.
func (t *table) extend(cx, cy int) {
	out := func(at, inward int) {
		for k := range t.move[at] {
			a, b := t.move[at+inward][k], t.move[at+2*inward][k]
			c, d := t.move[at+3*inward][k], t.move[at+4*inward][k]
			t.move[at][k] = 4*a - 6*b + 4*c - d
		}
	}
	for j := 2; j <= cy+2; j++ {
		for e := 1; e <= 2; e++ {
			out(j*t.nx+2-e, 1)
			out(j*t.nx+cx+2+e, -1)
		}
	}
	for i := 0; i < t.nx; i++ {
		for e := 1; e <= 2; e++ {
			out((2-e)*t.nx+i, t.nx)
			out((cy+2+e)*t.nx+i, -t.nx)
		}
	}
}

// weights are those of the four nodes about s, 0 to 1, of the cubic through them.
func weights(s float64) (a, b, c, d float64) {
	p, q, r := s+1, s-1, s-2
	return -s * q * r / 6, p * q * r / 2, -p * s * r / 2, p * s * q / 6
}

// pull replaces each point by the one that the stroke carries there.
func (t *table) pull(xs, ys []float64) {
	for n, x := range xs {
		gx, gy := x*t.perX, ys[n]*t.perY
		i, j := min(max(int(gx), 0), t.nx-6), min(max(int(gy), 0), t.ny-6)
		ax, bx, cx, dx := weights(gx - float64(i))
		ay, by, cy, dy := weights(gy - float64(j))
		at := (j+1)*t.nx + i + 1
		r0 := t.move[at : at+4 : at+4]
		r1 := t.move[at+t.nx : at+t.nx+4 : at+t.nx+4]
		r2 := t.move[at+2*t.nx : at+2*t.nx+4 : at+2*t.nx+4]
		r3 := t.move[at+3*t.nx : at+3*t.nx+4 : at+3*t.nx+4]
		mx := ay*(ax*r0[0][0]+bx*r0[1][0]+cx*r0[2][0]+dx*r0[3][0]) + by*(ax*r1[0][0]+bx*r1[1][0]+cx*r1[2][0]+dx*r1[3][0]) +
			cy*(ax*r2[0][0]+bx*r2[1][0]+cx*r2[2][0]+dx*r2[3][0]) + dy*(ax*r3[0][0]+bx*r3[1][0]+cx*r3[2][0]+dx*r3[3][0])
		my := ay*(ax*r0[0][1]+bx*r0[1][1]+cx*r0[2][1]+dx*r0[3][1]) + by*(ax*r1[0][1]+bx*r1[1][1]+cx*r1[2][1]+dx*r1[3][1]) +
			cy*(ax*r2[0][1]+bx*r2[1][1]+cx*r2[2][1]+dx*r2[3][1]) + dy*(ax*r3[0][1]+bx*r3[1][1]+cx*r3[2][1]+dx*r3[3][1])
		xs[n] = min(max(x+mx, 0), t.w)
		ys[n] = min(max(ys[n]+my, 0), t.h)
	}
}

// forPictures returns the strokes backwards with the integrated ones tabulated.
func (c *Cut) forPictures() []puller {
	c.tables.Do(func() {
		for _, m := range c.maps {
			if s, ok := m.(stroked); ok && smooth(s.flow) {
				m = newTable(c.out, s)
			}
			c.drawn = append(c.drawn, m)
		}
	})
	return c.drawn
}

// smooth reports whether a table can follow f. Seen from above the fluid is at
// rest beyond a curve that crosses the cells, where a cubic would overshoot.
func smooth(f flow) bool {
	_, ok := f.(cell)
	return ok
}
