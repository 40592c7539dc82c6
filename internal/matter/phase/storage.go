package phase

import (
	"math"

	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

// AboveGlassK returns how far t lies above the glass temperature of the liquid
// left at t, K. Below about 20 K the ribbon is brittle; ok is false where the
// phase has no sugar that the glass table knows.
func (b *Body) AboveGlassK(t float64) (k float64, ok bool) {
	tg, ok := solution.GlassC(b.Mix, b.water-b.IceG(t))
	return t - tg, ok
}

// SwellingRatio returns the volume of the phase at t over its volume as filled:
// ice takes up more room than water, sugars' solution and fat shrink, and air
// shrinks as an ideal gas when the film lets it (airFollows 1) or not at all
// (0).
func (b *Body) SwellingRatio(t, airFraction float64) float64 {
	ice := b.IceG(t)
	liquid := b.Mix.WithWater(b.water - ice)
	cold := solution.VolumeML(liquid, math.Max(t, -30)) + 1000*ice/water.IceKGPerM3(t)
	air := b.OverrunFraction * (1 + airFraction*((t+water.ZeroC)/(ReferenceC+water.ZeroC)-1))
	v := solution.VolumeML(b.Mix, ReferenceC)
	return (cold/v + air) / (1 + b.OverrunFraction)
}
