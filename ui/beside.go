package ui

import (
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/answer/start"
	"ripplewright/internal/desk/past"
	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/beside"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// mostBeside is how many designs a window has room for side by side.
const mostBeside = 4

// besides is the view of designs side by side.
type besides struct {
	w     *Window
	sides []beside.Side
	only  *kit.Check
	outs  *fyne.Container // a button for each side but the open design, which takes it out
	table *fyne.Container
	names map[string]design.Design // what can be chosen
	pick  *kit.Select
}

// askCompare lays the open design beside its versions, its earlier saves, demos and
// files, with what differs marked.
func (w *Window) askCompare() {
	b := &besides{w: w, outs: container.New(&wrapped{}), table: container.NewVBox(), names: map[string]design.Design{}}
	b.only = kit.NewCheck(say.CompareOnly.String(), func(bool) { b.show() })
	b.only.Checked = true
	var names []string
	offer := func(name string, d design.Design) {
		if name = page.Brief(name, mostTitle); !slices.Contains(names, name) {
			names, b.names[name] = append(names, name), d
		}
	}
	list, err := past.Versions(w.Session)
	if err != nil {
		w.problem(err)
		return
	}
	for _, m := range append(list, past.Saves(w.Session)...) {
		offer(m.Title, m.Design)
	}
	for _, d := range w.Demos {
		offer(say.StartDemoName(d.Name), d.Design)
	}
	b.pick = kit.NewSelect(names, func(name string) { b.add(name, b.names[name]) })
	b.pick.PlaceHolder = say.ComparedWith.String()
	file := kit.NewButton(say.CompareAdd.String(), func() { w.pickDesign(b.addFile) })
	b.add(say.CompareOpen.String(), w.Design())
	dg := kit.Ask(w.win, say.CompareTitle.String(), container.NewBorder(container.NewBorder(nil, container.NewVBox(b.outs, page.Prose(say.CompareLegend.String())), nil, container.NewHBox(file, b.only), b.pick), nil, nil, nil,
		page.ScrolledBothWays(b.table)), kit.Answer{Name: say.Close.String(), Role: kit.ByEscape})
	room := w.win.Canvas().Size()
	dg.Resize(room.SubtractWidthHeight(4*theme.Padding(), 4*theme.Padding()))
	w.win.Canvas().Focus(b.pick)
}

// addFile lays the design of a file beside the others.
func (b *besides) addFile(path string) {
	f, err := designfile.LoadWith(path, b.w.Model().Library())
	if err != nil {
		b.w.problem(err)
		return
	}
	b.add(filepath.Base(path), f.Design)
}

// add lays a design beside the others, the oldest but the open one going where there
// is no more room.
func (b *besides) add(name string, d design.Design) {
	r, err := b.w.Model().Evaluate(d)
	if err != nil {
		b.w.problem(err)
		return
	}
	if len(b.sides) == mostBeside {
		b.sides = slices.Delete(b.sides, 1, 2)
	}
	b.sides = append(b.sides, beside.Side{Name: page.Brief(name, 24), Design: d, Result: &r})
	b.show()
	b.w.event("beside %d", len(b.sides))
}

// takeOut takes side i away; the keyboard goes on to the next one.
func (b *besides) takeOut(i int) {
	b.sides = slices.Delete(b.sides, i, i+1)
	b.show()
	var next fyne.Focusable = b.pick
	if n := len(b.outs.Objects); n > 0 {
		next = b.outs.Objects[min(i-1, n-1)].(*nameButton)
	}
	b.w.win.Canvas().Focus(next)
	b.w.event("beside %d", len(b.sides))
}

func (b *besides) show() {
	b.outs.Objects = nil
	for i := 1; i < len(b.sides); i++ {
		out := newNameButton(say.CompareTakeOut(b.sides[i].Name), func() { b.takeOut(i) })
		out.onRemove = out.OnTapped
		out.Icon = theme.CancelIcon()
		b.outs.Objects = append(b.outs.Objects, out)
	}
	b.outs.Refresh()
	b.table.Objects = nil
	t := beside.Of(page.Reads, b.sides)
	if len(b.sides) > 1 && t.Same() {
		b.table.Add(page.Prose(say.CompareSame.String()))
	}
	var all []*kit.Figures
	for _, part := range t.Parts(b.only.Checked && len(b.sides) > 1) {
		f := kit.NewFigures(t.Names...)
		f.ShowFigures(beside.Laid(part.Rows))
		b.table.Add(page.Heading(say.Capital(part.Head)))
		b.table.Add(f)
		all = append(all, f)
	}
	kit.Line(all...)
	b.table.Refresh()
}

// askStart begins a new design from a base or a demo, weighed out for the tubs at
// hand.
func (w *Window) askStart() {
	if w.Starts == nil {
		return
	}
	var names []string
	for _, b := range w.Starts.Bases {
		names = append(names, say.StartBaseName(b.Name))
	}
	for _, d := range w.Demos {
		names = append(names, say.StartDemoName(d.Name))
	}
	foams := []string{say.StartOwnFoam.String()}
	for _, f := range w.Starts.Foams {
		foams = append(foams, say.StartFoamName(f.Name))
	}
	from, foam := 0, 0
	foamPick, _ := page.SelectOf(foams, func(i int) { foam = i })
	foamPick.SetSelectedIndex(0)
	pick, show := page.SelectOf(names, func(i int) {
		if from = i; i < len(w.Starts.Bases) {
			foamPick.Enable()
		} else {
			foamPick.Disable()
		}
	})
	show(0)
	tubs, each := page.NumberField("", 1, 500, 0), page.NumberField("mL", 30, 20000, 0)
	now := w.Design().Tubs
	tubs.ShowValue(float64(now.Count))
	each.ShowValue(now.VolumeML)
	tubs.Submits, each.Submits = true, true
	kit.LineUp(tubs, each)
	form := widget.NewForm(widget.NewFormItem(say.StartBase.String(), pick), widget.NewFormItem(say.StartFoam.String(), foamPick),
		widget.NewFormItem(say.StartTubs.String(), tubs), widget.NewFormItem(say.StartEach.String(), each))
	var hide func()
	begin := func() {
		if tubs.Problem() != nil || each.Problem() != nil {
			return
		}
		hide()
		w.startFrom(from, foam, int(tubs.Value()), each.Value())
	}
	dg := kit.Ask(w.win, say.StartTitle.String(), container.NewVBox(form, page.Prose(say.StartHint.String())),
		kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape}, kit.Answer{Name: say.StartDo.String(), Role: kit.ByReturn, Do: begin})
	hide = dg.Hide
	w.broad(dg, 0)
	w.win.Canvas().Focus(pick)
}

// startFrom begins from base or demo i, with foam k of the shelf or, for 0, its own.
func (w *Window) startFrom(i, k, tubs int, ml float64) {
	var d design.Design
	var err error
	if n := len(w.Starts.Bases); i < n {
		key := ""
		if k > 0 {
			key = w.Starts.Foams[k-1].Key
		}
		d, err = w.Starts.Design(w.Starts.Bases[i].Key, key)
	} else {
		d = w.Demos[i-n].Design
	}
	if err == nil {
		d, err = start.Scaled(w.Model(), d, tubs, ml)
	}
	if err != nil {
		w.problem(err)
		return
	}
	w.Session.Start(d)
	w.turnTo(places.Bench)
	w.refresh()
	w.event("started from %s", d.Name)
}
