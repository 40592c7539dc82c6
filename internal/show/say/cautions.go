package say

import (
	"slices"
	"strings"
	"unicode"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/work/design"
)

// Cautions lists the usual cautions, those about what this design holds first;
// allergens names what it contains, "" for nothing that is known.
func Cautions(s Style, d design.Design, r *model.Result, allergens string) []Titled {
	var c []Titled
	any := func(such func(*ingredient.Ingredient) bool) *ingredient.Ingredient {
		return first(r, such, design.DensePart, design.FoamPart, design.SyrupPart)
	}
	if r.Syrup.Present && !r.Absent(&r.Foam) {
		c = append(c, Titled{T("Hot sugar"), T("Syrup at %s sticks and burns deeply. Use long handles and dry tools, keep cold water at hand and children away.", s.Temperature(d.Foam.Syrup.CookTemperatureC))})
	}
	if any(func(in *ingredient.Ingredient) bool { return in.Group == "egg" }) != nil {
		c = append(c, Titled{T("Eggs"), T("Published figure for cooked custard bases: %s throughout, US consumer advice. Freezing kills neither Salmonella nor Listeria. For the pregnant, infants, the old and the ill: cooked base and pasteurised egg only.", eggFigure(s))})
	}
	unstated := ""
	if names := namesOf(r, label.UnstatedAllergens); len(names) > 0 {
		unstated = " " + T("Not stated, which is not the same as none: those of %s. Look on the pack.", List(names))
	}
	if allergens != "" {
		c = append(c, Titled{T("Allergens"), T("Contains %s, as the generic ingredients have them; the packs in your hand may name more, and the pack decides.%s One spoon between tubs spreads them.", allergens, unstated)})
	} else {
		c = append(c, Titled{T("Allergens"), T("The records name none. The packs in your hand may, and the pack decides.") + unstated})
	}
	if any(isHoney) != nil {
		c = append(c, Titled{T("Honey"), T("Never for infants under 12 months, not even cooked in.")})
	}
	if a := r.TubMean(func(p *model.Phase) float64 { return p.Percent(mix.Ethanol) }); limits.AlcoholTold.Level(a) > limits.Within {
		c = append(c, Titled{T("Alcohol"), T("The tub holds %s alcohol by weight. Say so in its name; not for children or in pregnancy. Selling it may need a licence.", s.Percent(a, 1))})
	}
	if any(isNut) != nil {
		c = append(c, Titled{T("Nuts"), T("Small children can choke on whole nuts and hard pieces. Nuts added after cooking stay unheated: use ready-to-eat ones.")})
	}
	if any(func(in *ingredient.Ingredient) bool {
		return strings.HasPrefix(in.ID, "coffee") || strings.HasPrefix(in.ID, "tea") || in.ID == "matcha" || strings.HasPrefix(in.ID, "cocoa_") && in.ID != "cocoa_butter"
	}) != nil {
		c = append(c, Titled{T("Caffeine"), T("Coffee, tea and cocoa hold it: say so where it matters.")})
	}
	if any(isStarchy) != nil {
		c = append(c, Titled{T("Flour and starch"), T("They are not ready to eat raw: cook them in the base.")})
	}
	return append(c, Titled{T("Law"), T("Computed figures, not a licence. Local code and licensed practice decide what may be made, called and sold, and how.")})
}

// namesOf returns the names of all such ingredients, each once.
func namesOf(r *model.Result, such func(*ingredient.Ingredient) bool) []string {
	var names []string
	for _, l := range r.Lines {
		if r.Counts(&l) && such(l.Ingredient) && !slices.Contains(names, Kitchen(l.Ingredient)) {
			names = append(names, Kitchen(l.Ingredient))
		}
	}
	return names
}

func isNut(in *ingredient.Ingredient) bool {
	return slices.ContainsFunc(label.Allergens(in, label.US), func(a string) bool {
		return strings.HasPrefix(a, "tree_nut") || a == "peanut"
	})
}

// isHoney tells honey, a maker's own too, from a honeydew melon.
func isHoney(in *ingredient.Ingredient) bool {
	words := strings.FieldsFunc(strings.ToLower(in.Name), func(r rune) bool { return !unicode.IsLetter(r) })
	return slices.Contains(words, "honey")
}

// eggFigure is the published figure in the maker's degrees and in those of its
// source.
func eggFigure(s Style) string {
	if s.Scale == Fahrenheit {
		return s.Temperature(process.EggFigureC)
	}
	return s.Temperature(process.EggFigureC) + " (" + Style{Scale: Fahrenheit}.Temperature(process.EggFigureC) + ")"
}

func isStarchy(in *ingredient.Ingredient) bool {
	return strings.Contains(in.ID, "flour") || strings.HasSuffix(in.ID, "starch")
}
