package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
)

// A Tab leads to a place; the one where one is has bold letters over a bar, and a Tab
// that heads a group lies in a filled box instead. Space and Enter press it, Left and
// Right tell OnArrow. The toolkit's own tabs cannot be reached by keyboard.
type Tab struct {
	widget.BaseWidget
	attention

	Text     string
	OnTapped func()
	OnArrow  func(by int) // nil: arrows do nothing

	heads bool
	here  bool
}

var (
	_ fyne.Tappable      = (*Tab)(nil)
	_ fyne.Focusable     = (*Tab)(nil)
	_ desktop.Hoverable  = (*Tab)(nil)
	_ desktop.Cursorable = (*Tab)(nil)
)

// NewTab returns a tab; heads: it heads a group.
func NewTab(text string, heads bool, tapped func()) *Tab {
	t := &Tab{Text: text, OnTapped: tapped, heads: heads}
	t.refresh = t.Refresh
	t.ExtendBaseWidget(t)
	return t
}

// ShowHere marks the tab as where one is, or takes the mark away.
func (t *Tab) ShowHere(here bool) {
	if t.here != here {
		t.here = here
		t.Refresh()
	}
}

// Here reports whether the tab is marked.
func (t *Tab) Here() bool { return t.here }

// Tapped implements fyne.Tappable.
func (t *Tab) Tapped(*fyne.PointEvent) { mishap.Do(t.OnTapped) }

// TypedKey implements fyne.Focusable.
func (t *Tab) TypedKey(e *fyne.KeyEvent) {
	arrow := func(by int) {
		if t.OnArrow != nil {
			mishap.Do(func() { t.OnArrow(by) })
		}
	}
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		t.Tapped(nil)
	case fyne.KeyLeft:
		arrow(-1)
	case fyne.KeyRight:
		arrow(1)
	}
}

// Cursor implements desktop.Cursorable.
func (t *Tab) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer implements fyne.Widget.
func (t *Tab) CreateRenderer() fyne.WidgetRenderer {
	t.ExtendBaseWidget(t)
	r := &tabRenderer{t: t, back: &canvas.Rectangle{}, bar: &canvas.Rectangle{}, text: &canvas.Text{Alignment: fyne.TextAlignCenter}}
	r.look()
	return r
}

type tabRenderer struct {
	t         *Tab
	back, bar *canvas.Rectangle
	text      *canvas.Text
}

// tabBar is the height of the bar under a place's name.
const tabBar = 3

func (r *tabRenderer) MinSize() fyne.Size {
	s := fyne.MeasureText(r.t.Text, theme.TextSize(), fyne.TextStyle{Bold: true}) // marked or not
	return s.AddWidthHeight(3.4*theme.InnerPadding(), 1.6*theme.InnerPadding())
}

func (r *tabRenderer) Layout(s fyne.Size) {
	r.back.Resize(s)
	r.text.Resize(s)
	r.bar.Move(fyne.NewPos(theme.InnerPadding(), s.Height-tabBar))
	r.bar.Resize(fyne.NewSize(s.Width-2*theme.InnerPadding(), tabBar))
}

// look takes the colours of the theme and of where one is.
func (r *tabRenderer) look() {
	t := r.t
	c := func(name fyne.ThemeColorName) { r.back.FillColor = theme.Color(name) }
	r.back.CornerRadius = theme.InputRadiusSize()
	r.text.Text, r.text.TextSize, r.text.TextStyle.Bold = t.Text, theme.TextSize(), t.here
	r.text.Color, r.bar.FillColor = theme.Color(theme.ColorNameForeground), theme.Color(theme.ColorNamePrimary)
	r.bar.Hidden = !t.here || t.heads
	r.back.FillColor, r.back.StrokeWidth = nil, 0
	if t.heads && t.here {
		c(theme.ColorNamePrimary)
		r.text.Color = theme.Color(theme.ColorNameForegroundOnPrimary)
	} else if t.hovered {
		c(theme.ColorNameHover)
	}
	if t.focused {
		r.back.StrokeWidth, r.back.StrokeColor = 3, theme.Color(theme.ColorNameFocus)
		if !t.heads || !t.here {
			c(theme.ColorNameFocus)
		}
	}
}

func (r *tabRenderer) Refresh() {
	r.look()
	r.Layout(r.t.Size())
	r.back.Refresh()
	r.bar.Refresh()
	r.text.Refresh()
}

func (r *tabRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.back, r.text, r.bar}
}
func (r *tabRenderer) Destroy() {}
