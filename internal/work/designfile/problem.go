package designfile

import (
	"slices"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
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
	Kind Kind
	Line int    // from 1; 0: the file as a whole
	Path string // keys that lead there, as in "dense.lines[2].grams"; "": none
	Err  error  // what is wrong there
}

// Error is everything found wrong with one file, in the order of its lines.
type Error struct {
	Name     string // the file's name, as the caller gave it
	Problems []Problem
}

// shown is how many problems an error's text lists.
const shown = 50

// Words are a line for each problem: file:line: path: what is wrong.
func (e *Error) Words() error {
	var all []error
	for i, p := range e.Problems {
		if i == shown {
			rest := flaw.New("and %d more", len(e.Problems)-shown)
			if len(e.Problems) >= maxFaults {
				rest = flaw.New("and more; nothing beyond these was looked for")
			}
			all = append(all, flaw.At(e.Name, rest))
			break
		}
		all = append(all, flaw.InFile(e.Name, p.Line, flaw.At(echo.Plain(p.Path), p.Err)))
	}
	return flaw.All(all...)
}

func (e *Error) Error() string { return e.Words().Error() }

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
