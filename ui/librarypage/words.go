package librarypage

import (
	"fmt"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// groupNames are the library's groups for people.
var groupNames = map[string]string{
	"dairy": "Dairy", "egg": "Egg", "sugar_syrup": "Sugars and syrups", "fruit": "Fruit", "flavour": "Flavours",
	"nut_seed": "Nuts and seeds", "starch_thickener": "Starches and thickeners", "cocoa_chocolate": "Cocoa and chocolate",
	"bakery": "Bakery", "spirit": "Spirits", "fat_oil": "Fats and oils", "plant_milk": "Plant milks", "other": "Other",
	ingredient.OwnSource: "My own",
}

// ItemOf is an ingredient in a finder: by what a cook calls it, with the full name
// of its record second.
func ItemOf(in *ingredient.Ingredient) kit.FinderItem {
	it := kit.FinderItem{ID: in.ID, Title: say.Capital(say.Kitchen(in)), Group: GroupWords(in.Group)}
	if !strings.EqualFold(in.Name, it.Title) {
		it.Subtitle = in.Name
	}
	return it
}

// GroupWords names a group of the library for people; an unknown one stays as it is.
func GroupWords(group string) string {
	if name, ok := groupNames[group]; ok {
		return name
	}
	return group
}

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

// columnWords names a figure as a row or a field is headed.
func columnWords(c ingredient.Column) string {
	switch c {
	case ingredient.Polyols:
		return "Sugar alcohols"
	case ingredient.TotalSugars:
		return "Sugars"
	case ingredient.CocoaSolidsFatFree:
		return "Cocoa solids, fat-free"
	}
	name := c.Words()
	return strings.ToUpper(name[:1]) + name[1:]
}

// newFigureTable is a table for figureRows, no wider than reads well.
func newFigureTable() (*kit.Figures, fyne.CanvasObject) {
	t := kit.NewFigures("per 100 g", "at most")
	return t, container.New(&capped{em: 34, inset: true}, t)
}

// figureRows are the figures of a record, in g unless the name says otherwise,
// with where they come from: an unknown one says so, with what bounds it.
func figureRows(in *ingredient.Ingredient) []say.TableRow {
	rows := make([]say.TableRow, 0, len(columnRows))
	for _, r := range columnRows {
		c := r.column
		cells, from := []string{"unknown", "no limit"}, ""
		cell, most := in.Cell(c), in.Most(c)
		if cell.Known {
			cells, from = []string{short(cell.Value), " "}, "  "+basis(in, c)
		}
		if !math.IsInf(most, 1) && most != cell.Value {
			cells[1] = short(most)
		}
		name := columnWords(c)
		if c == ingredient.Carbohydrate && in.WithoutFibre {
			name += ", without fibre"
		}
		if u := c.Unit(); u != "g" {
			name += ", " + u
		}
		rows = append(rows, say.TableRow{Name: strings.Repeat("    ", r.indent) + name, Unit: from, Cells: cells})
	}
	return rows
}

// short writes v with the digits it has, three decimals at most.
func short(v float64) string {
	s := page.Number(math.Round(v*1000)/1000, 3)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// copyOf begins the record of an ingredient that was copied from the library.
const copyOf = "after "

// basis says in a word where a known figure comes from.
func basis(in *ingredient.Ingredient, c ingredient.Column) string {
	how := in.How(c)
	switch {
	case how == "entered by hand", how == "" && in.Own && !strings.HasPrefix(in.SourceID, copyOf):
		return "entered"
	case how == "":
		return "record"
	case strings.Contains(how, "estimate"):
		return "estimate"
	case strings.Contains(how, "from memory"):
		return "memory"
	case strings.HasPrefix(how, "the pack's figures"):
		return "pack"
	}
	return "derived"
}

// tallied counts the figures of a record that are known, estimated among them,
// and unknown.
func tallied(in *ingredient.Ingredient) (known, estimated, unknown int) {
	unknown = len(in.Unknown())
	for c := ingredient.Column(0); c < ingredient.NumColumns; c++ {
		if in.Cell(c).Known && basis(in, c) == "estimate" {
			estimated++
		}
	}
	return int(ingredient.NumColumns) - unknown, estimated, unknown
}

// derivations lists how figures were made that are not the source's own, a
// sentence each.
func derivations(in *ingredient.Ingredient) []string {
	var out []string
	for _, entry := range strings.Split(in.Derived, "; ") {
		if entry == "" {
			continue
		}
		names, how, ok := strings.Cut(entry, ": ")
		if !ok {
			out = append(out, entry)
			continue
		}
		var words []string
		for _, n := range strings.Split(names, ", ") {
			if c, ok := ingredient.ColumnNamed(n); ok {
				n = c.Words()
			}
			words = append(words, strings.ReplaceAll(n, "_", " "))
		}
		text := strings.Join(words, ", ")
		out = append(out, strings.ToUpper(text[:1])+text[1:]+": "+how)
	}
	return out
}

// tally says in a sentence how much of a record is known.
func tally(in *ingredient.Ingredient) string {
	known, estimated, unknown := tallied(in)
	estimates := "none of them estimated"
	if estimated > 0 {
		estimates = fmt.Sprintf("%d of them estimated by a named rule", estimated)
	}
	return fmt.Sprintf("%d figures known, %s; %d unknown. In g where no other unit is named.", known, estimates, unknown)
}

// dataset returns what the sources' text says of a dataset: its title, and the
// terms it asks for, "" for what it does not say.
func dataset(sources, name string) (title, terms string) {
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
	return plain(title), plain(terms)
}

// idFor makes an id from a name: its letters without accents, its digits, and _
// for what lies between. It may be empty.
func idFor(name string) string {
	return strings.Join(strings.FieldsFunc(kit.Fold(name), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	}), "_")
}

// ended makes a text a sentence.
func ended(s string) string {
	s = strings.TrimSuffix(page.Sentence(s), ".")
	if s == "" || strings.HasSuffix(s, "?") || strings.HasSuffix(s, ".") {
		return s
	}
	return s + "."
}

// plain takes the marks of Markdown out of a sentence, its links kept as text
// with the address.
func plain(s string) string {
	s = strings.NewReplacer("*", "", "[", "", "](", " (").Replace(s)
	return strings.TrimSpace(s)
}

// capped gives its object the width there is, up to so many times the text's
// size, and sets it in as far as a label's text if asked.
type capped struct {
	em    float32
	inset bool
}

func (c *capped) left() float32 {
	if c.inset {
		return theme.InnerPadding()
	}
	return 0
}

// Layout implements fyne.Layout.
func (c *capped) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(c.left(), 0))
		o.Resize(fyne.NewSize(max(o.MinSize().Width, min(size.Width-c.left(), c.em*theme.TextSize())), size.Height))
	}
}

// MinSize implements fyne.Layout.
func (c *capped) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(c.left(), 0)
}

// atLeast gives its object a width of so many times the text's size or more.
type atLeast struct{ em float32 }

// Layout implements fyne.Layout.
func (a *atLeast) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
}

// MinSize implements fyne.Layout.
func (a *atLeast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(fyne.NewSize(a.em*theme.TextSize(), 0))
}
