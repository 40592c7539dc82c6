package heat

// conductor is the semi-discrete heat equation of one body in one
// surroundings: it turns the enthalpies of the cells into their rates of
// change. Heat leaving a cell enters its neighbour as the same number, so the
// sum over the body changes by what crosses the faces and nothing else.
type conductor struct {
	mesh Mesh
	mat  *Material

	side, top, bottom film

	invVolume []float64 // [nr] 1/volume of a cell
	upward    []float64 // [nr] area over distance between a cell and the one above
	face      []float64 // [nr] area of a cell's top
	outward   []float64 // [nr] area over distance of a cell's outer face; 0 for the last
	sideArea  float64   // of one cell
}

func newConductor(m *Material, mesh Mesh) *conductor {
	c := &conductor{mesh: mesh, mat: m,
		invVolume: make([]float64, mesh.nr),
		upward:    make([]float64, mesh.nr),
		face:      make([]float64, mesh.nr),
		outward:   make([]float64, mesh.nr),
		sideArea:  mesh.area * mesh.height,
	}
	for i, v := range mesh.volume {
		c.invVolume[i] = 1 / (v * mesh.height)
		if mesh.dz > 0 {
			c.face[i] = v
			c.upward[i] = v / mesh.dz
		}
		if i < mesh.nr-1 {
			c.outward[i] = mesh.across[i] * mesh.height
		}
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
	c.top.build(c.mat, s.Top, c.mesh.dz/2, lowest, highest)
	c.bottom.build(c.mat, s.Bottom, c.mesh.dz/2, lowest, highest)
}

// rates sets rate[i] to du/dt of every cell, W/m³, given the potentials phi,
// and returns the heat flow into the body, W.
func (c *conductor) rates(rate, phi []float64) float64 {
	nr, nz := c.mesh.nr, c.mesh.nz
	heat := 0.0
	invVolume, upward, outward := c.invVolume, c.upward[:nr], c.outward[:nr]
	invVolume = invVolume[:nr]
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
		here := row[0]
		for i := 0; i < nr-1; i++ {
			next := row[i+1]
			outflow := outward[i] * (here - next)
			out[i] = (inflow - outflow + upward[i]*((below[i]-here)-(here-above[i]))) * invVolume[i]
			inflow, here = outflow, next
		}
		i := nr - 1
		q, _ := c.side.at(here)
		q *= c.sideArea
		heat += q
		out[i] = (inflow + q + upward[i]*((below[i]-here)-(here-above[i]))) * invVolume[i]
	}
	if c.mesh.dz > 0 {
		heat += c.endFlow(&c.bottom, rate[:nr], phi[:nr])
		heat += c.endFlow(&c.top, rate[(nz-1)*nr:], phi[(nz-1)*nr:])
	}
	return heat
}

// endFlow adds what comes in through the bottom or the top to that row's rates.
func (c *conductor) endFlow(f *film, rate, phi []float64) float64 {
	sum := 0.0
	for i, p := range phi {
		q, _ := f.at(p)
		q *= c.face[i]
		sum += q
		rate[i] += q * c.invVolume[i]
	}
	return sum
}
