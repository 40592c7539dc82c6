package onpack

import (
	"encoding/csv"
	"io"
	"io/fs"
	"slices"
	"strings"

	"ripplewright/internal/form/flaw"
)

// Word is a word of a label with the class of its source.
type Word struct {
	Text   string
	Source string // "A:…" law or a copy of it, "B:…" an authority, "C:…" secondary, "M:…" from memory
}

// Class says in words how a word was read.
func (w Word) Class() SourceClass {
	switch {
	case strings.HasPrefix(w.Source, "A"):
		return LawRead
	case strings.HasPrefix(w.Source, "B"):
		return Authority
	case strings.HasPrefix(w.Source, "M"):
		return FromMemory
	}
	return Secondary
}

// Words are the words of labels by language and term.
type Words map[string]map[string]Word

// OpenWords reads label/words.csv of files.
func OpenWords(files fs.FS) (Words, error) {
	f, err := files.Open("label/words.csv")
	if err != nil {
		return nil, flaw.New("words of labels: %v", err)
	}
	defer f.Close()
	return ReadWords(f)
}

// ReadWords reads the table of words. It refuses a row that repeats a term, or
// that has no source.
func ReadWords(r io.Reader) (Words, error) {
	c := csv.NewReader(r)
	c.Comment = '#'
	c.FieldsPerRecord = 4
	rows, err := c.ReadAll()
	if err != nil {
		return nil, flaw.New("words of labels: %v", err)
	}
	all := Words{}
	for _, row := range rows[min(1, len(rows)):] {
		term, lang := row[0], row[1]
		if row[2] == "" || row[3] == "" {
			return nil, flaw.New("words of labels: %s in %s has no words or no source", term, lang)
		}
		if all[lang] == nil {
			all[lang] = map[string]Word{}
		}
		if _, twice := all[lang][term]; twice {
			return nil, flaw.New("words of labels: %s in %s stands twice", term, lang)
		}
		all[lang][term] = Word{row[2], row[3]}
	}
	return all, nil
}

// The terms without which no label can be set in a language.
var vital = []string{"nutrition_declaration", "per_100g", "energy", "fat", "saturates", "carbohydrate", "sugars", "protein", "salt",
	"ingredients", "best_before_day", "milk", "eggs", "decimal_sign"}

// Languages are those in which a label can be set, in order of their letters.
func (w Words) Languages() []string {
	var out []string
	for lang, of := range w {
		if !slices.ContainsFunc(vital, func(term string) bool { return of[term].Text == "" }) {
			out = append(out, lang)
		}
	}
	slices.Sort(out)
	return out
}

// In returns a term in a language; where that word was not read, the English
// one, and ok is false.
func (w Words) In(lang, term string) (word Word, ok bool) {
	if word, ok = w[lang][term]; ok {
		return word, true
	}
	return w["en"][term], false
}

// AllergensAlone reports whether the allergens stand on a label without its list.
func AllergensAlone(all []Element) bool {
	state := map[Key]State{}
	for _, e := range all {
		state[e.Key] = e.State
	}
	return state[Allergens] == Filled && state[Ingredients] == NotNeeded
}

// used are the terms that a label may need beside the names of allergens.
var used = []string{"nutrition_declaration", "per_100g", "energy", "fat", "saturates", "carbohydrate", "sugars", "protein", "salt",
	"ingredients", "best_before_day", "best_before_end", "keep_frozen", "decimal_sign"}

// Lacking are the terms of a label that a language has no words for, its allergens
// among them: English stands there, and figures for the cold. Alone: the allergens
// stand without a list.
func (w Words) Lacking(lang string, allergens []string, alone bool) []string {
	var out []string
	terms := slices.Clone(used)
	if alone {
		terms = append(terms, "contains")
	}
	for _, a := range allergens {
		terms = append(terms, allergenTerm(a))
	}
	for _, t := range terms {
		if _, ok := w[lang][t]; !ok {
			out = append(out, strings.ReplaceAll(t, "_", " "))
		}
	}
	return out
}

// kindTerms are the terms of the nuts and the cereals that Annex II, items 8 and
// 1, names one by one, by their kind. Of other allergens the class is named.
var kindTerms = map[string]map[string]string{
	"nuts": {"almond": "almonds", "hazelnut": "hazelnuts", "walnut": "walnuts", "cashew": "cashews", "pecan": "pecans",
		"brazil_nut": "brazil_nuts", "pistachio": "pistachios", "macadamia": "macadamias"},
	"gluten_cereals": {"wheat": "wheat", "barley": "barley", "rye": "rye", "oats": "oats", "spelt": "spelt"},
}

// allergenTerm is the term for an allergen as label.Allergens writes it in the
// EU: "eggs", "nuts:hazelnut", "gluten_cereals:oats".
func allergenTerm(code string) string {
	class, kind, _ := strings.Cut(code, ":")
	if term := kindTerms[class][kind]; term != "" {
		return term
	}
	return class
}

// eggWords are the words of egg and its parts that the plural does not begin,
// from memory.
var eggWords = map[string][]string{"de": {"ei", "eigelb", "eiweiß", "eiklar"}, "nl": {"ei", "eigeel", "eiwit"}, "cs": {"vaječ", "vajec"},
	"pl": {"jaj"}, "pt": {"ovo"}, "fr": {"oeuf", "œuf"}, "sv": {"ägg"}}

// names reports whether a word of a translated list names an allergen: it holds
// the stem of the allergen's own word, or for eggs one of their parts.
func (w Words) names(lang, term, in string) bool {
	in = strings.ToLower(in)
	own := strings.ToLower(w[lang][term].Text)
	for _, part := range strings.FieldsFunc(own, func(r rune) bool { return r == ' ' || r == ',' || r == '(' || r == ')' }) {
		if letters := []rune(part); len(letters) >= 4 && strings.Contains(in, string(letters[:max(3, len(letters)-2)])) {
			return true
		} else if part == in {
			return true
		}
	}
	if term == "eggs" {
		return slices.ContainsFunc(eggWords[lang], func(s string) bool { return in == s || len(s) > 2 && strings.HasPrefix(in, s) })
	}
	return false
}

// NamesAllergen reports whether a list of ingredients in a language names an
// allergen of Annex II, given as label.Allergens writes it; and with that, in
// which of its words.
func (w Words) NamesAllergen(lang, allergen, list string) bool {
	term := allergenTerm(allergen)
	return slices.ContainsFunc(wordsOf(list), func(s string) bool { return w.names(lang, term, s) })
}

func wordsOf(s string) []string {
	return strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" ,;:.()[]*/%", r) })
}

// Emphasised returns a translated list in runs, the words that name one of the
// allergens emphasised.
func (w Words) Emphasised(lang string, allergens []string, list string) (runs []Run) {
	add := func(s string, strong bool) {
		if n := len(runs); n > 0 && runs[n-1].Strong == strong {
			runs[n-1].Text += s
			return
		}
		runs = append(runs, Run{s, strong})
	}
	rest := list
	for _, word := range wordsOf(list) {
		at := strings.Index(rest, word)
		add(rest[:at], false)
		add(word, slices.ContainsFunc(allergens, func(a string) bool { return w.names(lang, allergenTerm(a), word) }))
		rest = rest[at+len(word):]
	}
	add(rest, false)
	return slices.DeleteFunc(runs, func(r Run) bool { return r.Text == "" })
}
