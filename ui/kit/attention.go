package kit

import "fyne.io/fyne/v2/driver/desktop"

// attention is what a widget knows of the keyboard and of the mouse over it: it embeds
// one, made with its own Refresh.
type attention struct {
	refresh          func()
	focused, hovered bool
}

// FocusGained implements fyne.Focusable.
func (a *attention) FocusGained() { a.focused = true; a.refresh() }

// FocusLost implements fyne.Focusable.
func (a *attention) FocusLost() { a.focused = false; a.refresh() }

// TypedRune implements fyne.Focusable.
func (a *attention) TypedRune(rune) {}

// MouseIn implements desktop.Hoverable.
func (a *attention) MouseIn(*desktop.MouseEvent) { a.hovered = true; a.refresh() }

// MouseMoved implements desktop.Hoverable.
func (a *attention) MouseMoved(*desktop.MouseEvent) {}

// MouseOut implements desktop.Hoverable.
func (a *attention) MouseOut() { a.hovered = false; a.refresh() }
