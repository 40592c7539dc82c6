package model

import (
	"math"

	"ripplewright/internal/matter/phase"
)

// Curve returns the states of a phase at each temperature of ts, °C, into dst,
// which is grown as needed.
func Curve(b *phase.Body, tsC []float64, dst []phase.State) []phase.State {
	dst = dst[:0]
	for _, t := range tsC {
		dst = append(dst, b.At(t))
	}
	return dst
}

// KnownFromC returns the coldest temperature of the rail, °C and to a quarter, from
// which on the hardness law knows how hard the phase is; NaN where it knows none.
// The colder, the less water is left, and the thicker the syrup.
func (p *Phase) KnownFromC() float64 {
	for _, t := range RailC(1 + 4*int(RailHigh-RailLow)) {
		if s := p.Body.At(t); !p.Body.LawRange(&s).Ends() {
			return t
		}
	}
	return math.NaN()
}

// RailC returns n temperatures from RailLow to RailHigh.
func RailC(n int) []float64 {
	ts := make([]float64, n)
	for i := range ts {
		ts[i] = RailLow + (RailHigh-RailLow)*float64(i)/float64(n-1)
	}
	return ts
}
