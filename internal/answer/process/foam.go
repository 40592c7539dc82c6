package process

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/matter/solution"
)

// What the bowl and the air take while the foam is whisked: 15 W/(m² K) over
// 0.06 m² of foam (estimate, worked beside the mixing table), and 60 % of the
// bowl in contact, as in that table. The band takes half and one and a half of
// the one, 40 and 80 % of the other.
const (
	whiskLoss    = 15 * 0.06
	bowlTouches  = 0.6
	touchesLeast = 0.4
	touchesMost  = 0.8
	lossSpread   = 0.5
	madeUp       = 8  // g of white from 1 g of dried: from memory
	swellsIn     = 4  // g of water to 1 g of dried white under which it does not swell: from memory
	whiskedMin   = 60 // how long the course is followed
)

// Sugared whites are judged by data of sugar solutions; from this share of
// sugars in the whites' own water on, % (at aw 0.95 and above nothing as sugary
// was read).
const above60 = 60.0

// EggFigureC is the published figure for egg dishes by thermometer, 160 °F: US
// consumer advice (read in secondary pages). HoldFirstC and HoldFirstMin are
// what kitchens heat whites and sugar to over water, and HoldFirstC is where the
// sugared data give 5 tenfold reductions in about two minutes (Mattick et al.
// 2001, table 7).
const (
	EggFigureC   = 71
	HoldFirstC   = 74
	HoldFirstMin = 2
)

// Whites is what the foam is beaten from.
type Whites uint8

// The kinds of white.
const (
	FreshWhite Whites = iota
	CartonWhite
	DriedWhite
	NoWhite
	FreshYolk // no white, but yolk
)

// Foam is the hot mix and what comes of it.
type Foam struct {
	Present bool
	Whites  Whites
	Hot     bool // a boiled syrup goes in

	AdiabaticC                 float64 // without bowl or loss
	WithBowlC                  float64
	PeakC, PeakLowC, PeakHighC float64 // of each bowl
	Course                     Course  // of PeakC
	Read                       bool    // the peak was read in the bowl, not computed
	hot                        Hot     // with bowl and loss
	pourMin                    float64
	Above60Minutes             float64
	LogLow, LogHigh            float64 // tenfold reductions of Salmonella by the sugared sets, over the band
	ReachesC                   float64 // EggFigureC
	Reaches                    bool    // even PeakLowC does
	StopMinutes                float64 // until the foam is down to WhiskUntilC; NaN if it is not in an hour
	SugarGPerG                 float64 // g sugar to g of liquid white
	AskedOverrunPercent        float64 // %
	Air                        Air     // what such a foam comes to
	WhiteG                     float64 // of liquid white, dried white made up
	Bowls                      int     // in which this tool beats so much white
	DriedWaterG                float64 // g of water in the bowl to 1 g of dried white; NaN without any
	Acid                       bool    // in the bowl
	Cream                      bool    // no whites: a base that is whipped cold
	ColdShrinkRatio            float64 // volume at 4 °C over that at WhiskUntilC
}

