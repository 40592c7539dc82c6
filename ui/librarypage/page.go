// Package librarypage is the page of the ingredients.
package librarypage

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/larder"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/userdata"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// Setup is what the library page needs beside a Host.
type Setup struct {
	Shelf *userdata.Shelf
	// Use makes a changed library the one that the program works with.
	Use func(*ingredient.Library)
	// Prices are the maker's, which follow an ingredient that gets another id; Price
	// asks for one.
	Prices *userdata.Prices
	Price  func(*ingredient.Ingredient)
	// Sources names the datasets and their terms, Markdown; ShowSources shows it.
	Sources     string
	ShowSources func()
}

// Page is the page of the ingredients: to find one, to see what is known of
// it and by whom, to use it, and to keep one's own.
type Page struct {
	host  page.Host
	setup Setup

	finder *kit.Finder
	group  *kit.Select
	count  *widget.Label
	fault  *fault
	detail *fyne.Container
	browse fyne.CanvasObject
	object *fyne.Container

	items   []kit.FinderItem // in the finder
	shown   detailKey
	chosen  string // id
	listing bool   // the program is moving the selection
	here    bool   // the page is in view
	lib     *ingredient.Library
	shelves larder.Shelves
}

// fault tells that the maker's own file cannot be read.
type fault struct {
	box  *fyne.Container
	text *widget.Label
}

// New returns the page.
func New(h page.Host, s Setup) *Page {
	p := &Page{host: h, setup: s, detail: container.NewStack(), count: widget.NewLabel("")}
	p.finder = kit.NewFinder(say.T("Search by name or id"), nil)
	p.finder.OnMoved = func(it kit.FinderItem) {
		if !p.listing {
			p.choose(it.ID)
		}
	}
	p.group = kit.NewSelect(nil, nil)
	p.group.OnChanged = mishap.With(func(string) { p.list() })
	add := kit.NewButton(say.T("New from a pack…"), func() { p.edit(larder.FromPack()) })
	add.Importance = widget.HighImportance
	sources := kit.NewButton(say.T("Sources and terms"), s.ShowSources)

	p.fault = newFault(func() {
		s.Shelf.Read()
		s.Use(s.Shelf.Library())
		p.Show()
	})
	left := container.NewBorder(p.group, container.NewVBox(p.count, container.NewGridWithColumns(2, add, sources)), nil, nil, p.finder)
	split := container.NewHSplit(left, p.detail)
	split.Offset = 0.4
	p.browse = container.NewBorder(p.fault.box, nil, nil, nil, split)
	p.object = container.NewStack(p.browse)
	return p
}

// Object implements page.Page.
func (p *Page) Object() fyne.CanvasObject { return p.object }

// Leave implements page.Page.
func (p *Page) Leave() { p.here = false }

// Show implements page.Page. Whoever comes to the page may type at once.
func (p *Page) Show() {
	if !p.here {
		p.here = true
		p.host.Post(func() { p.focus(p.finder.Focusable()) }) // once it has been laid out
	}
	if p.fault.show(p.setup.Shelf) {
		p.browse.Refresh()
	}
	lib, own := p.host.Model().Library(), p.host.Design().Own
	if lib == p.lib && slices.Equal(own, p.shelves.Design) {
		p.showDetail() // its price may be another
		return
	}
	p.lib, p.shelves = lib, larder.Shelves{All: lib.With(own), Kept: p.setup.Shelf.Own(), Design: own}
	p.group.Options = p.shelves.Groups()
	if p.group.Selected == "" {
		p.group.Selected = larder.AllGroups.String()
	}
	p.group.Refresh()
	p.list()
	p.showDetail()
}

// list puts what the group chosen holds into the finder, and keeps the choice.
func (p *Page) list() {
	var items []kit.FinderItem
	for _, in := range p.shelves.In(p.group.Selected) {
		it := ItemOf(in)
		it.Group = p.shelves.GroupOf(in)
		items = append(items, it)
	}
	p.listing = true
	if !slices.Equal(items, p.items) {
		p.items = items
		p.finder.ShowItems(items)
	}
	p.finder.Select(p.chosen)
	p.listing = false
	if it, ok := p.finder.Selected(); ok {
		p.choose(it.ID)
	}
	p.count.SetText(say.IngredientCount(page.Reads, len(p.shelves.All.All()), len(p.shelves.Kept)))
}

