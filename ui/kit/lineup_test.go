package kit

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/say"
)

// ends are where the columns of a table end, by their heads' texts; names by where they
// begin.
func ends(f *Figures) map[string]float32 {
	at := map[string]float32{}
	for _, o := range test.WidgetRenderer(f).Objects() {
		t := o.(*canvas.Text)
		x := t.Position().X
		if t.Alignment == fyne.TextAlignTrailing {
			x += t.Size().Width
		}
		at[t.Text] = x
	}
	return at
}

func TestTablesOfOneFormHaveTheirColumnsUnderEachOther(t *testing.T) {
	test.NewTempApp(t)
	a, b := NewFigures("one", "two"), NewFigures("one", "two")
	a.ShowFigures([]say.TableRow{{Name: "a", Cells: []string{"1", "twelve hundred"}, Unit: "g"}})
	b.ShowFigures([]say.TableRow{{Name: "a", Cells: []string{"1", "2"}, Unit: "gallons"}})
	both := func() (map[string]float32, map[string]float32) {
		a.Resize(fyne.NewSize(500, 60))
		b.Resize(fyne.NewSize(500, 60))
		return ends(a), ends(b)
	}
	x, y := both()
	assert.NotEqual(t, x["one"], y["one"], "else this tells nothing")
	Line(a, b)
	x, y = both()
	assert.Equal(t, x["one"], y["one"])
	assert.Equal(t, x["two"], y["two"])
	b.ShowFigures([]say.TableRow{{Name: "a", Cells: []string{"1", "2"}, Unit: "g"}})
	a.ShowFigures([]say.TableRow{{Name: "a", Cells: []string{"1", "2"}, Unit: "g"}})
	Line(a, b)
	narrow, _ := both()
	assert.Greater(t, narrow["one"], x["one"], "room that nothing needs any more is given back")
}

func TestATableBeginsWhereLabelsDoAndIsNotSpreadOverAWideWindow(t *testing.T) {
	test.NewTempApp(t)
	f := NewFigures("value")
	f.ShowFigures([]say.TableRow{{Name: "name", Cells: []string{"1"}}})
	w := test.NewTempWindow(t, f)
	w.Resize(fyne.NewSize(1900, 400))
	at := ends(f)
	assert.Equal(t, theme.InnerPadding(), at["name"], "as a label pads its text")
	assert.Less(t, at["value"], float32(700))
}

func TestFieldsUnderEachOtherAreOfOneWidthWhateverTheirUnits(t *testing.T) {
	test.NewTempApp(t)
	long, short := NewNumberField("W/(m² K)", 0, 200, 1), NewNumberField("h", 0, 24, 0)
	widths := func() (float32, float32) {
		long.Resize(fyne.NewSize(300, 40))
		short.Resize(fyne.NewSize(300, 40))
		test.WidgetRenderer(long).Layout(long.Size())
		test.WidgetRenderer(short).Layout(short.Size())
		return long.entry.Size().Width, short.entry.Size().Width
	}
	a, b := widths()
	assert.NotEqual(t, a, b)
	LineUp(long, short)
	a, b = widths()
	assert.Equal(t, a, b)
}

// Whatever the order in which answers are told, Escape's stands first and Return's last.
func TestTheAnswersOfEveryQuestionStandInOneOrder(t *testing.T) {
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(600, 400))
	Ask(w, "Sure?", widget.NewLabel(""), Answer{Name: "Do", Role: ByReturn}, Answer{Name: "Else", Role: ByHand}, Answer{Name: "Leave", Role: ByEscape})
	var names []string
	within(w.Canvas().Overlays().Top(), func(o fyne.CanvasObject) {
		if b, ok := o.(*Button); ok {
			names = append(names, b.Text)
		}
	})
	assert.Equal(t, []string{"Leave", "Else", "Do"}, names)
}

// larger is the toolkit's look with text of another size.
type larger struct {
	fyne.Theme
	text float32
}

func (l larger) Size(n fyne.ThemeSizeName) float32 {
	if n == theme.SizeNameText {
		return l.text
	}
	return l.Theme.Size(n)
}

func TestRowsOfOneColumnGrowWithTheTextTogether(t *testing.T) {
	app := test.NewTempApp(t)
	a, b := NewSlide("foam", "%", 0, 100, 1, 0), NewSlide("tubs", "", 0, 100, 1, 0)
	AlignSlides(a, b)
	w := test.NewTempWindow(t, container.NewVBox(a, b))
	w.Resize(fyne.NewSize(400, 200))
	for _, text := range []float32{21, 14} {
		app.Settings().SetTheme(larger{theme.DefaultTheme(), text})
		assert.Equal(t, a.number.entry.MinSize().Height, a.MinSize().Height)
		assert.Equal(t, a.MinSize().Height, b.MinSize().Height, "b's width is asked for while a is shown in the new size")
	}
}
