package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/benchview"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// lists are the lists of lines in the order of the bench.
func (w *Window) lists() []*lineList {
	return append(append([]*lineList{}, w.bench.dense.lists...), w.bench.foam.lists...)
}

// listOf is the list of a part.
func (w *Window) listOf(part design.Part) *lineList {
	for _, l := range w.lists() {
		if l.part == part {
			return l
		}
	}
	return nil
}

// shortcut does with line i what the keys say, whether they are on its name or on its
// amount: an arrow with Ctrl moves it within its list, with Alt also into the next
// one, and Ctrl+Shift+D makes it two.
func (l *lineList) shortcut(i int, c *desktop.CustomShortcut, amount bool) {
	l.onAmount = amount
	by := map[fyne.KeyName]int{fyne.KeyUp: -1, fyne.KeyDown: 1}[c.KeyName]
	switch {
	case c.KeyName == fyne.KeyD && c.Modifier == fyne.KeyModifierControl|fyne.KeyModifierShift:
		l.duplicate(i)
	case by != 0 && c.Modifier == fyne.KeyModifierControl:
		l.move(i, i+by)
	case by != 0 && c.Modifier == fyne.KeyModifierAlt:
		l.shift(i, by)
	}
}

// move puts line i at another place of its list.
func (l *lineList) move(from, to int) {
	if _, _, there := l.line(to); there {
		l.carry(from, l.part, to)
	}
}

// shift moves line i by one place, from the end of a list into the next one.
func (l *lineList) shift(i, by int) {
	if _, _, there := l.line(i + by); there {
		l.carry(i, l.part, i+by)
		return
	}
	all := l.w.lists()
	for k := range all {
		if n := k + by; all[k] == l && n >= 0 && n < len(all) {
			at := 0
			if d := l.w.Design(); by < 0 {
				at = len(d.Lines(all[n].part))
			}
			l.carry(i, all[n].part, at)
			return
		}
	}
}

// carry puts line i at place at of a part, and the keyboard with it.
func (l *lineList) carry(i int, to design.Part, at int) {
	d, x, ok := l.line(i)
	if !ok || to == l.part && at == i {
		return
	}
	next := l.w.listOf(to)
	next.focus, next.onAmount = at, l.onAmount
	l.w.Commit(d.WithLineCarried(l.part, i, to, at), say.T(say.MoveOf, benchview.Brief(l.w.nameOf(x))))
}

// duplicate makes line i two.
func (l *lineList) duplicate(i int) {
	if d, x, ok := l.line(i); ok {
		l.focus, l.onAmount = i+1, true
		l.w.Commit(d.WithLineCopied(l.part, i), say.T(say.SecondOf, benchview.Brief(l.w.nameOf(x))))
	}
}

// scroll is what the rows scroll in.
func (l *lineList) scroll() (*container.Scroll, bool) {
	for _, c := range []*column{l.w.bench.dense, l.w.bench.foam} {
		for _, x := range c.lists {
			if x == l {
				return c.scroll, true
			}
		}
	}
	return nil, false
}

// behind is where the wheel goes on to.
func (l *lineList) behind() fyne.Scrollable {
	if s, ok := l.scroll(); ok {
		return s
	}
	return nil
}

// A landing is where a line that is dragged would go.
type landing struct {
	list *lineList
	at   int
}

// landingAt is the place under a point of the window, none away from the lists.
func (w *Window) landingAt(p fyne.Position) (landing, bool) {
	driver := fyne.CurrentApp().Driver()
	inside := func(o fyne.CanvasObject) (above, in bool) {
		at, size := driver.AbsolutePositionForObject(o), o.Size()
		return p.Y < at.Y+size.Height/2, p.X >= at.X && p.X <= at.X+size.Width && p.Y >= at.Y && p.Y <= at.Y+size.Height
	}
	for _, l := range w.lists() {
		if _, in := inside(l.object); !in {
			continue
		}
		for i, row := range l.box.Objects {
			if above, _ := inside(row); above {
				return landing{l, i}, true
			}
		}
		return landing{l, len(l.rows)}, true
	}
	return landing{}, false
}

// drag tells where line i would go, and marks the line before which it would stand.
func (l *lineList) drag(i int, p fyne.Position) {
	to, ok := l.w.landingAt(p)
	l.w.mark(to, ok)
	if !ok {
		return
	}
	if d, x, there := l.line(i); there {
		before := ""
		if lines := d.Lines(to.list.part); to.at < len(lines) {
			before = l.w.nameOf(lines[to.at])
		}
		l.w.Say(say.Carries(l.w.nameOf(x), to.list.part, before))
	}
}

// drop puts line i where it was dragged to.
func (l *lineList) drop(i int) {
	to := l.w.landing
	l.w.mark(landing{}, false)
	if to.list == nil {
		return
	}
	if to.list == l && to.at > i {
		to.at-- // the places after it move up
	}
	l.carry(i, to.list.part, to.at)
}

// mark shows where a line would be put down.
func (w *Window) mark(to landing, ok bool) {
	if to == w.landing {
		return
	}
	w.landing = to
	for _, l := range w.lists() {
		for i, r := range l.rows {
			r.name.Importance = widget.LowImportance
			if ok && l == to.list && i == to.at {
				r.name.Importance = widget.HighImportance
			}
			r.name.Refresh()
		}
	}
}
