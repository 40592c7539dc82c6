package phase

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

// sandyRatio is g lactose per g water above which a frozen dairy phase risks
// turning sandy: one twelfth, a rule of the trade (common practice, one trade
// page). Saturation is no use as a warning: lactose is above it in every
// frozen dairy phase.
const sandyRatio = 1.0 / 12

// LactoseRatio returns g lactose per g water of the unfrozen mix, and whether
// that is above the trade's limit for sandiness.
func (b *Body) LactoseRatio() (ratio float64, sandy bool) {
	if b.water == 0 {
		return 0, false
	}
	ratio = b.Mix.Mass[mix.Lactose] / b.water
	return ratio, ratio > sandyRatio
}

// grainingPercent is the sugar in sugars and water above which an unfrozen
// syrup is supersaturated at 20 °C: 203.9 g sucrose per 100 g water, Mohos
// 2010, Confectionery and Chocolate Engineering, table A2.2.
const grainingPercent = 100 * 203.9 / (100 + 203.9)

// Graining returns the sugars' share of the unfrozen syrup, mass %, and whether
// sucrose alone exceeds its solubility at 20 °C, so that the foam may grain.
func (b *Body) Graining() (percent float64, grains bool) {
	if b.saccharides == 0 {
		return 0, false
	}
	percent = 100 * b.saccharides / (b.saccharides + b.water)
	suc := b.Mix.Mass[mix.Sucrose]
	return percent, 100*suc/(suc+b.water) > grainingPercent
}

// AboveGlass returns how far t lies above the glass temperature of the liquid
// left at t, K. Below about 20 K the ribbon is brittle; ok is false where the
// phase has no sugar that the glass table knows.
func (b *Body) AboveGlass(t float64) (k float64, ok bool) {
	tg, ok := solution.GlassTemperature(b.Mix, b.water-b.Ice(t))
	return t - tg, ok
}

// Swelling returns the volume of the phase at t over its volume as filled:
// ice takes up more room than water, sugars' solution and fat shrink, and air
// shrinks as an ideal gas when the film lets it (airFollows 1) or not at all
// (0).
func (b *Body) Swelling(t, airFollows float64) float64 {
	ice := b.Ice(t)
	liquid := b.Mix.WithWater(b.water - ice)
	cold := solution.Volume(liquid, math.Max(t, -30)) + 1000*ice/water.IceDensity(t)
	air := b.Overrun * (1 + airFollows*((t+water.ZeroC)/(ReferenceC+water.ZeroC)-1))
	v := solution.Volume(b.Mix, ReferenceC)
	return (cold/v + air) / (1 + b.Overrun)
}
