// Package fold makes texts comparable that mean one thing.
package fold

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

// Text is s without what differs by case, accents or punctuation.
func Text(s string) string {
	if !strings.ContainsFunc(s, func(c rune) bool { return c > unicode.MaxASCII }) { // most texts, and no marks to take off
		return strings.TrimSpace(plainer.Replace(strings.ToLower(s)))
	}
	bare, _, err := transform.String(transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC), cases.Fold().String(s))
	if err != nil {
		bare = strings.ToLower(s) // letters that are none
	}
	return strings.TrimSpace(plainer.Replace(bare))
}
