package say

import "ripplewright/internal/food/ingredient"

// Disagreement says which figures of a record do not fit together.
func Disagreement(s Style, d ingredient.Disagreement) string {
	found, due := s.MassTo(d.FoundG, 2), s.MassTo(d.DueG, 2)
	switch d.Code {
	case ingredient.PartsOf100:
		return T("Water, protein, fat, carbohydrate and ash come to %s in %s.", found, s.Mass(100))
	case ingredient.PartsOfSugars:
		return T("The single sugars come to %s, all sugars are %s.", found, due)
	case ingredient.SugarsAbove:
		return T("The sugars are %s, more than the carbohydrate, %s.", found, due)
	case ingredient.AddedAbove:
		return T("The added sugars are %s, more than all sugars, %s.", found, due)
	case ingredient.PartsOfCarbohydrate:
		return T("The parts of the carbohydrate come to %s, it is %s.", found, due)
	case ingredient.PartsOfFat:
		return T("The fatty acids come to %s, the fat is %s.", found, due)
	case ingredient.TransAbove:
		return T("The trans fat is %s, more than the fat, %s.", found, due)
	case ingredient.OriginsOfFat:
		return T("Milk fat and cocoa butter come to %s, the fat is %s.", found, due)
	case ingredient.OriginsOfSolids:
		return T("Milk, yolk and cocoa solids come to %s, all solids are %s.", found, due)
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
	return T("Fat, carbohydrate and protein make about %s kcal, the pack says %s: is a figure in the wrong field?", s.Number(makesKcal, 0), s.Number(saysKcal, 0))
}
