package typed

import (
	"strings"
	"unicode"

	"golang.org/x/text/cases"
	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"
)

// plainer writes the letters that Unicode does not take apart as most keyboards
// do, and marks between words as spaces.
var plainer = strings.NewReplacer("ø", "o", "œ", "oe", "æ", "ae", "ł", "l", "đ", "d", "ı", "i",
	"-", " ", ",", " ", "(", " ", ")", " ")

// Fold makes texts comparable that differ in case, accents or punctuation.
func Fold(s string) string {
	bare, _, err := transform.String(transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC), cases.Fold().String(s))
	if err != nil {
		bare = strings.ToLower(s) // letters that are none
	}
	return strings.TrimSpace(plainer.Replace(bare))
}

// ID makes an id from a name: its letters without accents, its digits, and _ for
// what lies between. It may be empty.
func ID(name string) string {
	return strings.Join(strings.FieldsFunc(Fold(name), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	}), "_")
}
