package ingredient

import "math"

// A DisagreementCode names figures of a record that do not fit together.
type DisagreementCode string

// The codes; package say has a sentence for each.
const (
	PartsOf100          DisagreementCode = "parts_of_100"          // water, protein, fat, carbohydrate, ash and alcohol
	PartsOfSugars       DisagreementCode = "parts_of_sugars"       // the single sugars
	SugarsAbove         DisagreementCode = "sugars_above"          // the sugars, and the carbohydrate that they are of
	AddedAbove          DisagreementCode = "added_above"           // the added sugars, and all sugars
	PartsOfCarbohydrate DisagreementCode = "parts_of_carbohydrate" // sugars, starch, longer sugars, sugar alcohols and fibre
	PartsOfFat          DisagreementCode = "parts_of_fat"          // the fatty acids
	TransAbove          DisagreementCode = "trans_above"           // the trans fat, and the fat
	OriginsOfFat        DisagreementCode = "origins_of_fat"        // milk fat and cocoa butter, and the fat
	OriginsOfSolids     DisagreementCode = "origins_of_solids"     // milk, yolk and cocoa solids, and all solids
)

// DisagreementCodes are all of them.
var DisagreementCodes = [...]DisagreementCode{PartsOf100, PartsOfSugars, SugarsAbove, AddedAbove, PartsOfCarbohydrate, PartsOfFat, TransAbove,
	OriginsOfFat, OriginsOfSolids}

// A Disagreement is figures that do not fit together: what they come to, and what
// they should, in 100 g.
type Disagreement struct {
	Code         DisagreementCode
	FoundG, DueG float64
}

// Disagreements says where the figures of a record do not fit together. Published
// records have some; the caller decides whether to mind. The tolerances are common
// practice for records whose figures were analysed apart (no source).
func (in *Ingredient) Disagreements() []Disagreement {
	var out []Disagreement
	above := func(code DisagreementCode, found, due, tolerance float64) {
		if found > due+tolerance {
			out = append(out, Disagreement{code, found, due})
		}
	}
	apart := func(code DisagreementCode, found, due, tolerance float64) {
		if math.Abs(found-due) > tolerance {
			out = append(out, Disagreement{code, found, due})
		}
	}
	if in.known(Water, Protein, Fat, Carbohydrate) {
		apart(PartsOf100, in.sum(Water, Protein, Fat, Carbohydrate, Ash, Alcohol), 100, 1.5)
	}
	if total := in.Cells[TotalSugars]; total.Known {
		if in.Pure == 0 && in.known(Sucrose, Glucose, Fructose, Lactose, Maltose, Galactose) {
			apart(PartsOfSugars, in.sum(Sucrose, Glucose, Fructose, Lactose, Maltose, Galactose), total.Value, max(0.5, 0.05*total.Value))
		}
		if carb := in.Cells[Carbohydrate]; carb.Known {
			above(SugarsAbove, total.Value, carb.Value, 0.5)
		}
		above(AddedAbove, in.sum(AddedSugars), total.Value, 1e-6)
	}
	if in.known(Carbohydrate, TotalSugars, Starch, HigherSaccharides, Polyols, Fibre) {
		above(PartsOfCarbohydrate, in.sum(TotalSugars, Starch, HigherSaccharides, Polyols, Fibre), in.sum(Carbohydrate), 3)
	}
	if fat := in.Cells[Fat]; fat.Known {
		above(PartsOfFat, in.sum(SaturatedFat, Monounsaturated, Polyunsaturated), fat.Value, 0.02*fat.Value+0.1)
		above(TransAbove, in.sum(TransFat), fat.Value, 1e-9)
		above(OriginsOfFat, in.sum(MilkFat, CocoaButter), fat.Value, 1e-6)
	}
	if water := in.Cells[Water]; water.Known {
		above(OriginsOfSolids, in.sum(MSNF, EggYolkSolids, CocoaSolidsFatFree), 100-water.Value, 0.01)
	}
	return out
}

func (in *Ingredient) known(columns ...Column) bool {
	for _, c := range columns {
		if !in.Cells[c].Known {
			return false
		}
	}
	return true
}

// sum adds the known figures.
func (in *Ingredient) sum(columns ...Column) float64 {
	var s float64
	for _, c := range columns {
		s += in.Cells[c].Or(0)
	}
	return s
}
