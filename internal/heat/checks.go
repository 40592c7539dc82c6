package heat

import (
	"context"
	"math"
)

// The functions below pose the problems that the solver is checked by, so that
// a test and a printed validation ask the same question.

// ComputedFront returns how deep the solver freezes the half-space n in t s, in
// m, on the given number of cells over a thickness in m that the cooling must
// not reach the end of, and the temperatures of the cells from the face inward,
// °C. Freezing is spread over 0.05 K, and a cell counts as solid by the latent
// heat it has lost.
func ComputedFront(n Neumann, thickness float64, cells int, t float64) (front float64, temperature []float64, err error) {
	const spread = 0.05
	m, err := n.Material(spread, n.Face-1, max(n.Start, n.Melting+spread)+1)
	if err != nil {
		return math.NaN(), nil, err
	}
	mesh, err := Slab(thickness, cells)
	if err != nil {
		return math.NaN(), nil, err
	}
	out, err := Solve(context.Background(), Problem{
		Material: m, Mesh: mesh, Start: max(n.Start, n.Melting+spread/2), Frames: []float64{t},
		Segments: []Segment{{t, Surroundings{Bottom: Face{Ambient: n.Face, H: math.Inf(1)}}}},
	}, Options{})
	if err != nil || out.Status != Finished {
		return math.NaN(), nil, err
	}
	for _, u := range out.Field {
		front += mesh.dz * min(max(-u/n.Latent, 0), 1)
	}
	return front, out.Frames[0].Temperature, nil
}

// ComputedMean returns the solver's counterpart of Series.Mean on the given
// number of cells.
func ComputedMean(s Shape, bi, fo float64, cells int) (float64, error) {
	const size, k, c = 0.05, 1.0, 1e6
	m, err := NewMaterial([]float64{0, 100}, []float64{0, 100 * c}, []float64{k, k})
	if err != nil {
		return math.NaN(), err
	}
	face := Face{H: bi * k / size}
	around := Surroundings{Side: face}
	var mesh Mesh
	switch s {
	case LongCylinder:
		mesh, err = Cylinder(size, 1, cells, 1)
	case Ball:
		mesh, err = Sphere(size, cells)
	default:
		mesh, err = Slab(size, cells)
		around = Surroundings{Top: face}
	}
	if err != nil {
		return math.NaN(), err
	}
	out, err := Solve(context.Background(), Problem{Material: m, Mesh: mesh, Start: 100,
		Segments: []Segment{{fo * size * size * c / k, around}}}, Options{})
	if err != nil || out.Status != Finished {
		return math.NaN(), err
	}
	return out.Track[len(out.Track)-1].Of(Mean) / 100, nil
}

// ComputedTimes returns when a tub that starts at start °C passes the target
// °C: its slowest cell, its mean and its outer 10 mm, in s; NaN for what does
// not pass it within the given seconds.
func ComputedTimes(m *Material, mesh Mesh, start float64, around Surroundings, seconds, target float64) (slowest, mean, ring float64, err error) {
	last := Hottest
	if target > start {
		last = Coldest
	}
	out, err := Solve(context.Background(), Problem{Material: m, Mesh: mesh, Start: start,
		Segments: []Segment{{seconds, around}}, Levels: []Level{{last, target}, {Mean, target}, {Ring, target}}}, Options{})
	if err != nil {
		return math.NaN(), math.NaN(), math.NaN(), err
	}
	return out.Crossings[0], out.Crossings[1], out.Crossings[2], nil
}
