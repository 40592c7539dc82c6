package design

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/form/echo"
)

// Problem is one thing wrong with a design.
type Problem struct {
	Path    string // the place, as in a design file: "dense.lines[2].grams"
	Message string // what is wrong and what is allowed, without the place
}

// String returns the place and the message.
func (p Problem) String() string { return p.Path + ": " + p.Message }

// Validate returns everything that is wrong with d, in the order of a design
// file; nothing means that d can be computed and written. It checks numbers
// against Fields, words against their choices, and each line's form. It knows
// no library, so an ingredient that nobody has heard of passes.
func Validate(d Design) []Problem {
	var found []Problem
	report := func(path, message string) {
		if message != "" {
			found = append(found, Problem{path, message})
		}
	}
	for _, f := range fields {
		report(f.Path, f.check(&d))
	}
	if slices.Contains(egg.Systems(), d.Eggs.System) {
		if _, err := egg.Find(d.Eggs.System, d.Eggs.Size); err != nil {
			report("eggs.size", err.Error())
		}
	}
	for _, part := range [...]Part{DensePart, FoamPart, SyrupPart} {
		if n := len(d.Lines(part)); n > MaxLines {
			report(string(part)+".lines", fmt.Sprintf("%d lines are more than the %d that a phase may have", n, MaxLines))
		}
		for i, l := range d.Lines(part) {
			l.validate(fmt.Sprintf("%s.lines[%d]", part, i), report)
		}
	}
	if len(d.Own) > MaxOwn {
		report("ingredients", fmt.Sprintf("%d ingredients of its own are more than the %d that a design may have", len(d.Own), MaxOwn))
	}
	seen := map[string]bool{}
	for i, in := range d.Own {
		path := fmt.Sprintf("ingredients[%d]", i)
		switch {
		case in == nil || in.ID == "":
			report(path, "an ingredient needs an id")
		case seen[in.ID]:
			report(path+".id", "there is already an ingredient "+echo.Quoted(in.ID))
		default:
			seen[in.ID] = true
		}
	}
	return found
}

// validate checks one line's form and numbers.
func (l Line) validate(path string, report func(path, message string)) {
	report(path+".note", notText(l.Note))
	if l.Price.Known {
		report(path+".price_per_kg", outside(l.Price.Value, 0, MaxPrice, "per kg"))
	}
	if l.CountOf == "" {
		report(path+".ingredient", notEmpty(l.Ingredient))
		report(path+".ingredient", notText(l.Ingredient))
		report(path+".grams", outside(l.Grams, 0, MaxGrams, "g"))
		if l.Count != 0 {
			report(path, "a count of nothing in particular: say eggs, yolks or whites")
		}
		return
	}
	id := l.CountOf.IngredientID()
	switch {
	case id == "":
		report(path, oneOf(string(l.CountOf), []string{string(WholeEggs), string(Yolks), string(Whites)}))
		return
	case l.Ingredient != id:
		report(path+".ingredient", fmt.Sprintf("%s is not what %s count; that is %q", echo.Quoted(l.Ingredient), l.CountOf, id))
	case l.Grams != 0:
		report(path+".grams", "a counted line takes its grams from the egg size")
	}
	report(path+"."+string(l.CountOf), outside(l.Count, 0, MaxCount, ""))
}

// check says what is wrong with f in d, or "".
func (f Field) check(d *Design) string {
	switch v := f.at(d).(type) {
	case *float64:
		return outside(*v, f.Min, f.Max, f.Unit)
	case *int:
		return outside(float64(*v), f.Min, f.Max, f.Unit)
	case *int64:
		return "" // every seed draws a tub
	case *string:
		if f.Choices != nil && !slices.Contains(f.Choices, *v) {
			return oneOf(*v, f.Choices)
		}
		if f.wrong != nil {
			if m := f.wrong(*v); m != "" {
				return m
			}
		}
		return notText(*v)
	}
	panic("design: field " + f.Path + " has a type that no check knows")
}

// outside says that v is not a number from min to max, or "".
func outside(v, min, max float64, unit string) string {
	if unit != "" {
		unit = " " + unit
	}
	n := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return "must be a finite number"
	case v < min || v > max:
		return fmt.Sprintf("%s%s is outside %s to %s%s", n(v), unit, n(min), n(max), unit)
	}
	return ""
}

func oneOf(v string, words []string) string {
	return fmt.Sprintf("%s is not one of %s", echo.Quoted(v), strings.Join(words, ", "))
}

func notEmpty(s string) string {
	if strings.TrimSpace(s) == "" {
		return "must not be empty"
	}
	return ""
}

func notName(s string) string {
	if len(s) > MaxName {
		return fmt.Sprintf("a name of %d bytes is longer than the %d that a file's name can hold", len(s), MaxName)
	}
	return notEmpty(s)
}

func notText(s string) string {
	if !utf8.ValidString(s) {
		return "must be UTF-8 text"
	}
	return ""
}

func notColour(s string) string {
	hex := func(r rune) bool { return !strings.ContainsRune("0123456789abcdefABCDEF", r) }
	if len(s) != 7 || s[0] != '#' || strings.ContainsFunc(s[1:], hex) {
		return echo.Quoted(s) + ` is not a colour; write it as "#d9a441"`
	}
	return ""
}
