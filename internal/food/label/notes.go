package label

import (
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/mix"
)

// addNotes says how the label was read, what the law wants beside it because of
// what is in the food, and what is left to judge.
func (l *Label) addNotes(f *Food, all *amounts) {
	n := noting{Label: l, f: f, us: l.Region == US}
	n.warnings()
	n.sulphites()
	n.sweeteners(all.per(100, f.MassG()))
	n.records()
	n.names()
	n.form()
	l.Notes = append(l.Notes,
		flaw.Say("Ingredients stand by weight as added, heaviest first; water driven off while cooking is taken from added water only."),
		flaw.Say("Allergens are those of the generic ingredients. The packs in your hand may name more: the pack decides."),
		flaw.Say(map[bool]flaw.Message{
			true:  "Not computed here: net quantity, your name and address, dates, storage. Small sellers and food sold where it is made may need no panel (21 CFR 101.9(j)(1)–(3), (18)), until they make a claim.",
			false: "Not computed here: net quantity, your name and address, dates, storage. Small amounts sold by their maker may need no declaration (Annex V, from memory), but always their allergens.",
		}[n.us]),
		flaw.Say("This is our reading of the sections named; local code and licensed practice decide."))
}

// noting adds the notes of one food to its label.
type noting struct {
	*Label
	f  *Food
	us bool
}

// note adds a note that is to be said.
func (n *noting) note(say bool, m flaw.Message, args ...any) {
	if say {
		n.Notes = append(n.Notes, flaw.Say(m, args...))
	}
}

// used reports whether some ingredient that is in the food is such a one.
func (n *noting) used(is func(*ingredient.Ingredient) bool) bool {
	return slices.ContainsFunc(n.f.Lines, func(u Used) bool { return u.Grams > 0 && is(u.Ingredient) })
}

// warnings says of honey and alcohol who should not eat it.
func (n *noting) warnings() {
	n.note(n.used(func(in *ingredient.Ingredient) bool { return mentions("honey", in) }),
		"Honey: not for infants under 12 months, cooked or not.")
	alcohol, told := n.f.alcoholPercent()
	n.note(told, "Alcohol: %.2g %% by weight of the finished food. Say so in the name; it is not for children or in pregnancy, and selling it may need a licence.", alcohol)
	n.note(alcohol > 0 && !told, "Alcohol: %.2g %% by weight of the finished food, which some will want to know.", alcohol)
	for _, u := range n.f.Lines {
		n.note(u.Grams > 0 && !u.Ingredient.Cell(ingredient.Alcohol).Known && soundsAlcoholic(u.Ingredient),
			"%s sounds like alcohol, but no figure says how much it holds.", flaw.Opening(u.Ingredient.Kitchen()))
	}
}

// sulphites says from how much on they are declared.
func (n *noting) sulphites() {
	any := n.used(func(in *ingredient.Ingredient) bool {
		return slices.ContainsFunc(allergensOf(in, EU), func(a allergen) bool { return a.class == "sulphites" })
	})
	n.note(any && n.us, "Sulfites are declared from 10 ppm in the finished food (21 CFR 101.100(a)(4), from memory); how much of what went in is left is not known here.")
	n.note(any && !n.us, "Sulphites are an allergen over 10 mg/kg as total SO2 (Annex II); how much of what went in is left is not known here.")
}

// sweeteners says what stands beside polyols.
func (n *noting) sweeteners(per100 *amounts) {
	sweet := per100.of[polyols].Known
	n.note(sweet > 0 && sweet <= 10 && !n.us, "Sweeteners: say \u201cwith sweetener(s)\u201d, or \u201cwith sugar(s) and sweetener(s)\u201d, beside the name (Annex III, from memory).")
	n.note(sweet > 10 && !n.us, "Sweeteners: say \u201cwith sweetener(s)\u201d, or \u201cwith sugar(s) and sweetener(s)\u201d, beside the name, "+
		"and \u201cexcessive consumption may produce laxative effects\u201d, there being over 10 % of polyols (Annex III, from memory).")
	if sweet > 0 && !n.us { // Annex III, 2.1 to 2.4, from memory
		n.Statements = append(n.Statements, map[bool]string{true: "With sugar(s) and sweetener(s)", false: "With sweetener(s)"}[per100.of[sugars].Known > 0])
		if sweet > 10 {
			n.Statements = append(n.Statements, "Excessive consumption may produce laxative effects")
		}
	}
	n.note(sweet > 0 && n.us, "Sugar alcohols: sorbitol and mannitol call for \u201cExcess consumption may have a laxative effect\u201d where a day's eating may bring 50 g or 20 g of them (21 CFR 184.1835, 180.25, from memory).")
}

// records says what the figures of the ingredients leave open, or count otherwise.
func (n *noting) records() {
	n.note(!n.us && n.used(func(in *ingredient.Ingredient) bool {
		return in.Standing == ingredient.Fruit || in.ID == "vinegar" || slices.Contains(mix.Acids[:], in.Pure)
	}),
		"Organic acids (Annex XIV: 13 kJ and 3 kcal per g) are in no record; they count as carbohydrate, at 17 and 4.")
	n.note(n.us && n.used(func(in *ingredient.Ingredient) bool { return in.Standing == ingredient.NotUSFibre }),
		"Gums that 21 CFR 101.9(c)(6)(i) does not name count as carbohydrate, not as dietary fiber.")
}

// names says which ingredients the name may speak of.
func (n *noting) names() {
	for _, it := range list(n.f, n.Region) {
		in := it.lines[0].Ingredient
		n.note(n.us && namesAny(it.name, []string{"artificial"}), "%s: a name that speaks of this flavor also says \u201cartificial\u201d or \u201cflavored\u201d (21 CFR 135.110(f), from memory).", flaw.Opening(it.name))
		isFlavour := in.Standing == ingredient.Fruit || in.Standing == ingredient.DriedFruit || in.Standing == ingredient.Nut
		n.note(n.us && isFlavour && mentions(n.f.Name, in) && !enough(&it, n.f.MassG()),
			"The name says %s, but there is only %.2g %% of it: under %.0f %% is too little to be named (21 CFR part 135, older print).", flaw.Word(it.name), 100*it.grams/n.f.MassG(), leastOf(in))
	}
}

// form says what the panel's form rests on.
func (n *noting) form() {
	_, said := n.f.portionSaid()
	n.note(n.f.Portion != "" && !n.us && !said,
		"The portion \u201c%s\u201d gives no grams that a tub holds, so the serving of a US label is used instead.", strings.TrimSpace(n.f.Portion))
	n.note(n.NotSignificant != "", "A line left out as insignificant is needed again with any claim about it.")
	n.note(n.us && n.f.tubG() < 2.5*ReferenceML*n.f.DensityGPerML, "A tub with 40 square inches or less to print on may carry the small tabular form, or the linear one where that does not fit; "+
		"under 12, and without claims, an address or telephone number for the figures (21 CFR 101.9(j)(13)).")
}
