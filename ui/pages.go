package ui

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/show/say"
	"ripplewright/ui/balancepage"
	"ripplewright/ui/cardpage"
	"ripplewright/ui/coldpage"
	"ripplewright/ui/daypage"
	"ripplewright/ui/figurespage"
	"ripplewright/ui/kit"
	"ripplewright/ui/kitchenpage"
	"ripplewright/ui/labelpage"
	"ripplewright/ui/notebookpage"
	"ripplewright/ui/page"
	"ripplewright/ui/ripplepage"
	"ripplewright/ui/shoppage"
	"ripplewright/ui/surepage"
	"ripplewright/ui/tubpage"
)

// newPages returns the secondary pages in the order of their buttons.
func (w *Window) newPages() []page.Page {
	w.card = cardpage.New(w, w.kitchens)
	kitchen := kitchenpage.New(w, w.kitchens, kitchenpage.Setup{Now: time.Now, Told: w.event, Ring: w.Ring})
	kitchen.Keeping(w.notebook.Keep)
	asks := balancepage.New(w, w.bench.mender, w.kitchens)
	asks.Teach(w.notebook.Kitchens)
	notes := notebookpage.New(w, w.notebook, w.kitchens, time.Now, w.pickPicture, w.event)
	notes.Photographs(func() { w.readPhoto(notes) })
	stirred := ripplepage.New(w, func() { w.event("ripple drawn") })
	stirred.Stirs(w.notebook.Taught)
	return []page.Page{
		figurespage.New(w, w.lead),
		asks,
		stirred,
		coldpage.New(w, w.kitchens, func(a *cold.Answer) { w.event("cold leave_out=%g", a.Counter.FromMinutes.Value) }),
		tubpage.Beside(labelpage.New(w), tubpage.New(w, w.LabelWords, w.notebook)),
		w.card,
		kitchen,
		daypage.New(w, w.kitchens, time.Now, w.event),
		notes,
		shoppage.New(w, shoppage.Setup{Setup: w.pricing(), Pick: w.pickDesign, File: w.Session.Path, Told: w.event}),
		w.newLibrary(),
		surepage.New(w, w.Tables),
	}
}

// briefly holds the titles that the row of buttons has no room for, as it has them:
// with the largest text all stand in one row of a small screen.
func briefly() map[string]string {
	return map[string]string{"All figures": "Figures", "Nutrition and label": "Label", say.HowSure.String(): say.HowSureBriefly.String(), "Money and shopping": "Shop", say.BalanceTitle.String(): "Ask", say.NotebookTitle.String(): say.NotebookBriefly.String()}
}

func navName(title string) string {
	if b := briefly()[title]; b != "" {
		return b
	}
	return title
}

// navigation is the row of buttons over everything: the bench and each page.
// They are buttons, not tabs, because tabs cannot be reached by keyboard.
func (w *Window) navigation() fyne.CanvasObject {
	row := container.New(&wrapped{})
	add := func(i int, name string) {
		b := kit.NewButton(name, func() { w.turnTo(i) })
		w.nav = append(w.nav, b)
		row.Add(b)
	}
	add(-1, "Bench")
	for i, p := range w.pages {
		add(i, navName(p.Title()))
	}
	w.markNav()
	return row
}

// turnTo shows page i, or the bench for −1.
func (w *Window) turnTo(i int) {
	if i == w.current || i >= len(w.pages) {
		return
	}
	if w.current >= 0 {
		w.pages[w.current].Leave()
	}
	w.leaveFocus()
	w.current = i
	if i < 0 {
		kit.Turn(w.content, w.bench.object)
		w.bench.show()
	} else {
		kit.Turn(w.content, w.pages[i].Object())
		w.pages[i].Show()
	}
	w.markNav()
	name := "Bench"
	if i >= 0 {
		name = w.pages[i].Title()
	}
	w.menus.mark()
	w.event("page %s", name)
}

// leaveFocus takes the keyboard from what goes out of sight, which would act on
// the next key. A button of the navigation keeps it.
func (w *Window) leaveFocus() {
	c := w.win.Canvas()
	if b, ok := c.Focused().(*kit.Button); !ok || !slices.Contains(w.nav, b) {
		c.Unfocus()
	}
	w.hints.Leave()
}

func (w *Window) markNav() {
	for k, b := range w.nav {
		b.Importance = widget.LowImportance
		if k-1 == w.current {
			b.Importance = widget.HighImportance
		}
		b.Refresh()
	}
}
