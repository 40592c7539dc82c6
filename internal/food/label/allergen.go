package label

import (
	"slices"
	"sort"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
)

// rule returns how the rules word the class, nil if they do not know it.
func (a allergen) rule() *allergenClass {
	if i := a.rank(); i < len(allergenClasses) {
		return &allergenClasses[i]
	}
	return nil
}

// under returns a as the rules of region see it, and whether they ask for it.
func (a allergen) under(region Region) (allergen, bool) {
	r := a.rule()
	switch {
	case a.class == "" || a.class == "none":
		return a, false
	case r == nil:
		return a, true
	case region == US:
		return a, r.us != ""
	case a.class == "wheat":
		return allergen{"gluten", "wheat"}, true
	case a.class == "milk" || a.class == "egg": // Annex II asks for no animal
		return allergen{class: a.class}, true
	}
	return a, true
}

// word names a alone, as in brackets behind an ingredient.
func (a allergen) word(region Region) string {
	kind := strings.ReplaceAll(a.kind, "_", " ")
	r := a.rule()
	switch {
	case r == nil:
		return strings.ReplaceAll(a.class, "_", " ")
	case kind != "" && a.class != "milk" && a.class != "egg":
		return kind
	case region == EU:
		return r.eu
	case kind != "": // the animal, FDA guidance of January 2025
		return kind + " " + r.us
	}
	return r.us
}

// stems are the beginnings of the words that name a in a list: of its kind,
// where it has one, since "nuts" alone does not say which.
func (a allergen) stems() []string {
	r := a.rule()
	switch {
	case r == nil:
		return []string{a.class}
	case a.kind == "" || r.class == "milk" || r.class == "egg":
		return r.stems
	}
	first, _, _ := strings.Cut(a.kind, "_") // of "brazil nut"
	return []string{strings.TrimSuffix(first, "s")}
}

// allergensOf returns what the rules of region ask for of an ingredient's
// allergens. It reads both of its lists, for what one names the other may have
// left out: an ingredient entered for one region keeps its allergens in the
// other.
func allergensOf(in *ingredient.Ingredient, region Region) []allergen {
	var out []allergen
	own, other := in.AllergensUS, in.AllergensEU
	if region == EU {
		own, other = other, own
	}
	for i, list := range [...][]string{own, other} {
		for _, s := range list {
			a, asked := parseAllergen(s).under(region)
			named := func(b allergen) bool { return b == a || i == 1 && b.class == a.class && a.kind == "" }
			if asked && !slices.ContainsFunc(out, named) {
				out = append(out, a)
			}
		}
	}
	return out
}

// Allergens returns the allergens of an ingredient that the rules of region ask
// for, as its lists write them: "milk", "tree_nut:hazelnut"; in the EU "eggs",
// "nuts:hazelnut".
func Allergens(in *ingredient.Ingredient, region Region) []string {
	var out []string
	for _, a := range allergensOf(in, region) {
		code := a.class
		if r := a.rule(); r != nil && region == EU && r.code != "" {
			code = r.code
		}
		if a.kind != "" {
			code += ":" + a.kind
		}
		out = append(out, code)
	}
	return out
}

// inClass words allergens of one class: "tree nuts (almond, hazelnut)".
func inClass(of []allergen, region Region) string {
	r := of[0].rule()
	var words []string
	for _, a := range of {
		words = appendOnce(words, a.word(region))
	}
	if r == nil || r.class == "milk" || r.class == "egg" {
		sort.Slice(words, func(i, j int) bool { return len(words[i]) < len(words[j]) }) // the plain word first
		return strings.Join(words, ", ")
	}
	class := r.us
	if region == EU {
		class = r.eu
	}
	words = slices.DeleteFunc(words, func(w string) bool { return w == class })
	if len(words) == 0 {
		return class
	}
	sort.Strings(words)
	return class + " (" + strings.Join(words, ", ") + ")"
}

// contains returns the US statement of major food allergens (FD&C Act
// 403(w)), or a sentence that names those of Annex II. The EU wants no such
// statement beside an emphasised list, so it is for the maker's eyes.
func contains(f *Food, region Region) *flaw.Remark {
	var all []allergen
	for _, u := range f.Lines {
		if u.Grams > 0 {
			for _, a := range allergensOf(u.Ingredient, region) {
				if !slices.Contains(all, a) {
					all = append(all, a)
				}
			}
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].rank() < all[j].rank() })
	var parts []string
	for i := 0; i < len(all); {
		n := i
		for n < len(all) && all[n].class == all[i].class {
			n++
		}
		parts = append(parts, inClass(all[i:n], region))
		i = n
	}
	list := strings.Join(parts, ", ")
	var unstated flaw.And
	for _, u := range f.Lines {
		if u.Grams > 0 && UnstatedAllergens(u.Ingredient) {
			if name := any(commonName(u.Ingredient, region)); !slices.Contains(unstated, name) {
				unstated = append(unstated, name)
			}
		}
	}
	law := "Contains: " + list + "."
	if region == EU {
		law = "Allergens, emphasised in the list: " + list + "."
	}
	switch {
	case len(unstated) > 0 && list == "":
		return flaw.Say("Allergens are not stated for %s.", unstated)
	case len(unstated) > 0:
		return flaw.Say("%s Allergens are not stated for %s.", law, unstated)
	case list == "":
		return nil
	}
	return flaw.Say("%s", law)
}

