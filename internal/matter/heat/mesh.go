package heat

import (
	"fmt"
	"math"
)

// Mesh divides a body into cells of equal thickness in each direction: nr from
// the axis (or the centre) outward, nz from the bottom up. Cell (i, j) is
// element j*nr+i of every field.
type Mesh struct {
	nr, nz int
	dr, dz float64 // thickness of a cell, m

	across    []float64 // [nr] area over distance of the outer face of cell i, per metre of height (cylinder) or in all (sphere)
	sideDepth float64   // effective depth of the outermost cell's mean below the side, m
	area      float64   // of the outermost face, likewise
	volume    []float64 // [nr] of cell i, likewise
	height    float64   // of a cell: dz, or 1 where there is no vertical direction

	sideless  bool    // a slab has no side
	dimension float64 // volume grows with this power of the radius: 2, or 3 in a sphere
}

// Cylinder returns the mesh of an upright cylinder of the given radius and
// height, in m, with nr × nz cells: a tub, a dish, a bowl. Its faces are the
// side, the top and the bottom.
func Cylinder(radius, height float64, nr, nz int) (Mesh, error) {
	if err := meshable("cylinder", nr, nz, radius, height); err != nil {
		return Mesh{}, err
	}
	return radial(nr, nz, radius, height/float64(nz), 2), nil
}

// Slab returns the mesh of a slab of the given thickness in m, per square metre
// of it, with n cells from bottom to top, which are its two faces. Half a slab
// cooled from both sides is a slab whose bottom is insulated.
func Slab(thickness float64, n int) (Mesh, error) {
	if err := meshable("slab", 1, n, thickness, thickness); err != nil {
		return Mesh{}, err
	}
	m := radial(1, n, math.Sqrt(1/math.Pi), thickness/float64(n), 2)
	m.sideless = true
	return m, nil
}

// Sphere returns the mesh of a sphere of the given radius in m, with n shells.
// Its one face is the side.
func Sphere(radius float64, n int) (Mesh, error) {
	if err := meshable("sphere", n, 1, radius, radius); err != nil {
		return Mesh{}, err
	}
	return radial(n, 1, radius, 0, 3), nil
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

// radial fills in areas and volumes of rings (dimension 2) or shells (3).
func radial(nr, nz int, radius, dz float64, dimension float64) Mesh {
	m := Mesh{nr: nr, nz: nz, dr: radius / float64(nr), dz: dz, height: dz, dimension: dimension,
		across: make([]float64, nr), volume: make([]float64, nr)}
	if dz == 0 {
		m.height = 1
	}
	for i := range m.volume {
		inner, outer := float64(i)*m.dr, float64(i+1)*m.dr
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
		here, face := m.meanSquare(i), float64(i+1)*m.dr
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
	inner, outer := float64(i)*m.dr, float64(i+1)*m.dr
	return n / (n + 2) * (math.Pow(outer, n+2) - math.Pow(inner, n+2)) / (math.Pow(outer, n) - math.Pow(inner, n))
}

// Cells returns the number of cells outward and upward.
func (m Mesh) Cells() (outward, upward int) { return m.nr, m.nz }

// Centre returns the radius and height of the centre of cell (i, j), in m.
func (m Mesh) Centre(i, j int) (r, z float64) {
	return (float64(i) + 0.5) * m.dr, (float64(j) + 0.5) * m.dz
}

// Volume returns the body's volume in m³ (of a slab, per square metre).
func (m Mesh) Volume() float64 {
	sum := 0.0
	for _, v := range m.volume {
		sum += v
	}
	return sum * m.height * float64(m.nz)
}
