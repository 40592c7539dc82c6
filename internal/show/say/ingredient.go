package say

import (
	"math"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
)

// The words about what is known of an ingredient.

// RecordFigure is a figure of a record with the digits it has, three decimals at
// most.
func RecordFigure(s Style, v float64) string { return s.Short(v, 3) }

// FigureRow is a row of a record's table: the figure in column c, what bounds it if
// it is unknown, and where it comes from. name is what the row is called.
func FigureRow(s Style, in *ingredient.Ingredient, c ingredient.Column, name string) TableRow {
	cells, from := []string{T("unknown"), T("no limit")}, ""
	cell, most := in.Cell(c), in.Most(c)
	if cell.Known {
		cells, from = []string{RecordFigure(s, cell.Value), " "}, "  "+Basis(in, c)
	}
	if !math.IsInf(most, 1) && most != cell.Value {
		cells[1] = RecordFigure(s, most)
	}
	if c == ingredient.Carbohydrate && in.WithoutFibre {
		name = T("%s, without fibre", name)
	}
	if u := c.Unit(); u != "g" {
		name += ", " + u
	}
	return TableRow{Name: name, Unit: from, Cells: cells}
}

// Basis says in a word where a known figure comes from.
func Basis(in *ingredient.Ingredient, c ingredient.Column) string {
	how := in.How(c)
	switch {
	case how == "entered by hand", how == "" && in.Own && !strings.HasPrefix(in.SourceID, ingredient.CopyOf):
		return T("entered")
	case how == "":
		return T("record")
	case strings.Contains(how, "estimate"):
		return estimated.String()
	case strings.Contains(how, "from memory"):
		return T("memory")
	case strings.HasPrefix(how, "the pack's figures"):
		return T("pack")
	}
	return T("derived")
}

const estimated Message = "estimate"

// FiguresKnown says how much of a record is known.
func FiguresKnown(s Style, in *ingredient.Ingredient) string {
	guessed, unknown := 0, len(in.Unknown())
	for c := range ingredient.NumColumns {
		if in.Cell(c).Known && Basis(in, c) == estimated.String() {
			guessed++
		}
	}
	units := T("In g where no other unit is named.")
	known := int(ingredient.NumColumns) - unknown
	if known == 0 {
		return T("None of %s is known yet. %s", s.Count(unknown, "figure", "figures"), units)
	}
	have, lacks := s.Count(known, "figure", "figures"), s.Grouped(float64(unknown))
	if guessed > 0 {
		return T("%s known, %s of them estimated by a named rule; %s unknown. %s", have, s.Grouped(float64(guessed)), lacks, units)
	}
	return T("%s known, none of them estimated; %s unknown. %s", have, lacks, units)
}

// UnknownIsNotZero says what a sum makes of unknown figures.
const UnknownIsNotZero Message = "Unknown is never taken as 0: a sum then has a least and a most."

// MadeOtherwise lists how figures were made that are not the source's own, a
// sentence each.
func MadeOtherwise(in *ingredient.Ingredient) []string {
	var out []string
	for _, entry := range strings.Split(in.Derived, "; ") {
		if entry == "" {
			continue
		}
		names, how, ok := strings.Cut(entry, ": ")
		if !ok {
			out = append(out, Sentence(entry))
			continue
		}
		var words []string
		for _, n := range strings.Split(names, ", ") {
			if c, ok := ingredient.ColumnNamed(n); ok {
				n = Of(c.Words())
			}
			words = append(words, strings.ReplaceAll(n, "_", " "))
		}
		out = append(out, Sentence(strings.Join(words, ", ")+": "+how))
	}
	return out
}

// RecordMeasures says what an ingredient weighs by the measure.
func RecordMeasures(s Style, in *ingredient.Ingredient) []string {
	var out []string
	if in.Density.Known {
		density := s.DensityTo(in.Density.Value, 3)
		if in.DensityKind == "bulk" {
			out = append(out, T("Density %s, as spooned, with the air between.", density))
		} else {
			out = append(out, T("Density %s.", density))
		}
	}
	var spoons []string
	for _, m := range [...]struct {
		cell ingredient.Cell
		name string
	}{{in.GramsPerCup, T("cup")}, {in.GramsPerTbsp, T("tablespoon")}, {in.GramsPerTsp, T("teaspoon")}, {in.GramsPerFlOz, T("fluid ounce")}} {
		if m.cell.Known {
			spoons = append(spoons, T("1 US %s = %s", m.name, s.MassTo(m.cell.Value, 1)))
		}
	}
	if len(spoons) > 0 {
		out = append(out, strings.Join(spoons, "; ")+".")
	}
	if in.Measures != "" {
		out = append(out, T("By the source: %s.", in.Measures))
	}
	if len(out) == 0 {
		out = append(out, T("Its density and household measures are not known."))
	}
	return out
}

