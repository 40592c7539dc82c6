package ingredient

import "strings"

// Column is one figure of a composition record, per 100 g of the ingredient.
type Column uint8

// The columns, in the order and under the names of the library file. Their
// unit is g per 100 g unless the name ends in MG (mg) or UG (µg) or is Energy
// (kcal). MilkFat to CocoaButter are parts of the record's own solids, kept
// for standards of identity; they are never added to the proximates.
const (
	Water Column = iota
	Energy
	Protein
	Fat
	SaturatedFat
	TransFat
	Monounsaturated
	Polyunsaturated
	CholesterolMG
	Carbohydrate
	Fibre
	TotalSugars
	Sucrose
	Glucose
	Fructose
	Lactose
	Maltose
	Galactose
	Starch
	HigherSaccharides
	Polyols
	AddedSugars
	Alcohol
	Ash
	SodiumMG
	PotassiumMG
	CalciumMG
	IronMG
	MagnesiumMG
	PhosphorusMG
	VitaminDUG
	MilkFat
	MSNF
	EggYolkSolids
	CocoaSolidsFatFree
	CocoaButter
	NumColumns
)

var columnNames = [NumColumns]string{
	"water", "energy_kcal", "protein", "fat", "saturated_fat", "trans_fat", "monounsat", "polyunsat",
	"cholesterol_mg", "carbohydrate", "fibre", "total_sugars", "sucrose", "glucose", "fructose",
	"lactose", "maltose", "galactose", "starch", "higher_saccharides", "polyols", "added_sugars",
	"alcohol", "ash", "sodium_mg", "potassium_mg", "calcium_mg", "iron_mg", "magnesium_mg",
	"phosphorus_mg", "vitamin_d_ug", "milk_fat", "msnf", "egg_yolk_solids",
	"cocoa_solids_fat_free", "cocoa_butter",
}

// String returns the column's name in files.
func (c Column) String() string {
	if c >= NumColumns {
		return "unknown column"
	}
	return columnNames[c]
}

// Words returns what the column is called in a sentence: "saturated fat".
func (c Column) Words() string {
	name := strings.TrimSuffix(strings.TrimSuffix(c.String(), "_mg"), "_ug")
	switch name = strings.ReplaceAll(name, "_", " "); name {
	case "energy kcal":
		return "energy"
	case "vitamin d":
		return "vitamin D"
	case "msnf":
		return "milk solids-not-fat"
	case "monounsat", "polyunsat":
		return name + "urated fat"
	}
	return name
}

// Unit returns the column's unit per 100 g.
func (c Column) Unit() string {
	switch name := c.String(); {
	case c == Energy:
		return "kcal"
	case strings.HasSuffix(name, "_mg"):
		return "mg"
	case strings.HasSuffix(name, "_ug"):
		return "µg"
	}
	return "g"
}

// ColumnNamed returns the column with that file name.
func ColumnNamed(name string) (Column, bool) {
	for i, n := range columnNames {
		if n == name {
			return Column(i), true
		}
	}
	return 0, false
}

// parent says which figure bounds an unknown one from above: a fatty acid is
// no more than the fat, a sugar no more than the carbohydrate.
func (c Column) parent() (Column, bool) {
	switch c {
	case SaturatedFat, TransFat, Monounsaturated, Polyunsaturated, MilkFat, CocoaButter:
		return Fat, true
	case Fibre, TotalSugars, Starch, HigherSaccharides, Polyols:
		return Carbohydrate, true
	case Sucrose, Glucose, Fructose, Lactose, Maltose, Galactose, AddedSugars:
		return TotalSugars, true
	}
	return 0, false
}
