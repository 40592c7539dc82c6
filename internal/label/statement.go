package label

import (
	"sort"
	"strings"
	"unicode"

	"ripplewright/internal/ingredient"
)

// Run is a piece of text in one style.
type Run struct {
	Text     string `json:"text"`
	Emphasis bool   `json:"emphasis"` // an allergen, Regulation (EU) No 1169/2011, Article 21
}

// listed is one item of the statement: all lines of the same common name.
type listed struct {
	name  string
	grams float64
	lines []Used
}

// addStatement sets the list of ingredients and what it contains.
//
// Order: descending weight as added, 21 CFR 101.4(a) and Article 18. Added
// water counts without what was driven off (from memory).
func (l *Label) addStatement(f *Food) {
	items := list(f, l.Region)
	var runs []Run
	add := func(s string, strong bool) {
		if n := len(runs); n > 0 && runs[n-1].Emphasis == strong {
			runs[n-1].Text += s
			return
		}
		runs = append(runs, Run{s, strong})
	}
	add("Ingredients: ", false)
	for i, it := range items {
		if i > 0 {
			add(", ", false)
		}
		in := it.lines[0].Ingredient
		text := it.name
		if in.Parts != "" {
			text += " (" + in.Parts + ")"
		}
		if l.Region == EU {
			emphasise(text, it.lines, add)
			add(quid(f, in, it.grams), false)
			continue
		}
		add(text, false)
	}
	add(".", false)
	l.Ingredients = runs
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.Text)
	}
	l.IngredientsText = b.String()
	l.Contains = contains(f, l.Region)
	l.Notes = append(l.Notes, "Ingredients stand in descending order of weight as added; water driven off while cooking is taken from added water and from nothing else.",
		"Allergens are those of the generic ingredients; the packs in your hand may name more, and they win.",
		"By our reading of the sections named; local code and licensed practice decide.")
}

// list merges the lines by common name and sorts them.
func list(f *Food, region Region) []listed {
	off := f.WaterOffG
	denseOff := off
	if f.Dense != nil {
		denseOff = f.Dense.WaterOffG
	}
	left := map[bool]float64{true: denseOff, false: off - denseOff} // g driven off, by whether the phase is the dense one
	var items []listed
	at := map[string]int{}
	for _, u := range f.Lines {
		g := u.Grams
		if isWater(u.Ingredient) {
			dense := f.Dense == nil || u.Phase == DensePhase
			gone := min(g, max(0, left[dense]))
			left[dense] -= gone
			g -= gone
		}
		if g <= 0 {
			continue
		}
		name := commonName(u.Ingredient, region)
		i, seen := at[name]
		if !seen {
			i = len(items)
			at[name] = i
			items = append(items, listed{name: name})
		}
		items[i].grams += g
		items[i].lines = append(items[i].lines, u)
	}
	sort.SliceStable(items, func(i, j int) bool { return items[i].grams > items[j].grams })
	return items
}

// isWater reports whether an ingredient is nothing but water.
func isWater(in *ingredient.Ingredient) bool { return in.Cell(ingredient.Water).Or(0) > 99 }

// commonName returns the name in a list of ingredients.
func commonName(in *ingredient.Ingredient, region Region) string {
	switch {
	case region == EU && in.CommonNameEU != "":
		return in.CommonNameEU
	case in.CommonName != "":
		return in.CommonName
	}
	return strings.ToLower(in.Name)
}

// allergenStems are the beginnings of words that name an allergen in the
// list; where none is found the allergen's own word is added in brackets.
var allergenStems = map[string][]string{
	"milk": {"milk", "buttermilk"}, "eggs": {"egg"}, "soybeans": {"soy"}, "peanuts": {"peanut"},
	"sesame": {"sesame"}, "sulphites": {"sulphite", "sulphur"}, "gluten_cereals": {"wheat", "barley", "rye", "oat"},
}

// emphasise adds text with the words that name an EU allergen of its lines
// emphasised.
func emphasise(text string, lines []Used, add func(string, bool)) {
	var stems, extra []string
	for _, u := range lines {
		for _, a := range u.Ingredient.AllergensEU {
			class, kind, _ := strings.Cut(a, ":")
			of := allergenStems[class]
			word := strings.ReplaceAll(class, "_", " ")
			if kind != "" {
				word = strings.ReplaceAll(kind, "_", " ")
				of = append([]string{strings.TrimSuffix(word, "s")}, of...)
			}
			if of == nil {
				of = []string{strings.TrimSuffix(word, "s")}
			}
			stems = append(stems, of...)
			if !namesAny(text, of) {
				extra = appendOnce(extra, word)
			}
		}
	}
	eachWord(text, func(word string) { add(word, startsWithAny(word, stems)) })
	for _, w := range extra {
		add(" (", false)
		add(w, true)
		add(")", false)
	}
}

