package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
)

// The sizes of what is read from a step away and pressed by a wet knuckle.
const (
	SizeNameStep  fyne.ThemeSizeName = "ripplewrightStep"  // running text
	SizeNameTimer fyne.ThemeSizeName = "ripplewrightTimer" // a clock, a title
)

// A Pad is a large button. With the keyboard, Space and Return press it, and
// what it does not know is OnKey's.
type Pad struct {
	widget.BaseWidget
	attention
	Strong   bool // the one that is pressed most
	OnTapped func()
	OnKey    func(*fyne.KeyEvent)

	text string
	off  bool
}

var (
	_ fyne.Tappable     = (*Pad)(nil)
	_ fyne.Focusable    = (*Pad)(nil)
	_ desktop.Hoverable = (*Pad)(nil)
)

// NewPad returns a pad that does press.
func NewPad(text string, press func()) *Pad {
	p := &Pad{text: text, OnTapped: press}
	p.refresh = p.Refresh
	p.ExtendBaseWidget(p)
	return p
}

// Text is what the pad says.
func (p *Pad) Text() string { return p.text }

// ShowPad puts a text on the pad, and says whether it can be pressed.
func (p *Pad) ShowPad(text string, on bool) {
	if p.text != text || p.off == on {
		p.text, p.off = text, !on
		p.Refresh()
	}
}

// Disabled reports whether the pad cannot be pressed.
func (p *Pad) Disabled() bool { return p.off }

// Tapped implements fyne.Tappable.
func (p *Pad) Tapped(*fyne.PointEvent) {
	if !p.off && p.OnTapped != nil {
		mishap.Do(p.OnTapped)
	}
}

// TypedKey implements fyne.Focusable.
func (p *Pad) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		p.Tapped(nil)
	default:
		if p.OnKey != nil {
			mishap.Do(func() { p.OnKey(e) })
		}
	}
}

// CreateRenderer implements fyne.Widget.
func (p *Pad) CreateRenderer() fyne.WidgetRenderer {
	p.ExtendBaseWidget(p)
	r := &padRenderer{p: p, ground: canvas.NewRectangle(color.Transparent), over: canvas.NewRectangle(color.Transparent), text: canvas.NewText("", color.Black)}
	r.text.Alignment = fyne.TextAlignCenter
	r.text.TextStyle.Bold = true
	r.Refresh()
	return r
}

type padRenderer struct {
	p            *Pad
	ground, over *canvas.Rectangle
	text         *canvas.Text
}

func (r *padRenderer) Layout(size fyne.Size) {
	r.ground.Resize(size)
	r.over.Resize(size)
	h := r.text.MinSize().Height
	r.text.Move(fyne.NewPos(0, (size.Height-h)/2))
	r.text.Resize(fyne.NewSize(size.Width, h))
}

func (r *padRenderer) MinSize() fyne.Size {
	t := theme.TextSize()
	s := fyne.MeasureText(r.p.text, theme.Size(theme.SizeNameSubHeadingText), fyne.TextStyle{Bold: true})
	return fyne.NewSize(s.Width+3.6*t, s.Height+1.4*t)
}

func (r *padRenderer) Refresh() {
	p := r.p
	fill, ink := theme.ColorNameButton, theme.ColorNameForeground
	switch {
	case p.off:
		fill, ink = theme.ColorNameDisabledButton, theme.ColorNameDisabled
	case p.Strong:
		fill, ink = theme.ColorNamePrimary, theme.ColorNameForegroundOnPrimary
	}
	r.ground.FillColor = theme.Color(fill)
	r.ground.CornerRadius = 2 * theme.Size(theme.SizeNameInputRadius)
	r.over.CornerRadius = r.ground.CornerRadius
	r.over.FillColor, r.over.StrokeWidth = color.Transparent, 0
	if p.hovered && !p.off {
		r.over.FillColor = theme.Color(theme.ColorNameHover)
	}
	if p.focused { // by a frame, which stands out on either ground
		r.over.StrokeColor, r.over.StrokeWidth = theme.Color(theme.ColorNameForeground), 3
	}
	r.text.Text, r.text.TextSize, r.text.Color = p.text, theme.Size(theme.SizeNameSubHeadingText), theme.Color(ink)
	r.Layout(p.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *padRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.over, r.text}
}

func (r *padRenderer) Destroy() {}
