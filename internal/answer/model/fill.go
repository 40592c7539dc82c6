package model

import (
	"math"

	"ripplewright/internal/matter/blend"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// filled is what goes into the tubs.
type filled struct {
	tub   blend.Tub
	count float64 // tubs in the order
}

// fill scales the phases to the tubs, or finds how many tubs the written
// weights fill.
func fill(d design.Design, c *cooked, s *settled) filled {
	return fillBodies(d, c, s.dense.Body, s.foam.Body)
}

func fillBodies(d design.Design, c *cooked, dense, foam phase.Body) filled {
	dense.Mix, foam.Mix = c.dense.mix[0], c.foam[0] // as written, not per 100 g
	return filled{count: float64(d.Tubs.Count), tub: blend.Fill(&dense, &foam, blend.Order{
		FillML:       float64(d.Tubs.Count) * d.Tubs.VolumeML * d.Tubs.FillPercent / 100,
		FoamFraction: d.Blend.FoamVolumePercent / 100,
		Scale:        d.Batch.Basis == design.BasisTubs,
	})}
}

// blend returns the tub's figures.
func (f *filled) blend(s *settled) Blend {
	b := f.mixed(s)
	b.compare(s)
	return b
}

// mixed is blend without what compares the phases, but for their sweetness.
func (f *filled) mixed(s *settled) Blend {
	b := Blend{Tub: f.tub, TubsFilled: f.tub.FilledFraction * f.count}
	b.SweetnessPercent = f.tub.Mean(s.dense.SweetnessPercent, s.foam.SweetnessPercent)
	if f.tub.VolumeML > 0 {
		b.DensityGPerML = f.tub.MassG / f.tub.VolumeML
	}
	b.SweetnessGPerSpoon = b.SweetnessPercent / 100 * b.DensityGPerML * spoonML
	b.Contrast.SweetnessPercent = s.foam.SweetnessPercent - s.dense.SweetnessPercent
	b.freeze(s)
	return b
}

// compare sets how the phases differ and where they eat well together; of a tub
// of one phase, where that does.
func (b *Blend) compare(s *settled) {
	if b.MassG > 0 && (b.Dense.MassG == 0 || b.Foam.MassG == 0) {
		p := &s.dense
		if b.Dense.MassG == 0 {
			p = &s.foam
		}
		b.Contrast = blend.None
		b.Both, b.YieldKPa = p.Scoop, p.YieldKPa.Value
		return
	}
	b.Contrast = blend.Compare(&s.dense.Body, &s.foam.Body, [2]phase.State{s.dense.State, s.foam.State}, b.FoamVolumeFraction, RailLow, RailHigh)
	if !s.dense.Felt() || !s.foam.Felt() {
		b.HardnessRatio, b.YieldKPa, b.ScoopsK, b.ScoopsAtLeast = math.NaN(), math.NaN(), math.NaN(), false
	}
	b.Both.FromC, b.Both.ToC, b.Both.OK = blend.BothC(&s.dense.Body, &s.foam.Body, RailLow, RailHigh)
}

// freeze sets the tub's ice. The volumes without air are those as filled: both
// phases swell alike to within a per cent.
//
//	w_ice = Σ m w / Σ m,  frozen = Σ m w / Σ m w_water,  φ = Σ vφ / Σ v,  v = V/(1 + overrun)
func (b *Blend) freeze(s *settled) {
	var ice, water, solid, iceML float64
	for _, x := range [...]struct {
		p  *Phase
		in blend.Portion
	}{{&s.dense, b.Dense}, {&s.foam, b.Foam}} {
		ice += x.in.MassG * x.p.State.IceMassFraction
		water += x.in.MassG * x.p.Percent(mix.Water) / 100
		v := x.in.VolumeML / (1 + x.p.Body.OverrunFraction)
		solid += v
		iceML += v * x.p.State.IceVolumeFraction
	}
	b.IceMassFraction = ice / b.MassG
	b.FrozenFraction = ice / water
	b.IceVolumeFraction = iceML / solid
}

// portioned returns the lines with what is made of them, what of that goes
// into the tubs, and what a gram more does.
func portioned(d design.Design, w *weighed, c *cooked, s *settled, f *filled) []BatchLine {
	lines := w.lines
	for i := range lines {
		l := &lines[i]
		p, portion, share := &s.foam, f.tub.Foam, f.tub.FoamMassFraction
		if l.Part == design.DensePart {
			p, portion, share = &s.dense, f.tub.Dense, 1-f.tub.FoamMassFraction
		}
		l.Grams = l.WrittenG * portion.Factor
		l.InTubsG = l.Grams * portion.UsedFraction
		if p.WrittenG > 0 {
			l.Slopes = p.Body.Along(c.direction(d, l.Part, w.perG[i]).Times(100/p.WrittenG), d.Serving.TemperatureC, c.bound)
			l.TubSweetPercentPerG = l.Slopes.SweetnessPercent * share
		}
	}
	return lines
}

// direction returns how the finished phase, as written, changes with one gram
// of a line whose mix is g: less the water its share of the stove takes, or
// with the water its sugar keeps in the pan.
func (c *cooked) direction(d design.Design, p design.Part, g mix.Mix) mix.Mix {
	switch p {
	case design.DensePart:
		w := g.Grams[mix.Water] - d.Dense.StoveLossPercent/100*g.TotalG()
		if c.dense.short {
			w = 0
		}
		return g.WithWater(w)
	case design.SyrupPart:
		return c.syrup.direction(g)
	}
	return g
}
