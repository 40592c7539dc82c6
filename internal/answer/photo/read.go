package photo

import (
	"context"
	"image"
	"math"

	"ripplewright/internal/matter/ripple"
)

// Request is a picture and what a maker says of it.
type Request struct {
	Picture     image.Image
	Outline     Outline
	Dense, Foam Point // a spot of each phase
	Tub         ripple.Tub
	View        ripple.View
}

// Edged is a figure with where it lies for the edges of the mask.
type Edged struct{ Value, Low, High float64 }

// Reading is what a photograph shows. Lengths are mm.
type Reading struct {
	FoamFraction Edged // of the cut, 0 to 1

	// Ribbons is what is told of thickness; NaN throughout where Thin says why it is
	// not.
	Ribbons
	Thin *Refusal

	Mask Mask
}

// Ribbons are the figures of ribbon thickness that a picture shows, of those that are
// thicker than LeastMM.
type Ribbons struct {
	FoamMeanMM, DenseMeanMM Edged
	ThickestTenthMM         Edged // of the foam

	LeastMM float64 // thinner ribbons are passed over, by ripple.Raster.MeasureOver too
	PixelMM float64 // the picture's coarsest on the cut
	EdgeMM  float64 // how far light spreads in it, one standard deviation
}

// PassedOverMM returns LeastMM for the computed cut; 0 where the picture shows no edge to
// tell it by.
func (r *Ribbons) PassedOverMM() float64 {
	if math.IsInf(r.LeastMM, 0) || math.IsNaN(r.LeastMM) {
		return 0
	}
	return r.LeastMM
}

// MinRibbonPixels is how many of the picture's pixels a ribbon must have to count.
const MinRibbonPixels = 3

// An edge drawn with a standard deviation of σ hides ribbons thinner than twice that.
const hiddenEdges = 2

// Read measures the cut in a picture. The error is ctx's or a *Refusal.
func Read(ctx context.Context, q Request) (*Reading, error) {
	b := q.Picture.Bounds()
	if b.Dx() < MinSide || b.Dy() < MinSide {
		return nil, sized(TooSmall, b.Dx(), b.Dy())
	}
	if err := q.Outline.check(b.Dx(), b.Dy()); err != nil {
		return nil, err
	}
	w, h := q.Tub.BoxMM(q.View)
	m := q.Outline.straightens(Rim(q.Tub, q.View))
	coarse, fine := m.pixelsMM(w, h)
	if coarse > mostUneven*fine {
		return nil, refuse(OutlineShape)
	}
	s := straighten(q.Picture, q.Outline, &m, w, h)
	s.within(q.Tub, q.View)
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	p, err := s.phases(&q, &m)
	if err != nil {
		return nil, err
	}
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	r, err := s.read(ctx, &q, p, coarse)
	if err != nil {
		return nil, err
	}
	r.Mask.homography = m
	return r, nil
}

// mostUneven is how much longer a pixel may be one way than another on the cut: more is no
// perspective, but an outline of something else.
const mostUneven = 2.5

// within marks the pixels that lie in the cut, and those that are not beside its edge.
func (s *straight) within(t ripple.Tub, v ripple.View) {
	s.cut, s.inside = make([]bool, s.w*s.h), make([]bool, s.w*s.h)
	for j := range s.h {
		for i := range s.w {
			x, y := (float64(i)+0.5)*s.mm, (float64(j)+0.5)*s.mm
			depth := t.DepthMM(v, x, y)
			s.cut[j*s.w+i], s.inside[j*s.w+i] = depth >= 0, depth >= wallPixels*s.mm
		}
	}
}

// wallPixels are not believed along the outline: the tub's wall, or what lies behind the
// cut, shows in them. The phase beside them is taken to go on to the wall.
const wallPixels = 2.5

// What is refused, of colours in OKLab and of masks.
const (
	leastLight    = 0.2  // of the lighter phase
	leastDistance = 0.05 // between two colours that differ
	mostClipped   = 0.3  // of the cut
	mostGrain     = 0.2  // of the way from one phase to the other, from pixel to pixel
	leastPhase    = 0.01 // of the cut
	mostGrey      = 0.2  // of the cut is neither phase, beyond what its edges are
	blurredPixels = 3.0  // an edge drawn wider is out of focus
)

// mostShaded is by how much a shade may move the share of foam, 0 to 1. By half of what
// it moved it may be off: ours, from five pictures of another renderer, with a hand's shadow
// on cuts of five colours.
const mostShaded = 0.1

// phases finds the colours of the two phases from their spots.
func (s *straight) phases(q *Request, m *homography) (*phases, error) {
	var c [2]lab
	for k, p := range []Point{q.Dense, q.Foam} {
		u, v := m.back(p.X, p.Y)
		i, j := int(u*float64(s.w)), int(v*float64(s.h))
		if !(u > 0 && v > 0 && u < 1 && v < 1) || !s.inside[j*s.w+i] {
			return nil, &Refusal{Reason: SpotOutside, Place: p}
		}
		c[k] = s.spot(i, j)
	}
	if math.Max(c[0][0], c[1][0]) < leastLight {
		return nil, refuse(TooDark)
	}
	if s.clipped > mostClipped {
		return nil, &Refusal{Reason: Clipped, ClippedPercent: 100 * s.clipped}
	}
	if c[0].less(c[1]).size() < leastDistance {
		return nil, refuse(ColoursAlike)
	}
	p := s.even(c[0], c[1])
	if !(p.dense.less(p.foam).size() >= leastDistance) {
		return nil, refuse(ColoursAlike)
	}
	return &p, nil
}

