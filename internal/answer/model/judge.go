package model

import (
	"math"

	"ripplewright/internal/matter/blend"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/work/design"
)

// spoonML is a spoonful for sweetness by volume, mL.
const spoonML = 15

// judge computes both phases and the tub at the serving temperature.
func (m *Model) judge(d design.Design, c *cooked, r *Result) {
	r.Dense.finish(c.dense, d.Dense.OverrunPercent, phase.Dense, c.bound, d.Serving.TemperatureC)
	r.Foam.finish(c.foam, d.Foam.OverrunPercent, phase.Foam, c.bound, d.Serving.TemperatureC)
	asWritten := [2]phase.Body{r.Dense.Body, r.Foam.Body}
	asWritten[0].Mix, asWritten[1].Mix = c.dense[0], c.foam[0]
	tub := blend.Fill(&asWritten[0], &asWritten[1], blend.Order{
		FillML:    float64(d.Tubs.Count) * d.Tubs.VolumeML * d.Tubs.FillPercent / 100,
		FoamShare: d.Blend.FoamVolumePercent / 100,
		Scale:     d.Batch.Basis == design.BasisTubs,
	})
	r.Dense.Portion, r.Foam.Portion = tub.Dense, tub.Foam
	b := &r.Blend
	b.Tub = tub
	b.TubsFilled = tub.Filled * float64(d.Tubs.Count)
	b.Contrast = blend.Compare(&r.Dense.Body, &r.Foam.Body, [2]phase.State{r.Dense.State, r.Foam.State}, tub.FoamVolume, RailLow, RailHigh)
	b.SweetnessPercent = tub.Mean(r.Dense.SweetnessPercent, r.Foam.SweetnessPercent)
	if tub.VolumeML > 0 {
		b.DensityGPerML = tub.MassG / tub.VolumeML
	}
	b.SweetnessPerSpoon = b.SweetnessPercent / 100 * b.DensityGPerML * spoonML
	b.freeze(r)
	b.Both.From, b.Both.To, b.Both.OK = blend.Both(&r.Dense.Body, &r.Foam.Body, RailLow, RailHigh)
	for i := range r.Lines {
		l := &r.Lines[i]
		l.Grams = l.Written * r.phaseOf(l.Part).Portion.Factor
	}
	r.Syrup = c.syrup.result(tub.Foam.Factor, d)
}

// freeze sets the tub's ice. The volumes without air are those as filled: both
// phases swell alike to within a per cent.
func (b *Blend) freeze(r *Result) {
	var solid, iceML float64
	for _, p := range [...]*Phase{&r.Dense, &r.Foam} {
		if p.Portion.MassG == 0 {
			continue
		}
		v := p.Portion.VolumeML / (1 + p.Body.Overrun)
		solid += v
		iceML += v * p.State.IceVolume
	}
	b.IceMass = r.TubMean(func(p *Phase) float64 { return p.State.IceMass })
	b.WaterFrozen = 100 * b.IceMass / r.TubMean(func(p *Phase) float64 { return p.Percent(mix.Water) })
	b.IceVolume = iceML / solid
}

// phaseOf returns the phase that part p goes into.
func (r *Result) phaseOf(p design.Part) *Phase {
	if p == design.DensePart {
		return &r.Dense
	}
	return &r.Foam
}

