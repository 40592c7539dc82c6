// Package solution answers what dissolved things do to water: its activity,
// its freezing and boiling, the viscosity and density of the liquid.
//
// Cold (−46 to 25 °C) the activity comes from an additive hydration model;
// hot (25 to 150 °C) from Starzak & Peacock 1997. See Activity.
//
// Temperatures are °C, masses g, a is water activity and y = 1 − a.
package solution

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/num"
	"ripplewright/internal/matter/water"
)

// taper is the constant of G = 1/(1 + taper·y²). It was set once, on osmotic
// coefficients of sucrose to 6 mol/kg at 25 °C (Robinson & Stokes 1959, from
// memory), not on freezing points.
const taper = 19.1

// Sorption is how much liquid water a set of solutes holds at a given water
// activity, folded into six sums so that evaluating it costs the same for one
// solute or twenty. Build it with NewSorption.
//
//	U(y) = ideal·a/y + tapered·G(y) + plain + linear·y + square·y² + bound
type Sorption struct {
	IdealG, TaperedG, PlainG, LinearG, SquareG float64 // g water
	BoundG                                     float64 // g water
}

// NewSorption returns the sorption of the solutes of m with bound water b.
//
// Each solute holds, at the activity that ice fixes, its own water, and a
// mixture holds the sum: Zdanovskii–Stokes–Robinson, Stokes & Robinson 1966,
// J. Phys. Chem. 70:2126. That the deviation from ideality is hydration is the
// finding of Miyawaki 1997, Biosci. Biotechnol. Biochem. 61:466.
func NewSorption(m mix.Mix, b Bound) Sorption {
	var s Sorption
	for i := range Solutes {
		so := &Solutes[i]
		if g := m.Grams[so.Species]; g != 0 {
			s.add(so, g*water.MolarMass/so.GPerMol)
		}
	}
	// Higher saccharides bind the same water per gram as sucrose, and lower
	// the activity by their moles.
	s.IdealG += water.MolarMass * m.HigherMol
	s.TaperedG += higherHydration * m.Grams[mix.HigherSaccharides]
	s.IdealG += water.MolarMass * m.IonMol
	s.BoundG = b.ProteinGPerG*m.Grams[mix.Protein] + b.FibreGPerG*(m.Grams[mix.Starch]+m.Grams[mix.Fibre])
	return s
}

// higherHydration is g water per g of higher saccharides: sucrose's own.
const higherHydration = 6.02 * water.MolarMass / 342.296

func (s *Sorption) add(so *Solute, perMol float64) {
	s.IdealG += perMol * so.Nu
	if so.Taper {
		s.TaperedG += perMol * so.H
	} else {
		s.PlainG += perMol * so.H
	}
	s.LinearG += perMol * so.K
	s.SquareG += perMol * so.Q
}

// HeldAtG returns the liquid water, g, held at y = 1 − a, 0 < y < 1: U(y) of
// Sorption, with G = 1/(1 + 19.1y²).
func (s *Sorption) HeldAtG(y float64) float64 {
	g := 1 / (1 + taper*y*y)
	return s.IdealG*(1-y)/y + s.TaperedG*g + s.PlainG + y*(s.LinearG+y*s.SquareG) + s.BoundG
}

// slopeAt returns dHeldAt/dy.
func (s *Sorption) slopeAt(y float64) float64 {
	g := 1 / (1 + taper*y*y)
	return -s.IdealG/(y*y) - s.TaperedG*2*taper*y*g*g + s.LinearG + 2*y*s.SquareG
}

// HeldG returns the liquid water, g, held in equilibrium with ice at t < 0 °C,
// bound water included. It falls steadily as t falls. At 0 °C and above it is
// +Inf where there is a solute.
//
//	U(1 − a_ice(t))
//
// Check: 0.48691 g per g sucrose at −18 °C.
func (s *Sorption) HeldG(t float64) float64 {
	y := -math.Expm1(water.LnIceActivity(t))
	if y <= 0 {
		if s.IdealG == 0 {
			return s.BoundG + s.PlainG + s.TaperedG
		}
		return math.Inf(1)
	}
	return s.HeldAtG(y)
}

