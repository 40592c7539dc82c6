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
		{m.Mass[mix.Protein], &c.Protein},
		{m.Mass[mix.Fat], &c.Fat},
		{m.Mass[mix.Starch] + m.Mass[mix.OtherSolids] + m.FruitAcid(), &c.Carbohydrate},
		{m.Mass[mix.Fibre], &c.Fibre},
		{m.Mass[mix.Ash] + m.Mass[mix.SodiumChloride] + m.Mass[mix.PotassiumChloride], &c.Ash},
		{m.Mass[mix.Ethanol], &c.Ethanol},
	}
}

// Enthalpy returns that of the phase at t, kJ per kg, over the unfrozen phase
// at 0 °C; −40 to 100 °C. It is continuous at the freezing point, where its
// slope, HeatCapacity, jumps. The heat of mixing is left out (about 1 kJ/kg).
//
// Source: component enthalpies with the ice of the freezing model; L(T) is
// then within 0.3 % of IAPWS to −20 °C.
func (b *Body) Enthalpy(t float64) float64 {
	ice := b.Ice(t)
	h := (b.water-ice)*water.Enthalpy(t) + ice*water.IceEnthalpy(t) + b.saccharides*upTo(sugarCp, t)
	for _, s := range solids(&b.Mix) {
		h += s.g * upTo(s.c.Cp, t)
	}
	return h / b.Mix.Total()
}

// HeatCapacity returns the apparent heat capacity, dEnthalpy/dt, kJ/(kg K).
func (b *Body) HeatCapacity(t float64) float64 {
	ice := b.Ice(t)
	c := (b.water-ice)*water.HeatCapacity(t) + ice*water.IceHeatCapacity(t) + b.saccharides*solution.At(sugarCp, t)
	for _, s := range solids(&b.Mix) {
		c += s.g * solution.At(s.c.Cp, t)
	}
	if ice > 0 && t > b.EndOfFreezingC {
		c += b.sorption.HeldSlope(t) * water.LatentHeat(t)
	}
	return c / b.Mix.Total()
}

// VolumetricEnthalpy returns Enthalpy for a litre as filled, J/m³ (the mass of
// a given parcel stays, so the density is that of filling, at every t).
func (b *Body) VolumetricEnthalpy(t float64) float64 { return b.Enthalpy(t) * b.Density() * 1e6 }

// Conductivity returns that of the aerated phase at t, W/(m K): parallel for
// water, sugars, protein and ash, Maxwell for fat, Levy for ice, and Maxwell
// with a continuous body for air. lower puts the air by Bruggeman instead, the
// other end of the band.
//
// Source: Carson, Wang, North & Cleland 2016, J. Food Eng. 175:65–73; Levy's
// form after Fricke & Becker 2001, HVAC&R Research 7(4):311.
func (b *Body) Conductivity(t float64) (k, lower float64) {
	ice := b.Ice(t)
	liquid := b.water - ice
	vol := liquid / water.Density(t)
	sum := vol * water.Conductivity(t)
	add := func(g float64, c *solution.Component) {
		v := g / solution.At(c.Rho, t)
		vol += v
		sum += v * solution.At(c.K, t)
	}
	carb, fatty := &solution.Components.Carbohydrate, &solution.Components.Fat
	add(b.saccharides, carb)
	var fat float64
	for _, s := range solids(&b.Mix) {
		if s.c == fatty {
			fat = s.g / solution.At(s.c.Rho, t)
			continue
		}
		if s.g > 0 {
			add(s.g, s.c)
		}
	}
	if vol == 0 {
		return math.NaN(), math.NaN()
	}
	kc := Maxwell(sum/vol, solution.At(fatty.K, t), fat/(fat+vol))
	vi := ice / water.IceDensity(t)
	kc = levy(kc, water.IceConductivity(t), vi/(vi+fat+vol))
	air := AirConductivity(t)
	return Maxwell(kc, air, b.AirFraction()), Bruggeman(kc, air, b.AirFraction())
}

// AirConductivity returns that of air at t °C, W/(m K) [from memory].
func AirConductivity(t float64) float64 { return 0.02428 + 7.4e-5*t }

// Maxwell is the Maxwell–Eucken conductivity of a continuous body of kc with kd
// dispersed in it, at the volume fraction phi; all in W/(m K).
func Maxwell(kc, kd, phi float64) float64 {
	return kc * (2*kc + kd - 2*phi*(kc-kd)) / (2*kc + kd + phi*(kc-kd))
}

// levy is Levy 1981, a symmetric Maxwell: kd with volume fraction phi in kc.
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

// Bruggeman is the effective-medium conductivity of k1 and k2, k2 with volume
// fraction p2: neither is continuous.
func Bruggeman(k1, k2, p2 float64) float64 {
	b := (3*(1-p2)-1)*k1 + (3*p2-1)*k2
	return (b + math.Sqrt(b*b+8*k1*k2)) / 4
}
