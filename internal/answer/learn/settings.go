package learn

import (
	"math"
	"slices"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
)

// Settings are those of a design and its kitchen that a measurement is about. What was
// measured against another of them was about that one.
type Settings struct {
	StoveLossPercent, CustardOverrunPercent, FoamOverrunPercent float64

	FreezerC      float64 // of the freezer's air, as the kitchen says
	CounterFactor float64 // on the counter's coefficient, from a measured time; 1: none
	CounterWPerK  float64 // its coefficient, W/(m² K); 0: still air
	Calibrated    bool    // CounterFactor was measured
	ProbeK        float64 // that the kitchen says its probe shows too much
}

// SettingsOf returns those of d in kitchen k, with nothing learnt.
func SettingsOf(d *design.Design, k cold.Profile) Settings {
	return Settings{d.Dense.StoveLossPercent, d.Dense.OverrunPercent, d.Foam.OverrunPercent,
		k.Freezer.AirC, k.Counter.Factor, k.Counter.CoefficientWPerM2K, k.Counter.Measured != "", offsetK(d, k)}
}

// For is From of a design in kitchen k, with nothing learnt: what was measured against
// another of its Settings is left out, so that evidence which the maker has put into the
// design or the kitchen is not counted twice.
func For(n *batch.Notebook, d *design.Design, k cold.Profile) Posterior {
	return SettingsOf(d, k).From(n)
}

// From is For of a design and a kitchen with those settings.
func (s Settings) From(n *batch.Notebook) Posterior {
	here := batch.Notebook{Off: n.Off, Batches: slices.Clone(n.Batches)}
	for i := range here.Batches {
		s.leave(&here.Batches[i].Forecast)
	}
	return from(&here, s.before())
}

// before is the spread before any batch. A counter whose factor was measured is as sure as
// package cold has it.
func (s Settings) before() [NumFactors]float64 {
	v := prior
	if s.Calibrated {
		v[Counter] = minutesDay
	}
	return v
}

// same reports whether a forecast was made with a setting as it is now; as it is where
// nobody wrote down which.
func same(was batch.Measured, now float64) bool {
	return !was.Known || math.Abs(was.Value-now) < 1e-3*(1+math.Abs(now))
}

// leave takes out of f what was forecast for other settings.
func (s Settings) leave(f *batch.Forecast) {
	none := batch.Measured{}
	if !same(f.StoveLossPercent, s.StoveLossPercent) {
		f.CustardG = none
	}
	if !same(f.CustardOverrun, s.CustardOverrunPercent) {
		f.CustardCupG = none
	}
	if !same(f.FoamOverrun, s.FoamOverrunPercent) {
		f.FoamCupG = none
	}
	if !same(f.FreezerC, s.FreezerC) {
		f.FreezerC = none
	}
	if !same(or(f.CounterFactor, 1), s.CounterFactor) || !same(or(f.CounterWPerK, 0), s.CounterWPerK) {
		f.ScoopedMinutes = none
	}
	if was := or(f.ProbeK, 0); !same(was, s.ProbeK) {
		f.WaterBoilsC = none
		// The syrup was as much hotter as the probe is now known to show less too much.
		if per, solids, ok := both(f.SyrupSolidsPerK, f.SyrupSolidsPercent); ok && solids > 0 && f.SyrupG.Known {
			now := solids + per*(was.Value-s.ProbeK)
			f.SyrupG.Value *= solids / now
			f.SyrupSolidsPercent.Value = now
		}
	}
}

// or is m, and v where it is not known: batches of before it was written down were made
// in kitchens that nobody had calibrated.
func or(m batch.Measured, v float64) batch.Measured {
	if m.Known {
		return m
	}
	return batch.Of(v)
}
