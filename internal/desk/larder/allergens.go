package larder

import (
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
)

// An Allergen is one that a law names, as packs name it, with the library's words;
// "" where a law does not.
type Allergen struct {
	Name   say.Message
	US, EU string
}

// Allergens are those of the law: 21 USC 321(qq) and Annex II of Regulation (EU) No
// 1169/2011.
var Allergens = [...]Allergen{
	{"Milk", "milk", "milk"}, {"Egg", "egg", "eggs"}, {"Wheat", "wheat", "gluten_cereals:wheat"},
	{"Barley", "", "gluten_cereals:barley"}, {"Rye", "", "gluten_cereals:rye"}, {"Oats", "", "gluten_cereals:oats"},
	{"Soy", "soy", "soybeans"}, {"Peanut", "peanut", "peanuts"}, {"Sesame", "sesame", "sesame"},
	{"Almond", "tree_nut:almond", "nuts:almond"}, {"Hazelnut", "tree_nut:hazelnut", "nuts:hazelnut"}, {"Walnut", "tree_nut:walnut", "nuts:walnut"},
	{"Cashew", "tree_nut:cashew", "nuts:cashew"}, {"Pecan", "tree_nut:pecan", "nuts:pecan"}, {"Pistachio", "tree_nut:pistachio", "nuts:pistachio"},
	{"Macadamia", "tree_nut:macadamia", "nuts:macadamia"}, {"Brazil nut", "tree_nut:brazil nut", "nuts:brazil nut"}, {"Sulphites", "", "sulphites"},
	{"Fish", "fish", "fish"}, {"Crustaceans", "crustacean", "crustaceans"}, {"Molluscs", "", "molluscs"},
	{"Celery", "", "celery"}, {"Mustard", "", "mustard"}, {"Lupin", "", "lupin"},
}

// Ticks are which of Allergens a form has ticked.
type Ticks [len(Allergens)]bool

// ticksOf are those that an ingredient names.
func ticksOf(in *ingredient.Ingredient) Ticks {
	var t Ticks
	for i, a := range Allergens {
		t[i] = a.US != "" && slices.Contains(in.AllergensUS, a.US) || slices.Contains(in.AllergensEU, a.EU)
	}
	return t
}

// words returns the words of what is ticked, after those of began that no tick
// stands for. One of those that names the kind, "milk:goat", says what the tick
// would.
func (t Ticks) words(began []string, word func(Allergen) string) []string {
	var out []string
	for _, w := range began {
		if !slices.ContainsFunc(Allergens[:], func(a Allergen) bool { return word(a) == w }) {
			out = append(out, w)
		}
	}
	for i, a := range Allergens {
		kind := func(w string) bool { return strings.HasPrefix(w, word(a)+":") }
		if t[i] && word(a) != "" && !slices.ContainsFunc(out, kind) {
			out = append(out, word(a))
		}
	}
	return out
}
