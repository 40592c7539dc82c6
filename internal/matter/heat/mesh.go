package heat

import (
	"fmt"
	"math"

	"ripplewright/internal/matter/num"
)

// Mesh divides a body into cells: nr from the axis (or the centre) outward, nz
// from the bottom up. Cell (i, j) is element j*nr+i of every field.
type Mesh struct {
	nr, nz int
	ring   []float64 // [nr+1] radii of the cells' edges, m, from 0
	layer  []float64 // [nz+1] heights of the cells' edges, m, from 0; nil where there is no vertical direction

	across    []float64 // [nr] area over distance of the outer face of cell i, per metre of height (cylinder) or in all (sphere)
	sideDepth float64   // effective depth of the outermost cell's mean below the side, m
	area      float64   // of the outermost face, likewise
	volume    []float64 // [nr] of cell i, likewise
	height    []float64 // [nz] of the cells, m; 1 where there is no vertical direction
	perUp     []float64 // [nz] one over the distance to the middle of the layer above, 1/m; 0 for the last

	sideless  bool    // a slab has no side
	dimension float64 // volume grows with this power of the radius: 2, or 3 in a sphere
}

// Cylinder returns the mesh of an upright cylinder of the given radius and
// height, in m, with nr × nz even cells: a tub, a dish, a bowl. Its faces are
// the side, the top and the bottom.
func Cylinder(radiusM, heightM float64, nr, nz int) (Mesh, error) {
	return Graded(radiusM, heightM, nr, nz, math.Max(radiusM, heightM))
}

// Graded is a Cylinder whose cells are the thinner the nearer they lie to a
// face: outer m, or evenly thick if that is no more, at side, top and bottom,
// and thicker inward by one ratio outward and one upward. What the outer ring
// and the wall do rests on the cells there, however wide the body is.
func Graded(radiusM, heightM float64, nr, nz int, outerM float64) (Mesh, error) {
	if err := meshable("cylinder", nr, nz, radiusM, heightM, outerM); err != nil {
		return Mesh{}, err
	}
	ring, err := ringed(radiusM, nr, outerM)
	if err != nil {
		return Mesh{}, err
	}
	layer, err := graded(heightM/2, float64(nz)/2, outerM)
	if err != nil {
		return Mesh{}, err
	}
	rings, layers := make([]float64, nr+1), make([]float64, nz+1)
	for i := range rings {
		rings[i] = radiusM - ring(float64(nr-i))
	}
	rings[0] = 0
	for j := range layers {
		layers[j] = layer(float64(j))
		if 2*j > nz {
			layers[j] = heightM - layer(float64(nz-j))
		}
	}
	return radial(rings, layers, 2), nil
}

// Tub returns the mesh for a filled tub of any size, in m: 15 × 26 cells from
// 1.25 mm thick at the faces. From a quarter of a litre to 20 L, custard or pure
// foam, the mean's times are within 0.5 % of a much finer mesh's, the outer
// ring's within 1 %, the slowest cell's within 1 % in a freezer and 2 % on the
// counter, where it lies among the widest.
func Tub(radiusM, heightM float64) (Mesh, error) { return Graded(radiusM, heightM, 15, 26, 0.00125) }

// graded returns how far from the face the edge after so many of n cells lies,
// m, if those at the face are outer thick and all of them reach size.
func graded(size, n, outer float64) (depth func(cells float64) float64, err error) {
	if n <= 1 || outer*n > size*(1-1e-6) {
		return func(cells float64) float64 { return size * cells / n }, nil
	}
	reach := func(ratio, cells float64) float64 { return outer * (math.Pow(ratio, cells) - 1) / (ratio - 1) }
	ratio, err := num.Root(func(ratio float64) float64 { return math.Log(reach(ratio, n) / size) },
		1+1e-9, 1+1e-9+math.Pow(size/outer, 1/(n-1)), 1e-12)
	if err != nil {
		return nil, fmt.Errorf("mesh: %g cells from %g m thick over %g m: %w", n, outer, size, err)
	}
	return func(cells float64) float64 { return reach(ratio, cells) }, nil
}

// ringed is graded over a radius, with an edge where the outer ring ends, lest
// it take a part of a cell whose outer part is the warmer.
func ringed(radius float64, n int, outer float64) (depth func(cells float64) float64, err error) {
	plain, err := graded(radius, float64(n), outer)
	if err != nil || radius < 2*RingWidth {
		return plain, err
	}
	in := 1
	for in < n-1 && math.Abs(plain(float64(in+1))-RingWidth) < math.Abs(plain(float64(in))-RingWidth) {
		in++
	}
	near, err := graded(RingWidth, float64(in), outer)
	if err != nil {
		return nil, err
	}
	last := near(float64(in)) - near(float64(in-1))
	far, err := graded(radius-RingWidth, float64(n-in), last)
	if err != nil {
		return nil, err
	}
	return func(cells float64) float64 {
		if cells <= float64(in) {
			return near(cells)
		}
		return RingWidth + far(cells-float64(in))
	}, nil
}

// RingWidth is the width of the outer ring that Ring is of, unless a Problem
// says otherwise, m.
const RingWidth = 0.010

// even returns the edges of n cells over size m.
func even(size float64, n int) []float64 {
	edges := make([]float64, n+1)
	for i := range edges {
		edges[i] = size * float64(i) / float64(n)
	}
	return edges
}

// Slab returns the mesh of a slab of the given thickness in m, per square metre
// of it, with n cells from bottom to top, which are its two faces. Half a slab
// cooled from both sides is a slab whose bottom is insulated.
func Slab(thicknessM float64, n int) (Mesh, error) {
	if err := meshable("slab", 1, n, thicknessM, thicknessM); err != nil {
		return Mesh{}, err
	}
	m := radial(even(math.Sqrt(1/math.Pi), 1), even(thicknessM, n), 2)
	m.sideless = true
	return m, nil
}

