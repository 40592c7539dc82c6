package ripple

import (
	"cmp"
	"math"
	"slices"
	"sync"
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
	Foam, Dense             float64 // of the quantity, any unit per gram
	FoamGPerML, DenseGPerML float64 // g/mL, both positive
}

// FoamShare is the Pair whose value is the foam's share of the volume.
var FoamShare = Pair{Foam: 1, Dense: 0, FoamGPerML: 1, DenseGPerML: 1}

// At returns the quantity where the foam's share of the volume is f, 0 to 1. It is
// NaN if anything it needs is.
func (p Pair) At(f float64) float64 {
	switch f {
	case 0:
		return p.Dense
	case 1:
		return p.Foam
	}
	foam, dense := f*p.FoamGPerML, (1-f)*p.DenseGPerML
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
// A sample is a cube, seen as the square of its face, and every place is taken where
// that square meets the cut. At a wall a spoon takes what is there, and counts for as
// much as it takes: so every part of the tub counts alike, and the mean of the foam's
// share is the tub's. Where the filling is flatter than the cube, the spoon takes its
// whole height and more of its width. The pattern is taken to run straight through
// the cube. Real ribbons bend on their way, so real spoonfuls differ less than these.
//
// Samples is 0, and the figures NaN, if the square does not fit or p is unknown.
func (r *Raster) Spoon(ml float64, p Pair) Spoonful {
	nan := math.NaN()
	mm3 := ml * 1000
	highMM := min(math.Cbrt(mm3), r.fillMM)
	s := Spoonful{SideMM: math.Sqrt(mm3 / highMM), Mean: nan, SD: nan, P10: nan, P50: nan, P90: nan, Lowest: nan, Highest: nan}
	wide := int(math.Round(s.SideMM / r.PixelMM))
	high := wide
	if r.view == Side {
		high = min(int(math.Round(highMM/r.PixelMM)), r.Height)
	}
	if !(ml > 0) || wide < 1 || high < 1 || math.IsNaN(p.At(0.5)) {
		return s
	}
	// Sums over all pixels above and left, of foam and of tub.
	n := r.Width + 1
	room := sumsPool.Get().(*sums)
	defer sumsPool.Put(room)
	room.foam, room.in = grown(room.foam, n*(r.Height+1)), grown(room.in, n*(r.Height+1))
	foam, in := room.foam, room.in
	clear(foam[:n])
	clear(in[:n])
	for j := 0; j < r.Height; j++ {
		foam[(j+1)*n], in[(j+1)*n] = 0, 0
		rowFoam, rowIn := 0.0, 0.0
		for i := 0; i < r.Width; i++ {
			w := float64(r.InsideFractions[j*r.Width+i])
			rowFoam += w * float64(r.FoamFractions[j*r.Width+i])
			rowIn += w
			at := (j+1)*n + i + 1
			foam[at], in[at] = foam[at-n]+rowFoam, in[at-n]+rowIn
		}
	}
	s.take(p, r.spoonfuls(foam, in, wide, high))
	return s
}

// sums are those of a raster's pixels, which Spoon needs for a moment.
type sums struct{ foam, in []float64 }

var sumsPool = sync.Pool{New: func() any { return new(sums) }}

// spoonful is one sample: the foam's share of it, and the pixels it takes of the cut.
type spoonful struct{ foam, size float64 }

// spoonfuls returns the samples of wide by high pixels, given the sums of foam and of
// tub over all pixels above and left of each corner.
func (r *Raster) spoonfuls(foam, in []float64, wide, high int) []spoonful {
	n := r.Width + 1
	box := func(t []float64, i0, j0, i1, j1 int) float64 {
		return t[j1*n+i1] - t[j1*n+i0] - t[j0*n+i1] + t[j0*n+i0]
	}
	if wide > r.Width || high > r.Height {
		return nil
	}
	// From one place to the next is a whole part of the spoon, so that as many
	// spoons take each pixel.
	places := func(size int) (from, step int) {
		step = max(1, size/spoonSteps)
		for size%step != 0 {
			step--
		}
		return step - size, step
	}
	fromI, stepI := places(wide)
	fromJ, stepJ := places(high)
	lastJ := r.Height - 1
	if high == r.Height { // it takes the whole height
		fromJ, lastJ = 0, 0
	}
	var all []spoonful
	for j := fromJ; j <= lastJ; j += stepJ {
		for i := fromI; i < r.Width; i += stepI {
			i0, j0, i1, j1 := max(i, 0), max(j, 0), min(i+wide, r.Width), min(j+high, r.Height)
			if size := box(in, i0, j0, i1, j1); size > 0 {
				all = append(all, spoonful{min(max(box(foam, i0, j0, i1, j1)/size, 0), 1), size})
			}
		}
	}
	return all
}

// spoonSteps is about how many places a spoon takes over its own width.
const spoonSteps = 16

// take fills in the figures of the samples.
func (s *Spoonful) take(p Pair, all []spoonful) {
	if s.Samples = len(all); s.Samples == 0 {
		return
	}
	type weighed struct{ value, share float64 }
	values, sum := make([]weighed, len(all)), 0.0
	for i, x := range all {
		values[i] = weighed{p.At(x.foam), x.size}
		sum += x.size
	}
	s.Mean, s.SD = 0, 0
	for i := range values {
		values[i].share /= sum
		s.Mean += values[i].value * values[i].share
	}
	s.Lowest, s.Highest = min(p.Foam, p.Dense), max(p.Foam, p.Dense)
	for _, v := range values {
		s.SD += (v.value - s.Mean) * (v.value - s.Mean) * v.share
		bin := 0
		if s.Highest > s.Lowest {
			bin = int((v.value - s.Lowest) / (s.Highest - s.Lowest) * SpoonBins)
		}
		s.Counts[min(max(bin, 0), SpoonBins-1)] += v.share
	}
	s.SD = math.Sqrt(s.SD)
	slices.SortFunc(values, func(a, b weighed) int { return cmp.Compare(a.value, b.value) })
	below := 0.0
	at := [...]struct {
		share float64
		to    *float64
	}{{0.1, &s.P10}, {0.5, &s.P50}, {0.9, &s.P90}}
	next := 0
	for _, v := range values {
		below += v.share
		for next < len(at) && below >= at[next].share-1e-9 {
			*at[next].to = v.value
			next++
		}
	}
}
