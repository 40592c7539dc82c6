package design

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/setting"
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
		report(f.Path, check(f, &d))
	}
	if slices.Contains(egg.Systems(), d.Eggs.System) {
		if _, err := egg.Find(d.Eggs.System, d.Eggs.Size); err != nil {
			report("eggs.size", err.Error())
		}
	}
	for _, part := range Parts {
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

// check says what is wrong with f in d, or "".
func check(f field, d *Design) string {
	if m := f.Check(d); m != "" {
		return m
	}
	if word, ok := f.At(d).(*string); ok {
		return notText(*word)
	}
	return ""
}

// validate checks one line's form and numbers.
func (l Line) validate(path string, report func(path, message string)) {
	report(path+".note", notText(l.Note))
	if l.Price.Known {
		report(path+".price_per_kg", setting.Outside(l.Price.Value, 0, MaxPrice, "per kg"))
	}
	if l.CountOf == "" {
		report(path+".ingredient", notEmpty(l.Ingredient))
		report(path+".ingredient", notText(l.Ingredient))
		report(path+".grams", setting.Outside(l.Grams, 0, MaxGrams, "g"))
		if l.Count != 0 {
			report(path, "a count of nothing in particular: say eggs, yolks or whites")
		}
		return
	}
	id := l.CountOf.IngredientID()
	switch {
	case id == "":
		report(path, setting.OneOf(string(l.CountOf), []string{string(WholeEggs), string(Yolks), string(Whites)}))
		return
	case l.Ingredient != id:
		report(path+".ingredient", fmt.Sprintf("%s is not what %s count; that is %q", echo.Quoted(l.Ingredient), l.CountOf, id))
	case l.Grams != 0:
		report(path+".grams", "a counted line takes its grams from the egg size")
	}
	report(path+"."+string(l.CountOf), setting.Outside(l.Count, 0, MaxCount, ""))
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
