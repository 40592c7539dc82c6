package report

import (
	"encoding/json"
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
)

const (
	fatColumn  = ingredient.Fat
	msnfColumn = ingredient.MSNF
)

// Nutrition is that of the finished food.
type Nutrition struct {
	EnergyMethod *string   `json:"energy_method"`
	ServingG     Number    `json:"serving_g"`
	ServingML    Number    `json:"serving_ml"`
	Servings     Number    `json:"servings_in_batch"`
	Per100G      Nutrients `json:"per_100_g"`
	PerServing   Nutrients `json:"per_serving"`

	// Incomplete names the figures that are only what is known of them.
	Incomplete []Gap `json:"incomplete"`
}

// Gap is a nutrient that some ingredients leave unknown.
type Gap struct {
	Nutrient    string   `json:"nutrient"`
	Ingredients []string `json:"ingredients"`
	Upper       Number   `json:"upper_per_100_g"` // the most there can be; null where nothing bounds it
}

// nutrient is a key of the nutrition in JSON.
type nutrient struct {
	key    string
	name   string
	unit   string
	column ingredient.Column
}

// nutrients are the keys, in the order of a US panel.
var nutrients = [...]nutrient{
	{"energy_kcal", "energy", "kcal", ingredient.Energy},
	{"fat_g", "fat", "g", ingredient.Fat},
	{"saturated_fat_g", "of which saturated", "g", ingredient.SaturatedFat},
	{"trans_fat_g", "of which trans", "g", ingredient.TransFat},
	{"cholesterol_mg", "cholesterol", "mg", ingredient.CholesterolMG},
	{"sodium_mg", "sodium", "mg", ingredient.SodiumMG},
	{"carbohydrate_g", "carbohydrate", "g", ingredient.Carbohydrate},
	{"fibre_g", "of which fibre", "g", ingredient.Fibre},
	{"sugars_g", "of which sugars", "g", ingredient.TotalSugars},
	{"added_sugars_g", "of which added", "g", ingredient.AddedSugars},
	{"protein_g", "protein", "g", ingredient.Protein},
	{"vitamin_d_ug", "vitamin D", "µg", ingredient.VitaminDUG},
	{"calcium_mg", "calcium", "mg", ingredient.CalciumMG},
	{"iron_mg", "iron", "mg", ingredient.IronMG},
	{"potassium_mg", "potassium", "mg", ingredient.PotassiumMG},
}

// Nutrients holds a figure for each of nutrients: the known part, null where
// nothing is known.
type Nutrients [len(nutrients)]Number

// MarshalJSON returns an object in the order of a panel.
func (n Nutrients) MarshalJSON() ([]byte, error) {
	b := []byte{'{'}
	for i, v := range n {
		if i > 0 {
			b = append(b, ',')
		}
		figure, err := json.Marshal(v)
		if err != nil {
			return nil, err
		}
		b = append(b, '"')
		b = append(b, nutrients[i].key...)
		b = append(b, '"', ':')
		b = append(b, figure...)
	}
	return append(b, '}'), nil
}

// knownPart returns what is known of a, unknown where nothing is.
func knownPart(a ingredient.Amount) Number {
	if a.Nothing() {
		return unknown
	}
	return Number(a.Known)
}

// partOf returns what is known of a column of a phase, mass %.
func partOf(p *model.Phase, c ingredient.Column) Number { return knownPart(p.PartPercent(c)) }

func nutritionReport(r *model.Result) Nutrition {
	n := &r.Nutrition
	out := Nutrition{ServingML: Number(n.ServingML), Incomplete: []Gap{}}
	if n.TotalMassG <= 0 {
		for i := range nutrients {
			out.Per100G[i], out.PerServing[i] = unknown, unknown
		}
		out.ServingG, out.Servings = unknown, unknown
		return out
	}
	out.EnergyMethod = &n.EnergyMethod
	out.ServingG, out.Servings = Number(n.ServingG), Number(n.ServingsTotal)
	for i, k := range nutrients {
		a := n.Per100G[k.column]
		out.Per100G[i], out.PerServing[i] = knownPart(a), knownPart(n.PerServing[k.column])
		if !a.Complete() {
			out.Incomplete = append(out.Incomplete, Gap{k.key, whoLacks(n.Incomplete, k.column), Number(a.Most)})
		}
	}
	return out
}

// whoLacks returns the ids of the ingredients that leave column c unknown; for
// the energy, those that leave unknown what it is counted from.
func whoLacks(gaps []model.Gap, c ingredient.Column) []string {
	from := []ingredient.Column{c}
	if c == ingredient.Energy {
		from = []ingredient.Column{ingredient.Fat, ingredient.Carbohydrate, ingredient.Fibre, ingredient.Protein}
	}
	who := []string{}
	for _, g := range gaps {
		if slices.Contains(from, g.Column) {
			who = append(who, g.Ingredients...)
		}
	}
	slices.Sort(who)
	return slices.Compact(who)
}
