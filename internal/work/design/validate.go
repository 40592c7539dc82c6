package design

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
)

// Problem is one thing wrong with a design.
type Problem struct {
	Path string // the place, as in a design file: "dense.lines[2].grams"
	Err  error  // what is wrong and what is allowed, without the place
}

// Words are the place and what is wrong there.
func (p Problem) Words() error { return flaw.At(p.Path, p.Err) }

// String is Words in English.
func (p Problem) String() string { return p.Words().Error() }

// Validate returns everything that is wrong with d, in the order of a design
// file; nothing means that d can be computed and written. It checks numbers
// against Fields, words against their choices, and each line's form. It knows
// no library, so an ingredient that nobody has heard of passes.
func Validate(d Design) []Problem {
	var found []Problem
	report := func(path string, err error) {
		if err != nil {
			found = append(found, Problem{path, err})
		}
	}
	for _, f := range fields {
		report(f.Path, check(f, &d))
	}
	if slices.Contains(egg.Systems(), d.Eggs.System) {
		if _, err := egg.Find(d.Eggs.System, d.Eggs.Size); err != nil {
			report("eggs.size", err)
		}
	}
	for _, part := range Parts {
		if n := len(d.Lines(part)); n > MaxLines {
			report(string(part)+".lines", flaw.New("%d lines are more than the %d that a phase may have", n, MaxLines))
		}
		for i, l := range d.Lines(part) {
			l.validate(fmt.Sprintf("%s.lines[%d]", part, i), report)
		}
	}
	if len(d.Own) > MaxOwn {
		report("ingredients", flaw.New("%d ingredients of its own are more than the %d that a design may have", len(d.Own), MaxOwn))
	}
	seen := map[string]bool{}
	for i, in := range d.Own {
		path := fmt.Sprintf("ingredients[%d]", i)
		switch {
		case in == nil || in.ID == "":
			report(path, flaw.New("an ingredient needs an id"))
		case seen[in.ID]:
			report(path+".id", flaw.New("there is already an ingredient %s", echo.Quoted(in.ID)))
		default:
			seen[in.ID] = true
		}
	}
	return found
}

// check says what is wrong with f in d, or nil.
func check(f field, d *Design) error {
	if err := f.Check(d); err != nil {
		return err
	}
	if word, ok := f.At(d).(*string); ok {
		return notText(*word)
	}
	return nil
}

// validate checks one line's form and numbers.
func (l Line) validate(path string, report func(path string, err error)) {
	report(path+".note", notText(l.Note))
	if l.Price.Known {
		report(path+".price_per_kg", setting.Outside(l.Price.Value, 0, MaxPrice, "per kg"))
	}
	if l.CountOf == "" {
		report(path+".ingredient", notEmpty(l.Ingredient))
		report(path+".ingredient", notText(l.Ingredient))
		report(path+".grams", setting.Outside(l.Grams, 0, MaxGrams, "g"))
		if l.Count != 0 {
			report(path, flaw.New("a count of nothing in particular: say eggs, yolks or whites"))
		}
		return
	}
	id := l.CountOf.IngredientID()
	switch {
	case id == "":
		report(path, setting.OneOf(string(l.CountOf), []string{string(WholeEggs), string(Yolks), string(Whites)}))
		return
	case l.Ingredient != id:
		report(path+".ingredient", flaw.New("%s is not what %s count; that is %q", echo.Quoted(l.Ingredient), l.CountOf, id))
	case l.Grams != 0:
		report(path+".grams", flaw.New("a counted line takes its grams from the egg size"))
	}
	report(path+"."+string(l.CountOf), setting.Outside(l.Count, 0, MaxCount, ""))
}

func notEmpty(s string) error {
	if strings.TrimSpace(s) == "" {
		return flaw.New("must not be empty")
	}
	return nil
}

func notName(s string) error {
	if len(s) > MaxName {
		return flaw.New("a name of %d bytes is longer than the %d that a file's name can hold", len(s), MaxName)
	}
	return notEmpty(s)
}

func notText(s string) error {
	if !utf8.ValidString(s) {
		return flaw.New("must be UTF-8 text")
	}
	return nil
}

func notColour(s string) error {
	hex := func(r rune) bool { return !strings.ContainsRune("0123456789abcdefABCDEF", r) }
	if len(s) != 7 || s[0] != '#' || strings.ContainsFunc(s[1:], hex) {
		return flaw.New(`%s is not a colour; write it as "#d9a441"`, echo.Quoted(s))
	}
	return nil
}
