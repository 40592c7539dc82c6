package model

import (
	"math"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/blend"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/work/design"
)

// spoonML is a spoonful for sweetness by volume, mL.
const spoonML = 15

// settled is both phases at the serving temperature.
type settled struct{ dense, foam Phase }

// settle computes everything of both phases but their portions and scoop ranges.
func settle(d design.Design, c *cooked, taught Taught) settled {
	at := d.Serving.TemperatureC
	return settled{
		dense: phaseAt(c.dense.mix, d.Dense.OverrunPercent, phase.Dense, c.bound, at, taught),
		foam:  phaseAt(c.foam, d.Foam.OverrunPercent, phase.Foam, c.bound, at, taught),
	}
}

// scoop finds where each phase eats well.
func (s *settled) scoop() {
	for _, p := range [...]*Phase{&s.dense, &s.foam} {
		p.Scoop.FromC, p.Scoop.ToC, p.Scoop.OK = p.Body.ScoopRangeC(RailLow, RailHigh)
	}
}

// phaseAt computes the phase of mix m at t °C.
func phaseAt(m readings, overrunPercent float64, role phase.Role, bound solution.Bound, t float64, taught Taught) Phase {
	taught = taught.of(role)
	p := Phase{WrittenG: m[0].TotalG(), OverrunPercent: overrunPercent}
	overrun := overrunPercent / 100
	per100 := func(x mix.Mix, b solution.Bound) phase.Body {
		if total := x.TotalG(); total > 0 {
			x = x.Times(100 / total)
		}
		body := phase.Prepare(x, overrun, role, b)
		body.HarderFactor = taught.HarderFactor
		return body
	}
	p.Body = per100(m[0], bound)
	p.Soft = per100(m[1], wider(bound, solution.MostBound, math.Max))
	p.Firm = per100(m[2], wider(bound, solution.LeastBound, math.Min))
	p.State = p.Body.At(t)
	soft, firm := p.Soft.At(t), p.Firm.At(t)
	p.FreezingPointC = span(p.Body.FreezingPointC, p.Soft.FreezingPointC, p.Firm.FreezingPointC)
	p.FrozenFraction = span(p.State.FrozenFraction, soft.FrozenFraction, firm.FrozenFraction)
	p.YieldKPa = span(p.State.YieldKPa, p.Soft.YieldThinKPa(t), firm.YieldKPa)
	p.scatter = taught.scatter()
	p.YieldKPa.Low /= p.scatter
	p.YieldKPa.High *= p.scatter
	p.Word = p.Body.Word(&p.State)
	if !p.Felt() {
		p.YieldKPa = Span{math.NaN(), math.NaN(), math.NaN()}
	}
	p.SweetnessPercent = phase.SweetnessPercent(p.Body.Mix)
	p.SweetnessMeltedPercent = phase.MeltedSweetnessPercent(p.Body.Mix)
	p.SweetnessGPerSpoon = p.SweetnessPercent / 100 * p.Body.GPerML() * spoonML
	p.SwellingRatio = p.Body.SwellingRatio(t, 1)
	return p
}

// Felt reports whether the hardness law knows how the phase meets a spoon.
func (p *Phase) Felt() bool { return p.Word != phase.NoWord }

// with returns p with what becomes of it.
func (p Phase) with(portion blend.Portion, tally ingredient.Tally, waterOff float64) Phase {
	p.Portion, p.Tally, p.WaterOffG = portion, tally, waterOff
	return p
}

// span orders the readings. The firm one need not be the hardest: where there
// is no ice, what binds water into sugar's place only thins the syrup.
func span(value, a, b float64) Span {
	return Span{value, min(value, a, b), max(value, a, b)}
}

func wider(a, b solution.Bound, pick func(x, y float64) float64) solution.Bound {
	return solution.Bound{ProteinGPerG: pick(a.ProteinGPerG, b.ProteinGPerG), FibreGPerG: pick(a.FibreGPerG, b.FibreGPerG)}
}
