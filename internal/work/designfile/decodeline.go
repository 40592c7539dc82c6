package designfile

import (
	"errors"
	"strings"

	"gopkg.in/yaml.v3"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/design"
)

// lineItem reads one line of a phase: an ingredient with grams, or a count of
// eggs, yolks or whites.
func (r *reader) lineItem(n *yaml.Node, path string) (l design.Line) {
	r.at[path] = n.Line
	if n.Kind == yaml.AliasNode {
		return l // reported
	}
	if n.Kind != yaml.MappingNode {
		r.report(WrongType, n.Line, path, flaw.New("a line is written {ingredient: milk_whole, grams: 520}, or {yolks: 6}"))
		return l
	}
	var counts []string
	r.keys(n, path, lineKeys, func(name string, v *yaml.Node) {
		var wrong error
		switch name {
		case keyIngredient:
			l.Ingredient, wrong = readText(v)
		case keyNote:
			l.Note, wrong = readText(v)
		case keyPrice:
			var price float64
			if price, wrong = readNumber(v, "per kg"); wrong == nil {
				l.Price = ingredient.Known(price)
			}
		case keyGrams:
			l.Grams, wrong = readNumber(v, "g")
		default:
			l.Count, wrong = readNumber(v, "")
			l.CountOf = design.EggPart(name)
			counts = append(counts, name)
		}
		if wrong != nil {
			r.report(WrongType, v.Line, join(path, name), wrong)
		}
	})
	has := func(name string) bool { return valueOf(n, name) != nil }
	switch {
	case len(counts) > 1:
		r.report(Invalid, n.Line, path, flaw.New("a line counts only one of %s", strings.Join(counts, ", ")))
	case len(counts) == 1 && has(keyIngredient):
		r.report(Invalid, n.Line, path, flaw.New("a line has an ingredient with grams or a count of %s, not both", counts[0]))
	case len(counts) == 1 && has(keyGrams):
		r.report(Invalid, n.Line, path, flaw.New("a count of %s takes its grams from the egg size; leave grams out", counts[0]))
	case len(counts) == 0:
		for _, name := range [...]string{keyIngredient, keyGrams} {
			if !has(name) {
				r.report(MissingKey, n.Line, join(path, name), flaw.New("is missing"))
			}
		}
	}
	if len(counts) > 0 {
		l.Ingredient = l.CountOf.IngredientID()
	}
	return l
}

// ingredient reads one of the maker's own ingredients.
func (r *reader) ingredient(n *yaml.Node, path string) {
	r.at[path] = n.Line
	in, err := ingredient.FromYAML(n)
	if err == nil {
		r.d.Own = append(r.d.Own, in)
		return
	}
	if id := valueOf(n, "id"); id != nil {
		r.broken[id.Value] = true
	}
	line := n.Line
	var field *ingredient.FieldError
	if errors.As(err, &field) {
		line, err = field.Line, field.Err
		if field.Field != "" {
			path += "." + strings.ReplaceAll(field.Field, ": ", ".")
		}
	}
	r.report(Invalid, line, path, err)
}

// cutShort looks for signs that the end of the file was lost: YAML often
// stays readable then.
func (r *reader) cutShort(n *yaml.Node, data []byte) {
	if yamltext.EndsWithBreak(data) {
		return
	}
	const cut = "%v; the last line has no end, so the file may have been cut short"
	lost := false
	for i := range r.found {
		if r.found[i].Kind == MissingKey && r.found[i].Line == 0 {
			r.found[i].Err = flaw.New(cut, r.found[i].Err)
			lost = true
		}
	}
	foam := valueOf(n, "foam")
	if !lost && foam != nil && foam.Kind == yaml.MappingNode && foam.Style&yaml.FlowStyle == 0 && valueOf(foam, "overrun_percent") == nil {
		r.report(MissingKey, 0, "foam.overrun_percent", flaw.New(cut, flaw.New("is missing")))
	}
}
