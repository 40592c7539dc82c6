// Package setting is the one engine for settings of anything that is kept in a
// file: a table of fields says where a value stands, what it is, its unit and
// range, and check, file, help, schema and sliders all read that table.
package setting

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
)

// Field is one setting of a T.
type Field[T any] struct {
	Path    string // place in a file, as in "serving.temperature_c"
	About   string // what it is, in a few words
	Unit    string // "°C", "mL", …; "" for counts, choices and words
	Min     float64
	Max     float64  // numbers are valid from Min to Max, both included
	Over    bool     // Min itself is not valid
	Least   float64  // where a slider begins if 0 stands for something else
	Choices []string // the words allowed; nil: any
	Format  string   // what a word looks like if there are no Choices, as in "#rrggbb"
	Pattern string   // the same as a regular expression for a schema, which Wrong checks in words
	Longest int      // letters that a word may have; 0: any number

	Optional bool // a file may say ~, which is "" or unknown
	WithUnit bool // a file writes the number with its unit, "30 g", and may leave that out

	Of    func(*T) any       // the value: one of those that Kind tells
	Wrong func(string) error // says what is wrong with a word; nil: nothing can be
}

// At returns the field's value in v, a pointer or what changes v.
func (f Field[T]) At(v *T) any { return f.Of(v) }

// Check says what is wrong with the field in v and what is allowed, nil for
// nothing.
func (f Field[T]) Check(v *T) error {
	switch x := f.Of(v).(type) {
	case *float64:
		return f.CheckNumber(*x)
	case *int:
		return f.CheckNumber(float64(*x))
	case Maybe:
		if number, known := x.Get(); known {
			return f.CheckNumber(number)
		}
	case *string:
		return f.checkWord(*x)
	case Word:
		return f.checkWord(x.Word())
	}
	return nil // any whole number, list or switch
}

// CheckNumber says what is wrong with x as a value of the field, nil for nothing.
func (f Field[T]) CheckNumber(x float64) error {
	if f.Over && x == f.Min {
		return flaw.New("is %s; leave it out where there is none", Number(x))
	}
	return Outside(x, f.Min, f.Max, f.Unit)
}

func (f Field[T]) checkWord(s string) error {
	if s == "" && f.Optional {
		return nil
	}
	if f.Choices != nil && !slices.Contains(f.Choices, s) {
		return OneOf(s, f.Choices)
	}
	if f.Wrong != nil {
		if err := f.Wrong(s); err != nil {
			return err
		}
	}
	if n := utf8.RuneCountInString(s); f.Longest > 0 && n > f.Longest {
		return flaw.New("%d letters are more than the %d that it may have", n, f.Longest)
	}
	return nil
}

// Allowed says which values the field takes, for help: nil where there is nothing to
// say. Numbers are as a file has them.
func (f Field[T]) Allowed() *flaw.Remark {
	unit := f.Unit
	if unit != "" {
		unit = " " + unit
	}
	switch f.Of(new(T)).(type) {
	case *int64:
		return flaw.Say("any whole number")
	case *int:
		return flaw.Say("whole number from %s to %s%s", Number(f.Min), Number(f.Max), unit)
	case *float64, Maybe:
		return flaw.Say("%s to %s%s", Number(f.Min), Number(f.Max), unit)
	case *bool, Switch:
		return flaw.Say("true or false")
	}
	switch {
	case f.Choices != nil:
		return flaw.Say("%s", strings.Join(f.Choices, " | ")) // the file's words
	case f.Format != "":
		return flaw.Say(flaw.Message(f.Format))
	}
	return nil
}

// Find returns the field at path.
func Find[T any](fields []Field[T], path string) (Field[T], bool) {
	i := slices.IndexFunc(fields, func(f Field[T]) bool { return f.Path == path })
	if i < 0 {
		return Field[T]{}, false
	}
	return fields[i], true
}

// Under reports whether settings lie below path.
func Under[T any](fields []Field[T], path string) bool {
	return slices.ContainsFunc(fields, func(f Field[T]) bool { return strings.HasPrefix(f.Path, path+".") })
}

// Outside says that v is not a number from min to max, or nil.
func Outside(v, min, max float64, unit string) error {
	if unit != "" {
		unit = " " + unit
	}
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return flaw.New("must be a finite number")
	case v < min || v > max:
		return flaw.New("%s%s is outside %s to %s%s", minus(v), unit, minus(min), minus(max), unit)
	}
	return nil
}

// minus is Number with the true minus.
func minus(v float64) string { return strings.ReplaceAll(Number(v), "-", "−") }

// OneOf says that v is none of the words.
func OneOf(v string, words []string) error {
	return flaw.New("%s is not one of %s", echo.Quoted(v), strings.Join(words, ", "))
}

// Number writes v as a file has it: a point, no exponent.
func Number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
