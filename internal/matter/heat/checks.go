package heat

import (
	"context"
	"math"
)

// The functions below pose the problems that the solver is checked by, so that
// a test and a printed validation ask the same question.

// ComputedFrontM returns how deep the solver freezes the half-space n in t s, in
// m, on the given number of cells over a thickness in m that the cooling must
// not reach the end of, and the temperatures of the cells from the face inward,
// °C. Freezing is spread over 0.05 K, and a cell counts as solid by the latent
// heat it has lost.
func ComputedFrontM(n Neumann, thicknessM float64, cells int, s float64) (front float64, temperature []float64, err error) {
	const spread = 0.05
	m, err := n.Material(spread, n.FaceC, max(n.StartC, n.MeltingC+spread))
	if err != nil {
		return math.NaN(), nil, err
	}
	mesh, err := Slab(thicknessM, cells)
	if err != nil {
		return math.NaN(), nil, err
	}
	out, err := Solve(context.Background(), Problem{
		Material: m, Mesh: mesh, StartC: max(n.StartC, n.MeltingC+spread/2), FramesS: []float64{s},
		Segments: []Segment{{s, Surroundings{Bottom: Face{AmbientC: n.FaceC, WPerM2K: math.Inf(1)}}}},
	}, Options{})
	if err != nil || out.Status != Finished {
		return math.NaN(), nil, err
	}
	for j, u := range out.FieldJPerM3 {
		front += mesh.height[j] * min(max(-u/n.LatentJPerM3, 0), 1)
	}
	return front, out.Frames[0].TemperatureC, nil
}

// ComputedMean returns the solver's counterpart of Series.Mean on the given
// number of cells.
func ComputedMean(s Shape, bi, fo float64, cells int) (float64, error) {
	out, err := cooled(s, bi, fo, cells)
	if err != nil {
		return math.NaN(), err
	}
	return out.Track[len(out.Track)-1].OfC(Mean), nil
}

// cooled takes a body of unit size, conductivity and heat capacity from 1 for the
// Fourier number fo in surroundings of 0 and the Biot number bi, which are then its
// time and its surface coefficient.
func cooled(s Shape, bi, fo float64, cells int) (Result, error) {
	const unit = 1
	m, err := NewMaterial([]float64{-unit, unit}, []float64{-unit, unit}, []float64{unit, unit})
	if err != nil {
		return Result{}, err
	}
	face := Face{WPerM2K: bi}
	around := Surroundings{Side: face}
	var mesh Mesh
	switch s {
	case LongCylinder:
		mesh, err = Cylinder(unit, unit, cells, 1)
	case Ball:
		mesh, err = Sphere(unit, cells)
	default:
		mesh, err = Slab(unit, cells)
		around = Surroundings{Top: face}
	}
	if err != nil {
		return Result{}, err
	}
	return Solve(context.Background(), Problem{Material: m, Mesh: mesh, StartC: unit, Segments: []Segment{{fo, around}}}, Options{})
}

// ComputedSurface returns the solver's counterpart of Series.At(1, fo) of a slab
// or a long cylinder: its surface's share of the temperature difference left.
func ComputedSurface(s Shape, bi, fo float64, cells int) (float64, error) {
	out, err := cooled(s, bi, fo, cells)
	if err != nil {
		return math.NaN(), err
	}
	return out.Track[len(out.Track)-1].OfC(Wall), nil
}

// ComputedTimesS returns when a tub that starts at start °C passes the target
// °C: its slowest cell, its mean and its outer 10 mm, in s; NaN for what does
// not pass it within the given seconds.
func ComputedTimesS(m *Material, mesh Mesh, startC float64, around Surroundings, forS, targetC float64) (slowest, mean, ring float64, err error) {
	last := Hottest
	if targetC > startC {
		last = Coldest
	}
	out, err := Solve(context.Background(), Problem{Material: m, Mesh: mesh, StartC: startC,
		Segments: []Segment{{forS, around}}, Levels: []Level{{last, targetC}, {Mean, targetC}, {Ring, targetC}}}, Options{})
	if err != nil {
		return math.NaN(), math.NaN(), math.NaN(), err
	}
	return out.CrossingsS[0], out.CrossingsS[1], out.CrossingsS[2], nil
}

// ComputedWallS returns when the surface of a tub's side passes the target °C, in s;
// NaN for not within the given seconds.
func ComputedWallS(m *Material, mesh Mesh, startC float64, around Surroundings, forS, targetC float64) (float64, error) {
	out, err := Solve(context.Background(), Problem{Material: m, Mesh: mesh, StartC: startC,
		Segments: []Segment{{forS, around}}, Levels: []Level{{Wall, targetC}}}, Options{StopEarly: true})
	if err != nil {
		return math.NaN(), err
	}
	return out.CrossingsS[0], nil
}

// slabFood is the food of testdata/tables/freezing_time_slab.csv: what freezes of
// its water follows (1 − Tf/T), and as it freezes the heat capacity falls by the
// difference of water and ice, 2.1 kJ/(kg K), which the table leaves unsaid.
func slabFood() (*Material, error) {
	const (
		density, freezing = 1050.0, -1.75
		freezable         = 0.745 - 0.4*0.21 // less what protein binds
		capacity, less    = 3.52e3, 2.1e3
		latent            = 333.6e3
		k, rise           = 0.48, 1.02
	)
	ice := func(t float64) float64 { return freezable * (1 - freezing/t) }
	const step, steps = 0.05, 860
	temperature, u, cond := make([]float64, steps+2), make([]float64, steps+2), make([]float64, steps+2)
	temperature[steps], cond[steps] = freezing, k
	for i := steps - 1; i >= 0; i-- {
		t := freezing - step*float64(steps-i)
		mean := capacity - less*ice(t+step/2)
		if i == steps-1 {
			mean = capacity
		}
		temperature[i] = t
		u[i] = u[i+1] - density*(mean*step+latent*(ice(t)-ice(t+step)))
		cond[i] = k + rise*ice(t)/ice(-20)
	}
	temperature[steps+1], u[steps+1], cond[steps+1] = 40, density*capacity*(40-freezing), k
	return NewMaterial(temperature, u, cond)
}

// ComputedSlabS returns when the middle of a slab of that food passes −10 °C, in
// s: thickness m thick, from start °C, in air of air °C with the coefficient h on
// both faces.
func ComputedSlabS(thicknessM, h, startC, airC float64) (float64, error) {
	m, err := slabFood()
	if err != nil {
		return math.NaN(), err
	}
	mesh, err := Slab(thicknessM/2, 40)
	if err != nil {
		return math.NaN(), err
	}
	out, err := Solve(context.Background(), Problem{Material: m, Mesh: mesh, StartC: startC,
		Segments: []Segment{{7 * 24 * 3600, Surroundings{Top: Face{AmbientC: airC, WPerM2K: h}}}},
		Levels:   []Level{{Hottest, -10}}}, Options{StopEarly: true})
	if err != nil {
		return math.NaN(), err
	}
	return out.CrossingsS[0], nil
}
