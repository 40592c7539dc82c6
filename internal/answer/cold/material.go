package cold

import (
	"math"
	"sort"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/heat"
	"ripplewright/internal/matter/phase"
)

// validC is where the component enthalpies hold (package phase), as far as a
// kitchen goes, °C.
var validC = [2]float64{-40, 60}

// substance is a blend of phases by volume as filled.
type substance struct {
	bodies []*phase.Body
	share  []float64 // of the volume, adding up to 1
}

func only(b *phase.Body) substance { return substance{[]*phase.Body{b}, []float64{1}} }

// rippled returns the tub's substance; a phase that is not there is left out.
func rippled(r *model.Result) (substance, error) {
	hasDense, hasFoam := r.Dense.WrittenG > 0, r.Foam.WrittenG > 0
	foam := r.Blend.FoamVolumeFraction
	switch {
	case hasDense && hasFoam && foam > 0 && foam < 1:
		return substance{[]*phase.Body{&r.Dense.Body, &r.Foam.Body}, []float64{1 - foam, foam}}, nil
	case hasDense && foam < 1:
		return only(&r.Dense.Body), nil
	case hasFoam:
		return only(&r.Foam.Body), nil
	}
	return substance{}, flaw.New("the cold: the tub is empty")
}

// enthalpy is per volume as filled, J/m³, over the unfrozen phases at 0 °C: u = Σ φ u.
func (s substance) enthalpy(t float64) float64 {
	sum := 0.0
	for i, b := range s.bodies {
		sum += s.share[i] * b.JPerM3(t)
	}
	return sum
}

// conductivity is W/(m K), of two phases neither of which is the continuous one: the
// effective medium (Carson, Wang, North & Cleland 2016, J. Food Eng. 175:65).
func (s substance) conductivity(t float64) float64 {
	k, _ := s.bodies[0].WPerMK(t)
	if len(s.bodies) > 1 {
		k2, _ := s.bodies[1].WPerMK(t)
		k = phase.BruggemanWPerMK(k, k2, s.share[1])
	}
	return k
}

// material tabulates s between two temperatures, °C, which are held to validC.
func (s substance) material(lowest, highest float64) (*heat.Material, error) {
	lowest, highest = math.Max(lowest, validC[0]), math.Min(highest, validC[1])
	t := s.points(lowest, highest)
	u, k := make([]float64, len(t)), make([]float64, len(t))
	for i, v := range t {
		u[i], k[i] = s.enthalpy(v), s.conductivity(v)
	}
	return heat.NewMaterial(t, u, k)
}

// points returns temperatures every twentieth of a kelvin, with more of them below
// each freezing point, where the enthalpy bends, and none closer than a
// millikelvin, where its differences would drown in rounding.
func (s substance) points(lowest, highest float64) []float64 {
	const step, first, last = 0.05, 0.004, 3.0
	var t []float64
	for v := lowest; v < highest; v += step {
		t = append(t, v)
	}
	t = append(t, highest)
	for _, b := range s.bodies {
		t = append(t, b.EndOfFreezingC)
		if math.IsNaN(b.FreezingPointC) {
			continue
		}
		t = append(t, b.FreezingPointC)
		for d := first; d < last; d *= 1.15 {
			t = append(t, b.FreezingPointC-d)
		}
	}
	sort.Float64s(t)
	kept := t[:0]
	for _, v := range t {
		if v < lowest || v > highest || len(kept) > 0 && v-kept[len(kept)-1] < 1e-3 {
			continue
		}
		kept = append(kept, v)
	}
	return kept
}
