package say

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
)

// Assumption says what the physics assumes of an ingredient, as a clause.
func Assumption(s Style, a ingredient.Assumption) string {
	switch a.Code {
	case ingredient.SugarsInTotal:
		as := species(a.ReadAs)
		if len(a.ReadAs) > 1 {
			as = T("equal parts of %s", as)
		}
		return T("only the total of its sugars is known; it counts as %s, and may be anything from %s to %s", as, Of(a.From.String()), Of(a.To.String()))
	case ingredient.SugarsUnknown:
		return T("its sugars are not known; what is left of the carbohydrate counts as half sucrose and half longer sugars, and may be anything from glucose to starch")
	case ingredient.FruitAcid:
		return T("some of its carbohydrate has no name in any source; it counts as fruit acid, and may do nothing")
	case ingredient.CarbohydrateUnnamed:
		return T("its figures do not say what some of its carbohydrate is; it counts as doing nothing, and may be a simple sugar")
	case ingredient.MassUnnamed:
		return T("its figures leave %s in %s without a name; that counts as doing nothing", s.MassTo(a.G, 1), s.Mass(100))
	case ingredient.MassOver:
		return T("its figures add up to %s in %s; every part counts for %s less", s.MassTo(a.G, 1), s.Mass(100), s.Percent(100*(1-100/a.G), 1))
	case ingredient.MineralsByMilkSolids:
		return T("its sodium or potassium is not known; the minerals are taken in proportion to the milk solids")
	case ingredient.MineralsByAsh:
		return T("its sodium or potassium is not known; the minerals are taken in proportion to the ash")
	case ingredient.MineralsUnknown:
		return T("its sodium or potassium is not known, nor its ash; only the minerals that are known lower the freezing point")
	}
	return string(a.Code)
}

// Assumptions says them all.
func Assumptions(s Style, list []ingredient.Assumption) []string {
	var out []string
	for _, a := range list {
		out = append(out, Assumption(s, a))
	}
	return out
}

func species(list []mix.Species) string {
	names := make([]string, len(list))
	for i, x := range list {
		names[i] = Of(x.String())
	}
	return List(names)
}
