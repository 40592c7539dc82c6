package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
)

// lineHeight is the height of a line of text in the theme.
func lineHeight() float32 {
	return fyne.MeasureText("M", theme.TextSize(), fyne.TextStyle{}).Height
}

// thirds lays three objects side by side: the middle one a little narrower.
type thirds struct{}

var thirdShares = [3]float32{0.345, 0.31, 0.345}

// Layout implements fyne.Layout.
func (thirds) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	const gap = 8
	x := float32(0)
	for i, o := range objects {
		width := (size.Width - 2*gap) * thirdShares[i]
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(width, size.Height))
		x += width + gap
	}
}

// MinSize implements fyne.Layout.
func (thirds) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for i, o := range objects {
		m := o.MinSize()
		s.Width = max(s.Width, m.Width/thirdShares[i])
		s.Height = max(s.Height, m.Height)
	}
	return fyne.NewSize(s.Width+16, s.Height)
}

// overRail lays one object over the rail, which gets a quarter of the height if
// it needs no more.
type overRail struct{}

// Layout implements fyne.Layout.
func (overRail) Layout(o []fyne.CanvasObject, size fyne.Size) {
	rail := max(o[1].MinSize().Height, size.Height/4)
	o[0].Resize(fyne.NewSize(size.Width, size.Height-rail-theme.Padding()))
	o[1].Move(fyne.NewPos(0, size.Height-rail))
	o[1].Resize(fyne.NewSize(size.Width, rail))
}

// MinSize implements fyne.Layout.
func (overRail) MinSize(o []fyne.CanvasObject) fyne.Size {
	a, b := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(max(a.Width, b.Width), a.Height+b.Height+theme.Padding())
}

// tight takes from an object some of the padding that the toolkit gives it
// above and below, which large text cannot afford.
type tight struct{}

const tightBy = 8

// tightly returns o with less padding.
func tightly(o fyne.CanvasObject) fyne.CanvasObject { return container.New(tight{}, o) }

// Layout implements fyne.Layout.
func (tight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Move(fyne.NewPos(0, -tightBy/2))
	objects[0].Resize(size.AddWidthHeight(0, tightBy))
}

// MinSize implements fyne.Layout.
func (tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().SubtractWidthHeight(0, tightBy)
}

// atLeast gives its object a least height that follows the theme.
type atLeast struct{ height func() float32 }

// Layout implements fyne.Layout.
func (atLeast) Layout(objects []fyne.CanvasObject, size fyne.Size) { objects[0].Resize(size) }

// MinSize implements fyne.Layout.
func (l atLeast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(objects[0].MinSize().Width, l.height())
}

// kept is a layout whose least size is asked for once until it lays its objects anew, which
// the toolkit has it do as soon as one of them has another least size, comes or goes. In
// every frame the toolkit asks each object of the window, and so each of them as often as
// there are containers around it.
type kept struct {
	of    fyne.Layout
	least fyne.Size
	known bool
}

func keep(l fyne.Layout) fyne.Layout { return &kept{of: l} }

// Layout implements fyne.Layout.
func (k *kept) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	k.known = false
	k.of.Layout(objects, size)
}

// MinSize implements fyne.Layout.
func (k *kept) MinSize(objects []fyne.CanvasObject) fyne.Size {
	if !k.known {
		k.least, k.known = k.of.MinSize(objects), true
	}
	return k.least
}

// wrapped lays its objects in rows as wide as the container, as words in a text.
type wrapped struct{ width float32 }

// Layout implements fyne.Layout.
func (l *wrapped) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	l.width = size.Width
	l.place(objects, true)
}

// MinSize implements fyne.Layout: the height is that at the width of the last
// layout.
func (l *wrapped) MinSize(objects []fyne.CanvasObject) fyne.Size { return l.place(objects, false) }

