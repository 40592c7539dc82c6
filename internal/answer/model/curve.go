package model

import "ripplewright/internal/matter/phase"

// Curve returns the states of a phase at each temperature of ts, °C, into dst,
// which is grown as needed.
func Curve(b *phase.Body, ts []float64, dst []phase.State) []phase.State {
	dst = dst[:0]
	for _, t := range ts {
		dst = append(dst, b.At(t))
	}
	return dst
}

// Rail returns n temperatures from RailLow to RailHigh.
func Rail(n int) []float64 {
	ts := make([]float64, n)
	for i := range ts {
		ts[i] = RailLow + (RailHigh-RailLow)*float64(i)/float64(n-1)
	}
	return ts
}
