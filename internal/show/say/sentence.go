package say

import (
	"strings"
	"unicode/utf8"
)

// Sentence makes a text one: with a capital, and a full stop unless it ends with a
// mark of its own.
func Sentence(text string) string {
	last, _ := utf8.DecodeLastRuneInString(text)
	if text == "" || strings.ContainsRune(".?!:…", last) {
		return Capital(text)
	}
	return Capital(text) + "."
}

// Sentences makes each of some texts one.
func Sentences(texts []string) []string {
	out := make([]string, len(texts))
	for i, t := range texts {
		out[i] = Sentence(t)
	}
	return out
}
