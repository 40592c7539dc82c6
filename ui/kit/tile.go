package kit

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/draw"
)

// A Tile is an answer that can be chosen: what is asked, the answer large, and
// a word on it. The chosen one of a row has a heavy border and a bar at its
// left. Space and Enter choose, as a tap does.
type Tile struct {
	widget.BaseWidget
	attention

	OnTapped func()

	view   TileView
	chosen bool
}

// TileView is what a tile says.
type TileView struct {
	Title string
	Value string
	Foot  string // up to two lines
}

var (
	_ fyne.Tappable      = (*Tile)(nil)
	_ fyne.Focusable     = (*Tile)(nil)
	_ desktop.Hoverable  = (*Tile)(nil)
	_ desktop.Cursorable = (*Tile)(nil)
)

// NewTile returns a tile that calls tapped, which may be nil.
func NewTile(tapped func()) *Tile {
	t := &Tile{OnTapped: tapped}
	t.refresh = t.Refresh
	t.ExtendBaseWidget(t)
	return t
}

// ShowTile puts v on the tile, marked as the chosen one or not.
func (t *Tile) ShowTile(v TileView, chosen bool) {
	if v != t.view || chosen != t.chosen {
		t.view, t.chosen = v, chosen
		t.Refresh()
	}
}

// View returns what the tile says, and whether it is the chosen one.
func (t *Tile) View() (v TileView, chosen bool) { return t.view, t.chosen }

// Tapped chooses the tile.
func (t *Tile) Tapped(*fyne.PointEvent) {
	if t.OnTapped != nil {
		mishap.Do(func() { t.OnTapped() })
	}
}

// TypedKey chooses the tile by Space or Enter.
func (t *Tile) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeySpace, fyne.KeyReturn, fyne.KeyEnter:
		t.Tapped(nil)
	}
}

// Cursor implements desktop.Cursorable.
func (t *Tile) Cursor() desktop.Cursor { return desktop.PointerCursor }

// How much larger the answer is than the text, and how many lines the foot has.
const (
	tileValue = 1.4
	tileFoot  = 2
)

// CreateRenderer implements fyne.Widget.
func (t *Tile) CreateRenderer() fyne.WidgetRenderer {
	t.ExtendBaseWidget(t)
	return newSketch(func() fyne.Size {
		line := theme.CaptionTextSize() * 1.35
		return fyne.NewSize(8.4*theme.TextSize(), (1+tileFoot)*line+theme.TextSize()*tileValue*1.4+4*theme.Padding())
	}, t.layOut)
}

func (t *Tile) layOut(d *draw.List, w, h float64) {
	s := plotStyle()
	pad := float64(theme.Padding())
	box := draw.Rect{X0: 1.5, Y0: 1.5, X1: w - 1.5, Y1: h - 1.5}
	fill := func(c draw.Colour) { d.RoundBox(box, 7); d.EndFill(c) }
	fill(colour(theme.ColorNameInputBackground))
	if t.hovered {
		fill(colour(theme.ColorNameHover))
	}
	border := draw.Stroke{Width: 1, Colour: colour(theme.ColorNameInputBorder)}
	if t.chosen {
		border = draw.Stroke{Width: 2.4, Colour: colour(theme.ColorNamePrimary)}
	}
	d.RoundBox(box, 7)
	d.EndStroke(border)
	if t.chosen {
		d.Box(draw.Rect{X0: 1.5, Y0: 9, X1: 6, Y1: h - 9}, border.Colour)
	}
	if t.focused {
		d.RoundBox(draw.Rect{X0: 4, Y0: 4, X1: w - 4, Y1: h - 4}, 5)
		d.EndStroke(draw.Stroke{Width: 3, Colour: colour(theme.ColorNameFocus)})
	}
	left, room := 3*pad, w-6.5*pad
	line := s.Text * 1.35
	y := 2*pad + line/2
	title := draw.Sans
	if t.chosen {
		title = draw.SansBold
	}
	d.Write(draw.Text{At: draw.Point{X: left, Y: y}, S: t.view.Title, Size: narrowed(t.view.Title, s.Text, room, t.chosen), Face: title, Colour: s.Ink})
	big := float64(theme.TextSize()) * tileValue
	y += line/2 + big*.7
	d.Write(draw.Text{At: draw.Point{X: left, Y: y}, S: t.view.Value, Size: narrowed(t.view.Value, big, room, true), Face: draw.SansBold, Colour: s.Ink})
	y += big*.7 + line/2
	small, parts := fitted(t.view.Foot, room, s.Text)
	pitch := line * min(1, tileFoot/float64(len(parts)))
	y -= (line - pitch) / 2
	for _, part := range parts {
		d.Write(draw.Text{At: draw.Point{X: left, Y: y}, S: part, Size: small, Colour: s.Muted})
		y += pitch
	}
}

// narrowed is the size of a line that is written smaller rather than cut where it has no room.
func narrowed(text string, size, room float64, bold bool) float64 {
	if need := float64(fyne.MeasureText(text, float32(size), fyne.TextStyle{Bold: bold}).Width); need > room {
		return size * room / need
	}
	return size
}

// fitted breaks text into lines of the given width, smaller than size only as far as they
// need it: once it is smaller, more goes on a line, and then a line more has room.
func fitted(text string, width, size float64) (small float64, lines []string) {
	for small = size; ; small *= .98 {
		lines = wrapped(text, width, small, int(tileFoot*size/small))
		if !slices.ContainsFunc(lines, func(line string) bool { return measure(line, small) > width }) || small < size/4 {
			return small, lines
		}
	}
}

// wrapped breaks text at spaces into at most so many lines of the given width; what is left
// over goes on the last.
func wrapped(text string, width, size float64, most int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && len(lines) < most-1 && measure(longer, size) > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	return append(lines, line)
}
