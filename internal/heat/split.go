package heat

// split factors and solves (I − γh Az)(I − γh Ar), the product of two
// tridiagonal operators that stands in for I − γh A: Ar holds the conduction
// outward and through the side, Az the conduction upward and through the ends,
// both linearised about the enthalpies of the last linearise.
//
// The columns of each factor keep the sum over the cells' volumes, so a solve
// moves heat but creates none, whatever the splitting costs in accuracy.
type split struct {
	*conductor

	slope                  []float64 // dφ/du of each cell
	sideGain               []float64 // [nz] d(flow through the side)/du of the outermost cell, W m³/J
	topGain, bottomGain    []float64 // [nr] likewise for the ends
	lowerR, pivotR, upperR []float64 // Thomas factors, pivots as reciprocals
	lowerZ, pivotZ, upperZ []float64
}

func newSplit(c *conductor) *split {
	n := c.mesh.nr * c.mesh.nz
	all := make([]float64, 7*n)
	part := func(i int) []float64 { return all[i*n : (i+1)*n : (i+1)*n] }
	return &split{conductor: c,
		slope:    part(0),
		sideGain: make([]float64, c.mesh.nz), topGain: make([]float64, c.mesh.nr), bottomGain: make([]float64, c.mesh.nr),
		lowerR: part(1), pivotR: part(2), upperR: part(3),
		lowerZ: part(4), pivotZ: part(5), upperZ: part(6),
	}
}

// linearise takes phi, the slopes and the gains of the faces at u.
func (s *split) linearise(phi, u []float64) {
	nr, nz := s.mesh.nr, s.mesh.nz
	s.mat.potentialsAndSlopes(phi, s.slope, u)
	for j := range s.sideGain {
		i := j*nr + nr - 1
		_, d := s.side.at(phi[i])
		s.sideGain[j] = d * s.sideArea * s.slope[i]
	}
	if s.mesh.dz == 0 {
		return
	}
	last := (nz - 1) * nr
	for i, area := range s.face {
		_, d := s.bottom.at(phi[i])
		s.bottomGain[i] = d * area * s.slope[i]
		_, d = s.top.at(phi[last+i])
		s.topGain[i] = d * area * s.slope[last+i]
	}
}

// factor prepares solve for the step whose γh is gh.
func (s *split) factor(gh float64) {
	s.factorOutward(gh)
	if s.mesh.nz > 1 {
		s.factorUpward(gh)
	}
}

func (s *split) factorOutward(gh float64) {
	nr := s.mesh.nr
	for j, sideGain := range s.sideGain {
		o := j * nr
		slope := s.slope[o : o+nr]
		lower, pivot, upper := s.lowerR[o:o+nr], s.pivotR[o:o+nr], s.upperR[o:o+nr]
		previous, within := 0.0, 0.0 // upper of the last row, conductance to it
		for i, d := range slope {
			g := s.outward[i]
			v := gh * s.invVolume[i]
			b := 1 + v*(within+g)*d
			if i > 0 {
				l := -v * within * slope[i-1]
				lower[i] = l
				b -= l * previous
			}
			if i == nr-1 {
				b -= v * sideGain
				pivot[i] = 1 / b
				break
			}
			p := 1 / b
			pivot[i] = p
			previous = -v * g * slope[i+1] * p
			upper[i] = previous
			within = g
		}
	}
}

func (s *split) factorUpward(gh float64) {
	nr, nz := s.mesh.nr, s.mesh.nz
	for j := 0; j < nz; j++ {
		o := j * nr
		for i := 0; i < nr; i++ {
			v := gh * s.invVolume[i]
			g := v * s.upward[i]
			b := 1.0
			if j > 0 {
				l := -g * s.slope[o-nr+i]
				s.lowerZ[o+i] = l
				b += g*s.slope[o+i] - l*s.upperZ[o-nr+i]
			} else {
				b -= v * s.bottomGain[i]
			}
			if j == nz-1 {
				s.pivotZ[o+i] = 1 / (b - v*s.topGain[i])
				continue
			}
			p := 1 / (b + g*s.slope[o+i])
			s.pivotZ[o+i] = p
			s.upperZ[o+i] = -g * s.slope[o+nr+i] * p
		}
	}
}

// solve overwrites the right-hand side x by the solution and returns what the
// linearised faces add to the heat flow: the gains times the half-solved x for
// the side and the solved x for the ends.
func (s *split) solve(x []float64) float64 {
	flow := s.solveOutward(x)
	nr, nz := s.mesh.nr, s.mesh.nz
	if nz == 1 {
		return flow
	}
	for i, p := range s.pivotZ[:nr] {
		x[i] *= p
	}
	for o := nr; o < nr*nz; o += nr {
		here, below := x[o:o+nr], x[o-nr:o]
		lower, pivot := s.lowerZ[o:o+nr], s.pivotZ[o:o+nr]
		below, lower, pivot = below[:len(here)], lower[:len(here)], pivot[:len(here)]
		for i, v := range here {
			here[i] = (v - lower[i]*below[i]) * pivot[i]
		}
	}
	for o := (nz - 2) * nr; o >= 0; o -= nr {
		here, above, upper := x[o:o+nr], x[o+nr:o+2*nr], s.upperZ[o:o+nr]
		above, upper = above[:len(here)], upper[:len(here)]
		for i := range here {
			here[i] -= upper[i] * above[i]
		}
	}
	last := x[(nz-1)*nr:]
	for i, g := range s.bottomGain {
		flow += g*x[i] + s.topGain[i]*last[i]
	}
	return flow
}

func (s *split) solveOutward(x []float64) float64 {
	nr := s.mesh.nr
	flow := 0.0
	if nr == 1 {
		for j, p := range s.pivotR {
			x[j] *= p
			flow += s.sideGain[j] * x[j]
		}
		return flow
	}
	for j, gain := range s.sideGain {
		o := j * nr
		row := x[o : o+nr]
		lower, pivot, upper := s.lowerR[o:o+nr], s.pivotR[o:o+nr], s.upperR[o:o+nr]
		lower, pivot, upper = lower[:len(row)], pivot[:len(row)], upper[:len(row)]
		v := 0.0
		for i := range row {
			v = (row[i] - lower[i]*v) * pivot[i]
			row[i] = v
		}
		flow += gain * v
		for i := len(row) - 2; i >= 0; i-- {
			v = row[i] - upper[i]*v
			row[i] = v
		}
	}
	return flow
}
