package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/design"
	"ripplewright/internal/ingredient"
	"ripplewright/internal/model"
	"ripplewright/ui/kit"
)

// lineList edits one list of lines. Rows are made anew only when their number
// or their ingredients change; otherwise the numbers are put in place.
type lineList struct {
	w      *Window
	part   design.Part
	rows   []*lineRow
	box    *fyne.Container
	object fyne.CanvasObject
}

// lineRow is one line: what, how much, and three buttons.
type lineRow struct {
	name   *widget.Button
	amount *kit.Number
	id     string
	unit   string
}

func newLineList(w *Window, part design.Part, title string) *lineList {
	l := &lineList{w: w, part: part, box: container.NewVBox()}
	add := widget.NewButtonWithIcon("Add ingredient…", theme.ContentAddIcon(), func() { l.pick(-1) })
	add.Importance = widget.LowImportance
	objects := []fyne.CanvasObject{l.box, container.NewHBox(add)}
	if title != "" {
		objects = append([]fyne.CanvasObject{widget.NewLabel(title)}, objects...)
	}
	l.object = container.NewVBox(objects...)
	return l
}

func unitOf(l design.Line) string {
	if l.Count > 0 {
		return string(l.CountOf)
	}
	return "g"
}

func amountOf(l design.Line) float64 {
	if l.Count > 0 {
		return l.Count
	}
	return l.Grams
}

func (l *lineList) show(d design.Design, r *model.Result) {
	lines := d.Lines(l.part)
	same := len(lines) == len(l.rows)
	for i := 0; same && i < len(lines); i++ {
		same = l.rows[i].id == lines[i].Ingredient && l.rows[i].unit == unitOf(lines[i])
	}
	if !same {
		l.build(lines)
	}
	for i, x := range lines {
		l.rows[i].amount.ShowValue(amountOf(x))
	}
}

func (l *lineList) build(lines []design.Line) {
	l.rows, l.box.Objects = nil, nil
	for i, x := range lines {
		l.box.Objects = append(l.box.Objects, l.row(i, x, len(lines)))
	}
	l.box.Refresh()
}

func (l *lineList) row(i int, x design.Line, n int) fyne.CanvasObject {
	name := x.Ingredient
	if in, ok := l.w.library().Find(x.Ingredient); ok {
		name = in.Name
	}
	r := &lineRow{id: x.Ingredient, unit: unitOf(x), amount: kit.NewNumber(unitOf(x), 0, 1e6, 1)}
	r.name = widget.NewButton(name, func() { l.pick(i) })
	r.name.Alignment = widget.ButtonAlignLeading
	r.name.Importance = widget.LowImportance
	r.amount.Step = 1
	r.amount.OnChanged = func(v float64) { l.setAmount(i, v) }
	icon := func(res fyne.Resource, able bool, f func()) *widget.Button {
		b := widget.NewButtonWithIcon("", res, f)
		b.Importance = widget.LowImportance
		if !able {
			b.Disable()
		}
		return b
	}
	buttons := container.NewHBox(
		icon(theme.MoveUpIcon(), i > 0, func() { l.w.Commit(l.w.Design().WithLineMoved(l.part, i, i-1), "move a line") }),
		icon(theme.MoveDownIcon(), i < n-1, func() { l.w.Commit(l.w.Design().WithLineMoved(l.part, i, i+1), "move a line") }),
		icon(theme.DeleteIcon(), true, func() { l.w.Commit(l.w.Design().WithLineRemoved(l.part, i), "remove a line") }))
	l.rows = append(l.rows, r)
	amount := container.NewGridWrap(fyne.NewSize(96*textScale(), r.amount.MinSize().Height), r.amount)
	return container.NewBorder(nil, nil, nil, container.NewHBox(amount, buttons), container.New(&elastic{button: r.name, full: name}, l.w.hints.Wrap(r.name, name+": press to choose another ingredient.")))
}

// textScale is how much larger than usual the theme's text is.
func textScale() float32 { return max(1, theme.TextSize()/14) }

// elastic gives its object all the width there is but asks for little. The
// toolkit's button cannot cut its text, so the name is cut here, with an
// ellipsis.
type elastic struct {
	button *widget.Button
	full   string
}

// Layout implements fyne.Layout.
func (e *elastic) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
	if text := fitting(e.full, size.Width-2*theme.InnerPadding()); text != e.button.Text {
		e.button.SetText(text)
	}
}

// MinSize implements fyne.Layout.
func (e *elastic) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(110*textScale(), objects[0].MinSize().Height)
}

// fitting returns s, cut with an ellipsis to the width that a button's text has.
func fitting(s string, width float32) string {
	style := fyne.TextStyle{Bold: true}
	fits := func(t string) bool { return fyne.MeasureText(t, theme.TextSize(), style).Width <= width }
	if fits(s) {
		return s
	}
	r := []rune(s)
	for n := len(r) - 1; n > 0; n-- {
		if t := strings.TrimRight(string(r[:n]), " ,(") + "…"; fits(t) {
			return t
		}
	}
	return "…"
}

func (l *lineList) setAmount(i int, v float64) {
	d := l.w.Design()
	if i >= len(d.Lines(l.part)) {
		return
	}
	x := d.Lines(l.part)[i]
	if x.Count > 0 && v > 0 {
		x.Count = v
		l.w.Commit(d.WithLine(l.part, i, x), "amount")
		return
	}
	l.w.Commit(d.WithGrams(l.part, i, v), "amount")
}

// pick asks for an ingredient, for line i or a new one if i is negative.
func (l *lineList) pick(i int) {
	var items []kit.FinderItem
	for _, in := range l.w.library().All() {
		items = append(items, kit.FinderItem{ID: in.ID, Title: in.Name, Subtitle: in.ID, Group: in.Group})
	}
	find := kit.NewFinder("Search by name", items)
	dg := dialog.NewCustom("Choose an ingredient", "Cancel", find, l.w.win)
	find.OnCancelled = dg.Hide
	find.OnChosen = func(it kit.FinderItem) {
		dg.Hide()
		d := l.w.Design()
		if i < 0 {
			l.w.Commit(d.WithLineAdded(l.part, design.Line{Ingredient: it.ID, Grams: 50}), "add "+it.Title)
			return
		}
		x := d.Lines(l.part)[i]
		if x.Count > 0 {
			x.Count, x.CountOf, x.Grams = 0, "", 50
		}
		x.Ingredient = it.ID
		l.w.Commit(d.WithLine(l.part, i, x), "change an ingredient")
	}
	dg.Resize(fyne.NewSize(560, 520))
	dg.Show()
	l.w.win.Canvas().Focus(find.Focusable())
}

// library is the model's ingredients and the design's own.
func (w *Window) library() *ingredient.Library {
	return w.Model().Library().With(w.Design().Own)
}
