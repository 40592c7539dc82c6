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
	Species   mix.Species
	MolarMass float64 // g/mol
	Nu        float64 // osmotically active particles per formula, activity included
	H         float64 // hydration number at infinite dilution
	K, Q      float64 // further terms in y and y²
	Taper     bool    // hydration falls off in the concentrated liquid

	ColdestC float64 // °C down to which the constants hold; colder is extrapolation
	Origin   string  // "fitted", or what the estimate rests on
	Table    string  // name of the table under testdata/tables, or ""
}

// endOfFreezing marks solutes whose curve holds until ice stops growing.
const endOfFreezing = -46

// Solutes is the model's table of constants.
var Solutes = [...]Solute{
	{mix.Sucrose, 342.296, 1, 6.02, 0, 0, true, endOfFreezing, "fitted", "sucrose_freezing_point"},
	{mix.Glucose, 180.155, 1, 2.46, 0, 0, true, endOfFreezing, "fitted", "glucose_freezing_point"},
	{mix.Fructose, 180.155, 1, 1.85, 0, 0, true, endOfFreezing, "fitted", "fructose_freezing_point"},
	{mix.Galactose, 180.155, 1, 2.46, 0, 0, true, endOfFreezing, "as glucose", ""},
	{mix.Lactose, 342.296, 1, 6.02, 0, 0, true, endOfFreezing, "as sucrose; its table ends at 8 %", "lactose_freezing_point"},
	{mix.Maltose, 342.296, 1, 5.74, 0, 0, true, endOfFreezing, "fitted", "maltose_freezing_point"},
	{mix.Mannitol, 182.171, 1, 1.63, 0, 0, true, endOfFreezing, "fitted", "mannitol_freezing_point"},
	{mix.Sorbitol, 182.17, 1, 1.9, 0, 0, true, endOfFreezing, "estimate between glucose and glycerol", ""},
	{mix.Xylitol, 152.15, 1, 2.0, 0, 0, true, endOfFreezing, "estimate between glucose and glycerol", ""},
	{mix.Erythritol, 122.12, 1, 1.9, 0, 0, true, endOfFreezing, "estimate between glucose and glycerol", ""},
	{mix.Maltitol, 344.3, 1, 5.74, 0, 0, true, endOfFreezing, "as maltose", ""},
	{mix.Lactitol, 344.3, 1, 5.74, 0, 0, true, endOfFreezing, "as maltose", ""},
	{mix.Isomalt, 344.3, 1, 5.74, 0, 0, true, endOfFreezing, "as maltose", ""},
	{mix.Trehalose, 342.3, 1, 5.74, 0, 0, true, endOfFreezing, "as maltose", ""},
	{mix.Allulose, 180.155, 1, 1.85, 0, 0, true, endOfFreezing, "as fructose, of which it is the epimer", ""},
	{mix.Glycerol, 92.094, 1, 2.11, 0, 0, true, -28, "fitted from 5 %", "glycerol_freezing_point"},
	{mix.Ethanol, 46.068, 1, -0.349, 24.76, -82.56, false, -27, "fitted", "ethanol_freezing_point"},
	{mix.CitricAcid, 192.12, 1.1, 0, 0, 0, false, -10, "estimate: ideal, 10 % dissociated", ""},
	{mix.TartaricAcid, 150.09, 1.1, 0, 0, 0, false, -10, "as citric acid, by molar mass", ""},
	{mix.SodiumChloride, 58.443, 1.814, 0.668, 18.71, -40.85, false, -21, "fitted", "nacl_freezing_point"},
	{mix.PotassiumChloride, 74.551, 1.79, 0, 0, 0, false, -6.5, "fitted to 2 mol/kg", "kcl_freezing_point"},
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
	Protein float64 // g water per g protein; ASHRAE Refrigeration Handbook 2006, ch. 9: 0.4
	Fibre   float64 // g water per g starch and fibre; 0.3, from memory
}

// The default, and the ends of the band. The upper end is the unfrozen water
// of casein, 0.64 g/g, Belitz, Grosch & Schieberle, Food Chemistry, table 0.7
// (authors from memory); the lower end is none at all.
var (
	DefaultBound = Bound{Protein: 0.4, Fibre: 0.3}
	LeastBound   = Bound{}
	MostBound    = Bound{Protein: 0.64, Fibre: 0.4}
)
