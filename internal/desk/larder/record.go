// Package larder is what the page of the ingredients shows and edits, without a
// toolkit: lists, the figures of a record, and the form of one's own.
package larder

import (
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
)

// columnRows are the figures of a record in the order of a label, parts
// indented under their whole.
var columnRows = [...]struct {
	column ingredient.Column
	indent int
}{
	{ingredient.Water, 0}, {ingredient.Energy, 0},
	{ingredient.Fat, 0}, {ingredient.SaturatedFat, 1}, {ingredient.Monounsaturated, 1}, {ingredient.Polyunsaturated, 1}, {ingredient.TransFat, 1},
	{ingredient.Carbohydrate, 0}, {ingredient.Fibre, 1}, {ingredient.Starch, 1}, {ingredient.HigherSaccharides, 1}, {ingredient.Polyols, 1},
	{ingredient.TotalSugars, 1}, {ingredient.Sucrose, 2}, {ingredient.Glucose, 2}, {ingredient.Fructose, 2},
	{ingredient.Lactose, 2}, {ingredient.Maltose, 2}, {ingredient.Galactose, 2}, {ingredient.AddedSugars, 2},
	{ingredient.Protein, 0}, {ingredient.Alcohol, 0}, {ingredient.Ash, 0},
	{ingredient.CholesterolMG, 0}, {ingredient.SodiumMG, 0}, {ingredient.PotassiumMG, 0}, {ingredient.CalciumMG, 0}, {ingredient.IronMG, 0},
	{ingredient.MagnesiumMG, 0}, {ingredient.PhosphorusMG, 0}, {ingredient.VitaminDUG, 0},
	{ingredient.MilkFat, 0}, {ingredient.MSNF, 0}, {ingredient.EggYolkSolids, 0}, {ingredient.CocoaSolidsFatFree, 0}, {ingredient.CocoaButter, 0},
}

// columnName names a figure as a row or a field is headed.
func columnName(c ingredient.Column) string {
	switch c {
	case ingredient.Polyols:
		return say.T("Sugar alcohols")
	case ingredient.TotalSugars:
		return say.T("Sugars")
	case ingredient.CocoaSolidsFatFree:
		return say.T("Cocoa solids, fat-free")
	}
	return say.Capital(say.Of(c.Words()))
}

// FigureHeads are the heads of the table of a record's figures.
func FigureHeads() []string { return []string{say.T("per 100 g"), say.T("at most")} }

// FigureRows are the figures of a record, in g unless the name says otherwise,
// with where they come from: an unknown one says so, with what bounds it.
func FigureRows(s say.Style, in *ingredient.Ingredient) []say.TableRow {
	rows := make([]say.TableRow, len(columnRows))
	for i, r := range columnRows {
		rows[i] = say.FigureRow(s, in, r.column, strings.Repeat("    ", r.indent)+columnName(r.column))
	}
	return rows
}

// A Section is a part of what is told of an ingredient.
type Section struct {
	Title string
	Lines []string // sentences
}

// Sections is what is known of an ingredient beside its figures; sources is the
// text that names the datasets and their terms.
func Sections(s say.Style, in *ingredient.Ingredient, sources string) []Section {
	all := []Section{
		{say.T("Measures"), say.RecordMeasures(s, in)},
		{say.T("Allergens"), say.RecordAllergens(in)},
		{say.T("On a label"), say.OnLabel(s, in)},
		{say.T("To the freezing model"), say.ToTheModel(s, in)},
		{say.T("Figures that do not agree"), say.Disagreements(s, in.Disagreements())},
		{say.T("Figures not from the source"), say.MadeOtherwise(in)},
		{say.T("Notes"), []string{say.Sentence(in.Notes)}},
	}
	if !in.Own {
		title, terms := Dataset(sources, in.Source)
		all = append(all, Section{say.T("Source"), []string{title, terms}})
	}
	return filled(all)
}

// Preview is what is to be said of an ingredient while it is being made.
func Preview(s say.Style, in *ingredient.Ingredient) []Section {
	doubts := say.Disagreements(s, in.Disagreements())
	if in.Pack != nil {
		if makes, says, doubted := in.Pack.Doubt(); doubted {
			doubts = append([]string{say.EnergyDoubt(s, makes, says)}, doubts...)
		}
	}
	return filled([]Section{
		{say.T("Look again"), doubts},
		{say.T("What the freezing model assumes"), say.Sentences(say.Assumptions(s, in.Resolve().Assumed))},
		{say.T("How figures are made"), say.MadeOtherwise(in)},
	})
}

// filled leaves out the lines and sections that say nothing.
func filled(all []Section) []Section {
	var out []Section
	for _, x := range all {
		var lines []string
		for _, l := range x.Lines {
			if l != "" {
				lines = append(lines, l)
			}
		}
		if len(lines) > 0 {
			out = append(out, Section{x.Title, lines})
		}
	}
	return out
}

// Dataset returns what the sources' text says of a dataset: its title, and the
// terms it asks for, "" for what it does not say.
func Dataset(sources, name string) (title, terms string) {
	lines := strings.Split(sources, "\n")
	for i, line := range lines {
		if cells := strings.Split(line, "|"); len(cells) == 5 && strings.TrimSpace(cells[1]) == name {
			title = strings.TrimSpace(cells[3])
		}
		if rest, ok := strings.CutPrefix(line, "- **"+name+"**"); ok {
			terms = name + rest
			for _, more := range lines[i+1:] {
				if !strings.HasPrefix(more, "  ") {
					break
				}
				terms += " " + strings.TrimSpace(more)
			}
		}
	}
	return unmarked(title), unmarked(terms)
}

// unmarked takes the marks of Markdown out of a sentence, its links kept as text
// with the address.
func unmarked(s string) string {
	return strings.TrimSpace(strings.NewReplacer("*", "", "[", "", "](", " (").Replace(s))
}
