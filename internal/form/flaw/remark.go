package flaw

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Remark is a sentence, or a part of one, that is no error: it is told as a Flaw is.
// nil says nothing. In JSON it is its English text.
type Remark struct {
	Message Message
	Args    []any
}

// Remarks are several, each a sentence of its own.
type Remarks []*Remark

// An Opening is a word at the head of a sentence.
type Opening string

// And is what a sentence lists: a Word is told, a string stands as it is.
type And []any

// Say returns the remark of a message, which is not read as a format where it has no
// arguments.
func Say(m Message, args ...any) *Remark { return &Remark{m, args} }

// String is the text in English, "" of nil.
func (r *Remark) String() string {
	if r == nil {
		return ""
	}
	return english(r.Message, r.Args)
}

// MarshalText is String.
func (r *Remark) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// String is the remarks in English, each on a line.
func (r Remarks) String() string {
	lines := make([]string, len(r))
	for i, x := range r {
		lines[i] = x.String()
	}
	return strings.Join(lines, "\n")
}

// With returns r and one more, unless it says that already.
func (r Remarks) With(one *Remark) Remarks {
	for _, x := range r {
		if x.String() == one.String() {
			return r
		}
	}
	return append(r, one)
}

// String is the word with a capital.
func (o Opening) String() string { return Capital(string(o)) }

// Capital is a text that begins with a capital.
func Capital(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// String lists in English.
func (a And) String() string {
	words := make([]string, len(a))
	for i, w := range a {
		words[i] = fmt.Sprint(w)
	}
	return Series(words, "and")
}

// Words are names that a sentence lists, each told as a Word.
func Words(names []string) And {
	out := make(And, len(names))
	for i, n := range names {
		out[i] = Word(n)
	}
	return out
}

// Series joins words as a sentence does, with a word before the last.
func Series(words []string, last string) string {
	n := len(words)
	if n < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:n-1], ", ") + " " + last + " " + words[n-1]
}
