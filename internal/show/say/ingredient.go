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
	cells, from := []string{"unknown", "no limit"}, ""
	cell, most := in.Cell(c), in.Most(c)
	if cell.Known {
		cells, from = []string{RecordFigure(s, cell.Value), " "}, "  "+Basis(in, c)
	}
	if !math.IsInf(most, 1) && most != cell.Value {
		cells[1] = RecordFigure(s, most)
	}
	if c == ingredient.Carbohydrate && in.WithoutFibre {
		name += ", without fibre"
	}
	if u := c.Unit(); u != "g" {
		name += ", " + u
	}
	return TableRow{Name: name, Unit: from, Cells: cells}
}

// CopyOf begins the source of an ingredient that was copied from the library.
const CopyOf = "after "

// Basis says in a word where a known figure comes from.
func Basis(in *ingredient.Ingredient, c ingredient.Column) string {
	how := in.How(c)
	switch {
	case how == "entered by hand", how == "" && in.Own && !strings.HasPrefix(in.SourceID, CopyOf):
		return "entered"
	case how == "":
		return "record"
	case strings.Contains(how, "estimate"):
		return estimated
	case strings.Contains(how, "from memory"):
		return "memory"
	case strings.HasPrefix(how, "the pack's figures"):
		return "pack"
	}
	return "derived"
}

const estimated = "estimate"

// FiguresKnown says how much of a record is known.
func FiguresKnown(s Style, in *ingredient.Ingredient) string {
	guessed, unknown := 0, len(in.Unknown())
	for c := range ingredient.NumColumns {
		if in.Cell(c).Known && Basis(in, c) == estimated {
			guessed++
		}
	}
	const units = "In g where no other unit is named."
	known := int(ingredient.NumColumns) - unknown
	if known == 0 {
		return "None of " + s.Count(unknown, "figure", "") + " is known yet. " + units
	}
	text := s.Count(known, "figure", "") + " known, "
	if guessed > 0 {
		text += s.Grouped(float64(guessed)) + " of them estimated by a named rule"
	} else {
		text += "none of them estimated"
	}
	return text + "; " + s.Grouped(float64(unknown)) + " unknown. " + units
}

// UnknownIsNotZero says what a sum makes of unknown figures.
const UnknownIsNotZero = "Unknown is never taken as 0: a sum then has a least and a most."

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
				n = c.Words()
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
		text := "Density " + s.DensityTo(in.Density.Value, 3)
		if in.DensityKind == "bulk" {
			text += ", as spooned, with the air between"
		}
		out = append(out, text+".")
	}
	var spoons []string
	for _, m := range [...]struct {
		cell ingredient.Cell
		name string
	}{{in.GramsPerCup, "cup"}, {in.GramsPerTbsp, "tablespoon"}, {in.GramsPerTsp, "teaspoon"}, {in.GramsPerFlOz, "fluid ounce"}} {
		if m.cell.Known {
			spoons = append(spoons, "1 US "+m.name+" = "+s.MassTo(m.cell.Value, 1))
		}
	}
	if len(spoons) > 0 {
		out = append(out, strings.Join(spoons, "; ")+".")
	}
	if in.Measures != "" {
		out = append(out, "By the source: "+in.Measures+".")
	}
	if len(out) == 0 {
		out = append(out, "Its density and household measures are not known.")
	}
	return out
}

// RecordAllergens names the allergens of an ingredient for both laws.
func RecordAllergens(in *ingredient.Ingredient) []string {
	return []string{allergens("United States", in.AllergensUS, in.Own), allergens("European Union and United Kingdom", in.AllergensEU, in.Own)}
}

func allergens(region string, list []string, own bool) string {
	switch {
	case len(list) > 0:
	case own:
		return region + ": you have named none."
	default:
		return region + ": none."
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
		return words
	}
	return string(st)
}

var standings = map[ingredient.Standing]string{
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
	out := []string{"Called " + us + "."}
	if eu != "" && eu != us {
		out = []string{"Called " + us + " in the United States, " + eu + " in the EU and UK."}
	}
	if in.Parts != "" {
		out = append(out, "Made of "+in.Parts+".")
	} else if in.Compound {
		out = append(out, "It is made of several ingredients that the source does not list; the pack does.")
	}
	if in.Standing != "" {
		out = append(out, "The US frozen-dessert standards count it as "+Standing(in.Standing)+".")
	}
	if p, f, c := in.AtwaterProtein, in.AtwaterFat, in.AtwaterCarbohydrate; p.Known || f.Known || c.Known {
		out = append(out, "Specific energy factors: protein "+factor(s, p)+", fat "+factor(s, f)+", carbohydrate "+factor(s, c)+
			" kcal/g; protein is nitrogen × "+factor(s, in.NitrogenFactor)+".")
	}
	return out
}

func factor(s Style, c ingredient.Cell) string {
	if c.Known {
		return RecordFigure(s, c.Value)
	}
	return "unknown"
}

// ToTheModel says what the freezing model takes from a record beside its figures,
// and what it has to assume.
func ToTheModel(s Style, in *ingredient.Ingredient) []string {
	var out []string
	resolved := in.Resolve()
	if in.Polyol != 0 {
		out = append(out, "The sugar alcohol is "+in.Polyol.String()+".")
	}
	if in.PureSalt != 0 {
		out = append(out, "It is "+in.PureSalt.String()+", which dissolves whole.")
	}
	if in.Pure != 0 {
		out = append(out, "To the freezing model it is "+in.Pure.String()+", which dissolves whole.")
	}
	if m := resolved.Nominal; m.HigherMol > 0 {
		g := m.Grams[mix.HigherSaccharides]
		out = append(out, HigherSaccharides(s, g/m.HigherMol, m.HigherSweetG/g))
	}
	return append(out, Sentences(Assumptions(s, resolved.Assumed))...)
}
