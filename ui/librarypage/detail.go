package librarypage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/larder"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// detailKey is what the right side depends on.
type detailKey struct {
	in, kept *ingredient.Ingredient
	copy     larder.CopyState
	price    string
}

// showDetail fills the right side with the ingredient chosen.
func (p *Page) showDetail() {
	in, ok := p.shelves.All.Find(p.chosen)
	key := detailKey{in, larder.Named(p.shelves.Kept, p.chosen), p.shelves.Copy(p.chosen), say.PriceOf(page.Reads, p.host.Model().Prices(), p.chosen)}
	if key == p.shown && len(p.detail.Objects) > 0 {
		return
	}
	p.shown = key
	defer p.detail.Refresh()
	if !ok {
		p.detail.Objects = []fyne.CanvasObject{container.NewCenter(widget.NewLabel(say.ChooseIngredient.String()))}
		return
	}
	name := page.Heading(in.Name)
	name.Wrapping = fyne.TextWrapWord
	head := container.NewVBox(name, page.Prose(p.shelves.Origin(in)), p.useRow(in), p.keepRow(in), p.priceRow(in, key.price))
	if note := p.copyNote(in); note != nil {
		head.Add(note)
	}
	table, framed := newFigureTable()
	showFigures(table, in)
	objects := append([]fyne.CanvasObject{page.Heading(say.T("Figures")), page.Prose(say.FiguresKnown(page.Reads, in) + " " + say.UnknownIsNotZero.String()), framed},
		told(larder.Sections(page.Reads, in, p.setup.Sources))...)
	p.detail.Objects = []fyne.CanvasObject{container.NewBorder(container.NewPadded(head), nil, nil, nil, page.Scrolled(objects...))}
}

// useRow adds the ingredient to a phase.
func (p *Page) useRow(in *ingredient.Ingredient) fyne.CanvasObject {
	row := container.NewHBox(widget.NewLabel(say.AddAmount(page.Reads, larder.FirstGrams(in))))
	for _, part := range design.Parts {
		row.Add(kit.NewButtonWithIcon(say.Capital(say.Part(part)), theme.ContentAddIcon(), func() { p.put(in, part) }))
	}
	return row
}

// priceRow tells what a pack costs, and changes it.
func (p *Page) priceRow(in *ingredient.Ingredient, known string) fyne.CanvasObject {
	return container.NewHBox(widget.NewLabel(page.Brief(known, 60)), kit.NewButton(say.T("Price…"), func() { p.setup.Price(in) }))
}

// keepRow changes what the maker keeps.
func (p *Page) keepRow(in *ingredient.Ingredient) fyne.CanvasObject {
	row := container.NewHBox(kit.NewButton(say.T("Duplicate and edit…"), func() { p.edit(larder.FormLike(in, p.shelves)) }))
	if kept := larder.Named(p.shelves.Kept, in.ID); kept != nil {
		row.Add(kit.NewButton(say.T("Edit…"), func() { p.edit(larder.FormOf(kept)) }))
		row.Add(kit.NewButton(say.T("Delete…"), func() { p.remove(kept) }))
	}
	return row
}

// copyNote tells of a copy in the design that differs from what the maker
// keeps, or that they do not keep, and offers to mend it; nil if neither.
func (p *Page) copyNote(in *ingredient.Ingredient) fyne.CanvasObject {
	carried, kept := larder.Named(p.shelves.Design, in.ID), larder.Named(p.shelves.Kept, in.ID)
	note := func(text, command string, do func()) fyne.CanvasObject {
		return container.NewBorder(nil, nil, nil, container.NewCenter(kit.NewButton(command, do)), page.Bold(text))
	}
	switch p.shelves.Copy(in.ID) {
	case larder.CopyAlone:
		return note(say.CopyAlone.String(), say.T("Save it as mine"), func() {
			if err := p.keep(carried, ""); err != nil {
				p.host.Say(say.Sentence(say.Flaw(err)))
				return
			}
			p.back(in.ID)
		})
	case larder.CopyDiffers:
		return note(say.CopyDiffers.String(), say.T("Use mine in the design"), func() {
			p.host.Commit(p.host.Design().WithOwnReplaced(kept), say.NewFiguresOf(kept))
		})
	}
	return nil
}
