package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/say"
)

// Figures is a table of named figures with aligned columns: names at the left,
// values right-aligned under their heads, units at the right. An unknown value
// is an en dash. Only the texts that differ are drawn anew.
type Figures struct {
	widget.BaseWidget

	heads []string
	rows  []say.TableRow

	cells  []*canvas.Text // row by row: name, values, unit; the heads first
	widths []float32
	least  []float32 // of columns that stand under those of other tables
}

// NewFigures returns an empty table with the heads of its value columns.
func NewFigures(heads ...string) *Figures {
	f := &Figures{heads: heads}
	f.ExtendBaseWidget(f)
	return f
}

// ShowFigures puts rows on screen. The table keeps the slice and does not change it.
func (f *Figures) ShowFigures(rows []say.TableRow) {
	f.rows = rows
	if f.fill() {
		f.Refresh()
	}
}

// ShowTable is ShowFigures under other heads, which may be more or fewer.
func (f *Figures) ShowTable(heads []string, rows []say.TableRow) {
	if len(heads) != len(f.heads) {
		f.cells, f.widths, f.least = nil, nil, nil
	}
	f.heads = heads
	f.ShowFigures(rows)
}

// Line has the columns of tables of one form stand under each other, as they are shown now.
func Line(all ...*Figures) {
	var widest []float32
	for _, f := range all {
		f.least = nil
		f.Refresh()
		for c, w := range f.widths {
			if c == len(widest) {
				widest = append(widest, 0)
			}
			widest[c] = fyne.Max(widest[c], w)
		}
	}
	for _, f := range all {
		f.least = widest
		f.Refresh()
	}
}

// Texts are all that the table says, head by head and row by row.
func (f *Figures) Texts() []string {
	var all []string
	for r := range len(f.rows) + 1 {
		for c := range f.columns() {
			all = append(all, f.text(r, c))
		}
	}
	return all
}

func (f *Figures) columns() int { return len(f.heads) + 2 }

// text is what stands in row r (0 is the heads) and column c.
func (f *Figures) text(r, c int) string {
	last := c == f.columns()-1
	if r == 0 {
		if c == 0 || last {
			return ""
		}
		return f.heads[c-1]
	}
	row := &f.rows[r-1]
	switch {
	case c == 0:
		return row.Name
	case last:
		return row.Unit
	case c-1 >= len(row.Cells) || row.Cells[c-1] == "":
		return "–"
	}
	return row.Cells[c-1]
}

// fill brings the texts up to date, and reports whether the table changed its shape.
func (f *Figures) fill() bool {
	n := (len(f.rows) + 1) * f.columns()
	reshaped := n != len(f.cells)
	for len(f.cells) < n {
		f.cells = append(f.cells, canvas.NewText("", theme.Color(theme.ColorNameForeground)))
	}
	f.cells = f.cells[:n]
	for i, t := range f.cells {
		r, c := i/f.columns(), i%f.columns()
		s := Shown(f.text(r, c))
		if s == t.Text && !reshaped {
			continue
		}
		wider := true
		t.Text = s
		t.Alignment = fyne.TextAlignTrailing
		if c == 0 || c == f.columns()-1 {
			t.Alignment = fyne.TextAlignLeading
		}
		if f.widths != nil && !reshaped {
			wider = t.MinSize().Width > f.widths[c]
		}
		reshaped = reshaped || wider
		if !reshaped {
			t.Refresh()
		}
	}
	return reshaped
}

// CreateRenderer implements fyne.Widget.
func (f *Figures) CreateRenderer() fyne.WidgetRenderer {
	f.ExtendBaseWidget(f)
	r := &figuresRenderer{f: f}
	r.Refresh()
	return r
}

type figuresRenderer struct {
	f       *Figures
	objects []fyne.CanvasObject
}

func (r *figuresRenderer) lineHeight() float32 {
	return fyne.MeasureText("M", theme.TextSize(), fyne.TextStyle{}).Height + theme.Padding()*.5
}

func (r *figuresRenderer) gap() float32 { return 3 * theme.Padding() }

// inset is where labels begin their text, and so the names.
func (r *figuresRenderer) inset() float32 { return theme.InnerPadding() }

// broad is as wide as a table reads well, in letters: beyond it an eye loses the line from
// the name to its values. Ours to choose.
const broad = 46

func (r *figuresRenderer) Layout(size fyne.Size) {
	f := r.f
	n, line := f.columns(), r.lineHeight()
	need := float32(0)
	for _, w := range f.widths {
		need += w
	}
	need += float32(n-1)*r.gap() + r.inset()
	extra := fyne.Max(0, fyne.Min(size.Width, broad*theme.TextSize())-need) // the names get what is over
	for i, t := range f.cells {
		row, c := i/n, i%n
		x := r.inset()
		for k := 0; k < c; k++ {
			x += f.widths[k] + r.gap()
		}
		if c > 0 {
			x += extra
		}
		if c == n-1 {
			x -= r.gap() - theme.Padding()
		}
		t.Move(fyne.NewPos(x, float32(row)*line))
		t.Resize(fyne.NewSize(f.widths[c], t.MinSize().Height))
	}
}

func (r *figuresRenderer) MinSize() fyne.Size {
	f := r.f
	w := float32(len(f.widths)-1)*r.gap() + r.inset()
	for _, c := range f.widths {
		w += c
	}
	return fyne.NewSize(w, float32(len(f.rows)+1)*r.lineHeight())
}

func (r *figuresRenderer) Refresh() {
	f := r.f
	f.fill()
	n := f.columns()
	f.widths = make([]float32, n)
	copy(f.widths, f.least)
	r.objects = r.objects[:0]
	for i, t := range f.cells {
		c := i % n
		t.TextSize = theme.TextSize()
		t.Color = theme.Color(theme.ColorNameForeground)
		t.TextStyle.Bold = i < n
		if c == n-1 {
			t.Color = theme.Color(theme.ColorNamePlaceHolder)
		}
		f.widths[c] = fyne.Max(f.widths[c], t.MinSize().Width)
		if t.Text != "" { // an empty text would cost as much as a full one
			r.objects = append(r.objects, t)
		}
		t.Refresh()
	}
	if s := f.Size(); s.Width > 0 {
		r.Layout(s)
	}
}

func (r *figuresRenderer) Objects() []fyne.CanvasObject { return r.objects }

func (r *figuresRenderer) Destroy() {}
