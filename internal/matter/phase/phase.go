// Package phase answers what one phase of the dessert is at a temperature: how
// much of its water is ice, how hard that makes it, how sweet it tastes, how
// much room it takes, how much heat it holds.
//
// A phase is a mix with air in it. Prepare folds what does not depend on
// temperature; Body.At then costs well under a microsecond and allocates
// nothing.
//
// Temperatures are °C, masses g, volumes mL; fractions are of 1.
package phase

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/num"
	"ripplewright/internal/matter/solution"
)

// Role is the part a phase plays, which decides the film floor of its hardness
// and the band in which it eats well.
type Role uint8

// The roles.
const (
	Dense Role = iota // cooked custard
	Foam              // whipped egg white with syrup
)

// String returns the role's plain name.
func (r Role) String() string { return [...]string{"custard", "foam"}[r] }

// ReferenceC is the temperature at which a mix and its aerated product are
// compared for overrun and at which the tub is filled: an aged mix's, 4 °C.
const ReferenceC = 4

// Body is a phase made ready for any temperature.
type Body struct {
	Mix     mix.Mix
	Overrun float64 // volume of air per volume of mix
	Role    Role

	FreezingPointC  float64 // NaN where nothing can freeze
	EndOfFreezingC  float64
	MixDensity      float64 // g/mL without air, unfrozen, at ReferenceC
	sorption        solution.Sorption
	water, heldLast float64 // g; heldLast is what stays liquid at the end of freezing
	solidVolume     float64 // mL of everything but water and ice
	saccharides     float64 // g
}

// Prepare returns the body of m with the given overrun (volume of air per
// volume of mix, 0 or more).
func Prepare(m mix.Mix, overrun float64, role Role, b solution.Bound) Body {
	s := solution.NewSorption(m, b)
	w := m.Mass[mix.Water]
	end := solution.EndOfFreezing(m)
	return Body{
		Mix: m, Overrun: overrun, Role: role,
		FreezingPointC: s.FreezingPoint(w),
		EndOfFreezingC: end,
		MixDensity:     solution.Density(m, ReferenceC),
		sorption:       s,
		water:          w,
		heldLast:       s.Held(end),
		solidVolume:    hardnessVolume(m),
		saccharides:    m.Saccharides(),
	}
}

// State is a phase at one temperature.
type State struct {
	T           float64
	Ice         float64 // g
	Liquid      float64 // g of liquid water, bound water included
	WaterFrozen float64 // of all water
	IceMass     float64 // of all mass
	IceVolume   float64 // of the volume without air
	SyrupSugar  float64 // mass % of sugars in sugars and liquid water
	Viscosity   float64 // Pa s of that syrup
	YieldKPa    float64 // see Yield
}

// Held returns the grams of liquid water at t, were there enough of it.
func (b *Body) held(t float64) float64 {
	if t <= b.EndOfFreezingC {
		return b.heldLast
	}
	return b.sorption.Held(t)
}

// BoundWater returns the grams of water that never freeze and dissolve nothing.
func (b *Body) BoundWater() float64 { return b.sorption.BoundWater }

// Ice returns the grams of ice at t.
func (b *Body) Ice(t float64) float64 {
	if !(t < b.FreezingPointC) { // which is 0 °C at most, or NaN
		return 0
	}
	return math.Max(0, b.water-b.held(t))
}

// At returns the state at t, −60 to 30 °C. No ice is a state like any other:
// WaterFrozen is then 0 and the hardness is that of syrup and film.
func (b *Body) At(t float64) State {
	s := State{T: t, Ice: b.Ice(t)}
	s.Liquid = b.water - s.Ice
	if b.water > 0 {
		s.WaterFrozen = s.Ice / b.water
	}
	if total := b.Mix.Total(); total > 0 {
		s.IceMass = s.Ice / total
	}
	iceVolume := s.Ice / iceDensity
	if v := iceVolume + s.Liquid/waterDensity + b.solidVolume; v > 0 {
		s.IceVolume = iceVolume / v
	}
	if b.saccharides > 0 {
		s.SyrupSugar = 100 * b.saccharides / (b.saccharides + s.Liquid)
	}
	s.Viscosity = solution.Viscosity(s.SyrupSugar, t)
	s.YieldKPa = yield(s.IceVolume, s.Viscosity, b.Overrun, b.Role)
	return s
}

// YieldThin returns the yield stress of At(t), kPa, with a film as thin as the
// phase's own sugars make it: glucose and fructose thicken less than the
// sucrose that the hardness law takes every sugar for. It is the low end of
// what the film leaves open.
func (b *Body) YieldThin(t float64) float64 {
	s := b.At(t)
	eta := solution.Viscosity(solution.SucroseAsThick(b.Mix.WithWater(s.Liquid)), t)
	return yield(s.IceVolume, eta, b.Overrun, b.Role)
}

// TemperatureAtFrozen returns the temperature at which the fraction f of the
// water is ice, the inverse of At(t).WaterFrozen. It is NaN where f is never
// reached.
func (b *Body) TemperatureAtFrozen(f float64) float64 {
	if f <= 0 {
		return b.FreezingPointC
	}
	if !(f <= b.At(b.EndOfFreezingC).WaterFrozen) {
		return math.NaN()
	}
	// What stays liquid is held at the temperature sought: a freezing point.
	return b.sorption.FreezingPoint(b.water * (1 - f))
}

// TemperatureAtYield returns the warmest temperature in lo..hi at which the
// phase is at least as hard as kPa. ok is false where it is softer throughout;
// then the answer is lo.
func (b *Body) TemperatureAtYield(kPa, lo, hi float64) (t float64, ok bool) {
	if b.At(lo).YieldKPa < kPa {
		return lo, false
	}
	if b.At(hi).YieldKPa >= kPa {
		return hi, true
	}
	return num.RootOrEnd(func(t float64) float64 { return b.At(t).YieldKPa - kPa }, lo, hi, 1e-9), true
}

// AirFraction returns the share of the volume that is air.
func (b *Body) AirFraction() float64 { return b.Overrun / (1 + b.Overrun) }

// Density returns that of the aerated phase as filled, g/mL: the mix at
// ReferenceC with its overrun.
func (b *Body) Density() float64 { return b.MixDensity / (1 + b.Overrun) }

// Volume returns that of the whole phase as filled, mL.
func (b *Body) Volume() float64 {
	if b.Mix.Total() == 0 {
		return 0
	}
	return b.Mix.Total() / b.Density()
}
