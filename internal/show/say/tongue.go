package say

import (
	"strings"

	"ripplewright/internal/show/tongue"
)

// Message is a text of the catalogue, named by its English.
type Message = tongue.Message

// T is a message in the maker's language, with what it says filled in.
func T(m Message, args ...any) string { return tongue.T(m, args...) }

// Of is a word of the library or of a table below in the maker's language; one that
// the catalogue does not know stands as it is.
func Of(text string) string { return tongue.Of(text) }

// WithComma reports whether the language writes a decimal comma.
func WithComma() bool { return tongue.Language() == "de" }

// Lower is a name as it stands within a sentence: German keeps the capitals of its
// nouns.
func Lower(text string) string {
	if tongue.Language() == "de" {
		return text
	}
	return strings.ToLower(text)
}
