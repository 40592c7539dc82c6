package balancepage

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/desk/wishing"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// list is a row of things that are chosen one after the other.
type list struct {
	title, none string
	names       func() []string
	choose      func(chosen func()) // asks for one more and tells when it is there
	clear       func()
}

func (l list) object() fyne.CanvasObject {
	names := page.Prose(l.none)
	show := func() {
		if all := l.names(); len(all) > 0 {
			kit.SetText(names, strings.Join(all, "; "))
		} else {
			kit.SetText(names, l.none)
		}
	}
	choose := kit.NewButton(say.WishAdd.String(), func() { l.choose(show) })
	none := kit.NewButtonWithIcon("", theme.ContentClearIcon(), func() { l.clear(); show() })
	return container.NewBorder(nil, nil, widget.NewLabel(l.title), container.NewHBox(choose, none), names)
}

// ingredient finds an ingredient that the open design may use.
func (p *Page) ingredient(id string) (*ingredient.Ingredient, bool) {
	return p.host.Model().Library().With(p.host.Design().Own).Find(id)
}

// adds are the ingredients that may come in.
func (p *Page) adds() fyne.CanvasObject {
	return list{say.WishAdds.String(), say.WishNoAdds.String(), func() (all []string) {
		for _, id := range p.wishes.Adds {
			if in, ok := p.ingredient(id); ok {
				all = append(all, say.Kitchen(in))
			}
		}
		return all
	}, func(chosen func()) {
		p.offer(say.WishAddTitle.String(), itemsOf(p.host.Model().Library().With(p.host.Design().Own).All()), func(id string) {
			p.wishes.Adds = with(p.wishes.Adds, id)
			chosen()
		})
	}, func() { p.wishes.Adds = nil }}.object()
}

// cautions are those that must not be.
func (p *Page) cautions() fyne.CanvasObject {
	return list{say.WishCautions.String(), say.WishAnyCaution.String(), func() (all []string) {
		for _, code := range p.wishes.Cautions {
			all = append(all, say.CautionName(code))
		}
		return all
	}, func(chosen func()) {
		var items []kit.FinderItem
		for _, code := range balance.CautionCodes() {
			items = append(items, kit.FinderItem{ID: code, Title: say.Capital(say.CautionName(code))})
		}
		p.offer(say.WishCautionTitle.String(), items, func(code string) {
			p.wishes.Cautions = with(p.wishes.Cautions, code)
			chosen()
		})
	}, func() { p.wishes.Cautions = nil }}.object()
}

// packs are what comes in packs of which whole ones are used up.
func (p *Page) packs() fyne.CanvasObject {
	return list{say.WishPacks.String(), say.WishNoPacks.String(), func() (all []string) {
		for _, of := range p.wishes.Packs {
			if in, ok := p.ingredient(of.Ingredient); ok {
				all = append(all, say.WishPack(page.Reads, in, of.Grams))
			}
		}
		return all
	}, func(chosen func()) {
		p.offer(say.WishPackTitle.String(), itemsOf(wishing.Weighed(p.host.Model(), p.host.Design())), func(id string) {
			p.askPack(id, func(grams float64) {
				p.wishes.Packs = slices.DeleteFunc(p.wishes.Packs, func(of wishing.Pack) bool { return of.Ingredient == id })
				p.wishes.Packs = append(p.wishes.Packs, wishing.Pack{Ingredient: id, Grams: grams})
				chosen()
			})
		})
	}, func() { p.wishes.Packs = nil }}.object()
}

// askPack asks what a pack holds, beginning with what the maker pays for.
func (p *Page) askPack(id string, take func(grams float64)) {
	grams := page.NumberField("g", 1, design.MaxGrams, 0)
	grams.Submits = true
	if g, ok := wishing.PackOf(p.host.Model(), p.host.Design(), id); ok {
		grams.ShowValue(g)
	}
	var dg interface{ Hide() }
	dg = kit.Ask(p.host.Window(), say.WishPackTitle.String(), container.NewBorder(nil, nil, widget.NewLabel(say.WishPackHolds.String()), nil, grams),
		kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape},
		kit.Answer{Name: say.UseIt.String(), Role: kit.ByReturn, Do: func() {
			if grams.Problem() != nil || !(grams.Value() >= 1) {
				return
			}
			dg.Hide()
			take(grams.Value())
		}})
	p.host.Window().Canvas().Focus(grams.Focusable())
}

// with is all and one more, each once.
func with(all []string, one string) []string {
	if slices.Contains(all, one) {
		return all
	}
	return append(all, one)
}

func itemsOf(all []*ingredient.Ingredient) (items []kit.FinderItem) {
	for _, in := range all {
		items = append(items, kit.FinderItem{ID: in.ID, Title: say.Capital(say.Kitchen(in)), Subtitle: in.Name, Group: in.Group})
	}
	return items
}

// offer asks for one of some items and hands on its id.
func (p *Page) offer(title string, items []kit.FinderItem, picked func(id string)) {
	find := kit.NewFinder(title, items)
	dg := kit.Ask(p.host.Window(), title, find, kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape})
	find.OnCancelled = dg.Hide
	find.OnChosen = func(it kit.FinderItem) {
		dg.Hide()
		picked(it.ID)
	}
	dg.Resize(fyne.NewSize(36*theme.TextSize(), 30*theme.TextSize()))
	p.host.Window().Canvas().Focus(find.Focusable())
}

// counts are the weights of the wishes.
func (p *Page) counts() fyne.CanvasObject {
	form := widget.NewForm()
	for c := range wishing.NumCounts {
		n := kit.NewNumberField("", 0, 100, 2)
		n.OnChanged = func(v float64) { p.wishes.Weight[c] = v }
		form.Append(say.WishCounted()[c], n)
	}
	return form
}
