package ripple

import (
	"math"
	"slices"
)

// SpoonML is the usual spoonful, mL: a metric tablespoon.
const SpoonML = 15.0

// Pair says what a quantity is in each phase, per gram, and what a millilitre of
// each phase weighs, so that a mixture of the phases has it by mass:
//
//	q = (f ρf Foam + (1−f) ρd Dense) / (f ρf + (1−f) ρd),  f the foam's share of volume
//
// Densities of 1 and 1 make it a mean by volume. An unknown is NaN, not 0.
type Pair struct {
	Foam, Dense               float64 // of the quantity, any unit per gram
	FoamDensity, DenseDensity float64 // g/mL, both positive
}

// FoamShare is the Pair whose value is the foam's share of the volume.
var FoamShare = Pair{Foam: 1, Dense: 0, FoamDensity: 1, DenseDensity: 1}

// At returns the quantity where the foam's share of the volume is f, 0 to 1. It is
// NaN if anything it needs is.
func (p Pair) At(f float64) float64 {
	switch f {
	case 0:
		return p.Dense
	case 1:
		return p.Foam
	}
	foam, dense := f*p.FoamDensity, (1-f)*p.DenseDensity
	return (foam*p.Foam + dense*p.Dense) / (foam + dense)
}

// Spoonful is how a quantity varies from one spoonful to the next.
type Spoonful struct {
	SideMM          float64 // of the sample: of its width, where the filling is flatter than a cube
	Samples         int
	Mean, SD        float64
	P10, P50, P90   float64
	Lowest, Highest float64            // the ends of Counts
	Counts          [SpoonBins]float64 // share of the samples, in equal bins from Lowest to Highest
}

// SpoonBins is the number of bins of Spoonful.Counts.
const SpoonBins = 20

// Spoon returns the distribution of p over samples of ml millilitres.
//
// A sample is a cube, seen as the square of its face, and every place of the cut
// where that square fits is taken. Where the filling is flatter than the cube, the
// spoon takes its whole height and more of its width. The pattern is taken to run straight through
// the cube. Real ribbons bend on their way, so real spoonfuls differ less than
// these; and those along the walls are a little under-counted.
//
// Samples is 0, and the figures NaN, if the square does not fit or p is unknown.
func (r *Raster) Spoon(ml float64, p Pair) Spoonful {
	nan := math.NaN()
	mm3 := ml * 1000
	highMM := min(math.Cbrt(mm3), r.fillMM)
	s := Spoonful{SideMM: math.Sqrt(mm3 / highMM), Mean: nan, SD: nan, P10: nan, P50: nan, P90: nan, Lowest: nan, Highest: nan}
	wide := int(math.Round(s.SideMM / r.MMPerPixel))
	high := wide
	if r.view == Side {
		high = min(int(math.Round(highMM/r.MMPerPixel)), r.Height)
	}
	if !(ml > 0) || wide < 1 || high < 1 || math.IsNaN(p.At(0.5)) {
		return s
	}
	// Sums over all pixels above and left, of foam and of tub.
	n := r.Width + 1
	foam, in := make([]float64, n*(r.Height+1)), make([]float64, n*(r.Height+1))
	for j := 0; j < r.Height; j++ {
		rowFoam, rowIn := 0.0, 0.0
		for i := 0; i < r.Width; i++ {
			w := float64(r.Inside[j*r.Width+i])
			rowFoam += w * float64(r.Foam[j*r.Width+i])
			rowIn += w
			at := (j+1)*n + i + 1
			foam[at], in[at] = foam[at-n]+rowFoam, in[at-n]+rowIn
		}
	}
	var values []float64
	stride := max(1, wide/16)
	box := func(t []float64, i, j int) float64 {
		return t[(j+high)*n+i+wide] - t[(j+high)*n+i] - t[j*n+i+wide] + t[j*n+i]
	}
	full := float64(wide*high) * 0.995 // a hair of wall is no matter
	for j := 0; j+high <= r.Height; j += stride {
		for i := 0; i+wide <= r.Width; i += stride {
			if a := box(in, i, j); a >= full {
				values = append(values, p.At(min(max(box(foam, i, j)/a, 0), 1)))
			}
		}
	}
	if s.Samples = len(values); s.Samples == 0 {
		return s
	}
	s.Mean, s.SD = 0, 0
	for _, v := range values {
		s.Mean += v / float64(len(values))
	}
	for _, v := range values {
		s.SD += (v - s.Mean) * (v - s.Mean) / float64(len(values))
	}
	s.SD = math.Sqrt(s.SD)
	slices.Sort(values)
	at := func(q float64) float64 { return values[int(q*float64(len(values)-1)+0.5)] }
	s.P10, s.P50, s.P90 = at(0.1), at(0.5), at(0.9)
	s.Lowest, s.Highest = min(p.Foam, p.Dense), max(p.Foam, p.Dense)
	for _, v := range values {
		bin := 0
		if s.Highest > s.Lowest {
			bin = int((v - s.Lowest) / (s.Highest - s.Lowest) * SpoonBins)
		}
		s.Counts[min(max(bin, 0), SpoonBins-1)] += 1 / float64(len(values))
	}
	return s
}
