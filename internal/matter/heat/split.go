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
	lowerR, pivotR, upperR []float64 // Thomas factors, pivots as reciprocals, ring by ring
	lowerZ, pivotZ, upperZ []float64 // likewise, row by row
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
		s.sideGain[j] = d * s.mesh.area * s.slope[i]
	}
	if s.mesh.layer == nil {
		return
	}
	last := (nz - 1) * nr
	for i := range s.bottomGain {
		_, d := s.bottom.at(phi[i])
		s.bottomGain[i] = d * s.slope[i]
		_, d = s.top.at(phi[last+i])
		s.topGain[i] = d * s.slope[last+i]
	}
}

// factor prepares solve for the step whose γh is gh.
func (s *split) factor(gh float64) {
	s.factorOutward(gh)
	if s.mesh.nz > 1 {
		s.factorUpward(gh)
	}
}

// factorOutward goes ring by ring with all heights abreast, since the divisions
// along one row would wait for each other. Its factors are stored that way, ring
// by ring.
func (s *split) factorOutward(gh float64) {
	nr, nz := s.mesh.nr, s.mesh.nz
	within := 0.0 // conductance to the ring within; g is that to the one outside
	for i, g := range s.outward[:nr] {
		v := gh * s.invArea[i]
		in, both, out := -v*within, v*(within+g), -v*g
		o := i * nz
		lower, pivot, upper := s.lowerR[o:o+nz], s.pivotR[o:o+nz], s.upperR[o:o+nz]
		lower, upper = lower[:len(pivot)], upper[:len(pivot)]
		before := s.upperR[max(o-nz, 0):][:len(pivot)] // upper of the ring within
		c := i
		switch {
		case i == nr-1 && i == 0:
			for j, gain := range s.sideGain {
				pivot[j] = 1 / (1 - v*gain)
			}
		case i == nr-1:
			for j, gain := range s.sideGain[:len(pivot)] {
				l := in * s.slope[c-1]
				lower[j] = l
				pivot[j] = 1 / (1 + both*s.slope[c] - v*gain - l*before[j])
				c += nr
			}
		case i == 0:
			for j := range pivot {
				p := 1 / (1 + both*s.slope[c])
				pivot[j], upper[j] = p, out*s.slope[c+1]*p
				c += nr
			}
		default:
			for j := range pivot {
				three := s.slope[c-1 : c+2 : c+2]
				l := in * three[0]
				p := 1 / (1 + both*three[1] - l*before[j])
				lower[j], pivot[j], upper[j] = l, p, out*three[2]*p
				c += nr
			}
		}
		within = g
	}
}

func (s *split) factorUpward(gh float64) {
	nr, nz := s.mesh.nr, s.mesh.nz
	top := nz - 1
	end := gh * s.invHeight[0]
	high := end * s.mesh.perUp[0]
	for i, gain := range s.bottomGain[:nr] {
		p := 1 / (1 + high*s.slope[i] - end*gain)
		s.pivotZ[i], s.upperZ[i] = p, -high*s.slope[nr+i]*p
	}
	for j := 1; j < top; j++ {
		o := j * nr
		below, slope, above := s.slope[o-nr:o], s.slope[o:o+nr], s.slope[o+nr:o+2*nr]
		before, lower, pivot, upper := s.upperZ[o-nr:o], s.lowerZ[o:o+nr], s.pivotZ[o:o+nr], s.upperZ[o:o+nr]
		slope, above = slope[:len(below)], above[:len(below)]
		before, lower, pivot, upper = before[:len(below)], lower[:len(below)], pivot[:len(below)], upper[:len(below)]
		v := gh * s.invHeight[j]
		low, high := v*s.mesh.perUp[j-1], v*s.mesh.perUp[j]
		both := low + high
		for i, b := range below {
			l := -low * b
			p := 1 / (1 + both*slope[i] - l*before[i])
			lower[i], pivot[i], upper[i] = l, p, -high*above[i]*p
		}
	}
	o := top * nr
	end = gh * s.invHeight[top]
	low := end * s.mesh.perUp[top-1]
	for i, gain := range s.topGain[:nr] {
		l := -low * s.slope[o-nr+i]
		s.lowerZ[o+i] = l
		s.pivotZ[o+i] = 1 / (1 + low*s.slope[o+i] - end*gain - l*s.upperZ[o-nr+i])
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
	for i, area := range s.mesh.volume {
		flow += area * (s.bottomGain[i]*x[i] + s.topGain[i]*last[i])
	}
	return flow
}

func (s *split) solveOutward(x []float64) float64 {
	nr, nz := s.mesh.nr, s.mesh.nz
	for j, p := range s.pivotR[:nz] {
		x[j*nr] *= p
	}
	for i := 1; i < nr; i++ {
		o := i * nz
		lower, pivot := s.lowerR[o:o+nz], s.pivotR[o:o+nz]
		lower = lower[:len(pivot)]
		c := i
		for j, p := range pivot {
			x[c] = (x[c] - lower[j]*x[c-1]) * p
			c += nr
		}
	}
	flow := 0.0
	for j, gain := range s.sideGain {
		flow += s.mesh.height[j] * gain * x[j*nr+nr-1]
	}
	for i := nr - 2; i >= 0; i-- {
		o := i * nz
		c := i
		for _, u := range s.upperR[o : o+nz] {
			x[c] -= u * x[c+1]
			c += nr
		}
	}
	return flow
}
