package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/benchview"
	"ripplewright/internal/desk/larder"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/kit"
	"ripplewright/ui/librarypage"
	"ripplewright/ui/page"
)

// lineList edits one list of lines. Rows are made anew only when their number,
// ingredients, units or notes change; otherwise the numbers are put in place.
type lineList struct {
	w      *Window
	part   design.Part
	title  *widget.Label
	head   *fyne.Container // the title, where one types, and a button
	rows   []*lineRow
	beside string // the unit that the rows leave room for
	box    *fyne.Container
	empty  *widget.Label
	object fyne.CanvasObject

	entry *lineEntry

	focus    int  // the row to take the keyboard when the lines are shown next; −1: none
	onAmount bool // and of it the amount, not the name
}

// lineRow is one line: what, how much, and what can be done with it.
type lineRow struct {
	name   *nameButton
	amount *kit.NumberField
	more   *kit.Button
	line   design.Line // with neither grams nor count
	called string
}

func newLineList(w *Window, part design.Part, title string) *lineList {
	l := &lineList{w: w, part: part, focus: -1, title: widget.NewLabel(title),
		box: container.New(keep(layout.NewCustomPaddedVBoxLayout(2))), empty: widget.NewLabel(say.NoLineYet.String())}
	l.empty.Importance = widget.LowImportance
	add := kit.NewButtonWithIcon(say.T("Add…"), theme.ContentAddIcon(), func() { l.pick(-1) })
	add.Importance = widget.LowImportance
	l.entry = newLineEntry(l)
	l.head = container.New(&headLayout{}, l.title, w.hints.Wrap(l.entry, say.EntryHint.String()), w.hints.Wrap(add, say.AddHint(title)))
	l.object = container.New(layout.NewCustomPaddedVBoxLayout(2), l.head, l.entry.choices, l.empty, l.box)
	return l
}

// entitle gives the list another title. The toolkit forgets to lay the head anew if what is
// typed beside it changes too.
func (l *lineList) entitle(title string) {
	was := l.title.Text
	if kit.SetText(l.title, title); l.title.Text != was {
		l.head.Layout.Layout(l.head.Objects, l.head.Size())
	}
}

// show brings the list up to date; beside is a unit to leave room for.
func (l *lineList) show(d design.Design, beside string) {
	lines := d.Lines(l.part)
	same := len(lines) == len(l.rows) && beside == l.beside
	lib := l.w.library()
	for i := 0; same && i < len(lines); i++ {
		same = l.rows[i].line == benchview.Shape(lines[i]) && l.rows[i].called == benchview.Name(lib, lines[i])
	}
	if !same {
		l.beside = beside
		l.build(lines)
	}
	for i, x := range lines {
		l.rows[i].amount.ShowValue(benchview.Amount(x))
	}
	if i := min(l.focus, len(l.rows)-1); i >= 0 {
		if l.onAmount {
			l.w.win.Canvas().Focus(l.rows[i].amount.Focusable())
		} else {
			l.w.win.Canvas().Focus(l.rows[i].name)
		}
	}
	l.focus, l.onAmount = -1, false
}

func (l *lineList) build(lines []design.Line) {
	for _, r := range l.rows {
		l.w.hints.Forget(r.name)
		l.w.hints.Forget(r.more)
	}
	l.rows, l.box.Objects = nil, nil
	for i, x := range lines {
		l.box.Objects = append(l.box.Objects, l.row(i, x))
	}
	l.empty.Hidden = len(lines) > 0
	l.box.Refresh()
}

