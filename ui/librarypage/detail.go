package librarypage

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// showDetail fills the right side with the ingredient chosen.
func (p *Page) showDetail() {
	in, ok := p.all.Find(p.chosen)
	key := detailKey{in, mine(p.setup.Shelf.Own(), p.chosen), p.copyState(p.chosen)}
	if key == p.shown && len(p.detail.Objects) > 0 {
		return
	}
	p.shown = key
	if !ok {
		p.detail.Objects = []fyne.CanvasObject{container.NewCenter(widget.NewLabel("Choose an ingredient at the left."))}
		p.detail.Refresh()
		return
	}
	name := page.Heading(in.Name)
	name.Wrapping = fyne.TextWrapWord
	head := container.NewVBox(name, page.Prose(p.sourceLine(in)), p.useRow(in), p.keepRow(in))
	if note := p.copyNote(in); note != nil {
		head.Add(note)
	}
	table, framed := newFigureTable()
	table.ShowFigures(figureRows(in))
	objects := []fyne.CanvasObject{
		page.Heading("Figures"),
		page.Prose(tally(in) + " Unknown is never taken as 0: a sum then has a least and a most."),
		framed,
	}
	section := func(title string, lines ...string) {
		var said []fyne.CanvasObject
		for _, l := range lines {
			if l != "" {
				said = append(said, page.Prose(l))
			}
		}
		if len(said) > 0 {
			objects = append(append(objects, page.Heading(title)), said...)
		}
	}
	section("Measures", measures(in)...)
	section("Allergens", allergenLine("United States", in.AllergensUS, in.Own), allergenLine("European Union and United Kingdom", in.AllergensEU, in.Own))
	section("On a label", labelLines(in)...)
	section("What the freezing model knows and assumes", modelLines(in)...)
	section("Figures that do not agree", capitalised(in.Inconsistencies())...)
	section("Figures that are not from the source", derivations(in)...)
	section("Notes", in.Notes)
	if !in.Own {
		title, terms := dataset(p.setup.Sources, in.Source)
		section("Source", title, terms)
	}
	p.detail.Objects = []fyne.CanvasObject{container.NewBorder(container.NewPadded(head), nil, nil, nil, page.Scrolled(objects...))}
	p.detail.Refresh()
}

// sourceLine is the record's id, group and origin.
func (p *Page) sourceLine(in *ingredient.Ingredient) string {
	parts := []string{in.ID}
	if in.Group != ingredient.OwnSource {
		parts = append(parts, GroupWords(in.Group))
	}
	if !in.Own {
		return strings.Join(append(parts, in.Source+", "+in.SourceID), " · ")
	}
	parts = append(parts, p.whose(in.ID))
	if in.SourceID != "" {
		parts = append(parts, in.SourceID)
	}
	return strings.Join(parts, " · ")
}

// useRow adds the ingredient to a phase.
func (p *Page) useRow(in *ingredient.Ingredient) fyne.CanvasObject {
	row := container.NewHBox(widget.NewLabel("Add " + page.Reads.MassTo(firstGrams(in), 0) + " to"))
	for _, part := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
		row.Add(kit.NewButtonWithIcon(say.Capital(say.Part(part)), theme.ContentAddIcon(), func() { p.put(in, part) }))
	}
	return row
}

// keepRow changes what the maker keeps.
func (p *Page) keepRow(in *ingredient.Ingredient) fyne.CanvasObject {
	row := container.NewHBox(kit.NewButton("Duplicate and edit…", func() { p.edit(duplicateOf(p, in)) }))
	if kept := mine(p.setup.Shelf.Own(), in.ID); kept != nil {
		remove := kit.NewButton("Delete…", func() { p.remove(kept) })
		row.Add(kit.NewButton("Edit…", func() { p.edit(editorOf(p, kept)) }))
		row.Add(remove)
	}
	return row
}

// copyState is how the design's copy of an ingredient stands to what the maker
// keeps.
type copyState uint8

const (
	copySame  copyState = iota // or there is none
	copyAlone                  // the maker keeps none
	copyDiffers
)

func (p *Page) copyState(id string) copyState {
	carried, kept := mine(p.own, id), mine(p.setup.Shelf.Own(), id)
	switch {
	case carried == nil || kept != nil && kept.Equal(carried):
		return copySame
	case kept == nil:
		return copyAlone
	}
	return copyDiffers
}