// Sphere returns the mesh of a sphere of the given radius in m, with n shells.
// Its one face is the side.
func Sphere(radiusM float64, n int) (Mesh, error) {
	if err := meshable("sphere", n, 1, radiusM, radiusM); err != nil {
		return Mesh{}, err
	}
	return radial(even(radiusM, n), nil, 3), nil
}

func meshable(shape string, nr, nz int, lengths ...float64) error {
	for _, l := range lengths {
		if !(l > 0) || math.IsInf(l, 0) {
			return fmt.Errorf("mesh of a %s: %g m is not a size", shape, l)
		}
	}
	if nr < 1 || nz < 1 || nr*nz < 2 {
		return fmt.Errorf("mesh of a %s: %d × %d cells, want at least 2", shape, nr, nz)
	}
	return nil
}

// radial fills in areas and volumes of rings (dimension 2) or shells (3) between
// the given edges.
func radial(ring, layer []float64, dimension float64) Mesh {
	nr, nz := len(ring)-1, max(len(layer)-1, 1)
	m := Mesh{nr: nr, nz: nz, ring: ring, layer: layer, dimension: dimension,
		across: make([]float64, nr), volume: make([]float64, nr), height: make([]float64, nz), perUp: make([]float64, nz)}
	for j := range m.height {
		m.height[j] = 1
		if layer != nil {
			m.height[j] = layer[j+1] - layer[j]
		}
		if j > 0 {
			m.perUp[j-1] = 2 / (m.height[j-1] + m.height[j])
		}
	}
	for i := range m.volume {
		inner, outer := ring[i], ring[i+1]
		m.area = 2 * math.Pi * outer
		m.volume[i] = math.Pi * (outer*outer - inner*inner)
		if dimension == 3 {
			m.area = 4 * math.Pi * outer * outer
			m.volume[i] = 4 * math.Pi / 3 * (outer*outer*outer - inner*inner*inner)
		}
		m.across[i] = m.area
	}
	// Distances are those that make the flux exact when the temperature is
	// quadratic in the radius, as in a body that cools evenly: a cell holds a
	// mean, not the value in its middle.
	for i := range m.across {
		here, face := m.meanSquare(i), ring[i+1]
		if i < nr-1 {
			m.across[i] /= (m.meanSquare(i+1) - here) / (2 * face)
		} else {
			m.sideDepth = (face*face - here) / (2 * face)
		}
	}
	return m
}

// meanSquare returns the volume's mean squared radius of ring or shell i, m².
func (m Mesh) meanSquare(i int) float64 {
	n := m.dimension
	inner, outer := m.ring[i], m.ring[i+1]
	return n / (n + 2) * (math.Pow(outer, n+2) - math.Pow(inner, n+2)) / (math.Pow(outer, n) - math.Pow(inner, n))
}

// Cells returns the number of cells outward and upward.
func (m Mesh) Cells() (outward, upward int) { return m.nr, m.nz }

// CentreM returns the radius and height of the centre of cell (i, j), in m; the
// height is 0 where there is no vertical direction.
func (m Mesh) CentreM(i, j int) (r, z float64) {
	r = (m.ring[i] + m.ring[i+1]) / 2
	if m.layer != nil {
		z = (m.layer[j] + m.layer[j+1]) / 2
	}
	return r, z
}

// Evenly returns what reads a field of the mesh's cells at the centres of as many
// even ones, by line between the cells' own centres.
func (m Mesh) Evenly() func(field []float64) []float64 {
	r, z := places(m.ring), places(m.layer)
	return func(field []float64) []float64 {
		out := make([]float64, len(field))
		for j := range m.nz {
			low, high := field[z[j].cell*m.nr:][:m.nr], field[min(z[j].cell+1, m.nz-1)*m.nr:][:m.nr]
			for i, at := range r {
				next := min(at.cell+1, m.nr-1)
				a := low[at.cell] + at.part*(low[next]-low[at.cell])
				b := high[at.cell] + at.part*(high[next]-high[at.cell])
				out[j*m.nr+i] = a + z[j].part*(b-a)
			}
		}
		return out
	}
}

// placed is a point between the centre of a cell and that of the next, at so much
// of the way; before the first or after the last it is that one.
type placed struct {
	cell int
	part float64
}

// places puts the centres of even cells among those between the given edges.
func places(edges []float64) []placed {
	if edges == nil {
		return []placed{{}}
	}
	n := len(edges) - 1
	out := make([]placed, n)
	centre := func(i int) float64 { return (edges[i] + edges[i+1]) / 2 }
	for k, i := 0, 0; k < n; k++ {
		x := edges[n] * (float64(k) + 0.5) / float64(n)
		for i < n-2 && x > centre(i+1) {
			i++
		}
		if n > 1 {
			out[k] = placed{i, min(max((x-centre(i))/(centre(i+1)-centre(i)), 0), 1)}
		}
	}
	return out
}

// VolumeM3 returns the body's volume in m³ (of a slab, per square metre).
func (m Mesh) VolumeM3() float64 {
	sum, high := 0.0, 0.0
	for _, v := range m.volume {
		sum += v
	}
	for _, h := range m.height {
		high += h
	}
	return sum * high
}

// thinnest returns the thickness of the thinnest cell, m.
func (m Mesh) thinnest() float64 {
	d := math.Inf(1)
	if m.nr > 1 {
		for i := range m.volume {
			d = min(d, m.ring[i+1]-m.ring[i])
		}
	}
	if m.nz > 1 {
		for _, h := range m.height {
			d = min(d, h)
		}
	}
	return d
}
