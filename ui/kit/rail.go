package kit

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
)

// The rail's ends and steps, °C.
const (
	RailMin  = -24.0
	RailMax  = -4.0
	RailStep = 0.5
)

// A Reach is a range of temperatures, °C. It is empty unless From < To.
type Reach struct{ From, To float64 }

// Empty reports whether no temperature is in s.
func (s Reach) Empty() bool { return !(s.From < s.To) }

// A HardnessWord names the hardness from Above, kPa, up to the next word's.
type HardnessWord struct {
	Above float64
	Name  string
}

// A RailPhase is what the rail shows of one phase.
type RailPhase struct {
	Name     string
	Hardness []float64 // kPa, one per temperature; NaN where unknown
	Ice      []float64 // share of the volume, 0 to 1, one per temperature; NaN where unknown
	Scoop    Reach     // where it can be scooped
	Note     string    // shown in place of an empty Scoop
}

// A RailView is everything on the rail. The rail keeps the slices and does not
// change them; hand it new ones, or change them and show it again.
type RailView struct {
	Temperatures []float64 // °C, rising
	Dense, Foam  RailPhase
	Both         Reach          // where both can be scooped
	Words        []HardnessWord // rising; the first should begin at 0
	Serving      float64        // °C
	Reads        say.Style      // how numbers are told
}

// A Rail is the temperature rail: hardness (thick) and ice (thin) of both
// phases over −24 to −4 °C, the ribbon of temperatures where each scoops, and
// the serving temperature as a handle on the axis, to be dragged, tapped, or
// stepped by keys. Each word of hardness has the same height, and within a word
// the scale is logarithmic.
type Rail struct {
	widget.BaseWidget
	stepper

	OnChanged     func(celsius float64)
	OnChangeEnded func(celsius float64)

	view             RailView
	left, right      float64 // of the axis in the last drawing
	focused, hovered bool
}

var (
	_ fyne.Draggable     = (*Rail)(nil)
	_ fyne.Tappable      = (*Rail)(nil)
	_ fyne.Focusable     = (*Rail)(nil)
	_ desktop.Keyable    = (*Rail)(nil)
	_ desktop.Hoverable  = (*Rail)(nil)
	_ desktop.Cursorable = (*Rail)(nil)
)

// NewRail returns an empty rail.
func NewRail() *Rail {
	r := &Rail{stepper: stepper{min: RailMin, max: RailMax, step: RailStep}}
	r.view.Serving = (RailMin + RailMax) / 2
	r.ExtendBaseWidget(r)
	return r
}

// ShowRail puts v on screen and calls nobody back.
func (r *Rail) ShowRail(v RailView) {
	r.view = v
	r.Refresh()
}

// ShowServing moves the handle and calls nobody back.
func (r *Rail) ShowServing(celsius float64) {
	if celsius != r.view.Serving {
		r.view.Serving = celsius
		r.Refresh()
	}
}

// Serving is where the handle is, °C.
func (r *Rail) Serving() float64 { return r.view.Serving }

// Focusable is the rail itself.
func (r *Rail) Focusable() fyne.Focusable { return r }

func (r *Rail) move(celsius float64) {
	if celsius == r.view.Serving {
		return
	}
	r.view.Serving = celsius
	r.pending = true
	r.Refresh()
	if r.OnChanged != nil {
		mishap.Do(func() { r.OnChanged(celsius) })
	}
}

func (r *Rail) end(ended bool) {
	if ended && r.OnChangeEnded != nil {
		mishap.Do(func() { r.OnChangeEnded(r.view.Serving) })
	}
}

func (r *Rail) at(x float32) float64 {
	if !(r.right > r.left) {
		return r.view.Serving
	}
	f := (float64(x) - r.left) / (r.right - r.left)
	return r.snap(RailMin + math.Max(0, math.Min(1, f))*(RailMax-RailMin))
}

func (r *Rail) focus() {
	if r.focused {
		return
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(r); c != nil {
		c.Focus(r)
	}
}

// Dragged moves the handle under the pointer.
func (r *Rail) Dragged(e *fyne.DragEvent) {
	r.focus()
	r.keyed = false
	r.move(r.at(e.Position.X))
}

// DragEnd ends a drag.
func (r *Rail) DragEnd() { r.end(r.rest()) }

// Tapped moves the handle to the pointer.
func (r *Rail) Tapped(e *fyne.PointEvent) {
	r.focus()
	r.keyed = false
	r.move(r.at(e.Position.X))
	r.end(r.rest())
}

// TypedKey steps the handle.
func (r *Rail) TypedKey(e *fyne.KeyEvent) {
	v, ours := r.key(e.Name, r.view.Serving)
	if !ours {
		return
	}
	r.move(v)
	if !r.held {
		r.end(r.rest())
	}
}

// KeyDown implements desktop.Keyable.
func (r *Rail) KeyDown(e *fyne.KeyEvent) { r.down(e.Name) }

// KeyUp implements desktop.Keyable.
func (r *Rail) KeyUp(e *fyne.KeyEvent) { r.end(r.up(e.Name)) }

// TypedRune implements fyne.Focusable.
func (r *Rail) TypedRune(rune) {}

// FocusGained implements fyne.Focusable.
func (r *Rail) FocusGained() {
	r.focused = true
	r.Refresh()
}

// FocusLost implements fyne.Focusable.
func (r *Rail) FocusLost() {
	r.focused = false
	r.end(r.leave())
	r.Refresh()
}

// MouseIn implements desktop.Hoverable.
func (r *Rail) MouseIn(*desktop.MouseEvent) {
	r.hovered = true
	r.Refresh()
}

// MouseMoved implements desktop.Hoverable.
func (r *Rail) MouseMoved(*desktop.MouseEvent) {}

// MouseOut implements desktop.Hoverable.
func (r *Rail) MouseOut() {
	r.hovered = false
	r.Refresh()
}

// Cursor implements desktop.Cursorable.
func (r *Rail) Cursor() desktop.Cursor { return desktop.HResizeCursor }

// CreateRenderer implements fyne.Widget.
func (r *Rail) CreateRenderer() fyne.WidgetRenderer {
	r.ExtendBaseWidget(r)
	return newSketch(func() fyne.Size {
		t := theme.CaptionTextSize()
		return fyne.NewSize(36*t, 13.2*t+8) // so that the words of the scale are as large as the captions
	}, r.layOut).layered().lettered()
}