// copyNote tells of a copy in the design that differs from what the maker
// keeps, or that they do not keep, and offers to mend it; nil if neither.
func (p *Page) copyNote(in *ingredient.Ingredient) fyne.CanvasObject {
	carried, kept := mine(p.own, in.ID), mine(p.setup.Shelf.Own(), in.ID)
	note := func(text, command string, do func()) fyne.CanvasObject {
		return container.NewBorder(nil, nil, nil, container.NewCenter(kit.NewButton(command, do)), page.Bold(text))
	}
	switch p.copyState(in.ID) {
	case copySame:
		return nil
	case copyAlone:
		return note("It came with this design and is not among your own ingredients.", "Save it as mine", func() {
			if err := p.keep(carried, ""); err != nil {
				p.host.Say(page.Sentence(err.Error()))
				return
			}
			p.back(in.ID)
		})
	}
	return note("This design has other figures for it than you have saved. The design's are shown and used.", "Use mine in the design", func() {
		p.host.Commit(p.host.Design().WithOwnReplaced(kept), "new figures of "+kept.Name)
	})
}

func measures(in *ingredient.Ingredient) []string {
	var out []string
	if in.Density.Known {
		kind := ""
		if in.DensityKind == "bulk" {
			kind = ", as spooned, with the air between"
		}
		out = append(out, "Density "+page.Reads.DensityTo(in.Density.Value, 3)+kind)
	}
	var spoons []string
	for _, m := range [...]struct {
		cell ingredient.Cell
		name string
	}{{in.GramsPerCup, "cup"}, {in.GramsPerTbsp, "tablespoon"}, {in.GramsPerTsp, "teaspoon"}, {in.GramsPerFlOz, "fluid ounce"}} {
		if m.cell.Known {
			spoons = append(spoons, "1 US "+m.name+" = "+page.Reads.MassTo(m.cell.Value, 1))
		}
	}
	if len(spoons) > 0 {
		out = append(out, strings.Join(spoons, "; "))
	}
	if in.Measures != "" {
		out = append(out, "By the source: "+in.Measures)
	}
	if len(out) == 0 {
		out = append(out, "Its density and household measures are not known.")
	}
	return out
}

func allergenLine(region string, allergens []string, own bool) string {
	if len(allergens) == 0 {
		if own {
			return region + ": you have named none."
		}
		return region + ": none."
	}
	words := make([]string, len(allergens))
	for i, a := range allergens {
		class, kind, _ := strings.Cut(strings.ReplaceAll(a, "_", " "), ":")
		words[i] = class
		if kind != "" {
			words[i] += " (" + kind + ")"
		}
	}
	return region + ": " + strings.Join(words, ", ") + "."
}

func labelLines(in *ingredient.Ingredient) []string {
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
	for _, s := range standings {
		if s.standing == in.Standing && s.standing != "" {
			out = append(out, "The US frozen-dessert standards count it as "+s.name+".")
		}
	}
	if p, f, c := in.AtwaterProtein, in.AtwaterFat, in.AtwaterCarbohydrate; p.Known || f.Known || c.Known {
		out = append(out, fmt.Sprintf("Specific energy factors: protein %s, fat %s, carbohydrate %s kcal/g; protein is nitrogen × %s.",
			orUnknown(p), orUnknown(f), orUnknown(c), orUnknown(in.NitrogenFactor)))
	}
	return out
}

func orUnknown(c ingredient.Cell) string {
	if c.Known {
		return short(c.Value)
	}
	return "unknown"
}

// modelLines are what the freezing model takes from a record beside its
// figures, and what it has to assume.
func modelLines(in *ingredient.Ingredient) []string {
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
		g := m.Mass[mix.HigherSaccharides]
		out = append(out, say.HigherSaccharides(page.Reads, g/m.HigherMol, m.HigherSweet/g))
	}
	return append(out, capitalised(say.Assumptions(page.Reads, resolved.Assumed))...)
}

func capitalised(list []string) []string {
	out := make([]string, len(list))
	for i, s := range list {
		out[i] = ended(s)
	}
	return out
}
