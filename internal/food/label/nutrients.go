package label

import "ripplewright/internal/food/ingredient"

// A Nutrient is a figure of the ingredients' records that a panel declares, in
// Column.Unit().
type Nutrient struct {
	Column ingredient.Column
	Key    string  // in JSON, a promise
	Name   string  // in words
	Step   float64 // the finest worth printing
	Help   string  // what the name leaves open
	line   figure  // what a US panel declares
}

// Nutrients are in the order of a US panel, 21 CFR 101.9(c) and (d)(7) to (8). Sugar
// alcohols are not among them: few tables report them, and an unknown one counts as
// the carbohydrate it is part of.
var Nutrients = []Nutrient{
	{ingredient.Energy, "energy_kcal", "Energy", 1, "by energy_method", energyUS},
	{ingredient.Fat, "fat_g", "Fat", 0.1, "", fat},
	{ingredient.SaturatedFat, "saturated_fat_g", "Saturated fat", 0.1, "", saturated},
	{ingredient.TransFat, "trans_fat_g", "Trans fat", 0.1, "", trans},
	{ingredient.CholesterolMG, "cholesterol_mg", "Cholesterol", 1, "", cholesterolMG},
	{ingredient.SodiumMG, "sodium_mg", "Sodium", 1, "", sodiumMG},
	{ingredient.Carbohydrate, "carbohydrate_g", "Carbohydrate", 0.1, "with fibre", carbohydrate},
	{ingredient.Fibre, "fibre_g", "Fibre", 0.1, "", fibre},
	{ingredient.TotalSugars, "sugars_g", "Sugars", 0.1, "as sugars_percent of the tub", sugars},
	{ingredient.AddedSugars, "added_sugars_g", "Added sugars", 0.1, "", addedSugars},
	{ingredient.Protein, "protein_g", "Protein", 0.1, "by the records' own nitrogen factors", protein},
	{ingredient.VitaminDUG, "vitamin_d_ug", "Vitamin D", 0.1, "", vitaminD},
	{ingredient.CalciumMG, "calcium_mg", "Calcium", 1, "", calcium},
	{ingredient.IronMG, "iron_mg", "Iron", 0.1, "", iron},
	{ingredient.PotassiumMG, "potassium_mg", "Potassium", 1, "", potassium},
}