func (l *lineList) row(i int, x design.Line) fyne.CanvasObject {
	name := l.w.nameOf(x)
	r := &lineRow{line: benchview.Shape(x), called: name}
	hint := say.LineHint(name, x.Note)
	unit, most, decimals := "g", design.MaxGrams, 2
	if x.Count > 0 {
		unit, most = say.Of(string(x.CountOf)), design.MaxCount
	}
	r.name = newNameButton(name, func() { l.pick(i) })
	r.name.onRemove = func() { l.remove(i) }
	r.name.onShortcut = func(c *desktop.CustomShortcut) { l.shortcut(i, c, false) }
	r.name.onDrag = func(at fyne.Position) { l.drag(i, at) }
	r.name.onDrop = func() { l.drop(i) }
	r.amount = page.NumberField(unit, 0, most, decimals)
	r.amount.Beside, r.amount.Step = l.beside, 1
	r.amount.Digits = len("1000.5")
	r.amount.OnChanged = func(v float64) { l.setAmount(i, v) }
	r.amount.OnShortcut = func(c *desktop.CustomShortcut) { l.shortcut(i, c, true) }
	r.more = kit.NewButtonWithIcon("", l.menuIcon(i), func() { l.menu(i, r.more) })
	r.more.Importance = widget.LowImportance
	l.rows = append(l.rows, r)
	return container.New(lineLayout{r.name}, l.w.hints.Wrap(r.name, hint),
		container.NewStack(r.amount, kit.NewWheel(r.amount, l.behind)),
		l.w.hints.Wrap(r.more, say.MoreHint(name)))
}

// line returns line i, or false if it has gone.
func (l *lineList) line(i int) (design.Design, design.Line, bool) {
	d := l.w.Design()
	if i < 0 || i >= len(d.Lines(l.part)) {
		return d, design.Line{}, false
	}
	return d, d.Lines(l.part)[i], true
}

func (l *lineList) remove(i int) {
	if d, x, ok := l.line(i); ok {
		l.focus = i
		l.w.Commit(d.WithLineRemoved(l.part, i), say.T(say.RemovalOf, benchview.Brief(l.w.nameOf(x))))
	}
}

func (l *lineList) setAmount(i int, v float64) {
	d, x, ok := l.line(i)
	if !ok {
		return
	}
	x = benchview.WithAmount(x, v)
	l.w.Commit(d.WithLine(l.part, i, x), say.T(say.AmountOf, benchview.Brief(l.w.nameOf(x))))
}

// menu shows what else can be done with line i.
func (l *lineList) menu(i int, at fyne.CanvasObject) {
	d, x, ok := l.line(i)
	if !ok {
		return
	}
	item := func(name string, able bool, do func()) *fyne.MenuItem {
		it := fyne.NewMenuItem(name, mishap.Func(do))
		it.Disabled = !able
		return it
	}
	items := []*fyne.MenuItem{
		item(say.T("Another ingredient…"), true, func() { l.pick(i) }),
		item(say.T("Note…"), true, func() { l.note(i) }),
		item(say.T("Price…"), true, func() { l.price(i) }),
	}
	switch part := benchview.PartOf(x); {
	case x.Count > 0:
		items = append(items,
			item(say.T("Weigh in grams"), true, func() { l.weigh(i) }),
			item(say.T("Size of the eggs…"), true, l.w.editDesign))
	case part != "":
		items = append(items, item(say.CountAs(part), true, func() { l.count(i, part) }))
	}
	lock := say.KeepLine.String()
	if l.w.bench.mender.Locked(&d, l.part, i) {
		lock = say.FreeLine.String()
	}
	items = append(items, item(lock, true, func() { l.lock(i) }), fyne.NewMenuItemSeparator(),
		item(say.Duplicate.String(), true, func() { l.duplicate(i) }),
		item(say.T("Move up"), i > 0, func() { l.move(i, i-1) }),
		item(say.T("Move down"), i < len(d.Lines(l.part))-1, func() { l.move(i, i+1) }))
	for _, to := range design.Parts {
		if to != l.part {
			items = append(items, item(say.MoveTo(to), true, func() { l.carry(i, to, len(d.Lines(to))) }))
		}
	}
	items = append(items, fyne.NewMenuItemSeparator(),
		item(say.T("Remove"), true, func() { l.remove(i) }))
	c := l.w.win.Canvas()
	pos := fyne.CurrentApp().Driver().AbsolutePositionForObject(at)
	widget.ShowPopUpMenuAtPosition(fyne.NewMenu("", items...), c, pos.AddXY(0, at.Size().Height))
}

// lock keeps line i from being changed by remedies, or lets it be changed again.
func (l *lineList) lock(i int) {
	d, _, ok := l.line(i)
	if !ok {
		return
	}
	m := l.w.bench.mender
	m.Lock(&d, l.part, i, !m.Locked(&d, l.part, i))
	for k, r := range l.rows {
		r.more.SetIcon(l.menuIcon(k))
	}
}