// HeldSlopeGPerK returns dHeld/dt, g/K, at t < 0; it is positive.
func (s *Sorption) HeldSlopeGPerK(t float64) float64 {
	ln := water.LnIceActivity(t)
	y := -math.Expm1(ln)
	return s.slopeAt(y) * -math.Exp(ln) * water.LnIceActivityPerK(t)
}

// coldest is where the search for a freezing point ends, °C.
const coldest = -60

// FreezingC returns the temperature, °C, at which ice first forms in w
// grams of water: where the solutes hold exactly w, U(1 − a_ice(t)) = w. It is 0
// without solutes and NaN where everything is bound or the search would leave −60 °C.
func (s *Sorption) FreezingC(waterG float64) float64 {
	if waterG <= 0 || s.HeldG(coldest) >= waterG {
		return math.NaN()
	}
	if s.IdealG <= 0 {
		return 0
	}
	// Newton on ln t guarded by a bracket: U behaves as 1/t near zero, so the
	// step in ln t converges in a handful of turns from the ideal guess.
	lo, hi := float64(coldest), -1e-12
	t := clamp(-103*s.IdealG/water.MolarMass/(waterG-0.9*math.Min(s.BoundG, waterG)), coldest+1, -1e-9)
	for range 60 {
		f := s.HeldG(t) - waterG
		if f > 0 {
			hi = t
		} else {
			lo = t
		}
		next := t * math.Exp(-f/(s.HeldSlopeGPerK(t)*t))
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		if math.Abs(next-t) <= 1e-13*math.Abs(t) {
			return next
		}
		t = next
	}
	return t
}

// activityOf returns the activity of w grams of water among the solutes by the
// hydration model, whatever the temperature.
func (s *Sorption) activityOf(w float64) float64 {
	if s.IdealG <= 0 {
		return 1
	}
	// Times y, for HeldAtG has a pole at 0.
	return 1 - num.RootOrEnd(func(y float64) float64 { return y * (s.HeldAtG(y) - w) }, 1e-12, 1, 0)
}

func clamp(v, lo, hi float64) float64 { return math.Min(math.Max(v, lo), hi) }

// meltEnd is T_m′ by sugar, °C: where freezing ends in its pure solution.
// Sucrose: Le Meste & Huang 1992, J. Food Sci. (abstract: melting from −32);
// the rest after Roos 1993 (from memory). See
// testdata/tables/maximal_freeze_concentration.csv.
var meltEnd = [...]struct {
	species mix.Species
	t       float64
}{
	{mix.Sucrose, -34}, {mix.Glucose, -46}, {mix.Fructose, -46},
	{mix.Lactose, -30}, {mix.Maltose, -32}, {mix.Galactose, -45},
	{mix.Allulose, -46}, // as fructose
}

// EndOfFreezingC returns the temperature below which no more ice grows, °C: the
// mean of T_m′ over the sugars of m by mass, Σ g·T_m′/Σ g, −34 °C where there are
// none (T_m′ by sugar: see meltEnd; their mean by mass is an estimate).
//
// Check: −32.86 °C for 15 g sucrose with 6 g lactose.
func EndOfFreezingC(m mix.Mix) float64 {
	var sum, mass float64
	for _, e := range meltEnd {
		sum += m.Grams[e.species] * e.t
		mass += m.Grams[e.species]
	}
	if mass == 0 {
		return -34
	}
	return sum / mass
}

// Outside lists, by species, where the mixture's freezing curve at t °C rests
// on constants used beyond their range. A solute counts when it brings more
// than a fiftieth of the dissolved particles.
func Outside(m mix.Mix, t float64) []mix.Species {
	out, _ := outside(m, t)
	return out
}

// OutsideFraction is what the solutes of Outside bring together of the dissolved
// particles, of one: so much of the curve at t °C is extrapolated.
func OutsideFraction(m mix.Mix, t float64) float64 {
	_, share := outside(m, t)
	return share
}

func outside(m mix.Mix, t float64) (out []mix.Species, share float64) {
	s := NewSorption(m, Bound{})
	for _, so := range Solutes {
		g := m.Grams[so.Species]
		if g <= 0 || t >= so.ColdestC {
			continue
		}
		if part := g / so.GPerMol * so.Nu * water.MolarMass / s.IdealG; part > 0.02 {
			out, share = append(out, so.Species), share+part
		}
	}
	return out, share
}