// eachWord calls f for the words of s and for what stands between them.
func eachWord(s string, f func(string)) {
	start := 0
	inWord := false
	for i, r := range s {
		if letter := unicode.IsLetter(r); letter != inWord {
			if i > start {
				f(s[start:i])
			}
			start, inWord = i, letter
		}
	}
	if start < len(s) {
		f(s[start:])
	}
}

func startsWithAny(word string, stems []string) bool {
	word = strings.ToLower(word)
	for _, s := range stems {
		if s != "" && strings.HasPrefix(word, s) {
			return true
		}
	}
	return false
}

func namesAny(text string, stems []string) (found bool) {
	eachWord(text, func(w string) { found = found || startsWithAny(w, stems) })
	return found
}

// contains returns the US statement of major food allergens (FD&C Act
// 403(w)), or a sentence that names those of Annex II for the EU, which has
// no such statement beside an emphasised list.
func contains(f *Food, region Region) string {
	words := map[string][]string{} // class → species
	var order []string
	for _, u := range f.Lines {
		if u.Grams == 0 {
			continue
		}
		of := u.Ingredient.AllergensUS
		if region == EU {
			of = u.Ingredient.AllergensEU
		}
		for _, a := range of {
			class, kind, _ := strings.Cut(a, ":")
			if _, seen := words[class]; !seen {
				order = append(order, class)
				words[class] = nil
			}
			if kind != "" {
				words[class] = appendOnce(words[class], strings.ReplaceAll(kind, "_", " "))
			}
		}
	}
	if len(order) == 0 {
		return ""
	}
	sort.SliceStable(order, func(i, j int) bool { return allergenRank(order[i]) < allergenRank(order[j]) })
	var parts []string
	for _, class := range order {
		word := strings.ReplaceAll(class, "_", " ")
		switch class {
		case "tree_nut":
			word = "tree nuts"
		case "gluten_cereals":
			word = "cereals containing gluten"
		}
		if kinds := words[class]; len(kinds) > 0 {
			sort.Strings(kinds)
			word += " (" + strings.Join(kinds, ", ") + ")"
		}
		parts = append(parts, word)
	}
	if region == EU {
		return "Allergens, emphasised in the list: " + strings.Join(parts, ", ") + "."
	}
	return "Contains: " + strings.Join(parts, ", ") + "."
}

// allergenRank puts milk and egg first, which every such dessert carries.
func allergenRank(class string) int {
	for i, c := range [...]string{"milk", "egg", "eggs"} {
		if class == c {
			return i
		}
	}
	return 9
}

// mentions reports whether a food's name mentions an ingredient: a word of
// the one begins as a word of the other, plural or not.
func mentions(name string, in *ingredient.Ingredient) bool {
	stems := map[string]bool{}
	for _, s := range []string{commonName(in, US), commonName(in, EU), in.ID} {
		eachWord(strings.ReplaceAll(s, "_", " "), func(w string) {
			if w = singular(w); len(w) >= 4 && !plainWords[w] {
				stems[w] = true
			}
		})
	}
	found := false
	eachWord(name, func(w string) { found = found || stems[singular(w)] })
	return found
}

// plainWords say nothing of what characterises a food.
var plainWords = map[string]bool{
	"milk": true, "cream": true, "sugar": true, "whole": true, "white": true, "dried": true, "powder": true, "roasted": true,
	"heavy": true, "syrup": true, "juice": true, "water": true, "yolk": true, "skim": true, "extract": true, "butter": true,
	"dark": true, "sweet": true, "sour": true, "fresh": true, "salt": true, "peel": true, "ground": true, "paste": true,
}

// singular strips an English plural.
func singular(w string) string {
	w = strings.ToLower(w)
	switch {
	case strings.HasSuffix(w, "ies") && len(w) > 4:
		return strings.TrimSuffix(w, "ies") + "y"
	case strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "shes"):
		return strings.TrimSuffix(w, "es")
	}
	return strings.TrimSuffix(w, "s")
}
