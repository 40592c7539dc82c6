package figure

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
)

// The columns of Nutrition.
const (
	Per100G = iota
	PerServing
)

// energy is the origin of the energy alone.
var energy = Origin{
	Inputs:   "grams of protein, carbohydrate, fat and alcohol, or the records' own factors",
	Equation: "4, 4, 9 and 7 kcal per g; or each record's specific factors",
	Source:   "21 CFR 101.9(c)(1)(i)(A) to (C) and (F); alcohol 7, from memory; USDA Handbook 74",
	Band:     records.Band,
}

// units are those of the records.
var units = map[string]Unit{"kcal": Kilocalories, "g": Grams, "mg": Milligrams, "µg": Micrograms}

// Nutrition holds what 100 g and a serving of the finished food have, in the
// order of a US panel.
var Nutrition = func() Table {
	t := Table{Key: "per_100_g, per_serving", Columns: []string{"per 100 g", "per serving"}}
	for _, n := range label.Nutrients {
		f := Row{Key: n.Key, Name: n.Name, Short: n.Name, Unit: units[n.Column.Unit()], Step: n.Step, Help: n.Help, Origin: records, from: nutrient(n.Column)}
		if n.Column == ingredient.Energy {
			f.Origin = energy
		}
		t.Rows = append(t.Rows, f)
	}
	return t
}()

// nutrient is a column of the ingredients' records, in the finished food.
func nutrient(c ingredient.Column) from {
	return from{of: func(r *model.Result, column int) Value {
		n := &r.Nutrition
		switch {
		case n.TotalMassG <= 0:
			return none
		case column == Per100G:
			return counted(n.Per100G[c])
		}
		return counted(n.PerServing[c])
	}, record: c}
}

// Record returns the column of the ingredients' records that a row of
// Nutrition sums.
func (f *Row) Record() ingredient.Column { return f.record }

// Servings divides the finished food.
var Servings = Table{Key: "nutrition", Columns: []string{"serving"}, Rows: []Row{
	{Key: "serving_g", Name: "Serving", Short: "serving", Unit: Mass, Step: 1, Help: "mass of a serving", Origin: serving,
		from: single(func(r *model.Result) float64 { return r.Nutrition.ServingG })},
	{Key: "serving_ml", Name: "Serving, by volume", Short: "serving", Unit: Volume, Step: 1, Help: "2/3 of a label's cup of 240 mL", Origin: serving,
		from: from{of: func(r *model.Result, _ int) Value { return exact(r.Nutrition.ServingML) }}},
	{Key: "servings_in_batch", Name: "Servings in the tubs", Short: "servings", Step: 0.1, Help: "in all tubs together", Origin: serving,
		from: single(func(r *model.Result) float64 { return r.Nutrition.ServingsTotal })},
}}

var serving = Origin{
	Inputs:   "density of the filling, its mass",
	Equation: "160 mL × density; mass ÷ that",
	Source:   "21 CFR 101.12(b), reference amount of a frozen dessert, 2/3 cup (read in secondary pages); cup: 21 CFR 101.9(b)(5)(viii)",
	Band:     density.Band,
}

// single is a figure that an empty tub has not.
func single(of func(*model.Result) float64) from {
	return from{of: func(r *model.Result, _ int) Value {
		return full(func(r *model.Result) Value { return exact(of(r)) })(r)
	}}
}