// UnstatedAllergens reports whether nobody said what an ingredient carries. Of
// the library's own records an empty list means none.
func UnstatedAllergens(in *ingredient.Ingredient) bool {
	return in.Own && len(in.AllergensUS)+len(in.AllergensEU) == 0
}

// rank is the class's place in a statement: last for one that the rules do not
// know.
func (a allergen) rank() int {
	i := slices.IndexFunc(allergenClasses, func(c allergenClass) bool { return c.class == a.class })
	if i < 0 {
		return len(allergenClasses)
	}
	return i
}

// hints are words of a name or of a pack's list that tell of an allergen. They
// only ever warn: the list that the maker copied decides.
var hints = map[string]string{
	"milk": "milk", "buttermilk": "milk", "cream": "milk", "butter": "milk", "ghee": "milk", "cheese": "milk", "yogurt": "milk",
	"yoghurt": "milk", "whey": "milk", "casein": "milk", "caseinate": "milk", "lactose": "milk",
	"egg": "egg", "albumen": "egg", "meringue": "egg", "wheat": "wheat", "spelt": "wheat", "semolina": "wheat",
	"barley": "barley", "malt": "barley", "rye": "rye", "oat": "oats", "soy": "soy", "soya": "soy", "soybean": "soy", "tofu": "soy",
	"peanut": "peanut", "groundnut": "peanut", "sesame": "sesame", "tahini": "sesame", "halva": "sesame",
	"almond": "almond", "marzipan": "almond", "hazelnut": "hazelnut", "walnut": "walnut", "cashew": "cashew", "pecan": "pecan",
	"pistachio": "pistachio", "macadamia": "macadamia", "anchovy": "fish", "fish": "fish", "celery": "celery",
	"mustard": "mustard", "sulphite": "sulphites", "sulfite": "sulphites", "lupin": "lupin",
}

// plantMilks are words before "milk", "cream" and "butter" that make them no
// dairy.
var plantMilks = map[string]bool{"coconut": true, "oat": true, "almond": true, "soy": true, "soya": true, "rice": true, "nut": true,
	"cocoa": true, "peanut": true, "hazelnut": true, "cashew": true, "shea": true, "cacao": true, "sesame": true, "pistachio": true}

// hinted returns the allergens that an own ingredient's name and parts tell of
// and its lists do not.
func hinted(in *ingredient.Ingredient, region Region) []string {
	have := allergensOf(in, region)
	var out []string
	before := ""
	eachWord(in.Name+"; "+in.CommonName+"; "+in.Parts, func(w string) {
		one := singular(w)
		class, told := hints[one]
		if w == " " {
			return
		}
		plant := plantMilks[before]
		before = one
		if !told || class == "milk" && plant {
			return
		}
		a, asked := parseAllergen(class).under(region)
		covered := func(b allergen) bool { return b.class == a.class && (b.kind == a.kind || b.kind == "" || a.kind == "") }
		if asked && !slices.ContainsFunc(have, covered) {
			out = appendOnce(out, a.word(region))
		}
	})
	return out
}

// addAllergenWarnings says where the allergens of a maker's own ingredients are
// not stated, not complete, or not named as the rules want them.
func (l *Label) addAllergenWarnings(f *Food) {
	region := l.Region
	add := func(m flaw.Message, args ...any) { l.Warnings = l.Warnings.With(flaw.Say(m, args...)) }
	for _, u := range f.Lines {
		in := u.Ingredient
		if u.Grams == 0 {
			continue
		}
		if UnstatedAllergens(in) {
			add("The allergens of %s are not stated, which is not the same as none: copy them from its pack, or write none.", flaw.Word(in.Kitchen()))
		}
		if in.Own && region == EU && len(in.AllergensUS) > 0 && len(in.AllergensEU) == 0 {
			add("The allergens of %s follow the US list, which has no cereal but wheat, and no celery, mustard, sulphites, lupin or molluscs: look for them on its pack.", in.Name)
		}
		if in.Own {
			if told := hinted(in, region); len(told) > 0 {
				add("%s has %s in its name or parts, but not among its allergens.", flaw.Opening(in.Kitchen()), asPrinted(told))
			}
		}
		for _, a := range allergensOf(in, region) {
			if r := a.rule(); r != nil && r.kindNeeded && a.kind == "" {
				add("%s contains %s: the rules ask which kind. Write it as in tree_nut:hazelnut.", flaw.Opening(in.Kitchen()), a.word(region))
			}
		}
	}
}
