// Package setting is the one engine for settings of anything that is kept in a
// file: a table of fields says where a value stands, what it is, its unit and
// range, and check, file, help, schema and sliders all read that table.
package setting

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ripplewright/internal/form/echo"
)

// Field is one setting of a T.
type Field[T any] struct {
	Path    string // place in a file, as in "serving.temperature_c"
	About   string // what it is, in a few words
	Unit    string // "°C", "mL", …; "" for counts, choices and words
	Min     float64
	Max     float64  // numbers are valid from Min to Max, both included
	Least   float64  // where a slider begins if 0 stands for something else
	Choices []string // the words allowed; nil: any
	Format  string   // what a word looks like if there are no Choices, as in "#rrggbb"

	Of    func(*T) any        // the value: a *float64, *int, *int64 or *string
	Wrong func(string) string // says what is wrong with a word; nil: nothing can be
}

// At returns a pointer to the field's value in v.
func (f Field[T]) At(v *T) any { return f.Of(v) }

// Check says what is wrong with the field in v and what is allowed, "" for
// nothing.
func (f Field[T]) Check(v *T) string {
	switch x := f.Of(v).(type) {
	case *float64:
		return Outside(*x, f.Min, f.Max, f.Unit)
	case *int:
		return Outside(float64(*x), f.Min, f.Max, f.Unit)
	case *int64:
		return "" // any whole number
	case *string:
		if f.Choices != nil && !slices.Contains(f.Choices, *x) {
			return OneOf(*x, f.Choices)
		}
		if f.Wrong != nil {
			return f.Wrong(*x)
		}
		return ""
	}
	panic("setting: " + f.Path + " has a type that no check knows")
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

// Outside says that v is not a number from min to max, or "".
func Outside(v, min, max float64, unit string) string {
	if unit != "" {
		unit = " " + unit
	}
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return "must be a finite number"
	case v < min || v > max:
		return fmt.Sprintf("%s%s is outside %s to %s%s", Number(v), unit, Number(min), Number(max), unit)
	}
	return ""
}

// OneOf says that v is none of the words.
func OneOf(v string, words []string) string {
	return fmt.Sprintf("%s is not one of %s", echo.Quoted(v), strings.Join(words, ", "))
}

// Number writes v as a file has it: a point, no exponent.
func Number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