// RecordAllergens names the allergens of an ingredient for both laws.
func RecordAllergens(in *ingredient.Ingredient) []string {
	return []string{allergens(T("United States"), in.AllergensUS, in.Own), allergens(T("European Union and United Kingdom"), in.AllergensEU, in.Own)}
}

func allergens(region string, list []string, own bool) string {
	switch {
	case len(list) > 0:
	case own:
		return T("%s: you have named none.", region)
	default:
		return T("%s: none.", region)
	}
	words := make([]string, len(list))
	for i, a := range list {
		class, kind, _ := strings.Cut(strings.ReplaceAll(a, "_", " "), ":")
		words[i] = class
		if kind != "" {
			words[i] += " (" + kind + ")"
		}
	}
	return region + ": " + strings.Join(words, ", ") + "."
}

// Standing says what the US frozen-dessert standards see in an ingredient.
func Standing(st ingredient.Standing) string {
	if words, ok := standings[st]; ok {
		return words.String()
	}
	return string(st)
}

var standings = map[ingredient.Standing]Message{
	"": "nothing in particular", ingredient.Dairy: "milk, cream or their solids", ingredient.Cultured: "cultured milk",
	ingredient.Cocoa: "cocoa or chocolate", ingredient.Fruit: "fruit", ingredient.DriedFruit: "dried fruit", ingredient.Nut: "nuts",
	ingredient.NotUSFibre: "a gum that is no fibre in the US",
}

// OnLabel says what an ingredient is to a label.
func OnLabel(s Style, in *ingredient.Ingredient) []string {
	us, eu := in.CommonName, in.CommonNameEU
	if us == "" {
		us = strings.ToLower(in.Name)
	}
	out := []string{T("Called %s.", us)}
	if eu != "" && eu != us {
		out = []string{T("Called %s in the United States, %s in the EU and UK.", us, eu)}
	}
	if in.Parts != "" {
		out = append(out, T("Made of %s.", in.Parts))
	} else if in.Compound {
		out = append(out, T("It is made of several ingredients that the source does not list; the pack does."))
	}
	if in.Standing != "" {
		out = append(out, T("The US frozen-dessert standards count it as %s.", Standing(in.Standing)))
	}
	if p, f, c := in.AtwaterProtein, in.AtwaterFat, in.AtwaterCarbohydrate; p.Known || f.Known || c.Known {
		out = append(out, T("Specific energy factors: protein %s, fat %s, carbohydrate %s kcal/g; protein is nitrogen × %s.", factor(s, p), factor(s, f), factor(s, c), factor(s, in.NitrogenFactor)))
	}
	return out
}

func factor(s Style, c ingredient.Cell) string {
	if c.Known {
		return RecordFigure(s, c.Value)
	}
	return T("unknown")
}

// ToTheModel says what the freezing model takes from a record beside its figures,
// and what it has to assume.
func ToTheModel(s Style, in *ingredient.Ingredient) []string {
	var out []string
	resolved := in.Resolve()
	if in.Polyol != 0 {
		out = append(out, T("The sugar alcohol is %s.", Of(in.Polyol.String())))
	}
	if in.PureSalt != 0 {
		out = append(out, T("It is %s, which dissolves whole.", Of(in.PureSalt.String())))
	}
	if in.Pure != 0 {
		out = append(out, T("To the freezing model it is %s, which dissolves whole.", Of(in.Pure.String())))
	}
	if m := resolved.Nominal; m.HigherMol > 0 {
		g := m.Grams[mix.HigherSaccharides]
		out = append(out, HigherSaccharides(s, g/m.HigherMol, m.HigherSweetG/g))
	}
	return append(out, Sentences(Assumptions(s, resolved.Assumed))...)
}
