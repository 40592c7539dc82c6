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
	conductance            []float64 // [nr] γh times that upward, of the step at hand
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
		conductance: make([]float64, c.mesh.nr),
		lowerR:      part(1), pivotR: part(2), upperR: part(3),
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

// factorOutward goes ring by ring with all heights abreast, since the divisions
// along one row would wait for each other. Its factors are stored that way, ring
// by ring.
func (s *split) factorOutward(gh float64) {
	nr, nz := s.mesh.nr, s.mesh.nz
	within := 0.0 // conductance to the ring within; g is that to the one outside
	for i, g := range s.outward[:nr] {
		v := gh * s.invVolume[i]
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
	for i, flux := range s.upward[:nr] {
		s.conductance[i] = gh * s.invVolume[i] * flux
	}
	g := s.conductance[:nr]
	for i := range g {
		p := 1 / (1 + g[i]*s.slope[i] - gh*s.invVolume[i]*s.bottomGain[i])
		s.pivotZ[i], s.upperZ[i] = p, -g[i]*s.slope[nr+i]*p
	}
	for j := 1; j < top; j++ {
		o := j * nr
		below, slope, above := s.slope[o-nr:o], s.slope[o:o+nr], s.slope[o+nr:o+2*nr]
		before, lower, pivot, upper := s.upperZ[o-nr:o], s.lowerZ[o:o+nr], s.pivotZ[o:o+nr], s.upperZ[o:o+nr]
		below, slope, above = below[:len(g)], slope[:len(g)], above[:len(g)]
		before, lower, pivot, upper = before[:len(g)], lower[:len(g)], pivot[:len(g)], upper[:len(g)]
		for i, c := range g {
			l := -c * below[i]
			p := 1 / (1 + 2*c*slope[i] - l*before[i])
			lower[i], pivot[i], upper[i] = l, p, -c*above[i]*p
		}
	}
	o := top * nr
	for i, c := range g {
		l := -c * s.slope[o-nr+i]
		s.lowerZ[o+i] = l
		s.pivotZ[o+i] = 1 / (1 + c*s.slope[o+i] - gh*s.invVolume[i]*s.topGain[i] - l*s.upperZ[o-nr+i])
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
		flow += gain * x[j*nr+nr-1]
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
