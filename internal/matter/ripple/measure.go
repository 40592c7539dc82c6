package ripple

import (
	"math"
	"slices"
)

// Measure describes the ribbons of a cut. Lengths are mm.
//
// Mean thickness is 2A/P, twice the phase's area over the length of the interface
// (walls not counted): exact for parallel ribbons, and the usual mean for others.
// The interface is met along lines through the map (see trace), so that no stroke
// is too many; its length is within 3 % of the interface carried forward point by
// point. Pixels lose what is thinner than they: at 24 strokes two thirds of it.
//
// A ribbon has no one thickness, and lumps stay when the mean is already small, so
// chords are given too: the lengths that level and upright lines have within a
// phase. A line crosses most ribbons at a slant, so a mean chord is about π/2 times
// the mean thickness.
type Measure struct {
	FoamFraction float64 // of the cut, 0 to 1
	InterfaceMM  float64 // length of the interface; 0 when one phase fills the cut
	Foam, Dense  Ribbons

	Lines     int // straight lines through the map that were followed
	Crossings int // how often they met the interface
}

// Ribbons describes one phase. Everything is NaN, and Counts are zero, for a phase
// that is absent; MeanMM is NaN also for one that has no interface.
type Ribbons struct {
	MeanMM              float64 // mean thickness 2A/P
	MeanChordMM         float64
	P10MM, P50MM, P90MM float64 // mm, of chords, each chord counting once
	ThickestTenthMM     float64 // mean of the longest tenth of the chords
	Counts              [ChordBins]float64
}

// Counts[i] is the share of the phase's area in chords from i to i+1 times
// ChordBinMM; the last bin also holds all longer ones.
const (
	ChordBins  = 30
	ChordBinMM = 1.0 // mm
)

// Measure returns the figures of the cut, whatever its pixels.
func (r *Raster) Measure() Measure { return r.MeasureOver(0) }

// MeasureOver is Measure as one sees who cannot tell ribbons thinner than leastMM: along
// each line they are passed over, the thinnest first.
func (r *Raster) MeasureOver(leastMM float64) Measure {
	return r.out.measure(r.FoamFraction(), r.cut.trace(leastMM))
}

// measure returns the figures of a cut of which so much is foam.
func (o outline) measure(foam float64, t traced) Measure {
	m := Measure{FoamFraction: foam, InterfaceMM: t.interfaceMM, Lines: t.lines, Crossings: t.crossings}
	m.Foam = ribbons(t.foam, foam*o.area(), m.InterfaceMM)
	m.Dense = ribbons(t.dense, (1-foam)*o.area(), m.InterfaceMM)
	return m
}

func ribbons(chords []float64, area, length float64) Ribbons {
	nan := math.NaN()
	r := Ribbons{nan, nan, nan, nan, nan, nan, [ChordBins]float64{}}
	if len(chords) == 0 {
		return r
	}
	if length > 0 {
		r.MeanMM = 2 * area / length
	}
	slices.Sort(chords)
	at := func(p float64) float64 { return chords[int(p*float64(len(chords)-1)+0.5)] }
	r.P10MM, r.P50MM, r.P90MM = at(0.1), at(0.5), at(0.9)
	tenth := chords[len(chords)-(len(chords)+9)/10:]
	r.ThickestTenthMM = 0
	for _, c := range tenth {
		r.ThickestTenthMM += c / float64(len(tenth))
	}
	sum := 0.0
	for _, c := range chords {
		r.Counts[min(int(c/ChordBinMM), ChordBins-1)] += c
		sum += c
	}
	for i := range r.Counts {
		r.Counts[i] /= sum
	}
	r.MeanChordMM = sum / float64(len(chords))
	return r
}