func foamOf(r *model.Result, s *Syrup, p phaseFacts, pressure float64, k Kitchen) Foam {
	f := Foam{
		Present: true, Whites: whitesOf(p), Hot: s.Present && s.MassG > 0,
		AdiabaticC: math.NaN(), WithBowlC: math.NaN(), PeakC: math.NaN(), PeakLowC: math.NaN(), PeakHighC: math.NaN(),
		LogLow: math.NaN(), LogHigh: math.NaN(), StopMinutes: math.NaN(),
		ReachesC: EggFigureC, AskedOverrunPercent: 100 * r.Foam.Body.OverrunFraction, Acid: p.g[kind.Acid]+p.g[kind.Sour] > 0,
		ColdShrinkRatio: ShrinkRatio(WhiskUntilC, ShrinkToC, 0.9, pressure),
	}
	f.WhiteG = p.g[kind.White] + p.g[kind.WhitePast] + madeUp*p.g[kind.WhiteDry]
	if f.WhiteG > 0 {
		f.SugarGPerG = p.sugars / f.WhiteG
	}
	f.Bowls, f.DriedWaterG = 1, math.NaN()
	if f.WhiteG > MostWhiteG && k.Tool != StandMixer {
		f.Bowls = int(math.Ceil(f.WhiteG / MostWhiteG))
	}
	if f.Whites == DriedWhite {
		f.DriedWaterG = p.bowlWaterG / p.g[kind.WhiteDry]
	}
	f.Cream = f.Whites == NoWhite
	f.Air = f.expected(p, k)
	if !f.Hot || p.bowlG <= 0 {
		return f
	}
	at := s.TrueC
	if s.Weighed && !math.IsNaN(r.Syrup.BoilingPointC) {
		at = r.Syrup.BoilingPointC
	}
	share := 1 / float64(f.Bowls)
	hot := Hot{SyrupG: s.MassG * share, SyrupC: at, SolidsPercent: s.SolidsPercent, WhitesG: p.bowlG * share, WhitesC: k.WhitesC, WhitesJPerGK: p.bowlHeat, BowlC: k.RoomC, AirC: k.RoomC}
	f.AdiabaticC = hot.MixedC()
	bowl := k.BowlG * heatJPerGK[k.BowlIs]
	pour := func(touches, loss float64) Course {
		h := hot
		h.BowlJPerK, h.LossWPerK = touches*bowl, loss*whiskLoss
		if k.BowlReadC > 0 {
			return h.From(k.BowlReadC, whiskedMin)
		}
		c, _ := h.Poured(k.Pour.minutes(), whiskedMin)
		return c
	}
	hot.BowlJPerK = bowlTouches * bowl
	f.WithBowlC = hot.MixedC()
	f.Course = pour(bowlTouches, 1)
	f.hot, f.pourMin = hot, k.Pour.minutes()
	f.hot.LossWPerK = whiskLoss
	low, high := pour(touchesMost, 1+lossSpread), pour(touchesLeast, 1-lossSpread)
	f.PeakC, f.PeakLowC, f.PeakHighC, f.Read = f.Course.PeakC(), low.PeakC(), high.PeakC(), k.BowlReadC > 0
	f.Above60Minutes = f.Course.AboveMinutes(above60)
	f.LogLow = math.Min(Sugared87.LogReduction(low), Sugared82.LogReduction(low))
	f.LogHigh = math.Max(Sugared87.LogReduction(high), Sugared82.LogReduction(high))
	f.Reaches = f.PeakLowC >= EggFigureC
	f.StopMinutes = f.Course.BelowMinutes(WhiskUntilC)
	return f
}

// Heat returns what the pour brings, J above 0 °C, by syrup, whites and bowl, and
// what is in the foam in the end or went to the air: the same.
func (f *Foam) Heat() (inJ, outJ float64) {
	h := f.hot
	c, lost := h.Poured(f.pourMin, whiskedMin)
	syrup, whites := h.SyrupG*h.syrupHeat(), h.WhitesG*h.WhitesJPerGK
	inJ = syrup*h.SyrupC + whites*h.WhitesC + h.BowlJPerK*h.BowlC
	return inJ, (syrup+whites+h.BowlJPerK)*c.C[len(c.C)-1] + lost
}

func whitesOf(p phaseFacts) Whites {
	switch {
	case p.g[kind.White] > 0:
		return FreshWhite
	case p.g[kind.WhitePast] > 0:
		return CartonWhite
	case p.g[kind.WhiteDry] > 0:
		return DriedWhite
	case p.g[kind.Yolk] > 0:
		return FreshYolk
	}
	return NoWhite
}

// waterBoils returns where plain water boils at z m, °C.
func waterBoils(pressure float64) float64 { return solution.BoilingC(0, pressure) }
