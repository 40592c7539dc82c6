package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// NewRoll returns what scrolls content up and down, wherever in it the mouse's wheel turns,
// see Rolled.
func NewRoll(content fyne.CanvasObject) (s *container.Scroll) {
	s = container.NewVScroll(Rolled(content, func() *container.Scroll { return s }))
	return s
}

// Rolled is content over which the mouse's wheel turns what it lies in: the toolkit's field
// of one line would take the turn and do nothing with it, and so would a table that scrolls
// sideways. Nothing else in content may want the wheel.
func Rolled(content fyne.CanvasObject, in func() *container.Scroll) fyne.CanvasObject {
	r := &roll{content: content, in: in}
	r.ExtendBaseWidget(r)
	return container.NewStack(content, r)
}

// A roll lies over what is scrolled, unseen.
type roll struct {
	widget.BaseWidget
	content fyne.CanvasObject
	in      func() *container.Scroll
}

var _ fyne.Scrollable = (*roll)(nil)

// Scrolled implements fyne.Scrollable. A turn to the side goes to what scrolls to the side
// under it.
func (r *roll) Scrolled(e *fyne.ScrollEvent) {
	if e.Scrolled.DY == 0 {
		if s := scrolling(r.content, e.AbsolutePosition); s != nil {
			s.Scrolled(e)
			return
		}
	}
	r.in().Scrolled(e)
}

// scrolling is what scrolls in o at a place of the window, nil where nothing does.
func scrolling(o fyne.CanvasObject, at fyne.Position) *container.Scroll {
	if !o.Visible() {
		return nil
	}
	switch o := o.(type) {
	case *container.Scroll:
		from := fyne.CurrentApp().Driver().AbsolutePositionForObject(o)
		if in := at.Subtract(from); in.X >= 0 && in.Y >= 0 && in.X < o.Size().Width && in.Y < o.Size().Height {
			return o
		}
	case *fyne.Container:
		for _, c := range o.Objects {
			if s := scrolling(c, at); s != nil {
				return s
			}
		}
	}
	return nil
}

// CreateRenderer implements fyne.Widget.
func (r *roll) CreateRenderer() fyne.WidgetRenderer { return unseen{} }
