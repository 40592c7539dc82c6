package process

import "math"

// Reading is what a cook reads off a scale or a thermometer at a step.
type Reading string

// The readings.
const (
	SyrupC      Reading = "syrup_c"       // the probe in the syrup, °C
	SyrupG      Reading = "syrup_g"       // the syrup without its pan, g
	SyrupMin    Reading = "syrup_min"     // from the flame on to that, minutes: calibrates the flame
	FoamC       Reading = "foam_c"        // the foam right after the pour, °C
	FoamCupG    Reading = "foam_cup_g"    // a level CupML of foam, g
	CustardG    Reading = "custard_g"     // the custard without its pan, cooked, g
	CustardCupG Reading = "custard_cup_g" // a level CupML of custard, half frozen, g
)

// CupML is the cup that air is weighed with, mL.
const CupML = 250

// Readings returns what can be read at a step.
func (p *Process) Readings(code StepCode) []Reading {
	last := WhipCold
	for _, c := range [...]StepCode{PourIn, FoldIn} {
		if p.Has(c) {
			last = c
		}
	}
	var out []Reading
	switch code {
	case BoilSyrup:
		out = append(out, SyrupC, SyrupG, SyrupMin)
	case PourIn:
		out = append(out, FoamC)
	case FreezeSoft:
		out = append(out, CustardCupG)
	}
	if code == p.WeighAt() && p.Custard.Present {
		out = append(out, CustardG)
	}
	if code == last {
		out = append(out, FoamCupG)
	}
	return out
}

// OverrunPercent returns the overrun, %, of a phase of which a level cup weighs g and
// of which 1 mL without air weighs density g; NaN of nothing.
func OverrunPercent(g, densityGPerML float64) float64 {
	if !(g > 0) {
		return math.NaN()
	}
	return 100 * (CupML*densityGPerML/g - 1)
}
