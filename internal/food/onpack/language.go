package onpack

import (
	"fmt"
	"strings"

	"ripplewright/internal/form/flaw"

	"golang.org/x/text/language"
	"golang.org/x/text/language/display"
)

// LanguageName is the English name of a language by its two letters.
func LanguageName(lang string) string {
	t, err := language.Parse(lang)
	if err != nil {
		return lang
	}
	return display.English.Languages().Name(t)
}

func languageList(langs []string) flaw.And {
	words := make(flaw.And, len(langs))
	for i, l := range langs {
		words[i] = flaw.Word(LanguageName(l))
	}
	return words
}

// mostLanguages is how many languages a label takes.
const mostLanguages = 3

// ParseLanguages reads "en,de": one to three languages in which a label can be
// set.
func (w Words) ParseLanguages(s string) ([]string, error) {
	var out []string
	can := w.Languages()
	for _, lang := range strings.Split(s, ",") {
		lang = strings.ToLower(strings.TrimSpace(lang))
		known := false
		for _, c := range can {
			known = known || c == lang
		}
		if !known {
			return nil, flaw.New("the words of that language were not all read: it is not one of %s", strings.Join(can, ", "))
		}
		for _, o := range out {
			if o == lang {
				return nil, flaw.New("%s stands twice", LanguageName(lang))
			}
		}
		out = append(out, lang)
	}
	if len(out) > mostLanguages {
		return nil, flaw.New("a label takes %d languages at most", mostLanguages)
	}
	return out, nil
}

func grams(g float64) string { return fmt.Sprintf("%.0f g", g) }