// choose shows the ingredient of that id.
func (p *Page) choose(id string) {
	if id != p.chosen {
		p.chosen = id
		p.showDetail()
	}
}

// put adds the ingredient chosen to a phase.
func (p *Page) put(in *ingredient.Ingredient, part design.Part) {
	g := larder.FirstGrams(in)
	p.host.Commit(p.host.Design().WithLineAdded(part, design.Line{Ingredient: in.ID, Grams: g}), say.AdditionOf(in))
	p.host.Say(say.AddedTo(page.Reads, in, g, part))
}

// edit shows a form in place of the list.
func (p *Page) edit(f *larder.Form) *editor {
	e := newEditor(p, f)
	p.object.Objects = []fyne.CanvasObject{e.object}
	p.object.Refresh()
	p.focus(e.name)
	return e
}

// focus gives the keyboard to f.
func (p *Page) focus(f fyne.Focusable) { p.host.Window().Canvas().Focus(f) }

// back shows the list again, at the ingredient of that id.
func (p *Page) back(id string) {
	if id != "" {
		p.chosen = id
	}
	p.lib = nil // so that all is shown anew
	p.object.Objects = []fyne.CanvasObject{p.browse}
	p.object.Refresh()
	p.Show()
	if it, ok := p.finder.Selected(); id != "" && (!ok || it.ID != id) { // the search hides what was just kept
		p.chosen = id
		p.group.SetSelected(larder.AllGroups.String())
		p.finder.Reset()
		p.finder.Select(id)
	}
	p.focus(p.finder.Focusable())
}

// keep writes in to the maker's file in place of the record old, "" for a new
// one, and brings the design's copy up to date. On an error nothing changes.
func (p *Page) keep(in *ingredient.Ingredient, old string) error {
	if err := p.setup.Shelf.Put(in, old); err != nil {
		return err
	}
	if err := p.setup.Prices.Rename(old, in.ID); err != nil {
		p.host.Say(say.Sentence(say.Flaw(err)))
	}
	p.setup.Use(p.setup.Shelf.Library())
	d := p.host.Design()
	if new := d.WithOwnReplaced(in); !new.Equal(d) {
		p.host.Commit(new, say.NewFiguresOf(in))
	}
	p.host.Say(say.IngredientSaved(in, p.setup.Shelf.Path()))
	return nil
}

// remove asks, and takes an own ingredient out of the maker's file. A design
// that uses it keeps a copy.
func (p *Page) remove(in *ingredient.Ingredient) {
	title, question := say.DeleteIngredient(in)
	kit.Confirm(p.host.Window(), title, question, say.T("Delete"), func() {
		d := p.host.Design()
		if new := d.WithOwn(p.lib, d); !new.Equal(d) {
			p.host.Commit(new, say.CarriedCopyOf(in))
		}
		if err := p.setup.Shelf.Remove(in.ID); err != nil {
			kit.Tell(p.host.Window(), say.T("This did not work"), say.Sentence(say.Flaw(err)))
			return
		}
		gone := say.IngredientDeleted(in)
		if err := p.setup.Prices.Remove(in.ID); err != nil {
			gone = say.Sentence(say.Flaw(err))
		}
		p.setup.Use(p.setup.Shelf.Library())
		p.host.Say(gone)
		p.back("")
	})
}

func newFault(again func()) *fault {
	f := &fault{text: page.Bold("")}
	f.text.Importance = widget.DangerImportance
	f.box = container.NewBorder(nil, nil, nil, container.NewCenter(kit.NewButton(say.T("Read it again"), again)), f.text)
	f.box.Hide()
	return f
}

// show brings it up to date, and reports whether it came or went.
func (f *fault) show(s *userdata.Shelf) bool {
	was := f.box.Visible()
	if err := s.Err(); err != nil {
		f.text.SetText(say.ShelfUnread(err))
		f.box.Show()
	} else {
		f.box.Hide()
	}
	return was != f.box.Visible()
}
