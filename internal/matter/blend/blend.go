// Package blend joins the two phases in the tub: how much of each goes in, how
// many tubs that fills, what is left over, and how the pair compares.
//
// Volumes are mL as filled (phase.ReferenceC), masses g, fractions of 1.
package blend

import (
	"math"

	"ripplewright/internal/matter/phase"
)

// Contrast is how the phases differ at one temperature.
type Contrast struct {
	HardnessRatio    float64 // yield stress of the custard over that of the foam
	SweetnessPercent float64 // foam minus custard, points of % sucrose equivalent
	ScoopsK          float64 // temperature at which the custard starts to scoop minus the foam's, K; NaN where a phase never does in the range or the custard always does
	// ScoopsAtLeast says that ScoopsK is a lower bound: the foam is never too
	// firm in the range, so it starts to scoop somewhere colder.
	ScoopsAtLeast bool
	YieldKPa      float64 // one number for the tub, kPa: the geometric mean by volume (an estimate)
}

// None is the contrast of a tub of one phase.
var None = Contrast{HardnessRatio: math.NaN(), SweetnessPercent: math.NaN(), ScoopsK: math.NaN(), YieldKPa: math.NaN()}

// Compare returns the contrast at the temperature of the states. scoopLowC and
// scoopHighC bound the search for the start of scooping, °C.
func Compare(dense, foam *phase.Body, at [2]phase.State, foamFraction, scoopLowC, scoopHighC float64) Contrast {
	c := Contrast{
		HardnessRatio:    at[0].YieldKPa / at[1].YieldKPa,
		SweetnessPercent: phase.SweetnessPercent(foam.Mix) - phase.SweetnessPercent(dense.Mix),
		YieldKPa:         math.Exp((1-foamFraction)*math.Log(at[0].YieldKPa) + foamFraction*math.Log(at[1].YieldKPa)),
		ScoopsK:          math.NaN(),
	}
	fd, _, okd := dense.ScoopRangeC(scoopLowC, scoopHighC)
	ff, _, okf := foam.ScoopRangeC(scoopLowC, scoopHighC)
	if okd && okf && fd > scoopLowC {
		c.ScoopsK, c.ScoopsAtLeast = fd-ff, ff <= scoopLowC
	}
	return c
}

// BothC returns the temperatures at which both phases are in their bands.
func BothC(dense, foam *phase.Body, lowC, highC float64) (from, to float64, ok bool) {
	fd, td, okd := dense.ScoopRangeC(lowC, highC)
	ff, tf, okf := foam.ScoopRangeC(lowC, highC)
	from, to = math.Max(fd, ff), math.Min(td, tf)
	return from, to, okd && okf && from < to
}
