package learn

import (
	"cmp"
	"math"
	"slices"

	"ripplewright/internal/work/batch"
)

// Question is one measurement that a maker might take of the next batch, and what it
// would leave of the forecast's bands, each from 8 in 10 to 8 in 10, of 1: 0.7 is a
// band as wide as 70 % of what it is now.
type Question struct {
	Path                                      string // batch's entry
	MinutesLeftFraction, HardnessLeftFraction float64
}

// asked are what can be measured with each entry: one that needs others brings these.
var asked = []struct {
	path string
	put  func(b *batch.Batch, f *batch.Forecast)
}{
	{"syrup.water_boils_c", func(b *batch.Batch, f *batch.Forecast) { b.Syrup.WaterBoilsC = f.WaterBoilsC }},
	{"syrup.weighed_g", func(b *batch.Batch, f *batch.Forecast) {
		b.Syrup.WeighedG, b.Syrup.PanG, b.Syrup.ReadingC = f.SyrupG, batch.Of(0), batch.Of(118)
	}},
	{"custard.weighed_g", func(b *batch.Batch, f *batch.Forecast) { b.Custard.WeighedG = f.CustardG }},
	{"custard.cup_g", func(b *batch.Batch, f *batch.Forecast) { b.Custard.CupG = f.CustardCupG }},
	{"foam.cup_g", func(b *batch.Batch, f *batch.Forecast) { b.Foam.CupG = f.FoamCupG }},
	{"freezer_c", func(b *batch.Batch, f *batch.Forecast) { b.FreezerC = f.FreezerC }},
	{"scooped.core_c", func(b *batch.Batch, f *batch.Forecast) { b.Scooped.CoreC = f.FreezerC }},
	{"scooped.after_min", func(b *batch.Batch, f *batch.Forecast) { b.Scooped.AfterMinutes = f.ScoopedMinutes }},
	{"scooped.ring_c", func(b *batch.Batch, f *batch.Forecast) {
		if f.ScoopedMinutes.Known {
			b.Scooped.RingC, f.ScoopedKPa = batch.Of(-12), batch.Of(6)
		}
	}},
	{"ate.hardness", func(b *batch.Batch, f *batch.Forecast) {
		if f.HardnessKPa.Known {
			b.Ate.Hardness = wordOf(f.HardnessKPa.Value)
		}
	}},
}

// Slopes is by how much the logarithms of the minutes out and of the custard's
// hardness move with each factor.
type Slopes struct{ Minutes, Hardness [NumFactors]float64 }

// SlopesOf reads them from a forecast of the design. Air softens by the power 1.5 of
// the volume it makes (package phase's law); what stove and syrup do is left out: it is
// little beside these.
func SlopesOf(f *batch.Forecast) Slopes {
	var s Slopes
	s.Hardness[Hardness] = 1
	if o := f.CustardOverrun; o.Known && o.Value > 0 {
		s.Hardness[CustardAir] = -1.5 * o.Value / (100 + o.Value)
	}
	m, twiceHard, ok := both(f.ScoopedMinutes, f.ScoopedTwiceHard)
	if !ok || !(m > 0 && twiceHard > 0) {
		return s
	}
	harder := math.Log(twiceHard/m) / math.Ln2
	s.Minutes[Counter] = -1
	for of, slope := range s.Hardness {
		s.Minutes[of] += harder * slope
	}
	if w := f.ScoopedFreezerWarmer; w.Known && w.Value > 0 {
		s.Minutes[FreezerK] = math.Log(w.Value / m)
	}
	return s
}

// sd returns the spread of what has those slopes, by what is believed, and with what
// differs from one batch to the next.
func (p *Posterior) sd(slopes [NumFactors]float64, day float64) float64 {
	v := day * day
	for f, a := range slopes {
		for g, b := range slopes {
			v += a * b * p.Cov[f][g]
		}
	}
	return math.Sqrt(v)
}

// Ask returns which measurements of the next batch would narrow its forecast f, the one
// that narrows minutes and hardness together most first.
func (p *Posterior) Ask(f *batch.Forecast) []Question {
	s := SlopesOf(f)
	minutes, hardness := p.sd(s.Minutes, minutesDay), p.sd(s.Hardness, 0)
	var out []Question
	for _, a := range asked {
		var b batch.Batch
		b.Forecast = *f
		a.put(&b, &b.Forecast)
		next := *p
		for _, o := range Observe(0, &b) {
			if !p.Off[o.Of] {
				next.take(&o)
			}
		}
		q := Question{Path: a.path, MinutesLeftFraction: 1, HardnessLeftFraction: 1}
		if s.Minutes != [NumFactors]float64{} {
			q.MinutesLeftFraction = next.sd(s.Minutes, minutesDay) / minutes
		}
		q.HardnessLeftFraction = next.sd(s.Hardness, 0) / hardness
		if q.left() < 0.999 {
			out = append(out, q)
		}
	}
	slices.SortStableFunc(out, func(x, y Question) int { return cmp.Compare(x.left(), y.left()) })
	return out
}

// left is what both bands together have left.
func (q Question) left() float64 { return q.MinutesLeftFraction * q.HardnessLeftFraction }

// Minutes returns the forecast of the minutes out: f's own moved by what is learnt, and
// where 8 in 10 lie. NaN where f knows none.
func (p *Posterior) Minutes(f *batch.Forecast) (low, value, high float64) {
	if !f.ScoopedMinutes.Known {
		return math.NaN(), math.NaN(), math.NaN()
	}
	s := SlopesOf(f)
	return p.around(f.ScoopedMinutes.Value, s.Minutes, minutesDay)
}

// HardnessKPa is Minutes of the custard's hardness as eaten.
func (p *Posterior) HardnessKPa(f *batch.Forecast) (low, value, high float64) {
	if !f.HardnessKPa.Known {
		return math.NaN(), math.NaN(), math.NaN()
	}
	s := SlopesOf(f)
	return p.around(f.HardnessKPa.Value, s.Hardness, 0)
}

func (p *Posterior) around(v float64, slopes [NumFactors]float64, day float64) (low, value, high float64) {
	ln := math.Log(v)
	for f, h := range slopes {
		ln += h * p.Factors[f].Mean
	}
	sd := p.sd(slopes, day)
	return math.Exp(ln - eightIn10*sd), math.Exp(ln), math.Exp(ln + eightIn10*sd)
}
