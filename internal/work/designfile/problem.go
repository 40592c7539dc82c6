package designfile

import (
	"fmt"
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/echo"
)

// Kind sorts problems, so that a caller may treat one sort apart.
type Kind uint8

// The kinds of problems.
const (
	Unreadable        Kind = iota // not YAML at all: empty, too long, not UTF-8, bad syntax
	NotAllowed                    // YAML that a design file does without: aliases, anchors, tags, a second document
	UnknownVersion                // written for another version of the format
	UnknownKey                    // a key that means nothing here
	DuplicateKey                  // the same key twice
	MissingKey                    // a key that must be there
	WrongType                     // a word for a number, a fraction for a count, ...
	Invalid                       // of the right type, but outside what a design allows
	UnknownIngredient             // a line names what the library lacks
)

// Problem is one thing wrong with a file.
type Problem struct {
	Kind    Kind
	Line    int    // from 1; 0: the file as a whole
	Path    string // keys that lead there, as in "dense.lines[2].grams"; "": none
	Message string
}

// Error is everything found wrong with one file, in the order of its lines.
type Error struct {
	Name     string // the file's name, as the caller gave it
	Problems []Problem
}

// shown is how many problems an error's text lists.
const shown = 50

// Error returns a line for each problem: file:line: path: message.
func (e *Error) Error() string {
	var b strings.Builder
	for i, p := range e.Problems {
		if i == shown {
			rest := fmt.Sprintf("and %d more", len(e.Problems)-shown)
			if len(e.Problems) >= maxFaults {
				rest = "and more; nothing beyond these was looked for"
			}
			fmt.Fprintf(&b, "\n%s: %s", e.Name, rest)
			break
		}
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(e.Name)
		if p.Line > 0 {
			fmt.Fprintf(&b, ":%d", p.Line)
		}
		if p.Path != "" {
			b.WriteString(": " + echo.Plain(p.Path))
		}
		b.WriteString(": " + p.Message)
	}
	return b.String()
}

// errorOf returns the error for the problems found, nil for none.
func errorOf(name string, found []Problem) error {
	if len(found) == 0 {
		return nil
	}
	slices.SortStableFunc(found, func(a, b Problem) int { return a.Line - b.Line })
	return &Error{Name: name, Problems: found}
}

// nearest returns the word most like w, or "" if none is.
func nearest(w string, words []string) string {
	if len(w) > echo.Most {
		return ""
	}
	return ingredient.Nearest(strings.ToLower(w), words, min(3, len(w)/2+1))
}
