package ingredient

import (
	"fmt"
	"math"
)

// Inconsistencies says, in plain words, where the figures of a record do not
// fit together: proximates that do not make 100 g, sugars that do not make
// their total, parts larger than the whole. Published records have some; the
// caller decides whether to mind. The tolerances are common practice for
// records whose figures were analysed apart (no source).
func (in *Ingredient) Inconsistencies() []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	cell := func(c Column) float64 { return in.Cells[c].Or(0) }

	if in.known(Water, Protein, Fat, Carbohydrate) {
		sum := in.sum(Water, Protein, Fat, Carbohydrate, Ash, Alcohol)
		if math.Abs(sum-100) > 1.5 {
			say("the proximates sum to %.2f g", sum)
		}
	}
	if total := in.Cells[TotalSugars]; total.Known {
		if in.Pure == 0 && in.known(Sucrose, Glucose, Fructose, Lactose, Maltose, Galactose) {
			sum := in.sum(Sucrose, Glucose, Fructose, Lactose, Maltose, Galactose)
			if math.Abs(sum-total.Value) > max(0.5, 0.05*total.Value) {
				say("the single sugars sum to %.2f g of %.2f g total sugars", sum, total.Value)
			}
		}
		if carb := in.Cells[Carbohydrate]; carb.Known && total.Value > carb.Value+0.5 {
			say("the sugars of %.2f g exceed the carbohydrate, %.2f g", total.Value, carb.Value)
		}
		if cell(AddedSugars) > total.Value+1e-6 {
			say("the added sugars of %.2f g exceed all sugars, %.2f g", cell(AddedSugars), total.Value)
		}
	}
	if in.known(Carbohydrate, TotalSugars, Starch, HigherSaccharides, Polyols, Fibre) {
		sum := in.sum(TotalSugars, Starch, HigherSaccharides, Polyols, Fibre)
		if sum > cell(Carbohydrate)+3 {
			say("the parts of the carbohydrate sum to %.2f g of %.2f g", sum, cell(Carbohydrate))
		}
	}
	if fat := in.Cells[Fat]; fat.Known {
		if sum := in.sum(SaturatedFat, Monounsaturated, Polyunsaturated); sum > fat.Value*1.02+0.1 {
			say("the fatty acids sum to %.2f g of %.2f g fat", sum, fat.Value)
		}
		if cell(TransFat) > fat.Value+1e-9 {
			say("the trans fat of %.2f g exceeds the fat, %.2f g", cell(TransFat), fat.Value)
		}
		if in.sum(MilkFat, CocoaButter) > fat.Value+1e-6 {
			say("milk fat and cocoa butter exceed the fat, %.2f g", fat.Value)
		}
	}
	if water := in.Cells[Water]; water.Known {
		if sum := in.sum(MSNF, EggYolkSolids, CocoaSolidsFatFree); sum > 100-water.Value+0.01 {
			say("milk, yolk and cocoa solids of %.2f g exceed all solids, %.2f g", sum, 100-water.Value)
		}
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
