package kit

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/draw"
)

// A track is the bare slider: a groove and a knob. Unlike the toolkit's own it
// counts its steps from the least value, shows what it is given without
// snapping, and reports nothing that a hand has not done.
type track struct {
	widget.BaseWidget
	stepper
	value    float64
	log      bool // positions are logarithmic; min is then above 0
	onChange func(v float64)
	onRest   func(v float64)

	focused, hovered, disabled bool
}

var (
	_ fyne.Draggable     = (*track)(nil)
	_ fyne.Tappable      = (*track)(nil)
	_ fyne.Focusable     = (*track)(nil)
	_ fyne.Disableable   = (*track)(nil)
	_ desktop.Keyable    = (*track)(nil)
	_ desktop.Hoverable  = (*track)(nil)
	_ desktop.Cursorable = (*track)(nil)
)

func newTrack(min, max, step float64) *track {
	t := &track{stepper: stepper{min: min, max: max, step: step}, value: min}
	t.ExtendBaseWidget(t)
	return t
}

func (t *track) show(v float64) {
	if v != t.value {
		t.value = v
		t.Refresh()
	}
}

// knob is the half-width of the knob, and so the margin of the groove.
func (t *track) knob() float32 { return theme.IconInlineSize() * .45 }

func (t *track) move(v float64) {
	if t.disabled || v == t.value {
		return
	}
	t.value = v
	t.pending = true
	t.Refresh()
	if t.onChange != nil {
		t.onChange(v)
	}
}

func (t *track) end(ended bool) {
	if ended && t.onRest != nil {
		t.onRest(t.value)
	}
}

func (t *track) at(x float32) float64 {
	k := t.knob()
	f := math.Max(0, math.Min(1, float64((x-k)/fyne.Max(1, t.Size().Width-2*k))))
	if !t.log {
		return t.snap(t.min + f*(t.max-t.min))
	}
	v := t.min * math.Pow(t.max/t.min, f)
	// Two digits are as fine as a hand is on such a scale.
	grain := math.Max(t.step, math.Pow(10, math.Floor(math.Log10(v))-1))
	return math.Max(t.min, math.Min(t.max, math.Round(v/grain)*grain))
}

// share is how far along the groove v stands, 0 to 1.
func (t *track) share(v float64) float64 {
	f := (v - t.min) / (t.max - t.min)
	if t.log {
		f = math.Log(v/t.min) / math.Log(t.max/t.min)
	}
	return math.Max(0, math.Min(1, f))
}

func (t *track) focus() {
	if c := fyne.CurrentApp().Driver().CanvasForObject(t); c != nil && !t.disabled {
		c.Focus(t)
	}
}

func (t *track) Dragged(e *fyne.DragEvent) {
	if !t.focused {
		t.focus()
	}
	t.keyed = false
	t.move(t.at(e.Position.X))
}

func (t *track) DragEnd() { t.end(t.rest()) }

func (t *track) Tapped(e *fyne.PointEvent) {
	t.focus()
	t.keyed = false
	t.move(t.at(e.Position.X))
	t.end(t.rest())
}

func (t *track) TypedKey(e *fyne.KeyEvent) {
	if e.Name == fyne.KeyEscape {
		escape(t)
		return
	}
	v, ours := t.key(e.Name, t.value)
	if !ours {
		return
	}
	t.move(v)
	if !t.held {
		t.end(t.rest())
	}
}

func (t *track) KeyDown(e *fyne.KeyEvent) { t.down(e.Name) }
func (t *track) KeyUp(e *fyne.KeyEvent)   { t.end(t.up(e.Name)) }
func (t *track) TypedRune(rune)           {}

func (t *track) FocusGained() { t.focused = true; t.Refresh() }
func (t *track) FocusLost() {
	t.focused = false
	t.end(t.leave())
	t.Refresh()
}

func (t *track) MouseIn(*desktop.MouseEvent)    { t.hovered = true; t.Refresh() }
func (t *track) MouseMoved(*desktop.MouseEvent) {}
func (t *track) MouseOut()                      { t.hovered = false; t.Refresh() }

func (t *track) Cursor() desktop.Cursor { return desktop.PointerCursor }

func (t *track) Enable()        { t.disabled = false; t.Refresh() }
func (t *track) Disable()       { t.disabled = true; t.Refresh() }
func (t *track) Disabled() bool { return t.disabled }

func (t *track) CreateRenderer() fyne.WidgetRenderer {
	t.ExtendBaseWidget(t)
	return newSketch(func() fyne.Size {
		return fyne.NewSize(90, 2*t.knob()+2*theme.Padding())
	}, t.layOut)
}

func (t *track) layOut(d *draw.List, w, h float64) {
	k, y := float64(t.knob()), h/2
	accent, groove := colour(theme.ColorNamePrimary), colour(theme.ColorNameInputBorder)
	if t.disabled {
		accent = colour(theme.ColorNameDisabled)
	}
	x := k
	if t.max > t.min && !math.IsNaN(t.value) {
		x += (w - 2*k) * t.share(t.value)
	}
	d.Segment(draw.Stroke{Width: 3, Colour: groove}, k, y, w-k, y)
	d.Segment(draw.Stroke{Width: 5, Colour: accent}, k, y, x, y)
	if t.focused || t.hovered {
		halo := colour(theme.ColorNameHover)
		if t.focused {
			halo = colour(theme.ColorNameFocus)
		}
		d.Arc(x, y, k+4, k+4, 0, 2*math.Pi)
		d.EndFill(halo)
	}
	if math.IsNaN(t.value) {
		return
	}
	d.Arc(x, y, k, k, 0, 2*math.Pi)
	d.EndFill(accent)
	d.Arc(x, y, k*.55, k*.55, 0, 2*math.Pi)
	d.EndFill(colour(theme.ColorNameInputBackground))
}
