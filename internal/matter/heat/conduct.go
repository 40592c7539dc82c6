package heat

// conductor is the semi-discrete heat equation of one body in one
// surroundings: it turns the enthalpies of the cells into their rates of
// change. Heat leaving a cell enters its neighbour as the same number, so the
// sum over the body changes by what crosses the faces and nothing else.
type conductor struct {
	mesh Mesh
	mat  *Material

	side, top, bottom film

	invArea   []float64 // [nr] 1/volume of a cell, per metre of its height
	invHeight []float64 // [nz] 1/height of a cell
	outward   []float64 // [nr] area over distance of a cell's outer face, per metre of height; 0 for the last
}

func newConductor(m *Material, mesh Mesh) *conductor {
	c := &conductor{mesh: mesh, mat: m,
		invArea:   make([]float64, mesh.nr),
		invHeight: make([]float64, mesh.nz),
		outward:   make([]float64, mesh.nr),
	}
	for i, v := range mesh.volume {
		c.invArea[i] = 1 / v
		if i < mesh.nr-1 {
			c.outward[i] = mesh.across[i]
		}
	}
	for j, h := range mesh.height {
		c.invHeight[j] = 1 / h
	}
	return c
}

// surround takes the body to new surroundings; its temperatures stay between
// lowest and highest there.
func (c *conductor) surround(s Surroundings, lowest, highest float64) {
	if c.mesh.sideless {
		s.Side = Face{}
	}
	c.side.build(c.mat, s.Side, c.mesh.sideDepth, lowest, highest)
	c.top.build(c.mat, s.Top, c.mesh.height[c.mesh.nz-1]/2, lowest, highest)
	c.bottom.build(c.mat, s.Bottom, c.mesh.height[0]/2, lowest, highest)
}

// rates sets rate[i] to du/dt of every cell, W/m³, given the potentials phi,
// and returns the heat flow into the body, W.
func (c *conductor) rates(rate, phi []float64) float64 {
	nr, nz := c.mesh.nr, c.mesh.nz
	heat := 0.0
	invArea, outward := c.invArea[:nr], c.outward[:nr]
	for j := 0; j < nz; j++ {
		row := phi[j*nr : (j+1)*nr]
		below, above := row, row // an edge row is its own neighbour: no flow
		if j > 0 {
			below = phi[(j-1)*nr : j*nr]
		}
		if j < nz-1 {
			above = phi[(j+1)*nr : (j+2)*nr]
		}
		out := rate[j*nr : (j+1)*nr]
		below, above, out = below[:nr], above[:nr], out[:nr]
		inflow := 0.0
		high := c.mesh.perUp[j] * c.invHeight[j] // rate of change per difference to the row above
		var low float64                          // and to the row below
		if j > 0 {
			low = c.mesh.perUp[j-1] * c.invHeight[j]
		}
		here := row[0]
		for i := 0; i < nr-1; i++ {
			next := row[i+1]
			outflow := outward[i] * (here - next)
			out[i] = (inflow-outflow)*invArea[i] + (low*(below[i]-here) - high*(here-above[i]))
			inflow, here = outflow, next
		}
		i := nr - 1
		q, _ := c.side.at(here)
		q *= c.mesh.area
		heat += q * c.mesh.height[j]
		out[i] = (inflow+q)*invArea[i] + (low*(below[i]-here) - high*(here-above[i]))
	}
	if c.mesh.layer != nil {
		heat += c.endFlow(&c.bottom, rate[:nr], phi[:nr], c.invHeight[0])
		heat += c.endFlow(&c.top, rate[(nz-1)*nr:], phi[(nz-1)*nr:], c.invHeight[nz-1])
	}
	return heat
}

// endFlow adds what comes in through the bottom or the top to that row's rates.
func (c *conductor) endFlow(f *film, rate, phi []float64, invHeight float64) float64 {
	sum := 0.0
	for i, p := range phi {
		q, _ := f.at(p)
		sum += q * c.mesh.volume[i]
		rate[i] += q * invHeight
	}
	return sum
}
