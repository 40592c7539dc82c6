package kit

import (
	"math"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
)

// A Plot is a chart.Plot on screen, with a reading line that follows the mouse
// or, with the focus, the arrow keys.
type Plot struct {
	widget.BaseWidget

	// OnRead is told, in words, what the curves are at the reading line, and ""
	// when it goes.
	OnRead func(text string)

	// Words, which may be nil, says what is at x, instead of the curves' values.
	Words func(x float64) string

	// OnPick, which may be nil, is told where the plot is pressed, in the values of
	// its axes; with Return it is the reading line, and y is NaN.
	OnPick func(x, y float64)

	// OnFocus is told when the keyboard comes to the plot.
	OnFocus func()

	// Colours are the theme's for the series, by their place; "" and those beyond
	// the end keep their own.
	Colours []fyne.ThemeColorName

	// The decimals of a reading.
	XDecimals, YDecimals int

	plot    chart.Plot
	frame   chart.Frame
	at      float64 // the reading line; NaN for none
	focused bool
	shift   bool
}

var (
	_ fyne.Focusable    = (*Plot)(nil)
	_ fyne.Tappable     = (*Plot)(nil)
	_ desktop.Hoverable = (*Plot)(nil)
	_ desktop.Keyable   = (*Plot)(nil)
)

// NewPlot returns an empty plot.
func NewPlot() *Plot {
	p := &Plot{at: math.NaN(), YDecimals: 1, XDecimals: 1, plot: chart.Nothing()}
	p.ExtendBaseWidget(p)
	return p
}

// ShowPlot puts v on screen, in the theme's style, and calls nobody back. A
// series or rule without a colour gets the theme's foreground. The plot
// keeps the slices.
func (p *Plot) ShowPlot(v chart.Plot) {
	p.plot = v
	p.Refresh()
}

// Focusable is the plot itself.
func (p *Plot) Focusable() fyne.Focusable { return p }

// read moves the reading line and tells what is there.
func (p *Plot) read(x float64) {
	if x == p.at || math.IsNaN(x) && math.IsNaN(p.at) {
		return
	}
	p.at = x
	p.Refresh()
	if p.OnRead != nil {
		mishap.Do(func() { p.OnRead(p.Reading()) })
	}
}

// Reading says what the curves are at the reading line, "" without one.
func (p *Plot) Reading() string {
	if math.IsNaN(p.at) {
		return ""
	}
	if p.Words != nil {
		return p.Words(p.at)
	}
	reads := p.plot.Style.Reads
	parts := []string{p.plot.X.Title + " " + reads.Number(p.at, p.XDecimals)}
	for i := range p.plot.Series {
		s := &p.plot.Series[i]
		if s.Name != "" {
			parts = append(parts, s.Name+" "+reads.Number(interpolate(s.X, s.Y, p.at), p.YDecimals))
		}
	}
	return strings.TrimSpace(strings.Join(parts, "; "))
}

// MouseIn implements desktop.Hoverable.
func (p *Plot) MouseIn(e *desktop.MouseEvent) { p.MouseMoved(e) }

// MouseMoved puts the reading line under the mouse.
func (p *Plot) MouseMoved(e *desktop.MouseEvent) {
	x := float64(e.Position.X)
	if x < p.frame.Box.X0 || x > p.frame.Box.X1 {
		p.read(math.NaN())
		return
	}
	p.read(p.frame.X.Value(x))
}

// MouseOut takes the reading line away.
func (p *Plot) MouseOut() { p.read(math.NaN()) }

// Tapped takes the focus, so that the keys read on.
func (p *Plot) Tapped(e *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(p); c != nil {
		c.Focus(p)
	}
	x, y, box := float64(e.Position.X), float64(e.Position.Y), p.frame.Box
	if p.OnPick != nil && x >= box.X0 && x <= box.X1 && y >= box.Y0 && y <= box.Y1 {
		mishap.Do(func() { p.OnPick(p.frame.X.Value(x), p.frame.Y.Value(y)) })
	}
}

