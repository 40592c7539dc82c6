package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// A Wheel lies over a number field, unseen: the mouse's wheel steps the number that
// has the keyboard; over any other it goes on to what scrolls behind.
type Wheel struct {
	widget.BaseWidget
	field  *NumberField
	behind func() fyne.Scrollable
}

var _ fyne.Scrollable = (*Wheel)(nil)

// NewWheel returns a wheel over field.
func NewWheel(field *NumberField, behind func() fyne.Scrollable) *Wheel {
	w := &Wheel{field: field, behind: behind}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled implements fyne.Scrollable.
func (w *Wheel) Scrolled(e *fyne.ScrollEvent) {
	c := fyne.CurrentApp().Driver().CanvasForObject(w)
	switch {
	case c == nil || c.Focused() != w.field.Focusable():
		if s := w.behind(); s != nil {
			s.Scrolled(e)
		}
	case e.Scrolled.DY > 0:
		w.field.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	case e.Scrolled.DY < 0:
		w.field.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	}
}

// CreateRenderer implements fyne.Widget.
func (w *Wheel) CreateRenderer() fyne.WidgetRenderer { return unseen{} }
