package solution

import (
	"ripplewright/internal/matter/mix"
)

// Solute holds the freezing model's constants for one species.
//
// h (and for some k, q) were fitted to the freezing-point depressions of the
// CRC Handbook of Chemistry and Physics, 102nd ed. 2021, "Concentrative
// properties of aqueous solutions" (after Wolf 1966); one constant a solute
// but for sodium chloride and ethanol.
type Solute struct {
	Species mix.Species
	GPerMol float64 // g/mol
	Nu      float64 // osmotically active particles per formula, activity included
	H       float64 // hydration number at infinite dilution
	K, Q    float64 // further terms in y and y²
	Taper   bool    // hydration falls off in the concentrated liquid

	ColdestC float64 // °C down to which the constants hold; colder is extrapolation
	Origin   string  // "fitted", or what the estimate rests on
	Table    string  // name of the table under testdata/tables, or ""
}

// endOfFreezing marks solutes whose curve holds until ice stops growing.
const endOfFreezing = -46

// Solutes is the model's table of constants.
var Solutes = [...]Solute{
	tapered(mix.Sucrose, 342.296, 6.02, endOfFreezing, "fitted", "sucrose_freezing_point"),
	tapered(mix.Glucose, 180.155, 2.46, endOfFreezing, "fitted", "glucose_freezing_point"),
	tapered(mix.Fructose, 180.155, 1.85, endOfFreezing, "fitted", "fructose_freezing_point"),
	tapered(mix.Galactose, 180.155, 2.46, endOfFreezing, "as glucose", ""),
	tapered(mix.Lactose, 342.296, 6.02, endOfFreezing, "as sucrose; its table ends at 8 %", "lactose_freezing_point"),
	tapered(mix.Maltose, 342.296, 5.74, endOfFreezing, "fitted", "maltose_freezing_point"),
	tapered(mix.Mannitol, 182.171, 1.63, endOfFreezing, "fitted", "mannitol_freezing_point"),
	tapered(mix.Sorbitol, 182.17, 1.9, endOfFreezing, "estimate between glucose and glycerol", ""),
	tapered(mix.Xylitol, 152.15, 2.0, endOfFreezing, "estimate between glucose and glycerol", ""),
	tapered(mix.Erythritol, 122.12, 1.9, endOfFreezing, "estimate between glucose and glycerol", ""),
	tapered(mix.Maltitol, 344.3, 5.74, endOfFreezing, "as maltose", ""),
	tapered(mix.Lactitol, 344.3, 5.74, endOfFreezing, "as maltose", ""),
	tapered(mix.Isomalt, 344.3, 5.74, endOfFreezing, "as maltose", ""),
	tapered(mix.Trehalose, 342.3, 5.74, endOfFreezing, "as maltose", ""),
	tapered(mix.Allulose, 180.155, 1.85, endOfFreezing, "as fructose, of which it is the epimer", ""),
	tapered(mix.Glycerol, 92.094, 2.11, -28, "fitted from 5 %", "glycerol_freezing_point"),
	{Species: mix.Ethanol, GPerMol: 46.068, Nu: 1, H: -0.349, K: 24.76, Q: -82.56, ColdestC: -27, Origin: "fitted", Table: "ethanol_freezing_point"},
	{Species: mix.CitricAcid, GPerMol: 192.12, Nu: 1.1, ColdestC: -10, Origin: "estimate: ideal, 10 % dissociated"},
	{Species: mix.TartaricAcid, GPerMol: 150.09, Nu: 1.1, ColdestC: -10, Origin: "as citric acid, by molar mass"},
	{Species: mix.SodiumChloride, GPerMol: 58.443, Nu: 1.814, H: 0.668, K: 18.71, Q: -40.85, ColdestC: -21, Origin: "fitted", Table: "nacl_freezing_point"},
	{Species: mix.PotassiumChloride, GPerMol: 74.551, Nu: 1.79, ColdestC: -6.5, Origin: "fitted to 2 mol/kg", Table: "kcl_freezing_point"},
}

// tapered returns a solute of one constant, the hydration h, whose molecules
// stay whole in water.
func tapered(s mix.Species, molarMass, h, coldestC float64, origin, table string) Solute {
	return Solute{Species: s, GPerMol: molarMass, Nu: 1, H: h, Taper: true, ColdestC: coldestC, Origin: origin, Table: table}
}

// SoluteOf returns the constants of species s.
func SoluteOf(s mix.Species) (Solute, bool) {
	for _, so := range Solutes {
		if so.Species == s {
			return so, true
		}
	}
	return Solute{}, false
}

// Bound holds how much water never freezes and dissolves nothing: the largest
// freedom left in the model, which no published freezing point settles.
type Bound struct {
	ProteinGPerG float64 // g water per g protein; ASHRAE Refrigeration Handbook 2006, ch. 9: 0.4
	FibreGPerG   float64 // g water per g starch and fibre; 0.3, from memory
}

// The default, and the ends of the band. The upper end is the unfrozen water
// of casein, 0.64 g/g, Belitz, Grosch & Schieberle, Food Chemistry, table 0.7
// (authors from memory); the lower end is none at all.
var (
	DefaultBound = Bound{ProteinGPerG: 0.4, FibreGPerG: 0.3}
	LeastBound   = Bound{}
	MostBound    = Bound{ProteinGPerG: 0.64, FibreGPerG: 0.4}
)
