package model

import (
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
	"ripplewright/internal/work/design"
)

// cooked is the two phases finished, as written, with what the sensitivities
// need to know of the cooking.
type cooked struct {
	dense, foam readings
	denseOff    float64 // g water
	denseShort  bool    // the stove loss asks for more water than there is
	syrup       syrup
	bound       solution.Bound
	perG        []mix.Mix // by line, see batch
}

// cook drives the water off both phases and beats the syrup into the whites.
func cook(d design.Design, b *batch, r *Result) *cooked {
	c := &cooked{bound: solution.Bound{Protein: d.Model.BoundWaterProtein, Fibre: d.Model.BoundWaterFibre}}
	c.perG = b.perG
	c.dense = b.mixes[design.DensePart]
	for i := range c.dense {
		off := d.Dense.StoveLossPercent / 100 * c.dense[i].Total()
		have := c.dense[i].Mass[mix.Water]
		if off > have {
			off, c.denseShort = have, true
		}
		c.dense[i].Mass[mix.Water] = have - off
		if i == 0 {
			c.denseOff = off
		}
	}
	c.foam = b.mixes[design.FoamPart]
	for i := range c.foam {
		s := boil(b.mixes[design.SyrupPart][i], d)
		c.foam[i] = c.foam[i].Plus(s.mix)
		if i == 0 {
			c.syrup = s
		}
	}
	r.Dense.Tally, r.Dense.WaterOff = b.tally[design.DensePart], c.denseOff
	r.Foam.Tally = b.tally[design.FoamPart].Plus(b.tally[design.SyrupPart], 1)
	r.Foam.WaterOff = c.syrup.off
	return c
}

// syrup is a boiled syrup, as written.
type syrup struct {
	mix     mix.Mix
	raw     mix.Mix // before boiling, sucrose already inverted
	off     float64 // g water
	perMol  float64 // g water left per mol of solute; 0 where the boil did not decide
	boiling float64 // °C
	reached bool
	weighed bool
	short   bool // weighed lighter than its own solids
}

// boil returns the syrup of m cooked as d says: to the thermometer, or to the
// weight of the pan where that was taken.
func boil(m mix.Mix, d design.Design) syrup {
	s := syrup{raw: inverted(m, d.Foam.Syrup.InvertedPercent)}
	if m.Total() == 0 {
		return s
	}
	pressure := water.AirPressure(d.Kitchen.AltitudeM)
	have := s.raw.Mass[mix.Water]
	left := have
	switch weighed := d.Foam.Syrup.WeighedG; {
	case weighed > 0:
		left = weighed - (s.raw.Total() - have)
		s.reached, s.weighed = true, true
		if left < 0 {
			left, s.short = 0, true
		}
	default:
		want := solution.WaterAtBoil(s.raw, d.Foam.Syrup.CookTemperatureC, pressure)
		if want <= have {
			left, s.reached = want, true
			if n := solution.SoluteMoles(s.raw); n > 0 {
				s.perMol = want / n
			}
		}
	}
	s.mix = s.raw.WithWater(left)
	s.off = have - left
	s.boiling = solution.BoilingPoint(solution.FractionOf(s.mix), pressure)
	return s
}

// Masses for inversion, g/mol: sucrose takes up one water and becomes glucose
// and fructose.
const (
	sucroseMass = 342.296
	hexoseMass  = 180.155
)

// inverted returns m with percent of its sucrose split. It is linear in m, and
// may leave a line without water short of it; the whole syrup has enough.
func inverted(m mix.Mix, percent float64) mix.Mix {
	mol := m.Mass[mix.Sucrose] * percent / 100 / sucroseMass
	if mol == 0 {
		return m
	}
	m.Mass[mix.Sucrose] -= mol * sucroseMass
	m.Mass[mix.Glucose] += mol * hexoseMass
	m.Mass[mix.Fructose] += mol * hexoseMass
	m.Mass[mix.Water] -= mol * (2*hexoseMass - sucroseMass)
	return m
}