// finish computes everything of a phase but its portion.
func (p *Phase) finish(m readings, overrunPercent float64, role phase.Role, bound solution.Bound, t float64) {
	p.WrittenG = m[0].Total()
	overrun := overrunPercent / 100
	per100 := func(x mix.Mix, b solution.Bound) phase.Body {
		if total := x.Total(); total > 0 {
			x = x.Times(100 / total)
		}
		return phase.Prepare(x, overrun, role, b)
	}
	p.Body = per100(m[0], bound)
	p.Soft = per100(m[1], wider(bound, solution.MostBound, math.Max))
	p.Firm = per100(m[2], wider(bound, solution.LeastBound, math.Min))
	p.State = p.Body.At(t)
	soft, firm := p.Soft.At(t), p.Firm.At(t)
	p.FreezingPoint = span(p.Body.FreezingPointC, p.Soft.FreezingPointC, p.Firm.FreezingPointC)
	p.WaterFrozen = span(p.State.WaterFrozen, soft.WaterFrozen, firm.WaterFrozen)
	p.Yield = span(p.State.YieldKPa, p.Soft.YieldThin(t), firm.YieldKPa)
	p.Yield.Low /= phase.Scatter
	p.Yield.High *= phase.Scatter
	p.Word = phase.WordFor(p.State.YieldKPa)
	p.SweetnessPercent = phase.SweetnessPercent(p.Body.Mix)
	p.SweetnessMelted = phase.MeltedSweetness(p.Body.Mix)
	p.SweetnessPerSpoon = p.SweetnessPercent / 100 * p.Body.Density() * spoonML
	p.Scoop.From, p.Scoop.To, p.Scoop.OK = p.Body.ScoopRange(RailLow, RailHigh)
	p.Swelling = p.Body.Swelling(t, 1)
}

// span orders the readings. The firm one need not be the hardest: where there
// is no ice, what binds water into sugar's place only thins the syrup.
func span(value, a, b float64) Span {
	return Span{value, min(value, a, b), max(value, a, b)}
}

func wider(a, b solution.Bound, pick func(x, y float64) float64) solution.Bound {
	return solution.Bound{Protein: pick(a.Protein, b.Protein), Fibre: pick(a.Fibre, b.Fibre)}
}

// boilingBand is what published tables of boiling syrup disagree by near 118
// °C, percentage points of solids: Browne 1912 reads 2.7 lower than Starzak &
// Peacock 1997, and a small pan measured 3 to 4 higher (J. Cookery Sci. Japan
// 43(3)).
const boilingBand = 2.5

func (s *syrup) result(k float64, d design.Design) Syrup {
	total := s.mix.Total()
	if total == 0 {
		return Syrup{SolidsPercent: math.NaN(), BoilingPointC: math.NaN()}
	}
	r := Syrup{
		Present:       true,
		SolidsPercent: 100 * s.mix.Solids() / total,
		MassG:         k * total,
		WaterOffG:     k * s.off,
		BoilingPointC: s.boiling,
		Reached:       s.reached,
		Weighed:       d.Foam.Syrup.WeighedG > 0,
	}
	band := boilingBand
	if r.Weighed || !s.reached {
		band = 0
	}
	r.SolidsBand = [2]float64{r.SolidsPercent - band, math.Min(100, r.SolidsPercent+band)}
	return r
}

// slopes fills in what a gram more of each line does.
func (r *Result) slopes(d design.Design, c *cooked) {
	for i := range r.Lines {
		l := &r.Lines[i]
		p := r.phaseOf(l.Part)
		if p.WrittenG == 0 {
			continue
		}
		// The body is for 100 g, so a gram of the batch is this much of it.
		dir := c.direction(d, l.Part, c.perG[i]).Times(100 / p.WrittenG)
		l.Slopes = p.Body.Along(dir, d.Serving.TemperatureC, c.bound)
		l.TubSweet = l.Slopes.Sweetness * massShare(&r.Blend, l.Part)
	}
}

func massShare(b *Blend, p design.Part) float64 {
	if p == design.DensePart {
		return 1 - b.FoamMass
	}
	return b.FoamMass
}

// direction returns how the finished phase, as written, changes with one gram
// of a line whose mix is g: less the water its share of the stove takes, or
// with the water its sugar keeps in the pan.
func (c *cooked) direction(d design.Design, p design.Part, g mix.Mix) mix.Mix {
	switch p {
	case design.DensePart:
		w := g.Mass[mix.Water] - d.Dense.StoveLossPercent/100*g.Total()
		if c.denseShort {
			w = 0
		}
		return g.WithWater(w)
	case design.SyrupPart:
		g = inverted(g, d.Foam.Syrup.InvertedPercent)
		switch {
		case c.syrup.weighed:
			return g.WithWater(g.Mass[mix.Water] - g.Total())
		case c.syrup.perMol > 0:
			return g.WithWater(c.syrup.perMol * solution.SoluteMoles(g))
		}
	}
	return g
}
