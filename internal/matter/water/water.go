// Package water gives properties of pure water and of ice Ih between −40 and
// 150 °C at ordinary pressure. Nothing is dissolved in anything here; package
// solution takes over when it is.
//
// Temperatures are °C.
package water

import "math"

// MolarMass of water, g/mol.
const MolarMass = 18.015

// ZeroC is 0 °C in kelvin.
const ZeroC = 273.15

// StandardPressure is one standard atmosphere, Pa.
const StandardPressure = 101325.0

// iceActivity holds the coefficients of LnIceActivity, per °C below zero.
//
// Fitted to the IAPWS ice and water formulations (R10-06 and IAPWS-95) as
// tabulated in testdata/tables/ice_water_equilibrium.csv, normalised to 0 °C;
// worst 0.008 K between 0 and −30 °C.
var iceActivity = [3]float64{9.6806e-3, 5.540e-6, -1.3722e-7}

// IceActivityRange is where LnIceActivity was fitted, °C. It stays smooth and
// monotone to −40 °C.
var IceActivityRange = [2]float64{-30, 0}

// LnIceActivity returns ln of the water activity of ice at t °C, t ≤ 0: the
// activity of every liquid in equilibrium with ice. Above 0 °C it returns 0.
//
//	ln a = −u(c₀ + c₁u + c₂u²), u = −t
//
// Source: see iceActivity. Check: −0.1752455 at −18 °C.
func LnIceActivity(t float64) float64 {
	u := math.Max(0, -t)
	return -u * (iceActivity[0] + u*(iceActivity[1]+u*iceActivity[2]))
}

// LnIceActivityPerK returns d LnIceActivity/dt = c₀ + 2c₁u + 3c₂u², 1/K, at t ≤ 0.
func LnIceActivityPerK(t float64) float64 {
	u := math.Max(0, -t)
	return iceActivity[0] + u*(2*iceActivity[1]+u*3*iceActivity[2])
}

// kell is the density of air-free water: G. S. Kell 1975, J. Chem. Eng. Data
// 20:97, the rational function for 0–150 °C, which Kell also used below zero
// (coefficients from memory).
var kell = struct {
	num [6]float64
	den float64
}{
	[6]float64{999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12},
	16.879850e-3,
}

// KGPerM3 returns the density of liquid water at t °C and one atmosphere, in
// kg/m³. Valid −30 to 150 °C; below −30 °C the value at −30 °C is kept.
//
//	ρ = Σ nᵢtⁱ / (1 + d·t)
//
// Source: Kell 1975, see kell. Check: 998.2 kg/m³ at 20 °C.
func KGPerM3(t float64) float64 {
	t = math.Max(t, -30)
	p := 0.0
	for i := len(kell.num) - 1; i >= 0; i-- {
		p = p*t + kell.num[i]
	}
	return p / (1 + kell.den*t)
}

// IceKGPerM3 returns the density of ice Ih, kg/m³, −40 to 0 °C:
//
//	ρ = 916.89 − 0.13071 t
//
// Source: Choi & Okos 1986, in Food Engineering and Process Applications vol. 1,
// pp. 93–101; reprinted in ASHRAE Refrigeration Handbook 2006, ch. 9, tables 1
// and 2.
func IceKGPerM3(t float64) float64 { return 916.89 - 0.13071*t }

// Heat capacities, kJ/(kg K), cp = A + Bt + Ct²: Choi & Okos 1986 (as
// IceKGPerM3), water below and above 0 °C, and ice.
var (
	cpWaterCold = [3]float64{4.0817, -5.3062e-3, 9.9516e-4}
	cpWaterWarm = [3]float64{4.1762, -9.0864e-5, 5.4731e-6}
	cpIce       = [3]float64{2.0623, 6.0769e-3, 0}
)

// Conductivities, W/(m K), of water and of ice, k = A + Bt + Ct²: Choi & Okos
// 1986 (as IceKGPerM3).
var (
	kWater = [3]float64{0.57109, 1.7625e-3, -6.7036e-6}
	kIce   = [3]float64{2.2196, -6.2489e-3, 1.0154e-4}
)

// WPerMK returns the conductivity of liquid water at t °C, W/(m K), −40 to 150 °C.
func WPerMK(t float64) float64 { return poly(kWater, t) }

// IceWPerMK returns that of ice at t °C, W/(m K), −40 to 0 °C.
func IceWPerMK(t float64) float64 { return poly(kIce, t) }

// LatentHeat0 is the heat of fusion at 0 °C, kJ/kg. With the heat capacities
// above it gives L(T) within 0.3 % of IAPWS to −20 °C.
const LatentHeat0 = 333.6

func poly(c [3]float64, t float64) float64     { return c[0] + t*(c[1]+t*c[2]) }
func integral(c [3]float64, t float64) float64 { return t * (c[0] + t*(c[1]/2+t*c[2]/3)) }

// JPerGK returns cp of liquid water at t °C, kJ/(kg K), −40 to 150 °C.
func JPerGK(t float64) float64 {
	if t < 0 {
		return poly(cpWaterCold, t)
	}
	return poly(cpWaterWarm, t)
}

// IceJPerGK returns cp of ice at t °C, kJ/(kg K), −40 to 0 °C.
func IceJPerGK(t float64) float64 { return poly(cpIce, t) }

// JPerG returns the enthalpy of liquid water over liquid water at 0 °C, kJ/kg:
// h = ∫₀ᵗ cp dt = At + Bt²/2 + Ct³/3.
func JPerG(t float64) float64 {
	if t < 0 {
		return integral(cpWaterCold, t)
	}
	return integral(cpWaterWarm, t)
}

// IceJPerG returns the enthalpy of ice over liquid water at 0 °C, kJ/kg:
// h = −L₀ + ∫₀ᵗ cp dt.
func IceJPerG(t float64) float64 { return -LatentHeat0 + integral(cpIce, t) }

// LatentJPerG returns the heat of fusion at t ≤ 0 °C, kJ/kg: L = h_water − h_ice.
//
// Check: 293.47 kJ/kg at −18 °C (IAPWS 293.05).
func LatentJPerG(t float64) float64 { return JPerG(t) - IceJPerG(t) }

// if97 holds the saturation line: IAPWS-IF97 (R7-97), region 4, table 34.
var if97 = [10]float64{
	0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
	-0.32325550322333e7, 0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6,
	-0.23855557567849e0, 0.65017534844798e3,
}

// SaturationPa returns the vapour pressure of liquid water at t °C, Pa.
// Valid 0 to 374 °C.
//
//	p = (2C/(−B + √(B² − 4AC)))⁴ MPa; A, B, C quadratic in θ = T + n₉/(T − n₁₀)
//
// Source: IAPWS-IF97 (R7-97), eq. 30. Check: table 35, 3536.58941 Pa at 300 K.
func SaturationPa(t float64) float64 {
	n := &if97
	k := t + ZeroC
	th := k + n[8]/(k-n[9])
	a := th*th + n[0]*th + n[1]
	b := n[2]*th*th + n[3]*th + n[4]
	c := n[5]*th*th + n[6]*th + n[7]
	x := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return x * x * x * x * 1e6
}

// AirPa returns the pressure of the air at an altitude in m, Pa; −400 to 11 000 m:
//
//	p = p₀(1 − 2.25577e-5 z)^5.25588
//
// Source: US Standard Atmosphere 1976, the troposphere formula of ICAO Doc 7488.
func AirPa(heightM float64) float64 {
	return StandardPressure * math.Pow(1-2.25577e-5*heightM, 5.25588)
}
