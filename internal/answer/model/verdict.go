package model

import (
	"math"

	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Verdict is how a design eats at its serving temperature. Package say puts it
// into words, package balance finds what mends it.
type Verdict struct {
	Good    bool
	Empty   bool // a phase that the tub should have has no lines, so nothing can be said of how they eat together
	AtC     float64
	Dense   Eating
	Foam    Eating
	Because *Warning // what spoils the tub, where that is no matter of hardness; nil: nothing does
}

// Eating is what a spoon meets in a phase.
type Eating struct {
	How Feel
	KPa float64
}

// Feel is where a phase stands in, below or above the band in which it eats well.
type Feel uint8

// The feels.
const (
	EatsWell   Feel = iota
	TooSoft         // below its band
	NeedsForce      // above it
	TooHard         // at more than twice its firm end
	NotThere        // the tub holds none of it
	NotKnown        // the hardness law does not reach so far
)

// judged judges the evaluated design r of d.
func judged(d design.Design, r *Result) Verdict {
	if r.Blend.MassG <= 0 || len(r.lacking(d)) > 0 {
		return Verdict{Empty: true, AtC: d.Serving.TemperatureC}
	}
	v := Verdict{AtC: d.Serving.TemperatureC, Dense: r.Dense.eating(), Foam: r.Foam.eating()}
	v.Good = v.Dense.good() && v.Foam.good()
	if v.Good {
		v.Because = r.worst()
		v.Good = v.Because == nil
	}
	return v
}

// lacking returns the phases that the tub should have and that have no lines.
func (r *Result) lacking(d design.Design) []phase.Role {
	var out []phase.Role
	if r.Dense.WrittenG == 0 && (d.Blend.FoamVolumePercent < 100 || r.Foam.WrittenG == 0) {
		out = append(out, phase.Dense)
	}
	if r.Foam.WrittenG == 0 && (d.Blend.FoamVolumePercent > 0 || r.Dense.WrittenG == 0) {
		out = append(out, phase.Foam)
	}
	return out
}

// worst returns the gravest warning above a note that no step deals with, nil
// if there is none; of equals, the first, but before all that nobody knows how
// a phase eats.
func (r *Result) worst() *Warning {
	var w *Warning
	for i := range r.Warnings {
		x := &r.Warnings[i]
		if x.Severity == Note || x.Handled {
			continue
		}
		if w == nil || x.Severity > w.Severity || x.Severity == w.Severity && x.Code == outsideLaw && w.Code != outsideLaw {
			w = x
		}
	}
	return w
}

// good reports whether nothing is wrong with the phase: one that is not there
// cannot be too hard.
func (e Eating) good() bool { return e.How == EatsWell || e.How == NotThere || e.How == NotKnown }

func (p *Phase) eating() Eating {
	if !p.InTub() {
		return Eating{How: NotThere, KPa: math.NaN()}
	}
	if !p.Felt() {
		return Eating{How: NotKnown, KPa: math.NaN()}
	}
	e := Eating{KPa: p.State.YieldKPa}
	switch kPa, band := p.State.YieldKPa, p.Body.Role.Band(); {
	case kPa < band.SoftKPa:
		e.How = TooSoft
	case kPa > 2*band.FirmKPa:
		e.How = TooHard
	case kPa > band.FirmKPa:
		e.How = NeedsForce
	}
	return e
}
