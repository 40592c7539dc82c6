package process

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
	"ripplewright/internal/work/design"
)

// SeaLevel is the pressure at sea level, Pa: US Standard Atmosphere 1976.
const SeaLevel = 101325

// Syrup is the boil.
type Syrup struct {
	Present      bool
	ReadingC     float64 // what the maker's probe shows when it is done
	TrueC        float64 // what a right one shows
	ProbeOffsetK float64 // K that the maker's probe shows too much; 0 where it was never checked
	WaterBoilsC  float64 // plain water, at this altitude
	SeaC         float64 // the temperature at which the same syrup boils at sea level; NaN beyond the boiling model
	HereC        float64 // the temperature at which the syrup that TrueC makes at sea level boils here; likewise
	Stage        Stage

	SolidsPercent                       float64
	LowSolidsPercent, HighSolidsPercent float64
	MassG                               float64
	WaterLeftG, WaterOffG               float64
	AlcoholOffG                         float64
	Minutes                             Range // to drive the water off
	DepthMM                             float64
	Overfull                            bool // more than a third of the pan at the start
	InvertedPercent                     float64
	Reached, Weighed, Heavy             bool // Heavy: the pan weighs more than what went in
}

// Range is a figure with its band.
type Range struct{ Value, Low, High float64 }

// Stage is a confectioner's word for a boiled syrup.
type Stage uint8

// The stages, by the temperature at sea level. Soft, firm and hard ball: McGee
// 2004, On Food and Cooking, table of sugar syrups. Thread and crack: common
// practice, no source.
const (
	NoStage Stage = iota
	Thread
	SoftBall
	SoftToFirm // between what McGee's table calls soft and firm
	FirmBall
	HardBall
	HardCrack
)

var stageFrom = [...]struct {
	from, to float64
	stage    Stage
}{{106, 113, Thread}, {113, 116, SoftBall}, {116, 118, SoftToFirm}, {118, 121, FirmBall}, {121, 130, HardBall}, {130, 155, HardCrack}}

// StageAt returns the stage of a syrup that boils at sea °C at sea level, and
// between which temperatures it lies.
func StageAt(seaC float64) (s Stage, fromC, toC float64) {
	seaC = math.Round(10*seaC) / 10 // as a probe shows it
	for _, x := range stageFrom {
		if seaC >= x.from && seaC < x.to {
			return x.stage, x.from, x.to
		}
	}
	return NoStage, math.NaN(), math.NaN()
}

// SameSyrupC returns the temperature at which a sucrose syrup that boils at t °C
// under from Pa boils under to Pa: the sucrose x with T_b(x, from) = t has T_b(x, to)
// by the boiling model of package solution (Starzak & Peacock 1997).
//
// Check: 118 °C at sea level is 107.12 °C at 3000 m (testdata/tables/
// altitude.csv).
func SameSyrupC(t, fromPa, toPa float64) float64 {
	x := solution.BoilingFraction(t, fromPa)
	return solution.BoilingC(x, toPa)
}

// latentJPerG is the heat of vaporisation of water near 110 °C, J/g (steam
// tables, from memory); hotHeat is that of a syrup as it warms, J/(g K), of 70 %
// solids at 60 °C by the formula of heatOfSyrup.
const (
	latentJPerG = 2230
	hotHeat     = 2.9
)

// hotDensity is a boiled syrup's, g/mL: from memory.
const hotDensity = 1.40

// coldDensity is a syrup's before it boils, three parts of sugar to one of water, g/mL: from memory.
const coldDensity = 1.35

func syrupOf(d design.Design, r *model.Result, k Kitchen) Syrup {
	m := r.Syrup
	if !m.Present {
		return Syrup{}
	}
	p := water.AirPa(d.Kitchen.AltitudeM)
	s := Syrup{
		Present: true, TrueC: d.Foam.Syrup.CookTemperatureC,
		WaterBoilsC:   solution.BoilingC(0, p),
		SolidsPercent: m.SolidsPercent, LowSolidsPercent: m.SolidsBandPercent[0], HighSolidsPercent: m.SolidsBandPercent[1],
		MassG: m.MassG, WaterOffG: m.WaterOffG, AlcoholOffG: m.AlcoholOffG,
		WaterLeftG:      m.MassG * (1 - m.SolidsPercent/100),
		InvertedPercent: d.Foam.Syrup.InvertedPercent,
		Reached:         m.Reached, Weighed: m.Weighed,
		Heavy: d.Foam.Syrup.WeighedG > 0 && !m.Weighed,
	}
	if k.ProbeBoilsC > 0 {
		s.ProbeOffsetK = k.ProbeBoilsC - s.WaterBoilsC
	}
	s.ReadingC = s.TrueC + s.ProbeOffsetK
	at := s.TrueC
	if s.Weighed {
		at = m.BoilingPointC
	}
	s.SeaC, s.HereC = math.NaN(), SameSyrupC(s.TrueC, SeaLevel, p)
	if at < solution.Hot[1] && at > s.WaterBoilsC {
		if sea := SameSyrupC(at, p, SeaLevel); sea < solution.Hot[1] {
			s.SeaC = sea
		}
	}
	s.Stage, _, _ = StageAt(s.SeaC)
	s.Minutes = boilMinutes(m.MassG+m.WaterOffG, m.WaterOffG, at-k.RoomC, k)
	s.DepthMM = m.MassG / hotDensity / (math.Pi / 4 * k.PanMM * k.PanMM) * 1000
	s.Overfull = (m.MassG+m.WaterOffG)/coldDensity > syrupFull*k.holdsML()
	return s
}

// boilMinutes returns how long a flame takes to warm g grams by rise K and
// drive off so much water.
//
//	t = (m c ΔT + m_off L)/P
func boilMinutes(g, off, rise float64, k Kitchen) Range {
	joule := g*hotHeat*math.Max(0, rise) + off*latentJPerG
	value := joule / k.FlameW / 60
	return Range{value, value / k.flameSpread(), value * k.flameSpread()}
}

// FlameW returns the net heat, W, of a flame that took so many minutes for this
// syrup; NaN of none.
func (s *Syrup) FlameW(minutes float64, k Kitchen) float64 {
	if !s.Present || !(minutes > 0) {
		return math.NaN()
	}
	return FlameW(s.MassG+s.WaterOffG, s.WaterOffG, s.TrueC-k.RoomC, minutes)
}

// FlameW returns the net heat of a flame, W, from one timed boil: g grams
// warmed by rise K of which off grams of water left in so many minutes.
func FlameW(g, offG, riseK, minutes float64) float64 {
	return (g*hotHeat*riseK + offG*latentJPerG) / (minutes * 60)
}
