package label

import (
	"fmt"
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
)

// addNotes says how the label was read, what the law wants beside it because of
// what is in the food, and what is left to judge.
func (l *Label) addNotes(f *Food, all *amounts) {
	note := func(say bool, format string, args ...any) {
		if say {
			l.Notes = append(l.Notes, fmt.Sprintf(format, args...))
		}
	}
	used := func(is func(*ingredient.Ingredient) bool) bool {
		return slices.ContainsFunc(f.Lines, func(u Used) bool { return u.Grams > 0 && is(u.Ingredient) })
	}
	per100 := all.per(100, f.MassG())
	us := l.Region == US

	note(used(func(in *ingredient.Ingredient) bool { return mentions("honey", in) }),
		"Honey: not for infants under 12 months, cooked or not.")
	alcohol, told := f.alcoholPercent()
	note(told, "Alcohol: %.2g %% by weight of the finished food. Say so in the name; it is not for children or in pregnancy, and selling it may need a licence.", alcohol)
	note(alcohol > 0 && !told, "Alcohol: %.2g %% by weight of the finished food, which some will want to know.", alcohol)
	for _, u := range f.Lines {
		note(u.Grams > 0 && !u.Ingredient.Cell(ingredient.Alcohol).Known && soundsAlcoholic(u.Ingredient),
			"%s sounds like alcohol, but no figure says how much it holds.", sentenceName(u.Ingredient.Kitchen()))
	}
	sulphites := used(func(in *ingredient.Ingredient) bool {
		return slices.ContainsFunc(allergensOf(in, EU), func(a allergen) bool { return a.class == "sulphites" })
	})
	note(sulphites && us, "Sulfites are declared from 10 ppm in the finished food (21 CFR 101.100(a)(4), from memory); how much of what went in is left is not known here.")
	note(sulphites && !us, "Sulphites are an allergen over 10 mg/kg as total SO2 (Annex II); how much of what went in is left is not known here.")
	sweet := per100.of[polyols].Known
	note(sweet > 0 && !us, "Sweeteners: say \u201cwith sweetener(s)\u201d, or \u201cwith sugar(s) and sweetener(s)\u201d, beside the name%s (Annex III, from memory).",
		map[bool]string{true: ", and \u201cexcessive consumption may produce laxative effects\u201d, there being over 10 % of polyols"}[sweet > 10])
	if sweet > 0 && !us { // Annex III, 2.1 to 2.4, from memory
		l.Statements = append(l.Statements, map[bool]string{true: "With sugar(s) and sweetener(s)", false: "With sweetener(s)"}[per100.of[sugars].Known > 0])
		if sweet > 10 {
			l.Statements = append(l.Statements, "Excessive consumption may produce laxative effects")
		}
	}
	note(sweet > 0 && us, "Sugar alcohols: sorbitol and mannitol call for \u201cExcess consumption may have a laxative effect\u201d where a day's eating may bring 50 g or 20 g of them (21 CFR 184.1835, 180.25, from memory).")
	note(!us && used(func(in *ingredient.Ingredient) bool {
		return in.Standing == ingredient.Fruit || in.ID == "vinegar" || slices.Contains(mix.Acids[:], in.Pure)
	}),
		"Organic acids (Annex XIV: 13 kJ and 3 kcal per g) are in no record; they count as carbohydrate, at 17 and 4.")
	note(us && used(func(in *ingredient.Ingredient) bool { return in.Standing == ingredient.NotUSFibre }),
		"Gums that 21 CFR 101.9(c)(6)(i) does not name count as carbohydrate, not as dietary fiber.")
	for _, it := range list(f, l.Region) {
		in := it.lines[0].Ingredient
		note(us && namesAny(it.name, []string{"artificial"}), "%s: a name that speaks of this flavor also says \u201cartificial\u201d or \u201cflavored\u201d (21 CFR 135.110(f), from memory).", sentenceName(it.name))
		isFlavour := in.Standing == ingredient.Fruit || in.Standing == ingredient.DriedFruit || in.Standing == ingredient.Nut
		note(us && isFlavour && mentions(f.Name, in) && !enough(&it, f.MassG()),
			"The name says %s, but there is only %.2g %% of it: under %.0f %% is too little to be named (21 CFR part 135, older print).", it.name, 100*it.grams/f.MassG(), leastOf(in))
	}
	note(f.Portion != "" && !us && !gramsInWords.MatchString(f.Portion),
		"The portion \u201c%s\u201d gives no grams, so the serving of a US label is used instead.", strings.TrimSpace(f.Portion))
	note(l.NotSignificant != "", "A line left out as insignificant is needed again with any claim about it.")
	note(us && f.tubG() < 2.5*ReferenceML*f.DensityGPerML, "A tub with 40 square inches or less to print on may carry the small tabular form, or the linear one where that does not fit; "+
		"under 12, and without claims, an address or telephone number for the figures (21 CFR 101.9(j)(13)).")

	l.Notes = append(l.Notes,
		"Ingredients stand by weight as added, heaviest first; water driven off while cooking is taken from added water only.",
		"Allergens are those of the generic ingredients. The packs in your hand may name more: the pack decides.",
		"Not computed here: net quantity, your name and address, dates, storage. "+map[bool]string{
			true:  "Small sellers and food sold where it is made may need no panel (21 CFR 101.9(j)(1)–(3), (18)), until they make a claim.",
			false: "Small amounts sold by their maker may need no declaration (Annex V, from memory), but always their allergens.",
		}[us],
		"This is our reading of the sections named; local code and licensed practice decide.")
}