// spotReach is how far about a spot its colour is taken from, of the cut's shorter side.
const spotReach = 1.0 / 200

// spot returns the middle colour about a place.
func (s *straight) spot(i, j int) lab {
	reach := max(1, int(spotReach*float64(min(s.w, s.h))))
	var of [3][]float64
	for y := max(j-reach, 0); y <= min(j+reach, s.h-1); y++ {
		for x := max(i-reach, 0); x <= min(i+reach, s.w-1); x++ {
			for k, v := range s.at(y*s.w + x) {
				of[k] = append(of[k], v)
			}
		}
	}
	return middle(of)
}

// smoothing is laid over a mask against its grain, pixels; see smoothed.
const smoothing = 0.8

// The interface is where half of a pixel's light is foam's; the band is what lies between
// two other levels: a good third of an edge's spread either way.
const level, lowLevel, highLevel = 0.5, 0.35, 0.65

// read measures what the light has evened out. coarse is the picture's coarsest pixel, mm.
func (s *straight) read(ctx context.Context, q *Request, p *phases, coarse float64) (*Reading, error) {
	raw := s.filled(s.mask(p))
	if g := s.grain(raw); g > mostGrain {
		return nil, refuse(Noisy)
	}
	smooth := smoothed(raw, s.w, s.h, smoothing)
	mask := snapped(smooth)
	share := s.mean(mask)
	moved, traced := 0.0, share
	switch {
	case p.shade != nil:
		plain := *p
		plain.shade = nil
		moved = math.Abs(s.shareBy(&plain) - share)
	case p.trace != nil:
		traced = s.shareBy(p.trace)
	}
	if math.Max(moved, math.Abs(traced-share)) > mostShaded {
		return nil, refuse(Shadowed)
	}
	if share < leastPhase || share > 1-leastPhase {
		return nil, refuse(OnePhase)
	}
	r := &Reading{Mask: Mask{Width: s.w, Height: s.h, PixelMM: s.mm, FoamFractions: mask, Inside: s.cut}}
	low, high := math.Min(share, traced)-share, math.Max(share, traced)-share // of what may be a shallow shadow, all
	r.FoamFraction = Edged{share, math.Max(0, math.Min(s.above(mask, highLevel), share)-moved/2+low), math.Min(1, math.Max(s.above(mask, lowLevel), share)+moved/2+high)}
	r.PixelMM, r.EdgeMM = coarse, s.edgeMM(smooth)
	r.LeastMM = math.Max(MinRibbonPixels*r.PixelMM, hiddenEdges*r.EdgeMM)
	if math.IsInf(r.EdgeMM, 1) {
		r.refuse(Blurred)
		return r, nil
	}
	sharp := sharpened(smooth, smoothed(smooth, s.w, s.h, r.EdgeMM/s.mm))
	seen := s.seen(q, sharp, share)
	whole := seen.Measure(level)
	edges := whole.InterfaceMM * greyEdges * r.EdgeMM / (s.mm * s.mm * float64(s.count()))
	if s.grey(smooth)-edges > mostGrey || math.Min(whole.Foam.MeanMM, whole.Dense.MeanMM) < MinRibbonPixels*r.PixelMM {
		r.refuse(r.thin(s.mm))
		return r, nil
	}
	seen.LeastMM = r.LeastMM
	for _, at := range []struct {
		level, foam float64
		of          func(*Edged) *float64
	}{{level, share, func(b *Edged) *float64 { return &b.Value }}, {highLevel, r.FoamFraction.Low, func(b *Edged) *float64 { return &b.Low }},
		{lowLevel, r.FoamFraction.High, func(b *Edged) *float64 { return &b.High }}} {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		seen.FoamFraction = at.foam
		m := seen.Measure(at.level)
		*at.of(&r.FoamMeanMM), *at.of(&r.DenseMeanMM), *at.of(&r.ThickestTenthMM) = m.Foam.MeanMM, m.Dense.MeanMM, m.Foam.ThickestTenthMM
	}
	for _, b := range []*Edged{&r.FoamMeanMM, &r.DenseMeanMM, &r.ThickestTenthMM} {
		b.Low, b.High = math.Min(b.Value, math.Min(b.Low, b.High)), math.Max(b.Value, math.Max(b.Low, b.High))
	}
	if !(math.Min(r.FoamMeanMM.Value, r.DenseMeanMM.Value) >= leastMean*r.LeastMM) {
		r.refuse(r.thin(s.mm))
	}
	return r, nil
}

// shareBy is the share of foam under some light.
func (s *straight) shareBy(p *phases) float64 {
	return s.mean(snapped(smoothed(s.filled(s.mask(p)), s.w, s.h, smoothing)))
}

// leastMean is how many times LeastMM a mean ribbon must have: else most were passed over.
const leastMean = 1.5

// greyEdges is how wide the part of an edge is that is grey, in its standard deviations:
// from 20 to 80 % of a Gaussian's.
const greyEdges = 1.68

// thin returns why ribbons are too thin to be seen.
func (r *Ribbons) thin(mm float64) Reason {
	if r.EdgeMM > blurredPixels*mm {
		return Blurred
	}
	return RibbonsThin
}

// refuse takes back what was told of thickness.
func (r *Reading) refuse(why Reason) {
	none := Edged{math.NaN(), math.NaN(), math.NaN()}
	r.FoamMeanMM, r.DenseMeanMM, r.ThickestTenthMM = none, none, none
	r.Thin = &Refusal{Reason: why, LeastMM: r.LeastMM}
}
