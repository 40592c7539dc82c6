package model

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
	"ripplewright/internal/work/design"
)

// BoilingBand is what published tables of boiling syrup disagree by from 114 °C
// on, percentage points of solids: Browne 1912 reads up to 2.9 lower than
// Starzak & Peacock 1997, and small pans measured 2.6 higher at 120 °C (J.
// Cookery Sci. Japan 43(3)).
const BoilingBand = 3.0

// scaleSlack is how much heavier than what went in a pan of syrup may be found
// before the weighing is refused: a kitchen scale's step and a drop of water
// (common practice, no source).
const scaleSlack = 1.005

// syrup is a boiled syrup, as written.
type syrup struct {
	mix        mix.Mix
	inverted   float64 // % of the sucrose split, as far as there is water for it
	off        float64 // g water
	alcoholOff float64 // g
	perMol     float64 // g water left per mol of solute; 0 where the boil did not decide
	boiling    float64 // °C; NaN of dry sugar and beyond the boiling model
	reached    bool
	weighed    bool    // the weight of the pan decided
	short      bool    // weighed lighter than its own solids
	excess     float64 // g that the pan weighs more than what went in: the weight was not taken
}

// tables are the points of solids by which the readings of a syrup differ: the soft one
// keeps less water and the firm one more, by what published tables disagree.
var tables = [3]float64{0, BoilingBand, -BoilingBand}

// boil returns the readings of a syrup cooked as d says: to the thermometer, or
// to the weight of the pan where that was taken. Where the thermometer
// decides, each has so many points more of solids than it says.
func boil(m readings, d design.Design, points [3]float64) [3]syrup {
	var out [3]syrup
	for i, points := range points {
		out[i] = boilOne(m[i], d)
		if s := &out[i]; points != 0 && s.reached && !s.weighed {
			s.thicken(points)
		}
	}
	return out
}

func boilOne(m mix.Mix, d design.Design) syrup {
	if m.TotalG() == 0 {
		return syrup{boiling: math.NaN()}
	}
	s := syrup{inverted: possibleInversion(m, d.Foam.Syrup.InvertedPercent)}
	s.mix = inverted(m, s.inverted)
	pressure := water.AirPa(d.Kitchen.AltitudeM)
	have := s.mix.Grams[mix.Water]
	left := have
	weighed := d.Foam.Syrup.WeighedG
	if total := m.TotalG(); weighed > total*scaleSlack {
		s.excess, weighed = weighed-total, 0
	}
	if weighed > 0 {
		left = math.Min(have, weighed-(s.mix.TotalG()-have))
		s.reached, s.weighed = true, true
		if left < 0 {
			left, s.short = 0, true
		}
	} else if want := solution.WaterAtBoilG(s.mix, d.Foam.Syrup.CookTemperatureC, pressure); want <= have {
		left, s.reached = want, true
		if n := solution.SoluteMol(s.mix); n > 0 {
			s.perMol = want / n
		}
	}
	s.mix = s.mix.WithWater(left)
	s.off = have - left
	s.boiling = math.NaN()
	if left > 0 {
		if b := solution.BoilingC(solution.SoluteFraction(s.mix), pressure); b < solution.Hot[1] {
			s.boiling = b
		}
	}
	return s
}

// thicken moves the syrup's solids by so many percentage points.
//
//	s = dry/(dry + water) + points/100,  water = dry (1 − s)/s
func (s *syrup) thicken(points float64) {
	water := s.mix.Grams[mix.Water]
	dry := s.mix.TotalG() - water
	if dry <= 0 {
		return
	}
	solids := math.Min(1, dry/(dry+water)+points/100)
	left := math.Min(water+s.off, dry*(1-solids)/solids)
	s.mix, s.off = s.mix.WithWater(left), s.off+water-left
}

// result is the syrup of the batch as made, k times what is written; where the thermometer
// decided, its solids are good to so many points either way.
func (s *syrup) result(k, points float64) Syrup {
	total := s.mix.TotalG()
	if total == 0 {
		return Syrup{SolidsPercent: math.NaN(), BoilingPointC: math.NaN()}
	}
	r := Syrup{
		Present:       true,
		SolidsPercent: 100 * s.mix.SolidsG() / total,
		MassG:         k * total,
		WaterOffG:     k * s.off,
		AlcoholOffG:   k * s.alcoholOff,
		BoilingPointC: s.boiling,
		Reached:       s.reached,
		Weighed:       s.weighed,
	}
	band := points
	if s.weighed || !s.reached {
		band = 0
	}
	r.SolidsBandPercent = [2]float64{math.Max(0, r.SolidsPercent-band), math.Min(100, r.SolidsPercent+band)}
	return r
}

// Masses for inversion, g/mol: sucrose takes up one water and becomes glucose
// and fructose.
const (
	sucroseMass = 342.296
	hexoseMass  = 180.155
	waterTaken  = 2*hexoseMass - sucroseMass
)

// possibleInversion returns the percent of m's sucrose that splits when so
// much is asked for: each mol takes up one of water, so dry sugar does not.
//
//	C₁₂H₂₂O₁₁ + H₂O → C₆H₁₂O₆ (glucose) + C₆H₁₂O₆ (fructose)
func possibleInversion(m mix.Mix, percent float64) float64 {
	sucrose := m.Grams[mix.Sucrose]
	if sucrose == 0 {
		return percent
	}
	most := 100 * m.Grams[mix.Water] / waterTaken * sucroseMass / sucrose
	return math.Min(percent, most)
}

// inverted returns m with percent of its sucrose split. It is linear in m, and
// may leave a line without water short of it; the whole syrup has enough.
func inverted(m mix.Mix, percent float64) mix.Mix {
	mol := m.Grams[mix.Sucrose] * percent / 100 / sucroseMass
	m.Grams[mix.Sucrose] -= mol * sucroseMass
	m.Grams[mix.Glucose] += mol * hexoseMass
	m.Grams[mix.Fructose] += mol * hexoseMass
	m.Grams[mix.Water] -= mol * waterTaken
	return m
}

// direction returns how the boiled syrup changes with one gram of a line whose
// mix is g.
func (s *syrup) direction(g mix.Mix) mix.Mix {
	g = inverted(g, s.inverted)
	switch {
	case s.weighed:
		return g.WithWater(g.Grams[mix.Water] - g.TotalG())
	case s.perMol > 0:
		return g.WithWater(s.perMol * solution.SoluteMol(g))
	}
	return g
}
