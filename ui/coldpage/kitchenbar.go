package coldpage

import (
	"slices"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// kitchenBar chooses the kitchen and opens what changes it.
type kitchenBar struct {
	p       *Page
	choose  *kit.Select
	remove  *kit.Button
	problem *widget.Label
	row     *fyne.Container
}

func newKitchenBar(p *Page) *kitchenBar {
	b := &kitchenBar{p: p, problem: page.Bold("")}
	b.problem.Importance = widget.WarningImportance
	b.problem.Hide()
	b.choose = kit.NewSelect(nil, nil)
	b.choose.OnChanged = mishap.With(func(name string) {
		d := p.host.Design()
		if i := slices.Index(b.choose.Options, name); i >= 0 {
			name = p.kitchens.All()[i].Name
		}
		d.Kitchen.Profile = name
		p.host.Commit(d, say.T("kitchen"))
	})
	b.remove = kit.NewButton(say.T("Delete"), b.askRemove)
	b.row = container.NewHBox(widget.NewLabel(say.T("Kitchen")), b.choose,
		kit.NewButton(say.T("Edit…"), func() { p.editKitchen(p.kitchen, p.kitchen.Name) }),
		kit.NewButton(say.T("Copy…"), func() {
			k := p.kitchen
			k.Name, k.About = coldview.FreeName(p.kitchens, say.KitchenName(k.Name)), say.Of(k.About) // the copy of a built-in one speaks the maker's language
			p.editKitchen(k, "")
		}), b.remove)
	return b
}

// show brings the bar up to date; said, unless empty, is told under it.
func (b *kitchenBar) show(said string) {
	all := b.p.kitchens.All()
	names := make([]string, len(all))
	for i, k := range all {
		names[i] = say.KitchenName(k.Name)
	}
	known := len(b.choose.Options)
	b.choose.Options = names
	// A select is as wide as what stands in it when nothing is chosen.
	b.choose.PlaceHolder = slices.MaxFunc(names, func(x, y string) int { return utf8.RuneCountInString(x) - utf8.RuneCountInString(y) })
	if name := say.KitchenName(b.p.kitchen.Name); b.choose.Selected != name {
		b.choose.Selected = name
	}
	if b.choose.Refresh(); known != len(names) {
		b.row.Refresh()
	}
	own, builtIn := b.p.kitchens.Own(b.p.kitchen.Name), b.p.kitchens.BuiltIn(b.p.kitchen.Name)
	word := say.T("Delete")
	if builtIn {
		word = say.T("Reset")
	}
	if b.remove.Text != word {
		b.remove.SetText(word)
	}
	if b.remove.Disable(); own {
		b.remove.Enable()
	}
	if said == "" {
		b.problem.Hide()
		return
	}
	b.problem.SetText(said)
	b.problem.Show()
}

// askRemove deletes an own kitchen, or brings a built-in one back as it was.
func (b *kitchenBar) askRemove() {
	name, verb := b.p.kitchen.Name, say.T("Delete")
	title, question := say.DeleteKitchen(name, cold.Default().Name)
	if b.p.kitchens.BuiltIn(name) {
		verb = say.T("Reset")
		title, question = say.ResetKitchen(name)
	}
	kit.Confirm(b.p.host.Window(), title, question, verb, func() { b.removeNow(name) })
}

func (b *kitchenBar) removeNow(name string) {
	if err := b.p.kitchens.Remove(name); err != nil {
		kit.Tell(b.p.host.Window(), say.T("This did not work"), say.Sentence(say.Flaw(err)))
		return
	}
	if !b.p.kitchens.BuiltIn(name) {
		d := b.p.host.Design()
		d.Kitchen.Profile = ""
		b.p.host.Commit(d, say.T("kitchen"))
	}
}
