package sure

import (
	"context"
	"math"
	"math/rand"
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// sampler makes one design in many kitchens.
type sampler struct {
	k     *model.Sketcher
	d     design.Design
	o     Options
	known [2]bool // whether the hardness of custard and foam is known as written
}

// many makes n kitchens with these causes and returns the figures and the shares
// in which custard, foam and both eat well.
func (s *sampler) many(ctx context.Context, n int, causes [NumCauses]bool) (all [NumFigures][]float64, well [3]float64, err error) {
	r := rand.New(rand.NewSource(s.o.Seed + 1))
	for i := range n {
		if i%32 == 0 && ctx.Err() != nil {
			return all, well, ctx.Err()
		}
		figures, eats, err := s.one(r, causes)
		if err != nil {
			return all, well, err
		}
		for f, v := range figures {
			all[f] = append(all[f], v)
		}
		for k, ok := range [...]bool{eats[0], eats[1], eats[0] && eats[1]} {
			if ok {
				well[k] += 1 / float64(n)
			}
		}
	}
	for k := range well {
		if k < 2 && !s.known[k] || k == 2 && !(s.known[0] && s.known[1]) {
			well[k] = math.NaN()
		}
	}
	return all, well, nil
}

// one makes the design in one kitchen.
func (s *sampler) one(r *rand.Rand, causes [NumCauses]bool) (v [NumFigures]float64, eats [2]bool, err error) {
	whole := func(c Cause, most float64) float64 { // as if nothing were learnt
		x := r.NormFloat64() // drawn whether it counts or not, so that kitchens stay the same
		if !causes[c] {
			return 0
		}
		return most / nineteenIn20 * x
	}
	slip := func(c Cause, most float64) float64 { return whole(c, most) * s.o.Learnt.Left[c] }
	d := s.d
	eggs := slip(EggSize, EggPercent/100)
	for _, p := range design.Parts {
		lines := slices.Clone(d.Lines(p))
		for i := range lines {
			by := math.Max(0, 1+slip(Weighing, WeighingPercent/100))
			if lines[i].Count > 0 { // nobody weighs a counted egg
				by = math.Max(0, 1+eggs)
			}
			lines[i].Grams *= by
			lines[i].Count *= by
		}
		d = d.WithLines(p, lines)
	}
	l := s.o.Learnt
	d.Dense.StoveLossPercent = math.Min(math.Max(0, d.Dense.StoveLossPercent+l.StoveLossPercent), 60)
	d.Dense.OverrunPercent *= math.Max(0, 1+slip(Air, AirPercent/100)) * (1 + l.CustardAirShiftFraction)
	d.Foam.OverrunPercent *= math.Max(0, 1+slip(Air, AirPercent/100)) * (1 + l.FoamAirShiftFraction)
	warmer := slip(Freezer, FreezerK)
	d.Serving.TemperatureC = math.Min(math.Max(d.Serving.TemperatureC+warmer, model.ColdestC), model.WarmestC)
	warmer += l.Shift[Freezer] // of the freezer; what is eaten is as warm as its maker waits for
	points := slip(Syrup, model.BoilingBand) + l.Shift[Syrup]
	off := whole(Law, nineteenIn20*lawSigma) // of both phases; what is learnt is of the custard
	law := [...]float64{phase.Dense: math.Exp(off*l.Left[Law] + l.Shift[Law]), phase.Foam: math.Exp(off)}
	thaw := math.Exp(slip(Thaw, math.Log(1+ThawShare)) + l.Shift[Thaw])

	k, err := s.k.SketchSyrup(d, points)
	if err != nil {
		return v, eats, err
	}
	for i, role := range [...]phase.Role{phase.Dense, phase.Foam} {
		p := k.Phase(role)
		kPa := law[role] * p.State.YieldKPa
		v[i] = kPa
		eats[i] = role.Band().Holds(kPa)
		if !p.InTub() {
			v[i], eats[i] = math.NaN(), true
		}
		if !p.Felt() {
			v[i], eats[i] = math.NaN(), false
		}
	}
	v[Sweetness] = k.Tub().SweetnessPercent
	v[Minutes] = s.minutes(k, law[phase.Dense], warmer, thaw)
	return v, eats, nil
}

// minutes is how long the tub is out until its custard is soft enough, by the
// warming of the design as written, the tub coming out so much warmer.
func (s *sampler) minutes(k *model.Sketch, law, warmer, thaw float64) float64 {
	p := k.Phase(phase.Dense)
	if s.o.Cold == nil || !p.InTub() || !s.known[0] {
		return math.NaN()
	}
	track := s.o.Cold.Counter.Run.Track
	if len(track) == 0 {
		return math.NaN()
	}
	to, hard := p.Body.YieldAtC(phase.Dense.Band().FirmKPa/law, model.ColdestC, model.WarmestC)
	if !hard {
		return 0
	}
	to -= warmer
	for i := range track {
		if track[i].RingC < to {
			continue
		}
		if i == 0 {
			return 0
		}
		a, b := track[i-1], track[i]
		return thaw * (a.AtMinutes + (b.AtMinutes-a.AtMinutes)*(to-a.RingC)/(b.RingC-a.RingC))
	}
	return math.NaN()
}

// spreads are where 8 in 10 of the figures lie: of n in order the one at q(n − 1).
func spreads(all [NumFigures][]float64) (out [NumFigures]Spread) {
	for f := range all {
		v := slices.DeleteFunc(all[f], math.IsNaN)
		if len(v) < len(all[f])/2 || len(v) == 0 {
			out[f] = Spread{math.NaN(), math.NaN(), math.NaN()}
			continue
		}
		slices.Sort(v)
		at := func(q float64) float64 { return v[int(math.Round(q*float64(len(v)-1)))] }
		out[f] = Spread{at(0.1), at(0.5), at(0.9)}
	}
	return out
}
