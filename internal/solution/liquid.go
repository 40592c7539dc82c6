package solution

import (
	"math"

	"ripplewright/internal/mix"
	"ripplewright/internal/water"
)

// genotelle holds the viscosity formula's coefficients (Genotelle, from
// memory; within 3.5 % of every viscosity to 70 % in the CRC Handbook's
// sucrose table at 20 °C).
var genotelle = struct{ a, b, c, d, exp float64 }{22.46, -0.114, 1.1, 43.1, 1.25}

// ViscosityRange is where Viscosity follows the formula: sugars in the syrup,
// mass %, and °C. Beyond either end it stops there; below 0 °C the formula is
// an extrapolation that nothing published checks.
var ViscosityRange = struct{ MaxPercent, MinC float64 }{75, -25}

// Viscosity returns the viscosity, Pa s, of a syrup with w mass % of sugars at
// t °C. See ViscosityRange.
//
// Check: 3.6067 Pa s at 61.868 % and −18 °C.
func Viscosity(w, t float64) float64 {
	v, _ := ViscositySlope(w, t)
	return v
}

// ViscositySlope returns the viscosity as Viscosity does, and its derivative
// with respect to w, Pa s per mass %.
func ViscositySlope(w, t float64) (eta, perPercent float64) {
	capped := w > ViscosityRange.MaxPercent
	w = clamp(w, 0, ViscosityRange.MaxPercent)
	t = math.Max(t, ViscosityRange.MinC)
	n := w / (1900 - 18*w)
	ft := (30 - t) / (91 + t)
	ln := math.Ln10 * (genotelle.a*n + genotelle.b + ft*(genotelle.c+genotelle.d*math.Pow(n, genotelle.exp)))
	eta = math.Exp(ln) / 1000
	if capped || n == 0 {
		return eta, 0
	}
	dn := 1900 / ((1900 - 18*w) * (1900 - 18*w))
	return eta, eta * math.Ln10 * dn * (genotelle.a + ft*genotelle.d*genotelle.exp*math.Pow(n, genotelle.exp-1))
}

// sugarVolume is the specific volume of a saccharide in solution at 20 °C,
// mL/g: first + perFraction·x, x the share of all saccharides in saccharide and
// water.
//
// Fitted to the densities in the CRC Handbook (102nd ed., "Concentrative
// properties of aqueous solutions"; testdata/tables/*_density_20C.csv), which
// it meets within 0.1 % for sucrose to 84 %, 0.03 % for glucose to 58 % and
// 0.01 % for fructose to 46 %. Galactose is taken as glucose; everything else,
// disaccharides, higher saccharides and polyols, as sucrose (an estimate).
var sugarVolume = func() (v [mix.NumSpecies]struct{ first, perFraction float64 }) {
	for i := range v {
		v[i].first, v[i].perFraction = 0.6104, 0.0309
	}
	v[mix.Glucose].first, v[mix.Glucose].perFraction = 0.6183, 0.0287
	v[mix.Galactose] = v[mix.Glucose]
	v[mix.Fructose].first, v[mix.Fructose].perFraction = 0.6094, 0.0306
	return v
}()

// sugarPerKelvin is by how much of itself sugarVolume grows per kelvin: as Choi
// & Okos 1986 give carbohydrate.
const sugarPerKelvin = 1.94e-4

// saccharides lists the species that sugarVolume is for.
var saccharides = func() (list []mix.Species) {
	list = append(append(list, mix.Sugars[:]...), mix.Polyols[:]...)
	return append(list, mix.HigherSaccharides)
}()

// sugarSums returns the sums of m's saccharides times the two constants of
// sugarVolume.
func sugarSums(m *mix.Mix) (first, perFraction float64) {
	for _, s := range saccharides {
		g := m.Mass[s]
		first += g * sugarVolume[s].first
		perFraction += g * sugarVolume[s].perFraction
	}
	return first, perFraction
}

// Densities of the other components, kg/m³, A + B·t: Choi & Okos 1986 (as in
// package water). Ethanol: 789 at 20 °C, CRC Handbook (from memory); the
// contraction of ethanol with water is left out.
var (
	proteinDensity = [2]float64{1329.9, -0.51840}
	fatDensity     = [2]float64{925.59, -0.41757}
	carbDensity    = [2]float64{1599.1, -0.31046}
	fibreDensity   = [2]float64{1311.5, -0.36589}
	ashDensity     = [2]float64{2423.8, -0.28063}
	ethanolDensity = [2]float64{806, -0.85}
)

func volume(g float64, d [2]float64, t float64) float64 {
	if g == 0 {
		return 0
	}
	return 1000 * g / (d[0] + d[1]*t)
}

// solidsVolume returns the volume of all of m but water and saccharides, mL: the
// part that is linear in the masses.
func solidsVolume(m *mix.Mix, t float64) float64 {
	return volume(m.Mass[mix.Protein], proteinDensity, t) +
		volume(m.Mass[mix.Fat], fatDensity, t) +
		volume(m.Mass[mix.Starch]+m.Mass[mix.OtherSolids]+m.Mass[mix.CitricAcid], carbDensity, t) +
		volume(m.Mass[mix.Fibre], fibreDensity, t) +
		volume(m.Mass[mix.Ash]+m.Mass[mix.SodiumChloride]+m.Mass[mix.PotassiumChloride], ashDensity, t) +
		volume(m.Mass[mix.Ethanol], ethanolDensity, t)
}

// Volume returns the volume of m, mL, without ice or air at t °C, −30 to 100.
//
// Source: volumes add, 1/ρ = Σ x/ρ (ASHRAE Refrigeration Handbook 2006, ch. 9),
// with dissolved sugars at their volume in solution.
func Volume(m mix.Mix, t float64) float64 {
	rest := solidsVolume(&m, t)
	w, s := m.Mass[mix.Water], m.Saccharides()
	rest += 1000 * w / water.Density(t)
	if s > 0 {
		first, per := sugarSums(&m)
		rest += (first + per*s/(s+w)) * (1 + sugarPerKelvin*(t-20))
	}
	return rest
}

// VolumeSlope returns the derivative of Volume along d, mL per unit of d.
func VolumeSlope(m, d mix.Mix, t float64) float64 {
	v := solidsVolume(&d, t)
	w, s := m.Mass[mix.Water], m.Saccharides()
	dw, ds := d.Mass[mix.Water], d.Saccharides()
	v += 1000 * dw / water.Density(t)
	if s+w > 0 {
		dx := (ds*w - s*dw) / ((s + w) * (s + w))
		_, per := sugarSums(&m)
		dFirst, dPer := sugarSums(&d)
		v += (dFirst + dPer*s/(s+w) + per*dx) * (1 + sugarPerKelvin*(t-20))
	}
	return v
}

// Density returns that of m without ice or air at t °C, g/mL.
//
// Check: sucrose 40 % at 20 °C, 1.1765 g/mL (CRC Handbook); ours is 0.05 % off.
func Density(m mix.Mix, t float64) float64 { return m.Total() / Volume(m, t) }
