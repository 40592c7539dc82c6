// Package flaw holds what is wrong as a message with its arguments, so that the
// error can be told in the language of whoever reads it.
package flaw

import (
	"errors"
	"fmt"
)

// A Message is a format of fmt in English, which names a text of the catalogue.
type Message string

// A Flaw is an error as a message, and what it says. An argument that is an error is a cause, and is told
// by the same rule; a Word is told as a word.
type Flaw struct {
	Message Message
	Args    []any
}

// A Word is an argument that is a message of the catalogue itself.
type Word string

// Worded is an error that is told as another, by its parts.
type Worded interface {
	error
	Words() error
}

// New returns the error of a message, which is not read as a format where it has no
// arguments. What a cause is takes %v, never %w.
func New(m Message, args ...any) error { return &Flaw{m, args} }

// Error is the text in English.
func (f *Flaw) Error() string { return english(f.Message, f.Args) }

func english(m Message, args []any) string {
	if len(args) == 0 {
		return string(m)
	}
	return fmt.Sprintf(string(m), args...)
}

// Unwrap returns the causes.
func (f *Flaw) Unwrap() []error {
	var causes []error
	for _, a := range f.Args {
		if err, ok := a.(error); ok {
			causes = append(causes, err)
		}
	}
	return causes
}

// InLine puts the line of a file, from 1, before an error; 0 is no line.
func InLine(line int, err error) error {
	if line == 0 {
		return err
	}
	return New("line %d: %v", line, err)
}

// InFile puts a file and a line of it, from 1, before an error, as editors read it;
// 0 is no line.
func InFile(name string, line int, err error) error {
	if line > 0 {
		name = fmt.Sprintf("%s:%d", name, line)
	}
	return At(name, err)
}

// At puts a place, which is no word of any language, before an error; "" is none.
func At(place string, err error) error {
	if place == "" {
		return err
	}
	return New("%s: %v", place, err)
}

// Text is the text in English, "" of nil.
func Text(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

// First returns the first error that is one.
func First(all ...error) error {
	for _, err := range all {
		if err != nil {
			return err
		}
	}
	return nil
}

// All is several errors, each on a line of its own; nil of none.
func All(errs ...error) error { return errors.Join(errs...) }
