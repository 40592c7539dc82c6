package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/ui/kit"
)

// nameButton is a line's name, to be pressed for another ingredient. With the
// keyboard on it, Delete removes the line; the hand drags the line by it. The
// toolkit's button cannot cut its text, so the name is cut here.
type nameButton struct {
	kit.Button
	full       string
	onShortcut func(*desktop.CustomShortcut)
	onRemove   func()
	onDrag     func(at fyne.Position) // on the screen, while the hand moves
	onDrop     func()
}

var (
	_ fyne.Shortcutable = (*nameButton)(nil)
	_ fyne.Draggable    = (*nameButton)(nil)
)

func newNameButton(name string, press func()) *nameButton {
	b := &nameButton{full: kit.Shown(name)}
	b.Text, b.OnTapped = b.full, press
	b.Alignment = widget.ButtonAlignLeading
	b.Importance = widget.LowImportance
	b.ExtendBaseWidget(b)
	return b
}

// TypedKey implements fyne.Focusable.
func (b *nameButton) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyDelete && b.onRemove != nil {
		mishap.Do(b.onRemove)
		return
	}
	b.Button.TypedKey(e)
}

// TypedShortcut implements fyne.Shortcutable.
func (b *nameButton) TypedShortcut(s fyne.Shortcut) {
	if c, ok := s.(*desktop.CustomShortcut); ok && b.onShortcut != nil {
		mishap.Do(func() { b.onShortcut(c) })
	}
}

// Dragged implements fyne.Draggable.
func (b *nameButton) Dragged(e *fyne.DragEvent) {
	if b.onDrag != nil {
		mishap.Do(func() { b.onDrag(e.AbsolutePosition) })
	}
}

// DragEnd implements fyne.Draggable.
func (b *nameButton) DragEnd() {
	if b.onDrop != nil {
		mishap.Do(b.onDrop)
	}
}

// show names it anew.
func (b *nameButton) show(name string) {
	if name = kit.Shown(name); name != b.full {
		b.full = name
		b.cut(b.Size().Width - 2*theme.InnerPadding())
	}
}

// cut makes the name fit a width, with an ellipsis.
func (b *nameButton) cut(width float32) {
	if b.Icon != nil {
		width -= theme.IconInlineSize() + theme.Padding()
	}
	if text := fitting(b.full, width); text != b.Text {
		b.SetText(text)
	}
}

// fitting returns s, cut with an ellipsis to the width that a button's text has.
func fitting(s string, width float32) string {
	return kit.Shortened(s, width, theme.TextSize(), fyne.TextStyle{Bold: true})
}
