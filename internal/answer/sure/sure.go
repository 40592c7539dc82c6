// Package sure answers how sure the figures of a design are in a kitchen that
// is not exact: it makes the design many times over, each time a little
// otherwise, and says what comes out and which of the slips does most.
//
// It knows no physics: package model evaluates each kitchen.
package sure

import (
	"context"
	"math"
	"math/rand"
	"slices"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Cause is one thing that is never quite as written.
type Cause uint8

// The causes.
const (
	Weighing Cause = iota // each line on the scale
	EggSize               // the eggs of a size differ
	Air                   // the overrun that the whisk or the churn gives
	Syrup                 // what tables of boiling syrup disagree by
	Freezer               // the temperature at which it is eaten
	Law                   // the hardness law itself
	Thaw                  // how fast air warms a tub; of the minutes alone
	NumCauses
)

// String returns the cause's code.
func (c Cause) String() string {
	return [...]string{"weighing", "egg_size", "overrun", "syrup", "freezer", "hardness_law", "air_of_the_room"}[c]
}

// The slips: how far 19 kitchens in 20 are off at most, either way.
const (
	WeighingPercent = 5.0                // of each line: the slip that is asked about
	EggPercent      = 2 * 100 * 1.5 / 17 // of a counted egg's parts: a yolk's own scatter is 1.5 g of 17 (from memory)
	AirPercent      = 20.0               // of the overrun, common practice, no source
	FreezerK        = 2.0                // of the serving temperature, common practice, no source
	ThawShare       = 1. / 3             // of the minutes: how fast air takes heat away is known to about a third
)

// lawSigma is the spread of the logarithm of hardness that a factor of
// phase.Scatter either way makes where it covers 85 % of what was measured: 1.44
// is that share of a normal spread.
var lawSigma = math.Log(phase.Scatter) / 1.44

// nineteenIn20 is how many standard deviations hold 19 in 20 of a normal spread.
const nineteenIn20 = 1.96

// Options adjusts Sample.
type Options struct {
	Kitchens int          // how many; 0: 1000
	Seed     int64        // the same seed is the same kitchens
	Cold     *cold.Answer // of the same design, for the minutes; nil: none; as published, where Learnt is given
	Learnt   *Learnt      // of this maker's batches; nil: nothing
}

// Learnt is what batches teach of the slips: how far this kitchen is off in the
// middle, and how much is left of the spread, 0 to 1.
type Learnt struct {
	Left  [NumCauses]float64
	Shift [NumCauses]float64 // points of Syrup, K of Freezer in the freezer, the logarithm of Law and of Thaw; else nothing

	CustardAirShiftFraction, FoamAirShiftFraction float64 // share of the overrun, 0 for none
	StoveLossPercent                              float64 // points
}

// nothing is what is learnt without batches.
var nothing = func() *Learnt {
	var l Learnt
	for c := range l.Left {
		l.Left[c] = 1
	}
	return &l
}()

// Spread is where 8 of 10 kitchens lie, and the one in the middle. NaN where
// nothing is known.
type Spread struct{ Low, Middle, High float64 }

// Outcome is one of the figures that are looked at.
type Outcome uint8

// The outcomes.
const (
	CustardKPa Outcome = iota
	FoamKPa
	Sweetness // of the tub, % as sucrose
	Minutes   // from the freezer until the edge of the tub scoops
	NumFigures
)

// String returns the figure's key.
func (f Outcome) String() string {
	return [...]string{"custard_hardness_kpa", "foam_hardness_kpa", "sweetness_percent", "minutes_to_scoop"}[f]
}

// Answer is what comes out.
type Answer struct {
	Kitchens int
	// The share of kitchens in which the custard, the foam and both eat well,
	// 0 to 1; NaN where the hardness law does not reach.
	CustardFraction, FoamFraction, BothFraction float64

	Spread  [NumFigures]Spread
	ByCause [NumCauses][NumFigures]Spread // with that cause alone
}

// alone is how many kitchens are tried of each cause alone.
const alone = 120

// Sample makes d in many kitchens. The error is that of Evaluate, or the
// context's.
func Sample(ctx context.Context, m *model.Model, d design.Design, o Options) (Answer, error) {
	if o.Kitchens <= 0 {
		o.Kitchens = 1000
	}
	if o.Learnt == nil {
		o.Learnt = nothing
	}
	s := sampler{k: m.Holding(d.Own).Sketcher(), d: d, o: o}
	s.d.Own = nil
	first, err := s.k.Sketch(s.d)
	if err != nil {
		return Answer{}, err
	}
	s.known = [2]bool{first.Phase(phase.Dense).Felt(), first.Phase(phase.Foam).Felt()}
	var every [NumCauses]bool
	for c := range every {
		every[c] = true
	}
	a := Answer{Kitchens: o.Kitchens}
	all, well, err := s.many(ctx, o.Kitchens, every)
	if err != nil {
		return Answer{}, err
	}
	a.CustardFraction, a.FoamFraction, a.BothFraction = well[0], well[1], well[2]
	a.Spread = spreads(all)
	for c := range NumCauses {
		var only [NumCauses]bool
		only[c] = true
		some, _, err := s.many(ctx, min(alone, o.Kitchens), only)
		if err != nil {
			return Answer{}, err
		}
		a.ByCause[c] = spreads(some)
	}
	return a, nil
}

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
	slip := func(c Cause, most float64) float64 {
		x := r.NormFloat64() // drawn whether it counts or not, so that kitchens stay the same
		if !causes[c] {
			return 0
		}
		return most / nineteenIn20 * x * s.o.Learnt.Left[c]
	}
	d := s.d
	eggs := slip(EggSize, EggPercent/100)
	for _, p := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
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
	law := math.Exp(slip(Law, nineteenIn20*lawSigma) + l.Shift[Law])
	thaw := math.Exp(slip(Thaw, math.Log(1+ThawShare)) + l.Shift[Thaw])

	k, err := s.k.SketchSyrup(d, points)
	if err != nil {
		return v, eats, err
	}
	for i, role := range [...]phase.Role{phase.Dense, phase.Foam} {
		p := k.Phase(role)
		kPa := law * p.State.YieldKPa
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
	v[Minutes] = s.minutes(k, law, warmer, thaw)
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

// spreads are where 8 in 10 of the figures lie.
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

// Effect is how much a cause alone moves a figure: the logarithm of its ends'
// ratio of a hardness, their difference of any other; NaN where it is not known.
func (a *Answer) Effect(c Cause, f Outcome) float64 {
	s := a.ByCause[c][f]
	if f == CustardKPa || f == FoamKPa {
		return math.Log(s.High / s.Low)
	}
	return s.High - s.Low
}

// Foremost returns the causes of a figure, the one that moves it most first,
// without those that do not move it.
func (a *Answer) Foremost(f Outcome) []Cause {
	var out []Cause
	for c := range NumCauses {
		if a.Effect(c, f) > 1e-9 {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(x, y Cause) int {
		switch ex, ey := a.Effect(x, f), a.Effect(y, f); {
		case ex > ey:
			return -1
		case ex < ey:
			return 1
		}
		return 0
	})
	return out
}
