package kit

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// Lines is a fixed number of lines of text that change often: where a label of
// the toolkit lays its whole paragraph out again, one picture is made of these.
// A line too long for the width ends in an ellipsis.
type Lines struct {
	widget.BaseWidget

	align fyne.TextAlign
	size  fyne.ThemeSizeName
	style fyne.TextStyle
	full  []string
	brief []string // instead of a line of full that has no room; "" for none
}

// NewLines returns n empty lines.
func NewLines(n int, align fyne.TextAlign, size fyne.ThemeSizeName, style fyne.TextStyle) *Lines {
	l := &Lines{align: align, size: size, style: style, full: make([]string, n), brief: make([]string, n)}
	l.ExtendBaseWidget(l)
	return l
}

// ShowText puts text on the lines, which it parts by line feeds.
func (l *Lines) ShowText(text string) { l.ShowTexts(text, "") }

// ShowTexts is ShowText with a brief wording, line by line, of what has no room.
func (l *Lines) ShowTexts(text, brief string) {
	given, short := strings.Split(text, "\n"), strings.Split(brief, "\n")
	of := func(all []string, i int) string {
		if i < len(all) {
			return all[i]
		}
		return ""
	}
	differs := false
	for i := range l.full {
		if s, b := of(given, i), of(short, i); s != l.full[i] || b != l.brief[i] {
			l.full[i], l.brief[i], differs = s, b, true
		}
	}
	if differs {
		l.Refresh()
	}
}

// SetText changes a label only where it differs: every change is drawn.
func SetText(l *widget.Label, text string) {
	if text = Shown(text); l.Text != text {
		l.SetText(text)
	}
}

// Shown is a text as a widget may show it: what a maker named may turn round the letters
// after it, or hold signs that are none.
func Shown(text string) string { return say.HarmlessPage(text) }

// Text is what the lines have been given, uncut.
func (l *Lines) Text() string { return strings.TrimRight(strings.Join(l.full, "\n"), "\n") }

// layOut writes the lines, each cut to the width.
func (l *Lines) layOut(d *draw.List, w, h float64) {
	t := draw.Text{Rise: draw.Below, Size: float64(theme.Size(l.size)), Colour: colour(theme.ColorNameForeground)}
	if l.style.Bold {
		t.Face = draw.SansBold
	}
	inset := float64(theme.InnerPadding())
	switch l.align {
	case fyne.TextAlignCenter:
		t.Align, t.At.X = draw.Centre, w/2
	case fyne.TextAlignTrailing:
		t.Align, t.At.X = draw.Right, w-inset
	default:
		t.At.X = inset
	}
	for i := range l.full {
		t.S, t.At.Y = l.shown(i, float32(w-2*inset)), float64(float32(i)*l.height())
		d.Write(t)
	}
}

// shown is what line i says in a width.
func (l *Lines) shown(i int, width float32) string {
	whole, size := Shown(l.full[i]), theme.Size(l.size)
	s := Shortened(whole, width, size, l.style)
	if b := l.brief[i]; s != whole && b != "" {
		return Shortened(Shown(b), width, size, l.style)
	}
	return s
}

func (l *Lines) height() float32 {
	return fyne.MeasureText("M", theme.Size(l.size), l.style).Height
}

// Shortened returns s, shortened to the width if it has to be.
func Shortened(s string, width, size float32, style fyne.TextStyle) string {
	fits := func(s string) bool { return widthOf(s, size, style) <= width }
	if width <= 0 || fits(s) {
		return s
	}
	r := []rune(s)
	lo, hi := 0, len(r)-1
	for lo < hi {
		if mid := (lo + hi + 1) / 2; fits(strings.TrimRight(string(r[:mid]), " ,(·") + "…") {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return strings.TrimRight(string(r[:lo]), " ,(·") + "…"
}

// CreateRenderer implements fyne.Widget.
func (l *Lines) CreateRenderer() fyne.WidgetRenderer {
	l.ExtendBaseWidget(l)
	return newSketch(func() fyne.Size {
		return fyne.NewSize(6*theme.Size(l.size), float32(len(l.full))*l.height())
	}, l.layOut).lettered()
}
