package kit

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
)

// A numberEntry is the field itself, with the keys of a number.
type numberEntry struct {
	widget.Entry
	n       *NumberField
	dirty   bool // the text is a hand's, and not settled
	showing bool // the text is being put there by the program
	keyed   bool // the last change was a step by a key
}

// TappedSecondary implements fyne.SecondaryTappable.
func (e *numberEntry) TappedSecondary(p *fyne.PointEvent) {
	OnScreen(e, func() { e.Entry.TappedSecondary(p) })
}

func newNumberEntry(n *NumberField) *numberEntry {
	e := &numberEntry{n: n}
	e.Wrapping = fyne.TextWrapOff
	e.Scroll = fyne.ScrollNone
	e.ExtendBaseWidget(e)
	e.OnChanged = mishap.With(func(string) {
		if !e.showing {
			e.dirty = e.Text != n.format()
			n.complain(nil)
		}
	})
	e.OnSubmitted = mishap.With(func(string) {
		n.settle()
		if n.Submits && n.Problem() == nil {
			submit(e)
		}
	})
	return e
}

// Typing reports whether there is a text not yet settled, which undoing then is
// about; otherwise it is about the values settled before.
func (e *numberEntry) Typing() bool { return e.dirty }

// ByKeys reports, from within a callback, whether a key stepped the value.
func (e *numberEntry) ByKeys() bool { return e.keyed }

// show writes text without telling that it changed.
func (e *numberEntry) show(text string) {
	e.showing = true
	e.SetText(text)
	e.showing = false
}

// TypedShortcut implements fyne.Shortcutable.
func (e *numberEntry) TypedShortcut(s fyne.Shortcut) {
	if c, ok := s.(*desktop.CustomShortcut); ok && e.n.OnShortcut != nil {
		mishap.Do(func() { e.n.OnShortcut(c) })
		return
	}
	e.Entry.TypedShortcut(s)
}

// MinSize leaves the width to the Number.
func (e *numberEntry) MinSize() fyne.Size {
	return fyne.NewSize(theme.InnerPadding()*2, e.Entry.MinSize().Height)
}

// FocusGained selects the text, so that typing replaces it.
func (e *numberEntry) FocusGained() {
	e.Entry.FocusGained()
	e.TypedShortcut(&fyne.ShortcutSelectAll{})
}

// FocusLost settles what was typed.
func (e *numberEntry) FocusLost() {
	e.Entry.FocusLost()
	e.n.settle()
}

// TypedKey steps the value, or edits the text.
func (e *numberEntry) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyUp, fyne.KeyDown, fyne.KeyPageUp, fyne.KeyPageDown:
		if e.Disabled() {
			return
		}
		v, err := e.n.read()
		if err != nil {
			e.n.complain(err)
			return
		}
		s := e.n.stepper()
		v, _ = s.key(key.Name, e.n.gauge.Shown(v))
		e.keyed = true
		e.n.take(math.Max(e.n.Min, math.Min(e.n.Max, e.n.gauge.Kept(v))))
		e.keyed = false
	case fyne.KeyEscape:
		if e.dirty {
			e.n.write()
		} else {
			escape(e)
		}
	default:
		e.Entry.TypedKey(key)
	}
}
