package photo

import (
	"math"
	"slices"

	"ripplewright/internal/matter/ripple"
)

// seen returns the cut as a mask shows it.
func (s *straight) seen(q *Request, mask []float32, share float64) *ripple.Seen {
	_, high := q.Tub.BoxMM(q.View)
	return &ripple.Seen{Tub: q.Tub, View: q.View, FoamFraction: share, StepMM: s.mm / 2, Foam: func(xs, ys, out []float64) {
		for k, x := range xs {
			out[k] = s.foamAt(mask, x/s.mm-0.5, (high-ys[k])/s.mm-0.5)
		}
	}}
}

// foamAt is bilinear between pixels.
func (s *straight) foamAt(mask []float32, x, y float64) float64 {
	x, y = clamp(x, 0, float64(s.w-1)), clamp(y, 0, float64(s.h-1))
	i, j := min(int(x), s.w-2), min(int(y), s.h-2)
	a, b := x-float64(i), y-float64(j)
	at := j*s.w + i
	top := float64(mask[at]) + a*float64(mask[at+1]-mask[at])
	low := float64(mask[at+s.w]) + a*float64(mask[at+s.w+1]-mask[at+s.w])
	return top + b*(low-top)
}

// count returns how many pixels lie in the cut.
func (s *straight) count() int {
	n := 0
	for _, in := range s.cut {
		if in {
			n++
		}
	}
	return n
}

// mean returns the mean of a mask over the cut.
func (s *straight) mean(mask []float32) float64 {
	sum := 0.0
	for k, in := range s.cut {
		if in {
			sum += float64(mask[k])
		}
	}
	return sum / float64(s.count())
}

// portion returns the share of the cut whose mask is from low up to high.
func (s *straight) portion(mask []float32, low, high float32) float64 {
	n := 0
	for k, in := range s.cut {
		if in && mask[k] >= low && mask[k] < high {
			n++
		}
	}
	return float64(n) / float64(s.count())
}

func (s *straight) above(mask []float32, level float32) float64 { return s.portion(mask, level, 2) }

// grey returns the share of the cut that is neither phase.
func (s *straight) grey(mask []float32) float64 { return s.portion(mask, 0.2, 0.8) }

// grain is the standard deviation of a mask from pixel to pixel.
//
// Source: Immerkær 1996, Fast Noise Variance Estimation, Computer Vision and Image
// Understanding 64:300 (from memory).
func (s *straight) grain(mask []float32) float64 {
	sum, n := 0.0, 1
	for j := 1; j < s.h-1; j++ {
		for i := 1; i < s.w-1; i++ {
			at := j*s.w + i
			if !s.inside[at] {
				continue
			}
			up, down := mask[at-s.w-1:], mask[at+s.w-1:]
			v := up[0] - 2*up[1] + up[2] - 2*mask[at-1] + 4*mask[at] - 2*mask[at+1] + down[0] - 2*down[1] + down[2]
			sum += math.Abs(float64(v))
			n++
		}
	}
	return math.Sqrt(math.Pi/2) * sum / float64(n) / 6
}

// sharpest is the share of an interface that is drawn as sharply as the picture can.
const sharpest = 0.05

// edgeMM returns how far light spreads in the picture, one standard deviation, by the
// sharpest edges of a mask: a Gaussian edge has in its middle the slope 1/(√(2π)σ).
// Infinite where there is no edge.
func (s *straight) edgeMM(mask []float32) float64 {
	var slopes []float64
	crossed := func(k, to, aside int) {
		if s.inside[k] && s.inside[k+to] && (mask[k] > level) != (mask[k+to] > level) {
			across := float64(mask[k+aside]-mask[k-aside]+mask[k+to+aside]-mask[k+to-aside]) / 4
			slopes = append(slopes, math.Hypot(float64(mask[k+to]-mask[k]), across))
		}
	}
	for j := 1; j < s.h-2; j++ {
		for i := 1; i < s.w-2; i++ {
			k := j*s.w + i
			crossed(k, 1, s.w)
			crossed(k, s.w, 1)
		}
	}
	if len(slopes) == 0 {
		return math.Inf(1)
	}
	slices.Sort(slopes)
	return s.mm / (math.Sqrt(2*math.Pi) * slopes[int((1-sharpest)*float64(len(slopes)-1))])
}

// Mask is the foam's share of each pixel of the straightened cut.
type Mask struct {
	Width, Height int
	PixelMM       float64
	FoamFractions []float32 // 0 to 1, row by row
	Inside        []bool

	homography homography
}

// At returns how much foam the mask has at a place of the picture, and whether it lies in
// the cut.
func (m *Mask) At(p Point) (foamFraction float64, inside bool) {
	u, v := m.homography.back(p.X, p.Y)
	if !(u >= 0 && v >= 0 && u < 1 && v < 1) {
		return 0, false
	}
	k := int(v*float64(m.Height))*m.Width + int(u*float64(m.Width))
	return float64(m.FoamFractions[k]), m.Inside[k]
}
