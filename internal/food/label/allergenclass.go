package label

import (
	"slices"
	"strings"
	"unicode"
)

// allergen is one allergen in terms of both regions: a class such as
// "tree_nut", and its kind such as "hazelnut", "" where none is named.
type allergen struct{ class, kind string }

// allergenClass is how the rules word a class: FD&C Act 403(w) as amended by
// FALCPA 2004 and the FASTER Act 2021 ("": not among the US ones), and
// Regulation (EU) No 1169/2011, Annex II.
type allergenClass struct {
	class, us, eu string
	code          string   // of the EU in an ingredient's list, where it differs
	also          []string // other ways in which makers write the class
	stems         []string // beginnings of words that name it in a list
	kindNeeded    bool     // the kind itself must be named, 403(w)(2) and Annex II
}

// The order is that of the "Contains" line: milk and egg first, which nearly
// every such dessert carries.
var allergenClasses = []allergenClass{
	{class: "milk", us: "milk", eu: "milk", also: []string{"dairy", "lactose"}, stems: []string{"milk", "buttermilk"}},
	{class: "egg", us: "egg", eu: "eggs", code: "eggs", stems: []string{"egg"}},
	{class: "wheat", us: "wheat", stems: []string{"wheat"}}, // in the EU a kind of gluten
	{class: "gluten", eu: "cereals containing gluten", code: "gluten_cereals", also: []string{"cereals_containing_gluten"}, kindNeeded: true},
	{class: "peanut", us: "peanut", eu: "peanuts", code: "peanuts", stems: []string{"peanut"}},
	{class: "soy", us: "soy", eu: "soybeans", code: "soybeans", also: []string{"soya", "soybean"}, stems: []string{"soy"}},
	{class: "tree_nut", us: "tree nuts", eu: "nuts", code: "nuts", also: []string{"nut", "tree_nuts"}, stems: []string{"nuts"}, kindNeeded: true},
	{class: "sesame", us: "sesame", eu: "sesame", stems: []string{"sesame"}},
	{class: "fish", us: "fish", eu: "fish", stems: []string{"fish"}, kindNeeded: true},
	{class: "crustacean", us: "crustacean shellfish", eu: "crustaceans", code: "crustaceans", also: []string{"crustacean_shellfish", "shellfish"}, stems: []string{"crustacean"}, kindNeeded: true},
	{class: "celery", eu: "celery", stems: []string{"celery"}},
	{class: "mustard", eu: "mustard", stems: []string{"mustard"}},
	{class: "sulphites", eu: "sulphites", also: []string{"sulfites", "sulphite", "sulfite", "sulphur_dioxide", "sulfur_dioxide"}, stems: []string{"sulphite", "sulphur"}},
	{class: "lupin", eu: "lupin", stems: []string{"lupin"}},
	{class: "molluscs", eu: "molluscs", also: []string{"mollusc", "mollusks"}, stems: []string{"mollusc"}},
}

// glutenKinds are the other cereals of Annex II, item 1; nutKinds the nuts of
// its item 8, all of which the US agency's guidance of January 2025 also
// lists. Makers write them without their class.
var (
	glutenKinds = []string{"barley", "rye", "oats"}
	nutKinds    = []string{"almond", "hazelnut", "walnut", "cashew", "pecan", "brazil_nut", "pistachio", "macadamia"}
)

// parseAllergen reads "tree_nut:hazelnut", "nuts", "hazelnuts", "Soya" …
// A word that neither region knows stays a class of its own.
func parseAllergen(s string) allergen {
	class, kind, _ := strings.Cut(s, ":")
	class, kind = underscored(class), underscored(kind)
	if class == "" || class == "none" && kind != "" {
		class, kind = kind, ""
	}
	if class == "gluten_cereals" && (kind == "wheat" || kind == "spelt" || kind == "khorasan") {
		return allergen{class: "wheat"}
	}
	for _, c := range allergenClasses {
		if class == c.class || class == c.code || slices.Contains(c.also, class) {
			return allergen{c.class, kind}
		}
	}
	for _, one := range [...]string{class, strings.TrimSuffix(class, "s"), class + "s"} {
		switch {
		case slices.Contains(glutenKinds, one):
			return allergen{"gluten", one}
		case slices.Contains(nutKinds, one):
			return allergen{"tree_nut", one}
		}
	}
	return allergen{class, kind}
}

// underscored joins the words of s, in lower case, by one underscore each.
func underscored(s string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), "_")
}
