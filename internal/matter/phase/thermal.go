package phase

import (
	"math"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

// sugarCp is the heat capacity of sugar in solution, kJ/(kg K), A + B·t: 1.87 at
// 25 °C (Bubnik et al. 1995, Sugar Technologists Manual, from memory). Dry
// carbohydrate would put a foam's heat 7 % low.
var sugarCp = [3]float64{1.82, 2.0e-3}

func upTo(c [3]float64, t float64) float64 { return t * (c[0] + t*(c[1]/2+t*c[2]/3)) }

// share is the mass of one component, g.
type share struct {
	g float64
	c *solution.Component
}

// solids pairs the masses of m with their components; sugars come apart,
// since their heat capacity is that in solution.
func solids(m *mix.Mix) [6]share {
	c := &solution.Components
	return [...]share{
		{m.Grams[mix.Protein], &c.Protein},
		{m.Grams[mix.Fat], &c.Fat},
		{m.Grams[mix.Starch] + m.Grams[mix.OtherSolids] + m.FruitAcidG(), &c.Carbohydrate},
		{m.Grams[mix.Fibre], &c.Fibre},
		{m.Grams[mix.Ash] + m.Grams[mix.SodiumChloride] + m.Grams[mix.PotassiumChloride], &c.Ash},
		{m.Grams[mix.Ethanol], &c.Ethanol},
	}
}

// JPerG returns the enthalpy of the phase at t, kJ per kg, over the unfrozen phase
// at 0 °C; −40 to 100 °C. It is continuous at the freezing point, where its
// slope, JPerGK, jumps. The heat of mixing is left out (about 1 kJ/kg).
//
//	h = [(W − I)h_water + I·h_ice + Σ g ∫₀ᵗ cp dt] / M
//
// Source: component enthalpies (Choi & Okos 1986, see solution.Components and
// package water) with the ice of the freezing model; L(T) is
// then within 0.3 % of IAPWS to −20 °C.
func (b *Body) JPerG(t float64) float64 {
	ice := b.IceG(t)
	h := (b.water-ice)*water.JPerG(t) + ice*water.IceJPerG(t) + b.saccharides*upTo(sugarCp, t)
	for _, s := range solids(&b.Mix) {
		h += s.g * upTo(s.c.JPerGK, t)
	}
	return h / b.Mix.TotalG()
}

// JPerGK returns the apparent heat capacity, dh/dt, kJ/(kg K):
//
//	cp = [(W − I)cp_water + I·cp_ice + Σ g·cp + L·dU/dt] / M
//
// the last term where ice melts. Source: the derivative of JPerG.
func (b *Body) JPerGK(t float64) float64 {
	ice := b.IceG(t)
	c := (b.water-ice)*water.JPerGK(t) + ice*water.IceJPerGK(t) + b.saccharides*solution.At(sugarCp, t)
	for _, s := range solids(&b.Mix) {
		c += s.g * solution.At(s.c.JPerGK, t)
	}
	if ice > 0 && t > b.EndOfFreezingC {
		c += b.sorption.HeldSlopeGPerK(t) * water.LatentJPerG(t)
	}
	return c / b.Mix.TotalG()
}

// JPerM3 returns JPerG by volume as filled, h·ρ, J/m³ (the mass of
// a given parcel stays, so the density is that of filling, at every t).
func (b *Body) JPerM3(t float64) float64 { return b.JPerG(t) * b.GPerML() * 1e6 }

// WPerMK returns the conductivity of the aerated phase at t, W/(m K): parallel,
// k = Σ φ·k, for
// water, sugars, protein and ash, Maxwell for fat, Levy for ice, and Maxwell
// with a continuous body for air. lower puts the air by Bruggeman instead, the
// other end of the band.
//
// Source: Carson, Wang, North & Cleland 2016, J. Food Eng. 175:65–73; Levy's
// form after Fricke & Becker 2001, HVAC&R Research 7(4):311.
func (b *Body) WPerMK(t float64) (k, lower float64) {
	ice := b.IceG(t)
	liquid := b.water - ice
	vol := liquid / water.KGPerM3(t)
	sum := vol * water.WPerMK(t)
	add := func(g float64, c *solution.Component) {
		v := g / solution.At(c.KGPerM3, t)
		vol += v
		sum += v * solution.At(c.WPerMK, t)
	}
	carb, fatty := &solution.Components.Carbohydrate, &solution.Components.Fat
	add(b.saccharides, carb)
	var fat float64
	for _, s := range solids(&b.Mix) {
		if s.c == fatty {
			fat = s.g / solution.At(s.c.KGPerM3, t)
			continue
		}
		if s.g > 0 {
			add(s.g, s.c)
		}
	}
	if vol == 0 {
		return math.NaN(), math.NaN()
	}
	kc := MaxwellWPerMK(sum/vol, solution.At(fatty.WPerMK, t), fat/(fat+vol))
	vi := ice / water.IceKGPerM3(t)
	kc = levy(kc, water.IceWPerMK(t), vi/(vi+fat+vol))
	air := AirWPerMK(t)
	return MaxwellWPerMK(kc, air, b.AirFraction()), BruggemanWPerMK(kc, air, b.AirFraction())
}

// AirWPerMK returns that of air at t °C, W/(m K) [from memory].
func AirWPerMK(t float64) float64 { return 0.02428 + 7.4e-5*t }

// MaxwellWPerMK is the Maxwell–Eucken conductivity of a continuous body of kc with kd
// dispersed in it, at the volume fraction phi; all in W/(m K).
//
//	k = kc(2kc + kd − 2φ(kc − kd)) / (2kc + kd + φ(kc − kd))
//
// Source: Carson, Wang, North & Cleland 2016, J. Food Eng. 175:65–73.
func MaxwellWPerMK(kc, kd, phi float64) float64 {
	return kc * (2*kc + kd - 2*phi*(kc-kd)) / (2*kc + kd + phi*(kc-kd))
}

// levy is Levy 1981, a symmetric Maxwell: kd with volume fraction phi in kc.
//
//	k = kc(2 + s + 2(s − 1)F) / (2 + s − (s − 1)F), s = kd/kc,
//	F = ½(2/G − 1 + 2φ − √((2/G − 1 + 2φ)² − 8φ/G)), G = (s − 1)²/((s + 1)² + s/2)
//
// Source: after Fricke & Becker 2001, HVAC&R Research 7(4):311.
func levy(kc, kd, phi float64) float64 {
	if kc == kd || phi == 0 {
		return kc
	}
	s := kd / kc
	sg := (s - 1) * (s - 1) / ((s+1)*(s+1) + s/2)
	a := 2/sg - 1 + 2*phi
	f := 0.5 * (a - math.Sqrt(a*a-8*phi/sg))
	return kc * (2 + s + 2*(s-1)*f) / (2 + s - (s-1)*f)
}

// BruggemanWPerMK is the effective-medium conductivity of k1 and k2, k2 with volume
// fraction p2: neither is continuous.
//
//	k = (b + √(b² + 8k₁k₂))/4, b = (3p₁ − 1)k₁ + (3p₂ − 1)k₂
//
// Source: Carson, Wang, North & Cleland 2016, J. Food Eng. 175:65–73.
func BruggemanWPerMK(k1, k2, p2 float64) float64 {
	b := (3*(1-p2)-1)*k1 + (3*p2-1)*k2
	return (b + math.Sqrt(b*b+8*k1*k2)) / 4
}
