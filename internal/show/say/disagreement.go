package say

import "ripplewright/internal/food/ingredient"

// Disagreement says which figures of a record do not fit together.
func Disagreement(s Style, d ingredient.Disagreement) string {
	found, due := s.MassTo(d.FoundG, 2), s.MassTo(d.DueG, 2)
	switch d.Code {
	case ingredient.PartsOf100:
		return "Water, protein, fat, carbohydrate and ash come to " + found + " in " + s.Mass(100) + "."
	case ingredient.PartsOfSugars:
		return "The single sugars come to " + found + ", all sugars are " + due + "."
	case ingredient.SugarsAbove:
		return "The sugars are " + found + ", more than the carbohydrate, " + due + "."
	case ingredient.AddedAbove:
		return "The added sugars are " + found + ", more than all sugars, " + due + "."
	case ingredient.PartsOfCarbohydrate:
		return "The parts of the carbohydrate come to " + found + ", it is " + due + "."
	case ingredient.PartsOfFat:
		return "The fatty acids come to " + found + ", the fat is " + due + "."
	case ingredient.TransAbove:
		return "The trans fat is " + found + ", more than the fat, " + due + "."
	case ingredient.OriginsOfFat:
		return "Milk fat and cocoa butter come to " + found + ", the fat is " + due + "."
	case ingredient.OriginsOfSolids:
		return "Milk, yolk and cocoa solids come to " + found + ", all solids are " + due + "."
	}
	return string(d.Code)
}

// Disagreements says them all.
func Disagreements(s Style, list []ingredient.Disagreement) []string {
	var out []string
	for _, d := range list {
		out = append(out, Disagreement(s, d))
	}
	return out
}

// EnergyDoubt says that a pack's figures do not make the energy that it says.
func EnergyDoubt(s Style, makesKcal, saysKcal float64) string {
	return "Fat, carbohydrate and protein make about " + s.Number(makesKcal, 0) + " kcal, the pack says " + s.Number(saysKcal, 0) + ": is a figure in the wrong field?"
}
