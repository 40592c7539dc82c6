package model

import (
	"math"

	"ripplewright/internal/matter/phase"
)

// Taught is what a maker's batches have shown: of the custard's hardness beside the law,
// whose constants stay, and of what the recipe comes to beside what is written. The zero
// Taught is nothing.
type Taught struct {
	Readings      int     // that tell of the hardness
	HarderFactor  float64 // over the law's; 0: not learnt
	ScatterFactor float64 // by which a batch may still be harder or softer, as phase.Scatter

	// Recipe moves no figure and no weight, since those are of the recipe as it is
	// written: it moves their bands.
	Recipe [NumMakings]Lesson
}

// Making is something in the making that seldom comes out as it is written.
type Making uint8

// The makings, with the unit of what is learnt of them.
const (
	Boiled     Making = iota // points of the syrup's solids beyond the thermometer's
	Reduced                  // points more that the custard loses on the stove
	CustardAir               // logarithm of the custard's overrun over what is written
	FoamAir                  // of the foam's
	NumMakings               // how many
)

// How far the makings of 19 kitchens in 20 are from what is written at most, either way,
// where nothing is known of the kitchen.
const (
	LossBand   = 6.0  // points of the stove loss, common practice, no source
	AirPercent = 20.0 // of the overrun, common practice, no source
)

// Unlearnt is the same in the makings' units: the band before any batch.
var Unlearnt = [NumMakings]float64{
	Boiled: BoilingBand, Reduced: LossBand, CustardAir: math.Log(1 + AirPercent/100), FoamAir: math.Log(1 + AirPercent/100),
}

// String returns the making's code, as a notebook has it.
func (m Making) String() string {
	return [...]string{"syrup", "stove_loss", "custard_air", "foam_air"}[m]
}

// IsRatio reports whether a making is learnt by the logarithm of a ratio.
func (m Making) IsRatio() bool { return m == CustardAir || m == FoamAir }

// NineteenIn20 is how many standard deviations hold 19 in 20 of a normal spread.
const NineteenIn20 = 1.96

// Lesson is by how much a making comes out otherwise than written. The zero Lesson is that
// no batch tells.
type Lesson struct {
	Readings   int
	Mean, Half float64 // 19 of the next 20 batches lie so far from the mean at most
	Before     float64 // Half of a kitchen of which nothing is known
}

// Known reports whether any batch tells.
func (l Lesson) Known() bool { return l.Half > 0 }

// Away reports whether what is written is further from what batches came to than one of
// them is from the next, by a standard deviation.
func (l Lesson) Away() bool { return l.Known() && math.Abs(l.Mean) > l.Half/NineteenIn20 }

// Known reports whether batches have shown anything of the hardness.
func (t Taught) Known() bool { return t.HarderFactor > 0 }

// scatter is by which factor a batch of a phase may be harder or softer.
func (t Taught) scatter() float64 {
	if t.Known() {
		return t.ScatterFactor
	}
	return phase.Scatter
}

// of returns what is known of a phase: of the foam's hardness batches tell nothing.
func (t Taught) of(r phase.Role) Taught {
	if r != phase.Dense {
		return Taught{}
	}
	return t
}

// Taught returns a model that computes as batches have shown.
func (m *Model) Taught(t Taught) *Model {
	n := *m
	n.taught = t
	return &n
}

// Lessons returns what m was taught.
func (m *Model) Lessons() Taught { return m.taught }

// Published returns m as nobody has taught it: what batches are compared with.
func (m *Model) Published() *Model {
	if m.taught == (Taught{}) {
		return m
	}
	return m.Taught(Taught{})
}
