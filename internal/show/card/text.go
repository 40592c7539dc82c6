package card

import (
	"regexp"
	"unicode/utf8"

	"ripplewright/internal/show/draw/typeset"

	"ripplewright/internal/show/say"
)

// paragraphs splits what stands between empty lines; other ends of lines are
// those of whoever typed it.
func paragraphs(s string) []string {
	var out []string
	for _, p := range emptyLine.Split(s, -1) {
		if p = typeset.Plain(p); p != "" {
			out = append(out, p)
		}
	}
	return out
}

var emptyLine = regexp.MustCompile(`\n[ \t\r]*\n`)

// What a card holds of notes, in letters and paragraphs; more stays in the design.
const (
	mostNotes      = 20000
	mostParagraphs = 400
	mostLineNote   = 500
)

// notesOf splits a design's notes into the paragraphs that a card has of them.
func notesOf(s string) []string {
	short := cut(s, mostNotes)
	all := paragraphs(short)
	if len(all) > mostParagraphs || short != s {
		all = append(all[:min(len(all), mostParagraphs)], say.NotesGoOn.String())
	}
	return all
}

// cut returns s, or what begins it and an ellipsis, most letters in all.
func cut(s string, most int) string {
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	n := 0
	for i := range s {
		if n++; n == most {
			return s[:i] + "…"
		}
	}
	return s
}
