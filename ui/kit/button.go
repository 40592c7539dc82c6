package kit

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
)

// Button is the toolkit's, pressed by Return too, and in the net: a panic of
// what it does is caught. Escape closes the dialog it is in.
type Button struct {
	widget.Button
	escapes bool // Escape presses it
}

// NewButton returns a button that does press.
func NewButton(text string, press func()) *Button { return NewButtonWithIcon(text, nil, press) }

// NewButtonWithIcon returns a button with an icon, before its text if it has one.
func NewButtonWithIcon(text string, icon fyne.Resource, press func()) *Button {
	b := &Button{}
	b.Text, b.Icon, b.OnTapped = text, icon, press
	b.ExtendBaseWidget(b)
	return b
}

// Tapped implements fyne.Tappable.
func (b *Button) Tapped(e *fyne.PointEvent) { mishap.Do(func() { b.Button.Tapped(e) }) }

// TypedKey implements fyne.Focusable.
func (b *Button) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		b.Tapped(nil)
	case fyne.KeyEscape:
		mishap.Do(func() { escape(b) })
	}
}

// NewCancel returns a button that Escape presses too, for a dialog with buttons
// of its own.
func NewCancel(text string, press func()) *Button {
	b := NewButton(text, press)
	b.escapes = true
	return b
}

// Select is the toolkit's list of choices, in the net. Escape closes the dialog it
// is in.
type Select struct{ widget.Select }

// NewSelect returns a list of options that tells what is chosen.
func NewSelect(options []string, chosen func(string)) *Select {
	s := &Select{}
	s.PlaceHolder = say.T("(Select one)")
	s.Options, s.OnChanged = options, mishap.With(chosen)
	s.ExtendBaseWidget(s)
	return s
}

// CreateRenderer implements fyne.Widget: the toolkit's, with the border that fields have.
// In high contrast nothing else would show that it is one.
func (s *Select) CreateRenderer() fyne.WidgetRenderer {
	s.ExtendBaseWidget(s)
	r := &bordered{WidgetRenderer: s.Select.CreateRenderer(), border: canvas.NewRectangle(nil)}
	r.look()
	return r
}

// bordered is what a renderer shows, and a border around it.
type bordered struct {
	fyne.WidgetRenderer
	border *canvas.Rectangle
}

func (r *bordered) look() {
	r.border.StrokeColor, r.border.StrokeWidth = theme.Color(theme.ColorNameInputBorder), theme.InputBorderSize()
	r.border.CornerRadius = theme.InputRadiusSize()
}

func (r *bordered) Layout(size fyne.Size) {
	r.WidgetRenderer.Layout(size)
	r.border.Resize(size)
}

func (r *bordered) Refresh() {
	r.WidgetRenderer.Refresh()
	r.look()
	r.border.Refresh()
}

func (r *bordered) Objects() []fyne.CanvasObject {
	return append(slices.Clip(r.WidgetRenderer.Objects()), r.border)
}

// TypedKey implements fyne.Focusable.
func (s *Select) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape {
		escape(s)
		return
	}
	OnScreen(s, func() { s.Select.TypedKey(e) })
}

// Tapped implements fyne.Tappable.
func (s *Select) Tapped(e *fyne.PointEvent) { OnScreen(s, func() { s.Select.Tapped(e) }) }

// OnScreen does do, in the net, if o has been painted: of a list or a menu that opens at
// an object that has not, as when a hand is quicker than a busy machine, the toolkit
// dies.
func OnScreen(o fyne.CanvasObject, do func()) {
	if fyne.CurrentApp().Driver().CanvasForObject(o) != nil {
		mishap.Do(do)
	}
}

// Check is the toolkit's tick, in the net. Escape closes the dialog it is in.
type Check struct{ widget.Check }

// NewCheck returns a tick that tells whether it is set.
func NewCheck(text string, ticked func(bool)) *Check {
	c := &Check{}
	c.Text, c.OnChanged = text, mishap.With(ticked)
	c.ExtendBaseWidget(c)
	return c
}

// TypedKey implements fyne.Focusable.
func (c *Check) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape {
		escape(c)
		return
	}
	c.Check.TypedKey(e)
}
