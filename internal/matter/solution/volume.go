package solution

import (
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/water"
)

// specificVolume is what a gram of a dissolved substance adds to the volume of
// its water at 20 °C, mL/g: a + b·x + c·x², x its mass share of the solution.
type specificVolume struct{ a, b, c float64 }

// volumes has the constants of every dissolved substance.
//
// Sucrose, glucose and fructose were fitted to the densities in the CRC Handbook
// (102nd ed., "Concentrative properties of aqueous solutions";
// testdata/tables/*_density_20C.csv), met within 0.1 % for sucrose to 84 %,
// 0.03 % for glucose to 58 % and 0.01 % for fructose to 46 %. Glycerol, ethanol
// and the salts were fitted to testdata/tables/dissolved_density_20C.csv, whose
// figures are from memory, within 0.15 %. Galactose and the polyols have partial
// molar volumes at infinite dilution, brought to 20 °C (Høiland & Holvik 1978,
// J. Solution Chem. 7:587, from memory), with the b of the sugars. Citric acid:
// CRC Handbook, from memory; tartaric acid is taken as citric acid, allulose as
// fructose (estimates). Other disaccharides and the higher saccharides are
// taken as sucrose (an estimate).
var volumes = func() (v [mix.NumSpecies]specificVolume) {
	for _, s := range saccharides {
		v[s] = specificVolume{a: 0.6104, b: 0.0309}
	}
	v[mix.Glucose] = specificVolume{a: 0.6183, b: 0.0287}
	v[mix.Fructose] = specificVolume{a: 0.6094, b: 0.0306}
	v[mix.Allulose] = v[mix.Fructose]
	v[mix.Galactose] = specificVolume{a: 0.608, b: crowding}
	v[mix.Mannitol] = specificVolume{a: 0.652, b: crowding}
	v[mix.Sorbitol] = specificVolume{a: 0.654, b: crowding}
	v[mix.Xylitol] = specificVolume{a: 0.668, b: crowding}
	v[mix.Erythritol] = specificVolume{a: 0.708, b: crowding}
	v[mix.Glycerol] = specificVolume{a: 0.7660, b: 0.018}
	v[mix.Ethanol] = specificVolume{a: 1.1652, b: -0.0905, c: 0.2573}
	v[mix.SodiumChloride] = specificVolume{a: 0.2955, b: 0.265}
	v[mix.PotassiumChloride] = specificVolume{a: 0.3700, b: 0.180}
	v[mix.CitricAcid] = specificVolume{a: 0.598, b: 0.1}
	v[mix.TartaricAcid] = v[mix.CitricAcid]
	return v
}()

// crowding is the b of sugars whose densities were not read: glucose, sucrose
// and fructose lie between 0.0287 and 0.0309.
const crowding = 0.03

// saccharides lists the sugars, polyols and higher saccharides. Dissolved
// together they are one syrup: x of each is the share of all in all and water.
var saccharides = func() (list []mix.Species) {
	list = append(append(list, mix.Sugars[:]...), mix.Polyols[:]...)
	return append(list, mix.HigherSaccharides)
}()

// apart lists what else dissolves; x of each is its share in itself and water.
var apart = [...]mix.Species{mix.Ethanol, mix.SodiumChloride, mix.PotassiumChloride, mix.CitricAcid, mix.TartaricAcid}

// dissolvedPerKelvin is by how much of itself the volume of what is dissolved
// grows per kelvin: what the cubical expansion of sucrose solutions at 20 °C
// leaves when the water's is taken off, 20 to 60 % (Plato 1900, from memory).
// Dry carbohydrate grows by a third of that (Choi & Okos 1986).
const dissolvedPerKelvin = 6.5e-4

// dissolved returns the volume of what is dissolved in m, mL, and its
// derivative along d.
func dissolved(m, d *mix.Mix, t float64) (v, slope float64) {
	w, dw := m.Grams[mix.Water], d.Grams[mix.Water]
	one := func(s mix.Species, x, dx float64) {
		k, g, dg := &volumes[s], m.Grams[s], d.Grams[s]
		v += g * (k.a + x*(k.b+x*k.c))
		slope += dg*(k.a+x*(k.b+x*k.c)) + g*dx*(k.b+2*x*k.c)
	}
	x, dx := shareOf(m.SaccharidesG(), w, d.SaccharidesG(), dw)
	for _, s := range saccharides {
		one(s, x, dx)
	}
	for _, s := range apart {
		x, dx := shareOf(m.Grams[s], w, d.Grams[s], dw)
		one(s, x, dx)
	}
	warmth := 1 + dissolvedPerKelvin*(t-20)
	return v * warmth, slope * warmth
}

// shareOf returns g/(g+w) and its derivative.
func shareOf(g, w, dg, dw float64) (x, dx float64) {
	all := g + w
	if all == 0 {
		return 0, 0
	}
	return g / all, (dg*w - g*dw) / (all * all)
}

// solidsVolume returns the volume of what is not dissolved in m, mL: the part
// that is linear in the masses.
func solidsVolume(m *mix.Mix, t float64) float64 {
	c := &Components
	volume := func(g float64, c *Component) float64 {
		if g == 0 {
			return 0
		}
		return 1000 * g / At(c.KGPerM3, t)
	}
	return volume(m.Grams[mix.Protein], &c.Protein) + volume(m.Grams[mix.Fat], &c.Fat) +
		volume(m.Grams[mix.Starch]+m.Grams[mix.OtherSolids], &c.Carbohydrate) +
		volume(m.Grams[mix.Fibre], &c.Fibre) + volume(m.Grams[mix.Ash], &c.Ash)
}

// VolumeML returns the volume of m, mL, without ice or air at t °C, −30 to 100.
//
//	V = W/ρ_water + Σ g/ρ + (1 + 6.5e-4(t − 20)) Σ g(a + bx + cx²)
//
// Source: volumes add, 1/ρ = Σ x/ρ (ASHRAE Refrigeration Handbook 2006, ch. 9),
// with what is dissolved, the last sum, at its volume in solution: see volumes.
func VolumeML(m mix.Mix, t float64) float64 {
	v, _ := dissolved(&m, &mix.Mix{}, t)
	return v + solidsVolume(&m, t) + 1000*m.Grams[mix.Water]/water.KGPerM3(t)
}

// VolumeSlopeMLPerG returns the derivative of VolumeML along d, mL per unit of d.
func VolumeSlopeMLPerG(m, d mix.Mix, t float64) float64 {
	_, slope := dissolved(&m, &d, t)
	return slope + solidsVolume(&d, t) + 1000*d.Grams[mix.Water]/water.KGPerM3(t)
}

// GPerML returns that of m without ice or air at t °C, g/mL.
//
// Check: sucrose 40 % at 20 °C, 1.1765 g/mL (CRC Handbook); ours is 0.05 % off.
func GPerML(m mix.Mix, t float64) float64 { return m.TotalG() / VolumeML(m, t) }
