package balancepage

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/wishing"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// adds are the ingredients that may come in, chosen one after the other.
func (p *Page) adds() fyne.CanvasObject {
	names := page.Prose(say.WishNoAdds)
	show := func() {
		var all []string
		for _, id := range p.wishes.Adds {
			if in, ok := p.host.Model().Library().With(p.host.Design().Own).Find(id); ok {
				all = append(all, say.Kitchen(in))
			}
		}
		if kit.SetText(names, say.WishNoAdds); len(all) > 0 {
			kit.SetText(names, strings.Join(all, ", "))
		}
	}
	choose := kit.NewButton(say.WishAdd, func() {
		p.chooseAdd(func(id string) {
			p.wishes.Adds = append(p.wishes.Adds, id)
			show()
		})
	})
	none := kit.NewButtonWithIcon("", theme.ContentClearIcon(), func() {
		p.wishes.Adds = nil
		show()
	})
	return container.NewBorder(nil, nil, widget.NewLabel(say.WishAdds), container.NewHBox(choose, none), names)
}

// chooseAdd asks for an ingredient and hands on its id.
func (p *Page) chooseAdd(chosen func(id string)) {
	var items []kit.FinderItem
	for _, in := range p.host.Model().Library().With(p.host.Design().Own).All() {
		items = append(items, kit.FinderItem{ID: in.ID, Title: say.Capital(say.Kitchen(in)), Subtitle: in.Name, Group: in.Group})
	}
	find := kit.NewFinder(say.WishAddTitle, items)
	dg := kit.Ask(p.host.Window(), say.WishAddTitle, find, kit.Answer{Name: say.Cancel, Role: kit.ByEscape})
	find.OnCancelled = dg.Hide
	find.OnChosen = func(it kit.FinderItem) {
		dg.Hide()
		chosen(it.ID)
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
		form.Append(say.WishCounted[c], n)
	}
	return form
}
