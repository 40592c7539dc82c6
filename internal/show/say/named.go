package say

import (
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// Strap says what the tub is: "40 % cooked-sugar egg-white foam through cooked
// egg-yolk custard, by volume".
func Strap(s Style, r *model.Result) string {
	dense, foam := r.Dense.Portion.MassG > 0, r.Foam.Portion.MassG > 0
	switch {
	case dense && foam:
		return T("%s %s through %s, by volume", s.Percent(100*r.Blend.FoamVolumeFraction, 0), foamName(r), denseName(r))
	case dense:
		return T("a tub of %s alone", denseName(r))
	case foam:
		return T("a tub of %s alone", foamName(r))
	}
	return T("an empty tub")
}

// IsCustard reports whether egg yolk is cooked into the dense phase.
func IsCustard(r *model.Result) bool { return uses(r, design.DensePart, isYolky) }

func denseName(r *model.Result) string {
	if IsCustard(r) {
		return T("cooked egg-yolk custard")
	}
	return T("cooked base")
}

func foamName(r *model.Result) string {
	white := uses(r, design.FoamPart, isWhite)
	switch {
	case white && r.Syrup.Present:
		return T("cooked-sugar egg-white foam")
	case white:
		return T("egg-white foam")
	}
	return T("foam")
}

func isWhite(in *ingredient.Ingredient) bool { return strings.HasPrefix(in.ID, "egg_white") }

func isYolky(in *ingredient.Ingredient) bool {
	return strings.HasPrefix(in.ID, "egg_yolk") || strings.HasPrefix(in.ID, "egg_whole")
}

// uses reports whether a line of the part that weighs something is such an
// ingredient.
func uses(r *model.Result, p design.Part, such func(*ingredient.Ingredient) bool) bool {
	return first(r, such, p) != nil
}

// first returns the first such ingredient of the given parts, nil if none.
func first(r *model.Result, such func(*ingredient.Ingredient) bool, parts ...design.Part) *ingredient.Ingredient {
	for _, l := range r.Lines {
		for _, p := range parts {
			if l.Part == p && r.Counts(&l) && such(l.Ingredient) {
				return l.Ingredient
			}
		}
	}
	return nil
}

// Part is what a list of lines is for: "custard", "foam" or "syrup".
func Part(p design.Part) string {
	return map[design.Part]string{design.DensePart: T("custard"), design.FoamPart: T("foam"), design.SyrupPart: T("syrup")}[p]
}

// LabelledFood is the food that a label names, as a cook calls it.
func LabelledFood(of string) string {
	switch of {
	case "whole food":
		return T("whole food")
	case "dense phase alone":
		return T("custard alone")
	}
	return of
}

// Allergens are the codes of allergens as a cook reads them: "tree_nut:hazelnut"
// is hazelnut.
func Allergens(codes []string) []string {
	var words []string
	for _, code := range codes {
		class, kind, _ := strings.Cut(strings.ReplaceAll(code, "_", " "), ":")
		if kind != "" {
			class = kind
		}
		words = append(words, Of(class))
	}
	return words
}

// The words that codes of allergens come to, for the catalogue.
var _ = [...]Message{
	"milk", "egg", "eggs", "fish", "crustaceans", "molluscs", "peanut", "peanuts", "soy", "soya", "sesame", "celery", "mustard", "lupin", "sulphites",
	"wheat", "rye", "barley", "oats", "spelt", "gluten cereals", "gluten", "nuts", "tree nut",
	"almond", "hazelnut", "walnut", "cashew", "pecan", "brazil nut", "pistachio", "macadamia",
}
