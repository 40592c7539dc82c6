package phase

import (
	"math"

	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

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
