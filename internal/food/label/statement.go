package label

import (
	"sort"
	"strings"
	"unicode"

	"ripplewright/internal/food/ingredient"
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
	named := f.Name + " " + characterising(f, l.Region) // words that the food's name may use
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
			add(quid(named, f, in, it.grams), false)
			continue
		}
		add(text, false)
	}
	add(".", false)
	l.Ingredients = runs
	var b strings.Builder
	for _, r := range runs {
		if r.Emphasis { // plain text has no bold
			r.Text = strings.ToUpper(r.Text)
		}
		b.WriteString(r.Text)
	}
	l.IngredientsText = b.String()
	l.Carries = contains(f, l.Region)
	l.Contains = l.Carries.String()
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

// isWater reports whether an ingredient is nothing but water, which tap water
// is to 99.9 % and brewed tea, at 99.7 %, is not (USDA SR28 NDB 14411, 14355).
func isWater(in *ingredient.Ingredient) bool { return in.Cell(ingredient.Water).Least() > 99.8 }

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

// emphasise adds text with the words that name an EU allergen of its lines
// emphasised; an allergen that no word names follows in brackets.
func emphasise(text string, lines []Used, add func(string, bool)) {
	var stems, extra []string
	for _, u := range lines {
		for _, a := range allergensOf(u.Ingredient, EU) {
			of := a.stems()
			stems = append(stems, of...)
			if !namesAny(text, of) {
				extra = appendOnce(extra, a.word(EU))
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

// mentions reports whether a food's name mentions an ingredient: a word of
// the one is a word of the other, plural or not.
func mentions(name string, in *ingredient.Ingredient) bool {
	stems := map[string]bool{}
	words := commonName(in, US) + " " + commonName(in, EU)
	if !in.Own { // an own id may be any word
		words += " " + strings.ReplaceAll(in.ID, "_", " ")
	}
	eachWord(words, func(w string) {
		if w = singular(w); len(w) >= 3 && !plainWords[w] {
			stems[w] = true
		}
	})
	found := false
	eachWord(name, func(w string) { found = found || stems[singular(w)] })
	return found
}

// plainWords say nothing of what characterises a food.
var plainWords = func() map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(`and the from for with of in
		milk cream sugar whole white dried dry powder roasted heavy light low fat free raw syrup juice water yolk skim extract butter
		dark sweet sour fresh salt peel ground paste reduced nonfat past pasteurised pasteurized instant regular thick
		sweetener stabiliser emulsifier gelling agent acidity regulator raising artificial flavor flavouring`) {
		m[w] = true
	}
	return m
}()

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
