// Package sure answers how sure the figures of a design are in a kitchen that
// is not exact: it makes the design many times over, each time a little
// otherwise, and says what comes out and which of the slips does most.
//
// It knows no physics: package model evaluates each kitchen.
package sure

import (
	"context"
	"math"
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
	AirPercent      = model.AirPercent   // of the overrun
	FreezerK        = 2.0                // of the serving temperature, common practice, no source
	ThawShare       = 1. / 3             // of the minutes: how fast air takes heat away is known to about a third
)

// lawSigma is the spread of the logarithm of hardness that a factor of
// phase.Scatter either way makes.
var lawSigma = math.Log(phase.Scatter) / phase.ScatterHolds

const nineteenIn20 = model.NineteenIn20

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
	Absent   [2]bool // the tub holds no custard, no foam
	// The share of kitchens in which the custard, the foam and both eat well,
	// 0 to 1; NaN where the hardness law does not reach.
	CustardFraction, FoamFraction, BothFraction float64

	Spread  [NumFigures]Spread
	ByCause [NumCauses][NumFigures]Spread // with that cause alone
}

// alone is how many kitchens are tried of each cause alone.
const alone = 120

// Sample makes d in many kitchens, which know of batches what Options says and no more. The error is that of Evaluate, or the
// context's.
func Sample(ctx context.Context, m *model.Model, d design.Design, o Options) (Answer, error) {
	if o.Kitchens <= 0 {
		o.Kitchens = 1000
	}
	if o.Learnt == nil {
		o.Learnt = nothing
	}
	s := sampler{k: m.Published().Holding(d.Own).Sketcher(), d: d, o: o}
	s.d.Own = nil
	first, err := s.k.Sketch(s.d)
	if err != nil {
		return Answer{}, err
	}
	absent := [2]bool{first.Absent(phase.Dense), first.Absent(phase.Foam)}
	s.known = [2]bool{first.Phase(phase.Dense).Felt(), first.Phase(phase.Foam).Felt()}
	var every [NumCauses]bool
	for c := range every {
		every[c] = true
	}
	a := Answer{Kitchens: o.Kitchens, Absent: absent}
	all, well, err := s.many(ctx, o.Kitchens, every)
	if err != nil {
		return Answer{}, err
	}
	a.CustardFraction, a.FoamFraction, a.BothFraction = well[0], well[1], well[2]
	if absent[0] {
		a.CustardFraction = math.NaN()
	}
	if absent[1] {
		a.FoamFraction = math.NaN()
	}
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

// Effect is how much a cause alone moves a figure: the logarithm of its ends'
// ratio of a hardness, their difference of any other; NaN where it is not known.
func (a *Answer) Effect(c Cause, f Outcome) float64 {
	s := a.ByCause[c][f]
	if f == CustardKPa || f == FoamKPa {
		return math.Log(s.High / s.Low)
	}
	return s.High - s.Low
}

// Has reports whether the tub has such a figure.
func (a *Answer) Has(f Outcome) bool {
	switch f {
	case CustardKPa, Minutes:
		return !a.Absent[0]
	case FoamKPa:
		return !a.Absent[1]
	}
	return true
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