// menuIcon is three dots, or a padlock for a line that remedies leave alone.
func (l *lineList) menuIcon(i int) fyne.Resource {
	if d, _, ok := l.line(i); ok && l.w.bench.mender.Locked(&d, l.part, i) {
		return lockIcon
	}
	return theme.MoreVerticalIcon()
}

// weigh turns a counted line into grams, and count the other way.
func (l *lineList) weigh(i int) {
	d, x, there := l.line(i)
	if line, ok := benchview.ToGrams(d, x); there && ok {
		l.focus = i
		l.w.Commit(d.WithLine(l.part, i, line), say.T(say.WeighingOf, benchview.Brief(l.w.nameOf(x))))
	}
}

func (l *lineList) count(i int, p design.EggPart) {
	d, x, there := l.line(i)
	if line, ok := benchview.ToCount(d, x, p); there && ok {
		l.focus = i
		l.w.Commit(d.WithLine(l.part, i, line), say.T(say.CountingOf, say.Of(string(p))))
	}
}

// note asks for a line's note, which the card prints.
func (l *lineList) note(i int) {
	_, x, ok := l.line(i)
	if !ok {
		return
	}
	entry := kit.NewTextField()
	entry.SetText(x.Note)
	entry.PlaceHolder = say.NoteExample.String()
	var dg *dialog.CustomDialog
	use := func() {
		dg.Hide()
		if d, now, ok := l.line(i); ok && benchview.Shape(now) == benchview.Shape(x) && now.Note != strings.TrimSpace(entry.Text) {
			now.Note = strings.TrimSpace(entry.Text)
			l.focus = i
			l.w.Commit(d.WithLine(l.part, i, now), say.T(say.OnNote, benchview.Brief(l.w.nameOf(now))))
		}
	}
	entry.OnSubmitted = mishap.With(func(string) { use() })
	dg = kit.Ask(l.w.win, say.NoteOn(benchview.Brief(l.w.nameOf(x))), entry, kit.Answer{Name: say.T("Use it"), Role: kit.ByReturn, Do: use}, kit.Answer{Name: say.T("Cancel"), Role: kit.ByEscape})
	dg.Resize(fyne.NewSize(30*theme.TextSize(), dg.MinSize().Height))
	l.w.win.Canvas().Focus(entry)
}

// pick asks for an ingredient, for line i or a new one if i is negative.
func (l *lineList) pick(i int) {
	d := l.w.Design()
	var items []kit.FinderItem
	for _, p := range benchview.EggParts {
		items = append(items, kit.FinderItem{ID: string(p), Title: say.T("%s, counted", say.Capital(say.Of(string(p)))), Group: larder.GroupName("egg"),
			Subtitle: say.OneEgg(page.Reads, benchview.GramsOfOne(d, p), d.Eggs)})
	}
	for _, in := range l.w.library().All() {
		items = append(items, librarypage.ItemOf(in))
	}
	find := kit.NewFinder(say.T("Search by name or kind"), items)
	dg := kit.Ask(l.w.win, say.T("Choose an ingredient"), find, kit.Answer{Name: say.Cancel.String(), Role: kit.ByEscape})
	find.OnCancelled = dg.Hide
	find.OnChosen = func(it kit.FinderItem) {
		dg.Hide()
		l.put(i, it)
	}
	dg.Resize(page.Room(l.w.win.Canvas(), 40, 37))
	l.w.win.Canvas().Focus(find.Focusable())
}

// put sets the ingredient of line i, or adds a line if i is negative.
func (l *lineList) put(i int, it kit.FinderItem) {
	d, x, ok := l.line(i)
	x = benchview.Put(d, x, it.ID)
	if ok {
		l.focus = i
		l.w.Commit(d.WithLine(l.part, i, x), say.T(say.ChangeTo, benchview.Brief(it.Title)))
		return
	}
	l.focus, l.onAmount = len(d.Lines(l.part)), true
	l.w.Commit(d.WithLineAdded(l.part, x), say.T(say.Addition, benchview.Brief(it.Title)))
}

// library is the model's ingredients and the design's own.
func (w *Window) library() *ingredient.Library {
	return w.Model().Library().With(w.Design().Own)
}

// nameOf is what a line's ingredient is called.
func (w *Window) nameOf(x design.Line) string { return benchview.Name(w.library(), x) }