func (l *wrapped) place(objects []fyne.CanvasObject, move bool) fyne.Size {
	gap := theme.Padding()
	var x, y, line, widest float32
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		s := o.MinSize()
		if x > 0 && l.width > 0 && x+s.Width > l.width {
			x, y = 0, y+line+gap
		}
		if move {
			o.Move(fyne.NewPos(x, y))
			o.Resize(s)
		}
		x += s.Width + gap
		line, widest = max(line, s.Height), max(widest, s.Width)
	}
	return fyne.NewSize(widest, y+line)
}

// frame lays the window: bars at the top, the last object at the foot, the one
// before it between. It asks for a bar's height when the bar has its width, for
// that of wrapped rows depends on it.
type frame struct{}

// Layout implements fyne.Layout.
func (frame) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	gap := theme.Padding()
	n := len(objects)
	y := float32(0)
	for _, bar := range objects[:n-2] {
		bar.Resize(fyne.NewSize(size.Width, bar.MinSize().Height))
		h := bar.MinSize().Height
		bar.Move(fyne.NewPos(0, y))
		bar.Resize(fyne.NewSize(size.Width, h))
		y += h + gap
	}
	foot := objects[n-1].MinSize().Height
	objects[n-1].Move(fyne.NewPos(0, size.Height-foot))
	objects[n-1].Resize(fyne.NewSize(size.Width, foot))
	objects[n-2].Move(fyne.NewPos(0, y))
	objects[n-2].Resize(fyne.NewSize(size.Width, size.Height-foot-y))
}

// MinSize implements fyne.Layout.
func (frame) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for i, o := range objects {
		m := o.MinSize()
		s.Width = max(s.Width, m.Width)
		s.Height += m.Height
		if i < len(objects)-2 {
			s.Height += theme.Padding()
		}
	}
	return s
}

// lineLayout is a row of the lists: a name that takes what is left and is cut
// to it, an amount, and a button.
type lineLayout struct{ name *nameButton }

// Layout implements fyne.Layout.
func (l lineLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	amount, more := l.amount(o), o[2].MinSize().Width
	x := size.Width - more
	o[2].Move(fyne.NewPos(x, 0))
	o[2].Resize(fyne.NewSize(more, size.Height))
	x -= amount
	o[1].Move(fyne.NewPos(x, 0))
	o[1].Resize(fyne.NewSize(amount, size.Height))
	l.name.cut(x - 2*theme.InnerPadding())
	o[0].Resize(fyne.NewSize(x, size.Height))
}

// amount is room for five digits and the unit.
func (l lineLayout) amount(o []fyne.CanvasObject) float32 {
	return o[1].MinSize().Width
}

// MinSize implements fyne.Layout.
func (l lineLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	more := o[2].MinSize()
	return fyne.NewSize(6*theme.TextSize()+l.amount(o)+more.Width, max(o[1].MinSize().Height, more.Height))
}

// headLayout is the head of a list: its title, where lines are typed, and a button. Where
// typing would have no room beside a long title, it has a row of its own.
type headLayout struct{ rows int }

// typingRoom is the least that typing has beside the title: an amount and a short name.
func typingRoom() float32 { return 10 * theme.TextSize() }

// Layout implements fyne.Layout.
func (l *headLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	title, entry, button := o[0].MinSize(), o[1].MinSize(), o[2].MinSize()
	x, high := size.Width-button.Width, max(title.Height, entry.Height, button.Height)
	place := func(o fyne.CanvasObject, x, y, width float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(width, high))
	}
	place(o[0], 0, 0, title.Width)
	place(o[2], x, 0, button.Width)
	if l.rows = 1; x-title.Width >= typingRoom() {
		place(o[1], title.Width, 0, x-title.Width)
		return
	}
	l.rows = 2
	place(o[1], theme.InnerPadding(), high, size.Width-theme.InnerPadding())
}

// MinSize implements fyne.Layout: of the way they were laid last.
func (l *headLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	title, entry, button := o[0].MinSize(), o[1].MinSize(), o[2].MinSize()
	return fyne.NewSize(title.Width+button.Width, max(title.Height, entry.Height, button.Height)*float32(max(1, l.rows)))
}
