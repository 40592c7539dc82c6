// Package librarypage is the page of the ingredients.
package librarypage

import (
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

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
	own     []*ingredient.Ingredient // of the design
	all     *ingredient.Library      // lib and own
}

// fault tells that the maker's own file cannot be read.
type fault struct {
	box  *fyne.Container
	text *widget.Label
}

const (
	allGroups = "All groups"
	ownGroup  = "My own and the design's"
)

// New returns the page.
func New(h page.Host, s Setup) *Page {
	p := &Page{host: h, setup: s, detail: container.NewStack(), count: widget.NewLabel("")}
	p.finder = kit.NewFinder("Search by name or id", nil)
	p.finder.OnMoved = func(it kit.FinderItem) {
		if !p.listing {
			p.choose(it.ID)
		}
	}
	p.group = kit.NewSelect(nil, nil)
	p.group.OnChanged = mishap.With(func(string) { p.list() })
	add := kit.NewButton("New from a pack…", func() { p.edit(newFromPack(p)) })
	add.Importance = widget.HighImportance
	sources := kit.NewButton("Sources and terms", s.ShowSources)

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

// Title implements page.Page.
func (p *Page) Title() string { return "Library" }

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
	if lib == p.lib && slices.Equal(own, p.own) {
		return
	}
	p.lib, p.own, p.all = lib, own, lib.With(own)
	p.groups()
	p.list()
	p.showDetail()
}

// groups offers the groups that there are.
func (p *Page) groups() {
	names := []string{allGroups, ownGroup}
	for _, in := range p.all.All() {
		if name := GroupWords(in.Group); !in.Own && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	p.group.Options = names
	if p.group.Selected == "" {
		p.group.Selected = allGroups
	}
	p.group.Refresh()
}

// list puts what the group chosen holds into the finder, and keeps the choice.
func (p *Page) list() {
	var items []kit.FinderItem
	own := 0
	for _, in := range p.all.All() {
		of := GroupWords(in.Group)
		switch g := p.group.Selected; {
		case g == allGroups, g == ownGroup && in.Own, g == of:
		default:
			continue
		}
		it := ItemOf(in)
		if in.Own {
			it.Group = p.whose(in.ID)
			items = slices.Insert(items, own, it) // one's own first
			own++
			continue
		}
		items = append(items, it)
	}
	if !slices.Equal(items, p.items) {
		p.items = items
		p.listing = true
		p.finder.ShowItems(items)
		p.listing = false
	}
	p.listing = true
	p.finder.Select(p.chosen)
	p.listing = false
	if it, ok := p.finder.Selected(); ok {
		p.choose(it.ID)
	}
	p.count.SetText(fmt.Sprintf("%d ingredients, %d of them your own", len(p.all.All()), len(p.setup.Shelf.Own())))
}

// whose says where an own ingredient is kept.
func (p *Page) whose(id string) string {
	if mine(p.setup.Shelf.Own(), id) == nil {
		return "in this design only"
	}
	return "my own"
}

// mine returns the ingredient of that id, or nil.
func mine(list []*ingredient.Ingredient, id string) *ingredient.Ingredient {
	if i := slices.IndexFunc(list, func(in *ingredient.Ingredient) bool { return in.ID == id }); i >= 0 {
		return list[i]
	}
	return nil
}

// detailKey is what the right side depends on.
type detailKey struct {
	in, kept *ingredient.Ingredient
	copy     copyState
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
	g := firstGrams(in)
	p.host.Commit(p.host.Design().WithLineAdded(part, design.Line{Ingredient: in.ID, Grams: g}), "addition of "+say.Kitchen(in))
	p.host.Say("Added " + page.Reads.MassTo(g, 0) + " " + say.Kitchen(in) + " to the " + say.Part(part) + ".")
}

// firstGrams is what a new line weighs: little of what is strong.
func firstGrams(in *ingredient.Ingredient) float64 {
	switch in.Group {
	case "flavour", "starch_thickener":
		return 5
	}
	return 50
}

// edit shows the editor in place of the list.
func (p *Page) edit(e *editor) {
	p.object.Objects = []fyne.CanvasObject{e.object}
	p.object.Refresh()
	p.focus(e.name)
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
		p.group.SetSelected(allGroups)
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
	p.setup.Use(p.setup.Shelf.Library())
	d := p.host.Design()
	if new := d.WithOwnReplaced(in); !new.Equal(d) {
		p.host.Commit(new, "new figures of "+in.Name)
	}
	p.host.Say("Saved " + in.Name + " in " + p.setup.Shelf.Path())
	return nil
}

// remove asks, and takes an own ingredient out of the maker's file. A design
// that uses it keeps a copy.
func (p *Page) remove(in *ingredient.Ingredient) {
	kit.Confirm(p.host.Window(), "Delete "+in.Name+"?", "It is removed from your own ingredients. A design that uses it keeps its copy.", "Delete", func() {
		d := p.host.Design()
		if new := d.WithOwn(p.lib, d); !new.Equal(d) {
			p.host.Commit(new, "copy of "+say.Kitchen(in))
		}
		if err := p.setup.Shelf.Remove(in.ID); err != nil {
			kit.Tell(p.host.Window(), "This did not work", page.Sentence(err.Error()))
			return
		}
		p.setup.Use(p.setup.Shelf.Library())
		p.host.Say("Deleted " + in.Name)
		p.back("")
	})
}

func newFault(again func()) *fault {
	f := &fault{text: page.Bold("")}
	f.text.Importance = widget.DangerImportance
	f.box = container.NewBorder(nil, nil, nil, container.NewCenter(kit.NewButton("Read it again", again)), f.text)
	f.box.Hide()
	return f
}

// show brings it up to date, and reports whether it came or went.
func (f *fault) show(s *userdata.Shelf) bool {
	was := f.box.Visible()
	if err := s.Err(); err != nil {
		f.text.SetText("Your own ingredients could not be read and are left out; the file stays as it is. " + ended(err.Error()) + " Correct the file by hand, then read it again.")
		f.box.Show()
	} else {
		f.box.Hide()
	}
	return was != f.box.Visible()
}
