package validate

import (
	"strings"

	"ripplewright/internal/form/flaw"
)

// titles are the tables' names for people.
var titles = map[string]flaw.Word{
	"sucrose_freezing_point":       "Freezing point of sucrose solutions",
	"glucose_freezing_point":       "Freezing point of glucose solutions",
	"fructose_freezing_point":      "Freezing point of fructose solutions",
	"lactose_freezing_point":       "Freezing point of lactose solutions",
	"maltose_freezing_point":       "Freezing point of maltose solutions",
	"mannitol_freezing_point":      "Freezing point of mannitol solutions",
	"glycerol_freezing_point":      "Freezing point of glycerol solutions",
	"nacl_freezing_point":          "Freezing point of salt solutions",
	"kcl_freezing_point":           "Freezing point of potassium chloride solutions",
	"ethanol_freezing_point":       "Freezing point of ethanol solutions",
	"brines_independent":           "Freezing point of brines, another source",
	"electrolytes_smithsonian":     "Freezing point of salts, another source",
	"freezing_model_reference":     "Water held beside ice, worked apart",
	"classical_sucrose_table":      "The classical sucrose table",
	"sucrose_ice_equilibrium":      "Sucrose beside ice by another model",
	"sucrose_osmotic_25C":          "Water activity of sucrose at 25 °C",
	"maximal_freeze_concentration": "Where freezing ends",
	"ice_water_equilibrium":        "Ice and water",
	"natural_freezing_points":      "Freezing point of milk, egg and mixes",
	"fruit_freezing_points":        "Freezing point of fruit",
	"mix_worked_example":           "The classical worked mix",
	"texture_model_reference":      "Ice, syrup and hardness, worked apart",
	"ice_fraction_published":       "Water frozen in ice cream",
	"hardness_published":           "Hardness of ice cream",
	"ice_crystal_model_reference":  "Growth of ice crystals, worked apart",
	"ice_crystal_published":        "Ice crystals in stored frozen desserts",
	"overrun_worked_examples":      "Overrun",
	"relative_sweetness":           "Sweetness of sugars and polyols",
	"sucrose_density_20C":          "Sucrose solutions at 20 °C, density",
	"glucose_density_20C":          "Glucose solutions at 20 °C, density",
	"fructose_density_20C":         "Fructose solutions at 20 °C, density",
	"sucrose_viscosity_20C":        "Sucrose solutions at 20 °C, viscosity", // the other figure of the table of density
	"glucose_viscosity_20C":        "Glucose solutions at 20 °C, viscosity",
	"fructose_viscosity_20C":       "Fructose solutions at 20 °C, viscosity",
	"dissolved_density_20C":        "Alcohol, glycerol and salts at 20 °C, density",
	"choi_okos_components":         "Properties of food components",
	"syrup_boiling":                "Boiling point of syrup",
	"syrup_solids_at_temperature":  "Solids of boiling syrup",
	"syrup_published":              "Solids of boiling syrup in other works",
	"meringue_mixing":              "Hot syrup into whites",
	"lethality":                    "Salmonella in a hot foam",
	"egg_masses":                   "Eggs by size",
	"altitude":                     "Cooking at altitude",
	"stefan_neumann":               "A front of ice in water",
	"heisler_series":               "Cooling of simple bodies",
	"pint_reference":               "A tub in the cold, a finer mesh",
	"still_freeze_reference":       "Freezing without a machine, worked apart",
	"surface_coefficients":         "Heat through a tub's surfaces",
	"foam_conductivity":            "Conductivity of foam",
	"freezing_time_slab":           "Freezing time of a slab",
	"marbling_maps":                "Strokes of a stick",
	"ripple_side_thickness":        "Ribbons seen from the side",
	"ripple_top_thickness":         "Ribbons seen from above",
	"label_rounding":               "Rounding on labels",
	"worked_mix_nutrition":         "Nutrition of a mix, worked by hand",
	"recipe_reconstructions":       "Nutrition of foods rebuilt from parts",
	"crosscheck_ifct2017":          "Another country's food table",
}

// figures are what stands in brackets where a table has several, and rows that are named
// already.
var figures = [...]flaw.Word{
	"cold model", "hot model", "activity", "latent heat", "ice density", "same solutes", "water frozen", "ice by volume", "syrup", "viscosity", "hardness",
	"mix density", "fructose by temperature", "rate", "what it rests on", "histories", "scatter of stored sizes", "bias of stored sizes", "Browne 1912",
	"Browne 1912, the stated band", "pressure", "water", "rule of thumb", "McGee", "small pans", "alone", "in a bowl", "egg white", "egg white with sugar",
	"thick sugar", "contents", "class", "sum", "trade", "exact solution", "temperature", "series", "wall surface", "hardening, slowest cell", "hardening, mean",
	"hardening, outer ring", "tempering, slowest cell", "tempering, mean", "tempering, outer ring", "between two formulas", "under a lid", "too small to declare",

	"cold and hot models at 0–25 °C", "a syrup of 115 °C keeps little water", "starting water does not matter", "outer ring of tubs of four sizes",
	"wall surface on meshes of several rings", "heat kept by an insulated tub", "heat through the faces", "Plank's freezing time", "ribbons by lines at every stroke",
	"mean spoonful over seeds",
}

// Title is the row's name for people, with the figure in brackets where its table has
// several; a row without a table is named already.
func (r *Row) Title() *flaw.Remark {
	table, figure, several := strings.Cut(strings.TrimSuffix(r.Table, ")"), " (")
	name, ok := titles[table]
	switch {
	case !ok:
		return flaw.Say("%s", flaw.Opening(r.Table))
	case strings.HasSuffix(string(name), ", density") && figure == "viscosity":
		return flaw.Say("%s", flaw.Word(strings.TrimSuffix(string(name), "density")+"viscosity"))
	case several:
		return flaw.Say("%s (%s)", name, flaw.Word(figure))
	}
	return flaw.Say("%s", name)
}
