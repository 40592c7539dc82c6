package kit

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/say"
)

// Lines is a fixed number of lines of text that change often: where a label of
// the toolkit lays its whole paragraph out again, only the line that differs is
// measured and drawn. A line too long for the width ends in an ellipsis.
type Lines struct {
	widget.BaseWidget

	align fyne.TextAlign
	size  fyne.ThemeSizeName
	style fyne.TextStyle
	full  []string
	brief []string // instead of a line of full that has no room; "" for none
	lines []*canvas.Text
}

// NewLines returns n empty lines.
func NewLines(n int, align fyne.TextAlign, size fyne.ThemeSizeName, style fyne.TextStyle) *Lines {
	l := &Lines{align: align, size: size, style: style, full: make([]string, n), brief: make([]string, n)}
	for range n {
		t := canvas.NewText("", theme.Color(theme.ColorNameForeground))
		t.Alignment, t.TextStyle = align, style
		l.lines = append(l.lines, t)
	}
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
	for i := range l.full {
		if s, b := of(given, i), of(short, i); s != l.full[i] || b != l.brief[i] {
			l.full[i], l.brief[i] = s, b
			l.write(i, l.Size().Width)
		}
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

// write puts line i in its place, cut to the width.
func (l *Lines) write(i int, width float32) {
	t := l.lines[i]
	inset := theme.InnerPadding()
	t.TextSize, t.Color = theme.Size(l.size), theme.Color(theme.ColorNameForeground)
	whole := Shown(l.full[i])
	t.Text = Shortened(whole, width-2*inset, t.TextSize, l.style)
	if b := l.brief[i]; t.Text != whole && b != "" {
		t.Text = Shortened(Shown(b), width-2*inset, t.TextSize, l.style)
	}
	line := l.height()
	t.Move(fyne.NewPos(inset, float32(i)*line))
	t.Resize(fyne.NewSize(fyne.Max(0, width-2*inset), line))
	t.Refresh()
}

func (l *Lines) height() float32 {
	return fyne.MeasureText("M", theme.Size(l.size), l.style).Height
}

// Shortened returns s, shortened to the width if it has to be.
func Shortened(s string, width, size float32, style fyne.TextStyle) string {
	fits := func(s string) bool { return fyne.MeasureText(s, size, style).Width <= width }
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
	r := &linesRenderer{l: l}
	for _, t := range l.lines {
		r.objects = append(r.objects, t)
	}
	return r
}

type linesRenderer struct {
	l       *Lines
	objects []fyne.CanvasObject
}

func (r *linesRenderer) Layout(size fyne.Size) {
	for i := range r.l.lines {
		r.l.write(i, size.Width)
	}
}

func (r *linesRenderer) MinSize() fyne.Size {
	return fyne.NewSize(6*theme.Size(r.l.size), float32(len(r.l.lines))*r.l.height())
}

func (r *linesRenderer) Refresh() { r.Layout(r.l.Size()) }

func (r *linesRenderer) Objects() []fyne.CanvasObject { return r.objects }

func (r *linesRenderer) Destroy() {}
