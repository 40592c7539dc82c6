package kit

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
)

// A Slide is a value to be dragged or typed: name, slider and number in one row.
type Slide struct {
	widget.BaseWidget

	OnChanged     func(float64) // every step of a drag, and every settled typing
	OnChangeEnded func(float64) // once, when the hand rests

	// NameWidth is the least room for the name, so that rows can be aligned; 0 fits it.
	NameWidth float32

	name   *canvas.Text
	track  *track
	number *NumberField
	step   float64  // of the unit that the value has
	group  []*Slide // whose columns it shares
}

// AlignSlides gives rows that stand under each other the same columns.
func AlignSlides(rows ...*Slide) {
	widest := ""
	for _, s := range rows {
		if unit := s.number.gauge.Unit; len(unit) > len(widest) {
			widest = unit
		}
	}
	for _, s := range rows {
		s.group, s.number.Beside = rows, widest
	}
}

// columns are the widths of name and number, those of the widest row.
func (s *Slide) columns() (name, number float32) {
	name, number = fyne.Max(s.name.MinSize().Width, s.NameWidth), s.number.MinSize().Width
	for _, o := range s.group {
		name = fyne.Max(name, o.name.MinSize().Width)
		number = fyne.Max(number, o.number.MinSize().Width)
	}
	return name, number
}

// NewSlide returns a row for min..max. The slider moves by step; the number
// takes what is between, to so many decimals.
func NewSlide(name, unit string, min, max, step float64, decimals int) *Slide {
	s := &Slide{
		name:   canvas.NewText(name, theme.Color(theme.ColorNameForeground)),
		track:  newTrack(min, max, step),
		number: NewNumberField(unit, min, max, decimals),
	}
	s.number.Step, s.step = step, step
	s.track.onChange = func(shown float64) {
		v := s.kept(shown)
		s.number.put(v)
		if s.OnChanged != nil {
			mishap.Do(func() { s.OnChanged(v) })
		}
	}
	s.track.onRest = func(shown float64) {
		if s.OnChangeEnded != nil {
			mishap.Do(func() { s.OnChangeEnded(s.kept(shown)) })
		}
	}
	s.number.OnChanged = func(v float64) {
		s.track.show(s.number.gauge.Shown(v))
		if s.OnChanged != nil {
			mishap.Do(func() { s.OnChanged(v) })
		}
		if s.OnChangeEnded != nil {
			mishap.Do(func() { s.OnChangeEnded(v) })
		}
	}
	s.ExtendBaseWidget(s)
	return s
}

// Reading has the row show, take and step values as a gauge of its unit does.
func (s *Slide) Reading(g say.Gauge) *Slide {
	s.number.Reading(g)
	s.track.step = g.Step(s.step)
	s.SetRange(s.number.Min, s.number.Max)
	return s
}

// kept is the value of a place of the track, within the limits.
func (s *Slide) kept(shown float64) float64 {
	return math.Max(s.number.Min, math.Min(s.number.Max, s.number.gauge.Kept(shown)))
}

// ShowValue puts v on the row, NaN for unknown, and calls nobody back.
func (s *Slide) ShowValue(v float64) {
	s.track.show(s.number.gauge.Shown(v))
	s.number.ShowValue(v)
}

// SetName changes the name of the row.
func (s *Slide) SetName(name string) {
	if name != s.name.Text {
		s.name.Text = name
		s.name.Refresh()
	}
}

// SetRange changes the limits, and calls nobody back, even if the value is now outside.
func (s *Slide) SetRange(min, max float64) {
	s.track.min, s.track.max = s.number.gauge.Shown(min), s.number.gauge.Shown(max)
	s.number.Min, s.number.Max = min, max
	s.track.Refresh()
}

// Logarithmic spreads the slider's places evenly over the powers of ten, for a
// range of many of them. The least value must be above 0.
func (s *Slide) Logarithmic() {
	s.track.log = true
	s.track.Refresh()
}

// Value is what the row shows.
func (s *Slide) Value() float64 { return s.number.Value() }

// Focusable is the slider, which the keyboard reaches first.
func (s *Slide) Focusable() fyne.Focusable { return s.track }

// Enable lets the value be changed.
func (s *Slide) Enable() { s.track.Enable(); s.number.Enable() }

// Disable shows the value as not to be changed.
func (s *Slide) Disable() { s.track.Disable(); s.number.Disable() }

// Disabled reports whether the value cannot be changed.
func (s *Slide) Disabled() bool { return s.track.Disabled() }

// CreateRenderer implements fyne.Widget.
func (s *Slide) CreateRenderer() fyne.WidgetRenderer {
	s.ExtendBaseWidget(s)
	r := &slideRenderer{s}
	r.Refresh()
	return r
}

type slideRenderer struct{ s *Slide }

func (r *slideRenderer) Layout(size fyne.Size) {
	s, gap := r.s, 2*theme.Padding()
	row := s.number.entry.MinSize().Height
	name, number := s.name.MinSize(), s.number.MinSize()
	left, right := s.columns()
	number.Width = right
	s.name.Move(fyne.NewPos(0, (row-name.Height)/2))
	s.name.Resize(name)
	if left > 0 {
		left += gap
	}
	s.track.Move(fyne.NewPos(left, 0))
	s.track.Resize(fyne.NewSize(size.Width-left-gap-number.Width, row))
	s.number.Move(fyne.NewPos(size.Width-number.Width, 0))
	s.number.Resize(number)
}

func (r *slideRenderer) MinSize() fyne.Size {
	s := r.s
	name, number := s.columns()
	return fyne.NewSize(name+s.track.MinSize().Width+number+4*theme.Padding(), s.number.MinSize().Height)
}

func (r *slideRenderer) Refresh() {
	s := r.s
	s.name.Color, s.name.TextSize = theme.Color(theme.ColorNameForeground), theme.TextSize()
	s.name.Refresh()
	s.track.Refresh()
	s.number.Refresh()
	if size := s.Size(); size.Width > 0 {
		r.Layout(size)
	}
}

func (r *slideRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.s.name, r.s.track, r.s.number}
}

func (r *slideRenderer) Destroy() {}
