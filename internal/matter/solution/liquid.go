package solution

import (
	"math"

	"ripplewright/internal/matter/mix"
)

// genotelle holds the viscosity formula's coefficients (Genotelle, from
// memory; within 3.5 % of every viscosity to 70 % in the CRC Handbook's
// sucrose table at 20 °C).
var genotelle = struct{ a, b, c, d, exp float64 }{22.46, -0.114, 1.1, 43.1, 1.25}

// ViscosityRange is where Viscosity follows the formula: sugars in the syrup,
// mass %, and °C. Beyond either end it stops there; below 0 °C the formula is
// an extrapolation that nothing published checks.
var ViscosityRange = struct{ MaxPercent, MinC float64 }{75, -25}

// ViscosityPaS returns the viscosity, Pa s, of a syrup with so many mass % of
// sucrose, w, at t °C. See ViscosityRange, and SucroseAsThickPercent for other
// sugars.
//
//	lg η = 22.46 N − 0.114 + (30 − t)/(91 + t) · (1.1 + 43.1 N^1.25), η in mPa s,
//	N = w/(1900 − 18w)
//
// Source: Genotelle, from memory. Check: 3.6067 Pa s at 61.868 % and −18 °C.
func ViscosityPaS(percent, t float64) float64 {
	v, _ := ViscositySlope(percent, t)
	return v
}

// thickens is how much sucrose thickens water as much as a gram of each
// saccharide does, g.
//
// Fitted to the viscosities of the CRC Handbook at 20 °C (102nd ed.,
// "Concentrative properties of aqueous solutions";
// testdata/tables/*_density_20C.csv), one constant a sugar: with it Viscosity
// meets glucose to 58 % and fructose to 46 % within 3.6 %, which is what the
// formula's own 3.5 % for sucrose leaves. Galactose is taken as glucose;
// everything else as sucrose (an estimate: the higher saccharides of a glucose
// syrup are thicker).
var thickens = func() (f [mix.NumSpecies]float64) {
	for _, s := range saccharides {
		f[s] = 1
	}
	f[mix.Glucose], f[mix.Galactose], f[mix.Fructose] = 0.949, 0.949, 0.921
	return f
}()

// SucroseAsThickPercent returns the mass % of the sucrose syrup that is as viscous as
// the liquid of m's saccharides and its water, 100 Σ f·g/(Σ g + W); ViscosityPaS
// takes it from there.
// In a mixture each sugar counts by its mass (an estimate; exact where they
// thicken alike), and at other temperatures than 20 °C liquids equally thick
// there are taken to stay so (an estimate).
//
// The hardness law does not use it: its film is that of sucrose at the same
// solids, see package phase.
func SucroseAsThickPercent(m mix.Mix) float64 {
	sum, all := 0.0, m.Grams[mix.Water]
	for _, s := range saccharides {
		sum += thickens[s] * m.Grams[s]
		all += m.Grams[s]
	}
	if all == 0 {
		return 0
	}
	return 100 * sum / all
}

// ViscositySlope returns the viscosity as ViscosityPaS does, and its derivative
// with respect to w, Pa s per mass %.
func ViscositySlope(percent, t float64) (etaPaS, perPercent float64) {
	capped := percent > ViscosityRange.MaxPercent
	percent = clamp(percent, 0, ViscosityRange.MaxPercent)
	t = math.Max(t, ViscosityRange.MinC)
	n := percent / (1900 - 18*percent)
	ft := (30 - t) / (91 + t)
	ln := math.Ln10 * (genotelle.a*n + genotelle.b + ft*(genotelle.c+genotelle.d*math.Pow(n, genotelle.exp)))
	etaPaS = math.Exp(ln) / 1000
	if capped || n == 0 {
		return etaPaS, 0
	}
	dn := 1900 / ((1900 - 18*percent) * (1900 - 18*percent))
	return etaPaS, etaPaS * math.Ln10 * dn * (genotelle.a + ft*genotelle.d*genotelle.exp*math.Pow(n, genotelle.exp-1))
}
