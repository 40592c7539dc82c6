package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
)

// OpenFigures is a table of which each line opens: by a tap, or by Return and Space
// where Up and Down have chosen it.
type OpenFigures struct {
	widget.BaseWidget
	table   *Figures
	OnOpen  func(row int)
	chosen  int
	focused bool
	mark    *canvas.Rectangle
}

var (
	_ fyne.Focusable     = (*OpenFigures)(nil)
	_ fyne.Tappable      = (*OpenFigures)(nil)
	_ desktop.Cursorable = (*OpenFigures)(nil)
)

// NewOpenFigures returns an empty table with the heads of its value columns.
func NewOpenFigures(open func(row int), heads ...string) *OpenFigures {
	o := &OpenFigures{table: NewFigures(heads...), OnOpen: open, mark: canvas.NewRectangle(theme.Color(theme.ColorNameSelection))}
	o.mark.Hide()
	o.ExtendBaseWidget(o)
	return o
}

// ShowFigures puts rows on screen, as Figures does; ShowTable under other heads.
func (o *OpenFigures) ShowFigures(rows []say.TableRow) { o.table.ShowFigures(rows) }
func (o *OpenFigures) ShowTable(heads []string, rows []say.TableRow) {
	o.table.ShowTable(heads, rows)
}

// line is the height of a line of the table.
func (o *OpenFigures) line() float32 { return (&figuresRenderer{f: o.table}).lineHeight() }

// Tapped implements fyne.Tappable.
func (o *OpenFigures) Tapped(e *fyne.PointEvent) {
	if row := int(e.Position.Y/o.line()) - 1; row >= 0 && row < len(o.table.rows) {
		o.chosen = row
		o.place()
		mishap.Do(func() { o.OnOpen(row) })
	}
}

// Cursor implements desktop.Cursorable.
func (o *OpenFigures) Cursor() desktop.Cursor { return desktop.PointerCursor }

// FocusGained implements fyne.Focusable.
func (o *OpenFigures) FocusGained() { o.focused = true; o.place() }

// FocusLost implements fyne.Focusable.
func (o *OpenFigures) FocusLost() { o.focused = false; o.place() }

// TypedRune implements fyne.Focusable.
func (o *OpenFigures) TypedRune(rune) {}

// TypedKey implements fyne.Focusable.
func (o *OpenFigures) TypedKey(e *fyne.KeyEvent) {
	switch last := len(o.table.rows) - 1; e.Name {
	case fyne.KeyUp:
		o.chosen = max(o.chosen-1, 0)
	case fyne.KeyDown:
		o.chosen = min(o.chosen+1, last)
	case fyne.KeyHome:
		o.chosen = 0
	case fyne.KeyEnd:
		o.chosen = last
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		if o.chosen >= 0 && o.chosen <= last {
			mishap.Do(func() { o.OnOpen(o.chosen) })
		}
	case fyne.KeyEscape:
		escape(o)
	}
	o.place()
}

// place puts the mark behind the line that is chosen.
func (o *OpenFigures) place() {
	o.mark.Hidden = !o.focused
	o.mark.FillColor = theme.Color(theme.ColorNameSelection)
	o.mark.Move(fyne.NewPos(0, float32(o.chosen+1)*o.line()))
	o.mark.Resize(fyne.NewSize(o.Size().Width, o.line()))
	o.mark.Refresh()
}

// MarkedAt is where the chosen line stands in the table, for what scrolls.
func (o *OpenFigures) MarkedAt() fyne.CanvasObject { return o.mark }

// CreateRenderer implements fyne.Widget.
func (o *OpenFigures) CreateRenderer() fyne.WidgetRenderer {
	o.ExtendBaseWidget(o)
	return &openRenderer{o: o}
}

type openRenderer struct{ o *OpenFigures }

func (r *openRenderer) Layout(size fyne.Size) {
	r.o.table.Resize(size)
	r.o.place()
}
func (r *openRenderer) MinSize() fyne.Size { return r.o.table.MinSize() }
func (r *openRenderer) Refresh() {
	r.o.table.Refresh()
	r.o.place()
}
func (r *openRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.o.mark, r.o.table}
}
func (r *openRenderer) Destroy() {}
