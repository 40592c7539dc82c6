package kit

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
)

// StandIn has Escape close the dialog on top of c also while a widget of the toolkit's own
// dialogs has the keyboard: those take every key for themselves. It puts the keyboard on a
// stand-in, which hands the widget all keys but Escape, and Tab on from where the widget
// is. Call it once a frame: the toolkit does not tell when the focus moves.
func StandIn(c fyne.Canvas) {
	of := c.Focused()
	switch of.(type) {
	case *widget.Button, *widget.Check, *widget.GridWrap, *widget.List:
	default:
		return
	}
	top, ok := c.Overlays().Top().(*widget.PopUp)
	if !ok {
		return
	}
	content, ok := top.Content.(*fyne.Container)
	if !ok {
		return
	}
	var s *standIn
	if i := slices.IndexFunc(content.Objects, func(o fyne.CanvasObject) bool { _, is := o.(*standIn); return is }); i >= 0 {
		s = content.Objects[i].(*standIn)
	} else {
		s = &standIn{c: c}
		s.ExtendBaseWidget(s)
		content.Add(s)
	}
	s.of = of
	c.Focus(s)
}

// FocusFiles puts the keyboard on the files of the toolkit's file dialog on top of c,
// where arrows and Space choose.
func FocusFiles(c fyne.Canvas) {
	within(c.Overlays().Top(), func(o fyne.CanvasObject) {
		split, ok := o.(*container.Split)
		if !ok {
			return
		}
		within(split.Trailing, func(o fyne.CanvasObject) {
			switch f := o.(type) {
			case *widget.GridWrap:
				c.Focus(f)
			case *widget.List:
				c.Focus(f)
			}
		})
	})
	StandIn(c)
}

// NamePlaces has the places beside the files of the toolkit's file dialog on top of c, as
// the home folder, called by other names: it knows them in English alone.
func NamePlaces(c fyne.Canvas, called func(place string) string) {
	within(c.Overlays().Top(), func(o fyne.CanvasObject) {
		split, ok := o.(*container.Split)
		if !ok {
			return
		}
		within(split.Leading, func(o fyne.CanvasObject) {
			places, ok := o.(*widget.List)
			if !ok {
				return
			}
			update := places.UpdateItem
			places.UpdateItem = func(i widget.ListItemID, item fyne.CanvasObject) {
				update(i, item)
				within(item, func(o fyne.CanvasObject) {
					if name, ok := o.(*widget.Label); ok {
						name.SetText(called(name.Text))
					}
				})
			}
			places.Refresh()
		})
	})
}

// A standIn has the keyboard for a widget of the toolkit's. It cannot be seen.
type standIn struct {
	widget.BaseWidget
	c  fyne.Canvas
	of fyne.Focusable // nil: it is passed over
}

var (
	_ fyne.Focusable = (*standIn)(nil)
	_ fyne.Tabbable  = (*standIn)(nil)
)

// Resize implements fyne.CanvasObject. A stand-in has no size, whatever layout it comes
// into: in the toolkit's file dialog it would lie over the files and take their clicks.
func (s *standIn) Resize(fyne.Size) {}

// FocusGained implements fyne.Focusable.
func (s *standIn) FocusGained() {
	if s.of != nil {
		s.of.FocusGained()
	}
}

// FocusLost implements fyne.Focusable.
func (s *standIn) FocusLost() {
	if s.of != nil {
		s.of.FocusLost()
	}
}

// TypedRune implements fyne.Focusable.
func (s *standIn) TypedRune(r rune) {
	if s.of != nil {
		s.of.TypedRune(r)
	}
}

// AcceptsTab implements fyne.Tabbable.
func (s *standIn) AcceptsTab() bool { return true }

// TypedKey implements fyne.Focusable.
func (s *standIn) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyEscape:
		mishap.Do(func() { Dismiss(s.c) })
	case fyne.KeyTab:
		s.goOn()
	case fyne.KeyReturn, fyne.KeyEnter: // as our own buttons take it
		s.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	default:
		if s.of != nil {
			mishap.Do(func() { s.of.TypedKey(e) })
		}
	}
}

// goOn moves the keyboard to what stands after the widget, or before it with Shift.
func (s *standIn) goOn() {
	move := s.c.FocusNext
	if d, ok := fyne.CurrentApp().Driver().(desktop.Driver); ok && d.CurrentKeyModifiers()&fyne.KeyModifierShift != 0 {
		move = s.c.FocusPrevious
	}
	of := s.of
	if s.of = nil; of != nil {
		of.FocusLost()
		s.c.Focus(of)
	}
	if move(); s.c.Focused() == fyne.Focusable(s) {
		move()
	}
	StandIn(s.c)
}

// CreateRenderer implements fyne.Widget.
func (s *standIn) CreateRenderer() fyne.WidgetRenderer {
	return unseen{}
}
