// Package learn answers what a maker's batches teach of a kitchen and a recipe:
// each kind of measurement moves one named offset or factor, as a posterior from
// what is known of kitchens in general and from how well the thing can be measured.
//
// No published constant is touched. What is learnt enters the other packages as
// values of a kitchen or a recipe.
package learn

import (
	"math"
	"slices"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/matter/phase"
)

// Factor is one thing that is learnt.
type Factor uint8

// The factors. An offset is added; a factor is learnt by its logarithm.
const (
	Probe       Factor = iota // K that the thermometer shows too much
	SyrupSolids               // percentage points that the boiled syrup has more than by the thermometer
	StoveLoss                 // percentage points that the custard loses more on the stove
	CustardAir                // the custard's overrun over the design's
	FoamAir                   // the foam's
	FreezerK                  // K that the freezer is warmer than the kitchen says
	Counter                   // how fast the air of the room takes the cold away, over the model's
	Hardness                  // of the custard over the law's
	Ice                       // size of the crystals over the law's
	Mixing                    // thickness of the mean ribbon, as this hand stirs, over the computed cut's
	NumFactors                // how many
)

// String returns the factor's code, as Off has it.
func (f Factor) String() string {
	return [...]string{"probe", "syrup", "stove_loss", "custard_air", "foam_air", "freezer", "counter", "hardness", "ice", "mixing"}[f]
}

// Named returns the factor of a code.
func Named(code string) (Factor, bool) {
	for f := range NumFactors {
		if f.String() == code {
			return f, true
		}
	}
	return 0, false
}

// IsRatio reports whether a factor is a ratio, learnt by its logarithm.
func (f Factor) IsRatio() bool {
	return slices.Contains([]Factor{CustardAir, FoamAir, Counter, Hardness, Ice, Mixing}, f)
}

// nineteenIn20 and eightIn10 are how many standard deviations hold so many of a
// normal spread.
const nineteenIn20, eightIn10 = model.NineteenIn20, 1.2816

// prior is what is known of kitchens in general: the standard deviation about no
// offset, in the factor's unit or of its logarithm. Each is a band that the program
// states elsewhere, or says so here:
//
// Probe: a food thermometer is right to 1 °C (FDA Food Code 2022, 4-203.11, from
// memory), a kitchen's own to twice that; as 19 in 20. SyrupSolids, StoveLoss and air:
// package model's. Ice: the range that package icy takes, as 19 in 20. Mixing: half as
// thick to twice as thick, as 19 in 20; ours, no source.
var prior = [NumFactors]float64{
	Probe:       2 / nineteenIn20,
	SyrupSolids: model.Unlearnt[model.Boiled] / nineteenIn20,
	StoveLoss:   model.Unlearnt[model.Reduced] / nineteenIn20,
	CustardAir:  model.Unlearnt[model.CustardAir] / nineteenIn20,
	FoamAir:     model.Unlearnt[model.FoamAir] / nineteenIn20,
	FreezerK:    sure.FreezerK / nineteenIn20,
	Counter:     math.Log(1+sure.ThawShare) / nineteenIn20,
	Hardness:    math.Log(phase.Scatter) / phase.ScatterHolds,
	Ice:         math.Log(icy.MostFactor) / nineteenIn20,
	Mixing:      math.Log(2) / nineteenIn20,
}

// The errors of a measurement, one standard deviation each, from day to day and of
// what is read. All are common practice, no source.
const (
	boilK         = 0.3  // a probe in boiling water, the day's air pressure in it
	solidsPoints  = 0.7  // a syrup's solids by weight: the scale, what sticks to spoon and pan
	lossPoints    = 1.0  // a custard's loss by weight, likewise
	airDay        = 0.05 // of the overrun's logarithm, from one whipping to the next
	cupShare      = 0.015
	freezerReadK  = 1.0  // a thermometer in a freezer whose air swings by 2 K
	tryEvery      = 2.0  // minutes between two tries with the spoon, of which any may have been in time
	ringK         = 0.5  // a probe in the outer centimetre, °C
	coreK         = 0.5  // a probe in the middle of a tub that has stood a night and longer, whose mass evens the swing of the air out
	hardnessWord  = 0.35 // of hardness's logarithm, what one word is to two people; its step comes on top
	hardnessScoop = 0.35 // of it, when a cook says that it scoops
	iceWord       = 0.18 // of the size's logarithm; its step comes on top
	cutShare      = 0.22 // of a ribbon's logarithm: tubs stirred alike scatter by 15 % about their mean, the computed one too (package ripple's test of six strokes), and a photograph errs by 6 %
	tasteK        = 0.7  // of the temperature at which it is eaten
)

// minutesDay is the error of the minutes' logarithm from tub to tub and day to day:
// the 10 % that package cold leaves a place once a time has been measured there, as 19
// in 20.
var minutesDay = math.Log(1+cold.SpreadMeasuredFraction) / nineteenIn20

// hardnessPerK is by how much the logarithm of a custard's hardness falls with each
// K near serving: between 0.15 and 0.3 in our demos.
const hardnessPerK = 0.2
