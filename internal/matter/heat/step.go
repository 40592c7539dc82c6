package heat

import "math"

// gamma makes the two-stage Rosenbrock method below L-stable: whatever a long
// step cannot follow it damps.
const gamma = 1 - math.Sqrt2/2

// worstOverMean is how much more than the cells' mean one of them may err in a
// step: it keeps cells at a kink within some 0.4 K for that moment.
const worstOverMean = 60

// stepper advances the enthalpies by one step at a time and knows nothing of
// clocks, segments or stirs. It allocates only when it is made.
type stepper struct {
	*split

	u, rate []float64 // enthalpy of each cell, J/m³, and du/dt, W/m³
	flow    float64   // heat flow into the body, W
	heat    float64   // heat that has entered since the start, J

	next     []float64 // the step's outcome, before accept
	nextHeat float64
	before   []float64 // rate at the start of the last accepted step
	last     []float64 // u there
	lastFlow float64
	lastHeat float64

	k1, k2, phi []float64
}

func newStepper(m *Material, mesh Mesh) *stepper {
	n := mesh.nr * mesh.nz
	all := make([]float64, 8*n)
	part := func(i int) []float64 { return all[i*n : (i+1)*n : (i+1)*n] }
	return &stepper{split: newSplit(newConductor(m, mesh)),
		u: part(0), rate: part(1), next: part(2), before: part(3), last: part(4),
		k1: part(5), k2: part(6), phi: part(7)}
}

// refresh takes rates and slopes at u, after u or the surroundings changed by
// other means than a step.
func (s *stepper) refresh() {
	s.linearise(s.phi, s.u)
	s.flow = s.rates(s.rate, s.phi)
}

// try computes a step of h seconds into next and returns the estimated error
// of u, J/m³: its mean size over the cells, or a part of the largest where that
// is more. Cells count alike whatever their volume, because the slowest ones lie
// on the axis and are small. It is no root mean square: the few cells that begin
// to melt within the step, where the material has a kink, err much but for a
// moment, and would cut short the steps of all.
//
//	(I − γhA) k₁ = F(uₙ)
//	(I − γhA) k₂ = F(uₙ + h k₁) − 2 k₁
//	uₙ₊₁ = uₙ + h (3k₁ + k₂)/2,  error ≈ h (k₁ + k₂)/2
//
// The method keeps its second order whatever stands for A, which is what
// allows the split operator. The error is that of the embedded first-order
// uₙ + h k₁, so it overstates.
//
// Source: Verwer J.G., Spee E.J., Blom J.G., Hundsdorfer W. 1999, "A
// second-order Rosenbrock method applied to photochemical dispersion
// problems", SIAM J. Sci. Comput. 20:1456, method ROS2 and its approximate
// factorisation [formula from memory; order and conservation are tested here].
func (s *stepper) try(h float64) float64 {
	gh := gamma * h
	s.factor(gh)
	copy(s.k1, s.rate)
	flow1 := s.flow + gh*s.solve(s.k1)

	u := s.u
	k1, k2, next := s.k1[:len(u)], s.k2[:len(u)], s.next[:len(u)]
	for i, v := range u {
		next[i] = v + h*k1[i]
	}
	s.mat.potentials(s.phi, next)
	flow2 := s.rates(k2, s.phi)
	for i, v := range k1 {
		k2[i] -= 2 * v
	}
	flow2 += gh*s.solve(k2) - 2*flow1

	sum, worst := 0.0, 0.0
	for i, v := range u {
		a, b := k1[i], k2[i]
		e := math.Abs(a + b)
		sum += e
		if e > worst {
			worst = e
		}
		next[i] = v + h/2*(3*a+b)
	}
	s.nextHeat = s.heat + h/2*(3*flow1+flow2)
	return h / 2 * max(sum/float64(len(u)), worst/worstOverMean)
}

// accept makes the tried step the present, keeping the one before for at.
func (s *stepper) accept() {
	s.last, s.u, s.next = s.u, s.next, s.last
	s.before, s.rate = s.rate, s.before
	s.lastFlow, s.lastHeat = s.flow, s.heat
	s.heat = s.nextHeat
	s.refresh()
}
