package solution

import (
	"fmt"
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/num"
	"ripplewright/internal/matter/water"
)

// starzakPeacock is the activity coefficient of water in sucrose solutions:
// Starzak & Peacock 1997, Zuckerindustrie 122:380–387, coefficients as in the
// publisher's abstract. Q in J/mol; molar masses in g/mol.
var starzakPeacock = struct{ q, a, b, mSucrose, mWater, r float64 }{
	-17638, -1.0038, -0.24653, 342.2965, 18.01528, 8.314462618,
}

// Hot is the range over which the boiling model is used, °C.
var Hot = [2]float64{25, 150}

// SyrupActivity returns the water activity at t °C of a solution in which the
// mole fraction of solute is x: all concentrations, 0–150 °C. Solutes other than
// sucrose count by their moles.
//
//	a = (1 − x) exp(Q/(RT) · x²(1 + ax + bx²))
//
// Source: Starzak & Peacock 1997, Zuckerindustrie 122:380–387.
func SyrupActivity(x, t float64) float64 {
	sp := &starzakPeacock
	return (1 - x) * math.Exp(sp.q/(sp.r*(t+water.ZeroC))*x*x*(1+x*(sp.a+x*sp.b)))
}

// BoilingFraction returns the mole fraction of solute in a syrup that boils at
// t °C under pressure p Pa: aw·psat(t) = p. It is 0 where water itself boils
// no lower than t.
func BoilingFraction(t, pa float64) float64 {
	want := pa / water.SaturationPa(t)
	if want >= 1 {
		return 0
	}
	return num.RootOrEnd(func(x float64) float64 { return SyrupActivity(x, t) - want }, 0, 0.95, 0)
}

// BoilingC returns the temperature, °C, at which a syrup with mole
// fraction x of solute boils under p Pa, aw(x, t)·psat(t) = p, sought between 0
// and 250 °C.
func BoilingC(x, pa float64) float64 {
	return num.RootOrEnd(func(t float64) float64 { return SyrupActivity(x, t)*water.SaturationPa(t)/pa - 1 }, 0, 250, 0)
}

// SucrosePercent returns the mass % of sucrose at mole fraction x:
// 100 xM/(xM + (1 − x)M_water).
func SucrosePercent(x float64) float64 {
	ms, mw := x*starzakPeacock.mSucrose, (1-x)*starzakPeacock.mWater
	return 100 * ms / (ms + mw)
}

// SucroseFraction returns the mole fraction of sucrose at p mass %, the inverse of
// SucrosePercent.
func SucroseFraction(percent float64) float64 {
	ns, nw := percent/starzakPeacock.mSucrose, (100-percent)/starzakPeacock.mWater
	return ns / (ns + nw)
}

// SoluteMol returns the mol of particles that the solutes of m bring to a
// boiling syrup, n = Σ ν·g/M. Sucrose has the molar mass of the boiling model, so that a
// pure syrup meets its table exactly.
func SoluteMol(m mix.Mix) float64 {
	n := m.HigherMol + m.IonMol
	for i := range Solutes {
		so := &Solutes[i]
		g := m.Grams[so.Species]
		switch {
		case g == 0 || so.Species == mix.Ethanol: // ethanol boils away first
		case so.Species == mix.Sucrose:
			n += g / starzakPeacock.mSucrose
		default:
			n += g / so.GPerMol * so.Nu
		}
	}
	return n
}

// WaterAtBoilG returns the grams of water left with the solutes of m when they
// boil at t °C under p Pa, x the mole fraction that boils there:
//
//	W = n·M_water(1 − x)/x
//
// Check: 25.03 g with 180 g sucrose at 118 °C and one atmosphere.
func WaterAtBoilG(m mix.Mix, t, pa float64) float64 {
	x := BoilingFraction(t, pa)
	if x == 0 {
		return math.Inf(1)
	}
	return SoluteMol(m) * (1 - x) / x * starzakPeacock.mWater
}

// SoluteFraction returns the mole fraction of solute in m as it stands.
func SoluteFraction(m mix.Mix) float64 {
	ns := SoluteMol(m)
	nw := m.Grams[mix.Water] / starzakPeacock.mWater
	if ns+nw == 0 {
		return 0
	}
	return ns / (ns + nw)
}

// RangeError says that a formula was asked outside its range.
type RangeError struct {
	What      string
	Got       float64
	Low, High float64
	Unit      string
}

func (e *RangeError) Error() string {
	return fmt.Sprintf("%s: %g %s is outside %g to %g %s", e.What, e.Got, e.Unit, e.Low, e.High, e.Unit)
}

// Activity returns the water activity of the liquid m (ice-free) at t °C,
// −46 to 150: below 25 °C by the hydration model, from 25 °C by Starzak &
// Peacock. The two agree within 0.010 between 0 and 25 °C up to 67 % sucrose,
// which is the cold model's error at 25 °C (testdata/tables/
// sucrose_osmotic_25C.csv), and each keeps its own range: the syrup is cooked
// on the hot branch and frozen on the cold one. Between them nothing is
// computed but this function, so the step at 25 °C shows in no figure.
//
// Outside it returns NaN and a *RangeError.
func Activity(m mix.Mix, b Bound, t float64) (float64, error) {
	if t < endOfFreezing || t > Hot[1] || math.IsNaN(t) {
		return math.NaN(), &RangeError{"water activity", t, endOfFreezing, Hot[1], "°C"}
	}
	if t < Hot[0] {
		s := NewSorption(m, b)
		return s.activityOf(m.Grams[mix.Water]), nil
	}
	return SyrupActivity(SoluteFraction(m), t), nil
}
