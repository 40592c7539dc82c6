package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// Hints leads what is to be said about the thing under the mouse, or else about
// the one with the keyboard's focus, to one status line; the toolkit has no
// tooltips, and a fixed line serves both hands.
type Hints struct {
	show    func(text string)
	byFocus map[fyne.Focusable]string
	hovered *hintArea
	focused fyne.Focusable
	last    string
}

// NewHints returns hints that are shown by show, "" for none.
func NewHints(show func(text string)) *Hints {
	return &Hints{show: show, byFocus: map[fyne.Focusable]string{}}
}

// Wrap returns o with a hint. Where o takes the keyboard, or has a Focusable
// part as the widgets of this package do, the hint also follows the focus.
func (h *Hints) Wrap(o fyne.CanvasObject, text string) fyne.CanvasObject {
	switch f := o.(type) {
	case interface{ Focusable() fyne.Focusable }:
		h.byFocus[f.Focusable()] = text
	case fyne.Focusable:
		h.byFocus[f] = text
	}
	a := &hintArea{hints: h, text: text, content: o}
	a.ExtendBaseWidget(a)
	return container.NewStack(o, a)
}

// Forget drops what is to be said of a thing that is gone.
func (h *Hints) Forget(f fyne.Focusable) { delete(h.byFocus, f) }

// Look takes note of where c has its focus. Call it once a frame: the toolkit
// does not tell when the focus moves, and looking costs one comparison.
func (h *Hints) Look(c fyne.Canvas) {
	if f := c.Focused(); f != h.focused {
		h.focused = f
		h.tell()
	}
}

// Leave takes back what was said, by whomever: the thing under the mouse has been turned
// away from, and the toolkit does not tell of it before the mouse moves.
func (h *Hints) Leave() {
	h.hovered, h.focused, h.last = nil, nil, ""
	h.show("")
}

func (h *Hints) tell() {
	text := h.byFocus[h.focused]
	if h.hovered != nil {
		text = h.hovered.text
	}
	if text != h.last {
		h.last = text
		h.show(text)
	}
}

// A hintArea lies over its content, unseen. Taps, drags and the wheel find the
// content through it; the hovering it gets is passed on.
type hintArea struct {
	widget.BaseWidget
	hints   *Hints
	text    string
	content fyne.CanvasObject
}

var _ desktop.Hoverable = (*hintArea)(nil)

func (a *hintArea) MouseIn(e *desktop.MouseEvent) {
	a.hints.hovered = a
	a.hints.tell()
	if h, ok := a.content.(desktop.Hoverable); ok {
		h.MouseIn(e)
	}
}

func (a *hintArea) MouseMoved(e *desktop.MouseEvent) {
	if h, ok := a.content.(desktop.Hoverable); ok {
		h.MouseMoved(e)
	}
}

func (a *hintArea) MouseOut() {
	if a.hints.hovered == a {
		a.hints.hovered = nil
		a.hints.tell()
	}
	if h, ok := a.content.(desktop.Hoverable); ok {
		h.MouseOut()
	}
}

func (a *hintArea) CreateRenderer() fyne.WidgetRenderer { return unseen{} }

// unseen renders what only hands find. An object that paints nothing is looked at in every
// frame like any other.
type unseen struct{}

func (unseen) Layout(fyne.Size) {}

func (unseen) MinSize() (none fyne.Size) { return }

func (unseen) Refresh() {}

func (unseen) Objects() []fyne.CanvasObject { return nil }

func (unseen) Destroy() {}
