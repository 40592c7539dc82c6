package phase

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
)

// Slopes are the derivatives of a phase's figures along a change of its mix.
type Slopes struct {
	FreezingPointC   float64 // K per unit of the change
	FrozenFraction   float64 // fraction
	LnYield          float64 // relative change of the yield stress
	SweetnessPercent float64 // points of % sucrose equivalent by mass
	GPerML           float64 // g/mL as filled
}

// Along returns the derivatives of b's figures at t along d: what one unit of
// d added to the mix changes. They are analytic, and tested against finite
// differences. bound must be the one b was prepared with.
func (b *Body) Along(d mix.Mix, t float64, bound solution.Bound) Slopes {
	var out Slopes
	ds := solution.NewSorption(d, bound)
	dw := d.Grams[mix.Water]
	if f := b.FreezingPointC; f < 0 {
		out.FreezingPointC = (dw - ds.HeldG(f)) / b.sorption.HeldSlopeGPerK(f)
	}
	s := b.At(t)
	var dIce float64
	if s.IceG > 0 {
		if t > b.EndOfFreezingC {
			dIce = dw - ds.HeldG(t)
		} else {
			end := b.EndOfFreezingC
			dIce = dw - ds.HeldG(end) - b.sorption.HeldSlopeGPerK(end)*endSlope(b.Mix, d)
		}
	}
	out.FrozenFraction = ratioSlope(s.IceG, b.water, dIce, dw)
	out.LnYield = b.lnYieldSlope(s, d, dIce, dw)
	total, dTotal := b.Mix.TotalG(), d.TotalG()
	out.SweetnessPercent = 100 * ratioSlope(SucroseEquivalentG(b.Mix), total, SucroseEquivalentG(d), dTotal)
	v := solution.VolumeML(b.Mix, ReferenceC)
	out.GPerML = ratioSlope(total, v, dTotal, solution.VolumeSlopeMLPerG(b.Mix, d, ReferenceC)) / (1 + b.OverrunFraction)
	return out
}

// lnYieldSlope is the derivative of ln yield: through the ice's volume and
// through the syrup's viscosity.
func (b *Body) lnYieldSlope(s State, d mix.Mix, dIce, dw float64) float64 {
	vi := s.IceG / iceDensity
	v := vi + s.LiquidG/waterDensity + b.solidVolume
	dvi := dIce / iceDensity
	dv := dvi + (dw-dIce)/waterDensity + hardnessVolume(d)
	dPhi := ratioSlope(vi, v, dvi, dv)
	sugars, dSugars := b.saccharides, d.SaccharidesG()
	dPercent := 100 * ratioSlope(sugars, sugars+s.LiquidG, dSugars, dSugars+dw-dIce)
	_, perPercent := solution.ViscositySlope(s.SyrupSugarPercent, s.AtC)
	body := law.ice*law.base*math.Exp(law.ice*s.IceVolumeFraction)*dPhi + law.shear/1000*perPercent*dPercent
	return b.harder() * body * math.Pow(1+b.OverrunFraction, -law.air) / s.YieldKPa
}

// endSlope is the derivative of the end of freezing along d.
func endSlope(m, d mix.Mix) float64 {
	const h = 1e-6 // the mean is linear in each mass; the step only cancels rounding
	scale := h * m.TotalG()
	return (solution.EndOfFreezingC(m.PlusScaled(d, scale)) - solution.EndOfFreezingC(m.PlusScaled(d, -scale))) / (2 * scale)
}

// ratioSlope is the derivative of a/b.
func ratioSlope(a, b, da, db float64) float64 {
	if b == 0 {
		return 0
	}
	return (da - a/b*db) / b
}