// TypedKey moves the reading line by a hundredth of the axis, with shift a tenth.
func (p *Plot) TypedKey(e *fyne.KeyEvent) {
	s := p.frame.X
	s.Lo, s.Hi = 0, 100
	at := s.Pos(p.at)
	if math.IsNaN(at) {
		at = 50
	}
	step := 1.0
	if p.shift {
		step = 10
	}
	switch e.Name {
	case fyne.KeyLeft:
		at -= step
	case fyne.KeyRight:
		at += step
	case fyne.KeyPageDown:
		at -= 10
	case fyne.KeyPageUp:
		at += 10
	case fyne.KeyHome:
		at = 0
	case fyne.KeyEnd:
		at = 100
	case fyne.KeyEscape:
		p.read(math.NaN())
		return
	case fyne.KeyReturn, fyne.KeyEnter:
		if p.OnPick != nil && !math.IsNaN(p.at) {
			mishap.Do(func() { p.OnPick(p.at, math.NaN()) })
		}
		return
	default:
		return
	}
	p.read(s.Value(math.Max(0, math.Min(100, at))))
}

// KeyDown implements desktop.Keyable.
func (p *Plot) KeyDown(e *fyne.KeyEvent) {
	p.shift = p.shift || e.Name == desktop.KeyShiftLeft || e.Name == desktop.KeyShiftRight
}

// KeyUp implements desktop.Keyable.
func (p *Plot) KeyUp(e *fyne.KeyEvent) {
	if e.Name == desktop.KeyShiftLeft || e.Name == desktop.KeyShiftRight {
		p.shift = false
	}
}

// TypedRune implements fyne.Focusable.
func (p *Plot) TypedRune(rune) {}

// FocusGained implements fyne.Focusable.
func (p *Plot) FocusGained() {
	p.focused = true
	p.Refresh()
	if p.OnFocus != nil {
		mishap.Do(func() { p.OnFocus() })
	}
}

// FocusLost implements fyne.Focusable.
func (p *Plot) FocusLost() {
	p.focused, p.shift = false, false
	p.read(math.NaN())
	p.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (p *Plot) CreateRenderer() fyne.WidgetRenderer {
	p.ExtendBaseWidget(p)
	return newSketch(func() fyne.Size {
		t := theme.CaptionTextSize()
		return fyne.NewSize(22*t, 14*t)
	}, p.layOut)
}

func (p *Plot) layOut(d *draw.List, w, h float64) {
	// What the theme fills in goes into copies: the theme may change, and the
	// slices are the caller's.
	plot := p.plot
	plot.Style = plotStyle()
	plot.Style.Reads = p.plot.Style.Reads
	ink := plot.Style.Ink
	plot.Series, plot.Rules = slices.Clone(plot.Series), slices.Clone(plot.Rules)
	for i := range plot.Series {
		if i < len(p.Colours) && p.Colours[i] != "" {
			plot.Series[i].Line.Colour = colour(p.Colours[i])
		}
		defaultColour(&plot.Series[i].Line, ink)
	}
	for i := range plot.Rules {
		defaultColour(&plot.Rules[i].Line, ink)
	}
	p.frame = plot.Draw(d, w, h)
	box := p.frame.Box
	if p.focused {
		d.Outline(draw.Rect{X0: 1.5, Y0: 1.5, X1: w - 1.5, Y1: h - 1.5}, draw.Stroke{Width: 2, Colour: colour(theme.ColorNamePrimary)})
	}
	if math.IsNaN(p.at) {
		return
	}
	x := p.frame.X.Pos(p.at)
	if !(x >= box.X0 && x <= box.X1) {
		return
	}
	d.Segment(draw.Stroke{Width: 1, Dash: draw.Dashed, Colour: ink}, x, box.Y0, x, box.Y1)
	for i := range plot.Series {
		s := &plot.Series[i]
		scale := p.frame.Y
		if s.Right {
			scale = p.frame.Right
		}
		if y := scale.Pos(interpolate(s.X, s.Y, p.at)); y >= box.Y0 && y <= box.Y1 {
			d.Marker(draw.Disc, x, y, 5, draw.Stroke{Colour: colour(theme.ColorNameBackground)})
			d.Marker(draw.Disc, x, y, 3.4, draw.Stroke{Colour: s.Line.Colour})
		}
	}
}

func defaultColour(l *draw.Stroke, c draw.Colour) {
	if l.Colour.A == 0 {
		l.Colour = c
	}
}
