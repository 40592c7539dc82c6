// Package tongue holds the language that the program speaks, and the catalogue of
// what it says. The English text is a message's own name, so English needs no
// catalogue to be read; other languages are files of go-i18n in catalogue.
//
// The language is the process's: it is set at the start and when the maker
// chooses another, and every text that is made after that is in it. Files, their
// keys, codes and what --json prints stay English.
package tongue

import (
	"fmt"
	"strings"
	"sync/atomic"
)

// A Message is a text of the catalogue in English, which names it. Its
// arguments are those of fmt, by position where a language turns them round:
// "%[2]s". What follows a broken bar tells apart what English alone says in one
// word, and is not shown: "light¦colour".
type Message string

// English is the language that is spoken unless another is chosen.
const English = "en"

// spoken is a language with its messages.
type spoken struct {
	tag   string
	texts map[Message]string
}

var now atomic.Pointer[spoken] // nil is English

// String is the message in the language that is spoken.
func (m Message) String() string {
	if s := now.Load(); s != nil {
		if text, ok := s.texts[m]; ok {
			return text
		}
	}
	if shown, _, ok := strings.Cut(string(m), "¦"); ok {
		return shown
	}
	return string(m)
}

// T is a message with what it says filled in. One without arguments is not read
// as a format.
func T(m Message, args ...any) string {
	if len(args) == 0 {
		return m.String()
	}
	return fmt.Sprintf(m.String(), args...)
}

// Of is T of a text that is no constant: a word of the library, of a table below.
// One that the catalogue does not know, such as a maker's own, stands as it is.
func Of(text string) string { return Message(text).String() }

// Plural is one or many of n. English and German part them alike; a language
// that has more forms needs more here.
func Plural(n float64, one, many Message) string {
	if n == 1 {
		return one.String()
	}
	return many.String()
}

// Language is the language that is spoken: "en".
func Language() string {
	if s := now.Load(); s != nil {
		return s.tag
	}
	return English
}

// Speak chooses the language. It is false, and changes nothing, for one that the
// catalogue does not have.
func Speak(tag string) bool {
	if tag == English {
		now.Store(nil)
		return true
	}
	texts, ok := of(tag)
	if ok {
		now.Store(&spoken{tag, texts})
	}
	return ok
}
