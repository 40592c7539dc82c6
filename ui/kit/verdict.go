package kit

import (
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/draw"
)

// A Weight is how much a verdict matters. Each has a shape of its own.
type Weight int

// The severities, and their shapes.
const (
	Good    Weight = iota // a disc with a tick
	Note                  // a square with a dot and a bar
	Caution               // a triangle with an exclamation mark
	Wrong                 // an octagon with a cross
)

// A VerdictView is one judgement in words.
type VerdictView struct {
	Severity   Weight
	Word       string // one or two words
	Sentence   string // why, plainly
	Suggestion string // the one change most worth making; may be empty
}

// A VerdictStrip is a strip with an icon, a word, a sentence and under it a
// suggestion, without which the sentence has both lines. The strip always has room for two lines, so that
// the window stands still while words change; what is longer ends in an ellipsis.
type VerdictStrip struct {
	widget.BaseWidget

	view  VerdictView
	icon  *badge
	word  *canvas.Text
	lines [2]*canvas.Text
}

// NewVerdictStrip returns an empty strip.
func NewVerdictStrip() *VerdictStrip {
	v := &VerdictStrip{
		icon: newBadge(),
		word: canvas.NewText("", theme.Color(theme.ColorNameForeground)),
	}
	for i := range v.lines {
		v.lines[i] = canvas.NewText("", theme.Color(theme.ColorNameForeground))
	}
	v.word.TextStyle.Bold = true
	v.ExtendBaseWidget(v)
	return v
}

// ShowVerdict puts view on screen.
func (v *VerdictStrip) ShowVerdict(view VerdictView) {
	if view == v.view {
		return
	}
	old := v.view
	v.view = view
	if view.Severity != old.Severity {
		v.icon.severity = view.Severity
		v.icon.Refresh()
	}
	v.Refresh()
}

// CreateRenderer implements fyne.Widget.
func (v *VerdictStrip) CreateRenderer() fyne.WidgetRenderer {
	v.ExtendBaseWidget(v)
	r := &verdictRenderer{v}
	r.Refresh()
	return r
}

type verdictRenderer struct{ v *VerdictStrip }

func (r *verdictRenderer) Layout(size fyne.Size) {
	v, gap := r.v, theme.Padding()
	centre := func(o fyne.CanvasObject, x, w, h float32) {
		o.Resize(fyne.NewSize(w, h))
		o.Move(fyne.NewPos(x, (size.Height-h)/2))
	}
	icon := v.icon.MinSize()
	centre(v.icon, gap, icon.Width, icon.Height)
	x := 2*gap + icon.Width
	word := v.word.MinSize()
	centre(v.word, x, word.Width, word.Height)
	x += word.Width + 3*gap
	width := size.Width - x - 2*gap
	first, second := v.view.Sentence, v.view.Suggestion
	v.lines[1].TextStyle.Italic = second != ""
	if second == "" {
		first, second = twoLines(first, width)
	}
	first = Shortened(first, width, theme.TextSize(), v.lines[0].TextStyle)
	second = Shortened(second, width, theme.TextSize(), v.lines[1].TextStyle)
	line := v.lines[0].MinSize().Height
	y := (size.Height - line) / 2
	if second != "" {
		y = size.Height/2 - line
	}
	for i, s := range []string{first, second} {
		t := v.lines[i]
		if s = Shown(s); t.Text != s {
			t.Text = s
			t.Refresh()
		}
		t.Move(fyne.NewPos(x, y+float32(i)*line))
		t.Resize(t.MinSize())
	}
}

// twoLines breaks s between words, so that the first line fits a width.
func twoLines(s string, width float32) (first, second string) {
	fits := func(s string) bool {
		return fyne.MeasureText(s, theme.TextSize(), fyne.TextStyle{}).Width <= width
	}
	if fits(s) {
		return s, ""
	}
	words := strings.Fields(s)
	n := 1
	for n < len(words) && fits(strings.Join(words[:n+1], " ")) {
		n++
	}
	n = min(n, len(words))
	return strings.Join(words[:n], " "), strings.Join(words[n:], " ")
}

func (r *verdictRenderer) MinSize() fyne.Size {
	v, gap := r.v, theme.Padding()
	line := fyne.MeasureText("M", theme.TextSize(), fyne.TextStyle{}).Height
	h := fyne.Max(v.icon.MinSize().Height, 2*line) + gap
	return fyne.NewSize(v.icon.MinSize().Width+v.word.MinSize().Width+20*theme.TextSize(), h)
}

func (r *verdictRenderer) Refresh() {
	v := r.v
	v.word.Text, v.word.TextSize, v.word.Color = v.view.Word, theme.TextSize()*1.15, theme.Color(theme.ColorNameForeground)
	v.word.Refresh()
	for _, t := range v.lines {
		t.TextSize, t.Color = theme.TextSize(), theme.Color(theme.ColorNameForeground)
		t.Refresh()
	}
	if s := v.Size(); s.Width > 0 {
		r.Layout(s)
	}
	v.icon.Refresh()
	canvas.Refresh(v)
}

func (r *verdictRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.v.icon, r.v.word, r.v.lines[0], r.v.lines[1]}
}

func (r *verdictRenderer) Destroy() {}

// A badge is the shape of a severity.
type badge struct {
	widget.BaseWidget
	severity Weight
}

func newBadge() *badge {
	b := &badge{}
	b.ExtendBaseWidget(b)
	return b
}

func (b *badge) CreateRenderer() fyne.WidgetRenderer {
	return newSketch(func() fyne.Size {
		return fyne.NewSquareSize(theme.TextSize() * 1.8)
	}, b.layOut)
}

func (b *badge) layOut(d *draw.List, w, h float64) {
	x, y, r := w/2, h/2, math.Min(w, h)/2-1
	on := func(name fyne.ThemeColorName) draw.Stroke { return draw.Stroke{Width: r * .24, Colour: colour(name)} }
	switch b.severity {
	case Good:
		d.Arc(x, y, r, r, 0, 2*math.Pi)
		d.EndFill(colour(theme.ColorNameSuccess))
		d.To(x-.45*r, y+.02*r)
		d.To(x-.1*r, y+.38*r)
		d.To(x+.5*r, y-.36*r)
		d.EndStroke(on(theme.ColorNameForegroundOnSuccess))
	case Note:
		d.RoundBox(draw.Rect{X0: x - .9*r, Y0: y - .9*r, X1: x + .9*r, Y1: y + .9*r}, .3*r)
		d.EndFill(colour(theme.ColorNamePrimary))
		d.Segment(on(theme.ColorNameForegroundOnPrimary), x, y-.05*r, x, y+.5*r)
		d.Segment(on(theme.ColorNameForegroundOnPrimary), x, y-.48*r, x, y-.46*r)
	case Caution:
		d.To(x, y-r)
		d.To(x+r, y+.85*r)
		d.To(x-r, y+.85*r)
		d.EndFill(colour(theme.ColorNameWarning))
		d.Segment(on(theme.ColorNameForegroundOnWarning), x, y-.35*r, x, y+.2*r)
		d.Segment(on(theme.ColorNameForegroundOnWarning), x, y+.57*r, x, y+.59*r)
	default:
		for i := 0; i < 8; i++ {
			s, c := math.Sincos(math.Pi/8 + float64(i)*math.Pi/4)
			d.To(x+r*c, y+r*s)
		}
		d.EndFill(colour(theme.ColorNameError))
		d.Marker(draw.Cross, x, y, .55*r, on(theme.ColorNameForegroundOnError))
	}
}
