package ui

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/desk/places"
	"ripplewright/ui/balancepage"
	"ripplewright/ui/cardpage"
	"ripplewright/ui/coldpage"
	"ripplewright/ui/costpage"
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

// newPage makes the page of a place.
func (w *Window) newPage(at places.Place) page.Page {
	switch at {
	case places.Figures:
		return figurespage.New(w, w.leadTo, func() { w.turnTo(places.Bench) })
	case places.Ask:
		asks := balancepage.New(w, w.bench.mender, w.kitchens)
		asks.Teach(w.notebook.Kitchens)
		return asks
	case places.Ripple:
		stirred := ripplepage.New(w, func() { w.event("ripple drawn") })
		stirred.Stirs(w.notebook.Taught)
		return stirred
	case places.Steps:
		kitchen := kitchenpage.New(w, w.kitchens, kitchenpage.Setup{Now: time.Now, Told: w.event, Ring: w.Ring})
		kitchen.Keeping(w.notebook.Keep)
		return kitchen
	case places.Day:
		return daypage.New(w, w.kitchens, time.Now, w.event)
	case places.Cold:
		cools := coldpage.New(w, w.kitchens, func(a *cold.Answer) { w.event("cold leave_out=%g", a.Counter.FromMinutes.Value) })
		cools.Lead(w.leadTo)
		return cools
	case places.Shopping:
		return shoppage.New(w, shoppage.Setup{Pick: w.pickDesign, File: w.Session.Path, Told: w.event})
	case places.Label:
		return tubpage.Beside(labelpage.New(w), tubpage.New(w, w.LabelWords, w.notebook))
	case places.Card:
		return cardpage.New(w, w.kitchens)
	case places.Cost:
		return costpage.New(w, w.pricing())
	case places.Notebook:
		notes := notebookpage.New(w, w.notebook, w.kitchens, time.Now, w.pickPicture, w.event)
		notes.Photographs(func() { w.readPhoto(notes) })
		return notes
	case places.Library:
		return w.newLibrary()
	case places.Sure:
		return surepage.New(w, w.Tables)
	}
	panic("no page at " + at.Name())
}

// page is the page of a place, made when somebody first asks for it.
func (w *Window) page(at places.Place) page.Page {
	if w.pages[at] == nil {
		w.pages[at] = w.newPage(at)
		leaf := w.leafOf(at)
		leaf.Hide()
		w.content.Objects = append(w.content.Objects, leaf)
	}
	return w.pages[at]
}

// leafOf puts what stands at a place on a leaf of the window's book. Where large text
// leaves too little room for it, the leaf scrolls, and nothing is cut.
func (w *Window) leafOf(at places.Place) *container.Scroll {
	o := w.bench.object
	if p := w.pages[at]; p != nil {
		o = p.Object()
	}
	w.leaves[at] = container.NewScroll(o)
	return w.leaves[at]
}

// exportCard asks where the card goes.
func (w *Window) exportCard() { w.page(places.Card).(*cardpage.Page).ExportPDF() }

// signpost is the row over everything: what a maker is doing, and the places where it is
// done.
type signpost struct {
	heads  [len(places.Groups)]*kit.Tab
	tabs   [places.Count]*kit.Tab // of places.Figures: nil
	object *fyne.Container
}

func newSignpost(w *Window) *signpost {
	s := &signpost{object: container.New(&wrapped{})}
	for g, group := range places.Groups {
		s.heads[g] = kit.NewTab(group.Name.String(), true, func() { w.turnTo(w.way.Into(g)) })
		s.object.Add(s.heads[g])
	}
	s.object.Add(newRule())
	for _, group := range places.Groups {
		for _, p := range group.Places {
			s.tabs[p] = kit.NewTab(p.Name(), false, func() { w.turnTo(p) })
			s.object.Add(s.tabs[p])
		}
	}
	for _, t := range s.all() {
		t.OnArrow = func(by int) { s.arrow(w.win.Canvas(), t, by) }
	}
	return s
}

// newRule is the line between the groups and their places.
func newRule() fyne.CanvasObject {
	line := canvas.NewRectangle(theme.Color(theme.ColorNameInputBorder))
	line.SetMinSize(fyne.NewSize(2, 0))
	tall := func() float32 { return lineHeight() + 1.6*theme.InnerPadding() }
	return container.New(atLeast{tall}, container.New(layout.NewCustomPaddedLayout(4, 4, 8, 8), &themed{rect: line, name: theme.ColorNameInputBorder}))
}

// all are the tabs in their order.
func (s *signpost) all() []*kit.Tab {
	return slices.Concat(s.heads[:], s.tabs[:places.Figures])
}

// arrow moves the keyboard to the next tab in sight.
func (s *signpost) arrow(c fyne.Canvas, from *kit.Tab, by int) {
	seen := slices.DeleteFunc(s.all(), func(t *kit.Tab) bool { return !t.Visible() })
	if i := slices.Index(seen, from) + by; i >= 0 && i < len(seen) {
		c.Focus(seen[i])
	}
}

// show marks where one is, and shows the places of its group alone.
func (s *signpost) show(at places.Place) {
	for g, t := range s.heads {
		t.ShowHere(g == at.Group())
	}
	for p, t := range s.tabs[:places.Figures] {
		p := places.Place(p)
		t.ShowHere(p == at.InRow())
		t.Hidden = p.Group() != at.Group()
	}
	s.object.Refresh()
}

// turnTo shows the page of a place, or the bench.
func (w *Window) turnTo(at places.Place) {
	from := w.way.At()
	if at == from {
		return
	}
	w.leave(from)
	w.way.Go(at)
	w.leaveFocus()
	if at == places.Bench {
		kit.Turn(w.content, w.leaves[at])
		w.bench.show()
	} else {
		p := w.page(at)
		kit.Turn(w.content, w.leaves[at])
		p.Show()
	}
	w.rest.worked(time.Now())
	w.signs.show(at)
	w.menus.mark()
	w.event("page %s", at.Name())
}

// leave tells the page of a place that it goes out of view.
func (w *Window) leave(at places.Place) {
	if p := w.pages[at]; p != nil {
		p.Leave()
	}
}

// shown is the page in view, nil at the bench.
func (w *Window) shown() page.Page { return w.pages[w.way.At()] }

// leaveFocus takes the keyboard from what goes out of sight, which would act on the next
// key. A tab that stays in sight keeps it.
func (w *Window) leaveFocus() {
	c := w.win.Canvas()
	stays := func() bool {
		t, ok := c.Focused().(*kit.Tab)
		if !ok {
			return false
		}
		i := slices.Index(w.signs.tabs[:], t)
		return i < 0 || places.Place(i).Group() == w.way.At().Group()
	}
	if !stays() {
		c.Unfocus()
	}
	w.hints.Leave()
}
