package phase

import (
	"math"

	"ripplewright/internal/mix"
	"ripplewright/internal/water"
)

// component is one solid of the thermal model: A + B·t + C·t² for conductivity
// (W/(m K)), density (kg/m³) and heat capacity (kJ/(kg K)).
//
// Source: Choi & Okos 1986, in Food Engineering and Process Applications vol.
// 1, pp. 93–101; reprinted in ASHRAE Refrigeration Handbook 2006, ch. 9, tables
// 1 and 2. −40 to 150 °C. See testdata/tables/choi_okos_components.csv.
type component struct{ k, rho, cp [3]float64 }

var (
	proteinThermal = component{[3]float64{0.17881, 1.1958e-3, -2.7178e-6}, [3]float64{1329.9, -0.51840}, [3]float64{2.0082, 1.2089e-3, -1.3129e-6}}
	fatThermal     = component{[3]float64{0.18071, -2.7604e-4, -1.7749e-7}, [3]float64{925.59, -0.41757}, [3]float64{1.9842, 1.4733e-3, -4.8008e-6}}
	carbThermal    = component{[3]float64{0.20141, 1.3874e-3, -4.3312e-6}, [3]float64{1599.1, -0.31046}, [3]float64{1.5488, 1.9625e-3, -5.9399e-6}}
	fibreThermal   = component{[3]float64{0.18331, 1.2497e-3, -3.1683e-6}, [3]float64{1311.5, -0.36589}, [3]float64{1.8459, 1.8306e-3, -4.6509e-6}}
	ashThermal     = component{[3]float64{0.32962, 1.4011e-3, -2.9069e-6}, [3]float64{2423.8, -0.28063}, [3]float64{1.0926, 1.8896e-3, -3.6817e-6}}
	waterThermal   = component{k: [3]float64{0.57109, 1.7625e-3, -6.7036e-6}, rho: [3]float64{997.18, 3.1439e-3, -3.7574e-3}}
	iceThermal     = component{k: [3]float64{2.2196, -6.2489e-3, 1.0154e-4}, rho: [3]float64{916.89, -0.13071}}
	// ethanolThermal is from memory, at about 0 °C.
	ethanolThermal = component{[3]float64{0.171}, [3]float64{806, -0.85}, [3]float64{2.30}}
	// sugarCp is the heat capacity of sugar in solution, kJ/(kg K), A + B·t:
	// 1.87 at 25 °C (Bubnik et al. 1995, Sugar Technologists Manual, from
	// memory). Dry carbohydrate would put a foam's heat 7 % low.
	sugarCp = [3]float64{1.82, 2.0e-3}
)

func at(c [3]float64, t float64) float64   { return c[0] + t*(c[1]+t*c[2]) }
func upTo(c [3]float64, t float64) float64 { return t * (c[0] + t*(c[1]/2+t*c[2]/3)) }

// share is the mass of one component, g.
type share struct {
	g float64
	c *component
}

// solids pairs the masses of m with their components; sugars come apart,
// since their heat capacity is that in solution.
func solids(m *mix.Mix) [6]share {
	return [...]share{
		{m.Mass[mix.Protein], &proteinThermal},
		{m.Mass[mix.Fat], &fatThermal},
		{m.Mass[mix.Starch] + m.Mass[mix.OtherSolids] + m.Mass[mix.CitricAcid], &carbThermal},
		{m.Mass[mix.Fibre], &fibreThermal},
		{m.Mass[mix.Ash] + m.Mass[mix.SodiumChloride] + m.Mass[mix.PotassiumChloride], &ashThermal},
		{m.Mass[mix.Ethanol], &ethanolThermal},
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
		h += s.g * upTo(s.c.cp, t)
	}
	return h / b.Mix.Total()
}

// HeatCapacity returns the apparent heat capacity, dEnthalpy/dt, kJ/(kg K).
func (b *Body) HeatCapacity(t float64) float64 {
	ice := b.Ice(t)
	c := (b.water-ice)*water.HeatCapacity(t) + ice*water.IceHeatCapacity(t) + b.saccharides*at(sugarCp, t)
	for _, s := range solids(&b.Mix) {
		c += s.g * at(s.c.cp, t)
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
	vol := liquid / at(waterThermal.rho, t)
	sum := vol * at(waterThermal.k, t)
	add := func(g float64, c *component) {
		v := g / at(c.rho, t)
		vol += v
		sum += v * at(c.k, t)
	}
	add(b.saccharides, &carbThermal)
	var fat float64
	for _, s := range solids(&b.Mix) {
		if s.c == &fatThermal {
			fat = s.g / at(s.c.rho, t)
			continue
		}
		if s.g > 0 {
			add(s.g, s.c)
		}
	}
	if vol == 0 {
		return math.NaN(), math.NaN()
	}
	kc := maxwell(sum/vol, at(fatThermal.k, t), fat/(fat+vol))
	vi := ice / at(iceThermal.rho, t)
	kc = levy(kc, at(iceThermal.k, t), vi/(vi+fat+vol))
	air := 0.02428 + 7.4e-5*t // W/(m K), from memory
	return maxwell(kc, air, b.AirFraction()), Bruggeman(kc, air, b.AirFraction())
}

// maxwell is Maxwell–Eucken: kd dispersed with volume fraction phi in kc.
func maxwell(kc, kd, phi float64) float64 {
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
