package say

import (
	"strconv"
	"strings"
)

// mostLetters is how many letters a message names.
const mostLetters = 8

// Lacking says that the fonts of a card have no such letters, each named by its
// code too, since a screen may lack it as well, and that mark stands in their place.
func Lacking(letters []rune, mark rune) string {
	named := letters[:min(len(letters), mostLetters)]
	codes := make([]string, len(named))
	for i, r := range named {
		codes[i] = T("U+%04X", r)
	}
	lacks := T("(%s)", strings.Join(codes, ", "))
	if signs := Harmless(string(named), Terminal); signs != "" {
		lacks = T("“%s” (%s)", signs, strings.Join(codes, ", "))
	}
	if more := len(letters) - len(named); more > 0 {
		lacks = T("%s and %d more", lacks, more)
	}
	return T("the fonts of cards and labels lack %s: %c stands in their place", lacks, mark)
}

// Place words the path of a value in a design: "custard, line 3, note". What a
// file calls dense is the maker's custard.
func Place(path string) string {
	for _, list := range [...]struct {
		path  string
		words Message
	}{
		{"dense.lines[", "custard, line %d, %s"}, {"foam.lines[", "foam, line %d, %s"}, {"foam.syrup.lines[", "syrup, line %d, %s"}, {"ingredients[", "own ingredient %d, %s"},
	} {
		rest, ok := strings.CutPrefix(path, list.path)
		if !ok {
			continue
		}
		index, key, _ := strings.Cut(rest, "].")
		if i, err := strconv.Atoi(index); err == nil {
			return T(list.words, i+1, Of(strings.ReplaceAll(key, "_", " ")))
		}
	}
	if lang, ok := strings.CutPrefix(path, "label."); ok {
		if lang, ok := strings.CutSuffix(lang, ".name"); ok {
			return T("label, %s, name", lang)
		}
		if lang, ok := strings.CutSuffix(lang, ".ingredients"); ok {
			return T("label, %s, ingredients", lang)
		}
	}
	return Of(strings.NewReplacer(".", ", ", "_", " ", "dense", "custard").Replace(path))
}

// NotesGoOn says that a card has only the beginning of long notes.
const NotesGoOn Message = "The notes go on in the design: a card holds no more of them."

// MoreWarnings says that a drawn label leaves out n warnings.
func MoreWarnings(n int) string {
	return T("And %d more: the label written as text has them all.", n)
}

// ListGoesOn says that a page shows the beginning of a long list of ingredients.
const ListGoesOn Message = "The list goes on: the label written as text has all of it."
