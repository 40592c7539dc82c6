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
	Mix             mix.Mix
	OverrunFraction float64 // volume of air per volume of mix
	Role            Role
	HarderFactor    float64 // as batches have shown it, over the law's hardness; 0: as the law says

	FreezingPointC  float64 // NaN where nothing can freeze
	EndOfFreezingC  float64
	MixGPerML       float64 // g/mL without air, unfrozen, at ReferenceC
	sorption        solution.Sorption
	water, heldLast float64 // g; heldLast is what stays liquid at the end of freezing
	solidVolume     float64 // mL of everything but water and ice
	saccharides     float64 // g
}

// Prepare returns the body of m with the given overrun (volume of air per
// volume of mix, 0 or more).
func Prepare(m mix.Mix, overrunFraction float64, role Role, b solution.Bound) Body {
	s := solution.NewSorption(m, b)
	w := m.Grams[mix.Water]
	end := solution.EndOfFreezingC(m)
	return Body{
		Mix: m, OverrunFraction: overrunFraction, Role: role,
		FreezingPointC: s.FreezingC(w),
		EndOfFreezingC: end,
		MixGPerML:      solution.GPerML(m, ReferenceC),
		sorption:       s,
		water:          w,
		heldLast:       s.HeldG(end),
		solidVolume:    hardnessVolume(m),
		saccharides:    m.SaccharidesG(),
	}
}

// State is a phase at one temperature.
type State struct {
	AtC               float64
	IceG              float64 // g
	LiquidG           float64 // g of liquid water, bound water included
	FrozenFraction    float64 // of all water
	IceMassFraction   float64 // of all mass
	IceVolumeFraction float64 // of the volume without air
	SyrupSugarPercent float64 // mass % of sugars in sugars and liquid water
	ViscosityPaS      float64 // Pa s of that syrup
	YieldKPa          float64 // see Yield
}

// Held returns the grams of liquid water at t, were there enough of it.
func (b *Body) held(t float64) float64 {
	if t <= b.EndOfFreezingC {
		return b.heldLast
	}
	return b.sorption.HeldG(t)
}

// BoundWaterG returns the grams of water that never freeze and dissolve nothing.
func (b *Body) BoundWaterG() float64 { return b.sorption.BoundG }

// IceG returns the grams of ice at t: what water the solutes do not hold,
// I = max(0, W − U(t)), U of solution.Sorption.
func (b *Body) IceG(t float64) float64 {
	if !(t < b.FreezingPointC) { // which is 0 °C at most, or NaN
		return 0
	}
	return math.Max(0, b.water-b.held(t))
}

// At returns the state at t, −60 to 30 °C. No ice is a state like any other:
// FrozenFraction is then 0 and the hardness is that of syrup and film.
//
//	frozen = I/W, by mass I/M, by volume (I/0.917)/(I/0.917 + (W − I) + V_solids);
//	syrup % = 100 S/(S + W − I), S the saccharides
func (b *Body) At(t float64) State {
	s := State{AtC: t, IceG: b.IceG(t)}
	s.LiquidG = b.water - s.IceG
	if b.water > 0 {
		s.FrozenFraction = s.IceG / b.water
	}
	if total := b.Mix.TotalG(); total > 0 {
		s.IceMassFraction = s.IceG / total
	}
	iceVolume := s.IceG / iceDensity
	if v := iceVolume + s.LiquidG/waterDensity + b.solidVolume; v > 0 {
		s.IceVolumeFraction = iceVolume / v
	}
	if b.saccharides > 0 {
		s.SyrupSugarPercent = 100 * b.saccharides / (b.saccharides + s.LiquidG)
	}
	s.ViscosityPaS = solution.ViscosityPaS(s.SyrupSugarPercent, t)
	s.YieldKPa = b.harder() * yield(s.IceVolumeFraction, s.ViscosityPaS, b.OverrunFraction, b.Role)
	return s
}

// harder is by how much the body is harder than the law says.
func (b *Body) harder() float64 {
	if b.HarderFactor > 0 {
		return b.HarderFactor
	}
	return 1
}

// YieldThinKPa returns the yield stress of At(t), kPa, with a film as thin as the
// phase's own sugars make it: glucose and fructose thicken less than the
// sucrose that the hardness law takes every sugar for. It is the low end of
// what the film leaves open.
func (b *Body) YieldThinKPa(t float64) float64 {
	s := b.At(t)
	eta := solution.ViscosityPaS(solution.SucroseAsThickPercent(b.Mix.WithWater(s.LiquidG)), t)
	return b.harder() * yield(s.IceVolumeFraction, eta, b.OverrunFraction, b.Role)
}

// FrozenAtC returns the temperature at which the fraction f of the
// water is ice, the inverse of At(t).FrozenFraction. It is NaN where f is never
// reached.
func (b *Body) FrozenAtC(fraction float64) float64 {
	if fraction <= 0 {
		return b.FreezingPointC
	}
	if !(fraction <= b.At(b.EndOfFreezingC).FrozenFraction) {
		return math.NaN()
	}
	// What stays liquid is held at the temperature sought: a freezing point.
	return b.sorption.FreezingC(b.water * (1 - fraction))
}

// YieldAtC returns the warmest temperature in lo..hi at which the
// phase is at least as hard as kPa. ok is false where it is softer throughout;
// then the answer is lo.
func (b *Body) YieldAtC(kPa, lowC, highC float64) (t float64, ok bool) {
	if b.At(lowC).YieldKPa < kPa {
		return lowC, false
	}
	if b.At(highC).YieldKPa >= kPa {
		return highC, true
	}
	return num.RootOrEnd(func(t float64) float64 { return b.At(t).YieldKPa - kPa }, lowC, highC, 1e-9), true
}

// AirFraction returns the share of the volume that is air, φ = o/(1 + o) at
// the overrun o.
func (b *Body) AirFraction() float64 { return b.OverrunFraction / (1 + b.OverrunFraction) }

// GPerML returns that of the aerated phase as filled, g/mL: the mix at
// ReferenceC with its overrun, ρ_mix/(1 + o).
func (b *Body) GPerML() float64 { return b.MixGPerML / (1 + b.OverrunFraction) }

// VolumeML returns that of the whole phase as filled, mL.
func (b *Body) VolumeML() float64 {
	if b.Mix.TotalG() == 0 {
		return 0
	}
	return b.Mix.TotalG() / b.GPerML()
}
