package kit

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/draw"
)

// What does not fit below an answer is written a little smaller, both lines alike, and never
// as small as its last line alone would ask.
func TestATilesFootIsWrittenNoSmallerThanItNeeds(t *testing.T) {
	test.NewTempWindow(t, widget.NewLabel(""))
	for _, c := range []struct {
		foot  string
		least float64
	}{
		{"the tub scoops", 12},
		{"Schaum zieht es; Eis vergröbert so schnell wie bei −18 °C", 10},
		{"bis zum Einziehen; 2,9 h nach der Creme hineinstellen", 10},
		{"bis zum Einziehen; 2,9 h nach der Creme hineinstellen, zugedeckt und kalt", 7.5},
		{"Donaudampfschifffahrtsgesellschaftskapitän", 5},
	} {
		small, lines := fitted(c.foot, 155, 12)
		assert.LessOrEqual(t, float64(len(lines))*small, tileFoot*12., c.foot)
		assert.GreaterOrEqual(t, small, c.least, c.foot)
		for _, line := range lines {
			assert.LessOrEqual(t, measure(line, small), 155., line)
		}
	}
}

// A name in a list to choose from is cut for nothing that stands beside it.
func TestANameInAListIsReadBeforeWhatStandsBesideIt(t *testing.T) {
	test.NewTempWindow(t, widget.NewLabel(""))
	row := newFinderRow().(*fyne.Container)
	title, side := row.Objects[0].(*widget.Label), row.Objects[1].(*canvas.Text)
	for _, width := range []float32{260, 420, 900} {
		row.Resize(fyne.NewSize(width, 36))
		showFinderRow(row, FinderItem{Title: "Gezuckerte Kondensmilch", Subtitle: "Sweetened condensed milk, whole, canned", Group: "Milchprodukte"})
		assert.GreaterOrEqual(t, title.Size().Width, fyne.MeasureText(title.Text, theme.TextSize(), fyne.TextStyle{}).Width+2*theme.InnerPadding())
		assert.LessOrEqual(t, title.Position().X+title.Size().Width, side.Position().X)
		assert.LessOrEqual(t, side.Position().X+side.MinSize().Width, width)
	}
	assert.Equal(t, "Sweetened condensed milk, whole, canned · Milchprodukte", side.Text)
}

// The title of the tile that is chosen is bold, and stays in the tile.
func TestATilesTitleStaysInTheTile(t *testing.T) {
	test.NewTempWindow(t, widget.NewLabel(""))
	const room = 100.
	title := "Freeze the custard"
	size := narrowed(title, 16, room, true)
	assert.Less(t, size, 16.)
	for _, bold := range []bool{false, true} {
		tile := NewTile(nil)
		tile.ShowTile(TileView{Title: title, Value: "2.9 h", Foot: "to swirl"}, bold)
		var d draw.List
		d.Reset(room, 90)
		tile.layOut(&d, room, 90)
		for _, x := range d.Texts {
			wide := fyne.MeasureText(x.S, float32(x.Size), fyne.TextStyle{Bold: x.Face == draw.SansBold}).Width
			assert.LessOrEqual(t, x.At.X+float64(wide), room, x.S)
		}
	}
}
