package kit

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
)

func TestTheWheelScrollsAFormOverAFieldToo(t *testing.T) {
	test.NewTempApp(t)
	field := widget.NewEntry()
	wide := container.NewHScroll(canvas.NewText("a table, wider than its column: 1 2 3 4 5 6 7 8 9", nil))
	form := container.NewVBox(field, wide)
	tapped := 0
	form.Add(widget.NewButton("press", func() { tapped++ }))
	for range 20 {
		form.Add(container.New(layout.NewFormLayout(), widget.NewLabel("grams"), widget.NewEntry()))
	}
	s := NewRoll(form)
	w := test.NewTempWindow(t, s)
	w.Resize(fyne.NewSize(200, 200))
	over := func(o fyne.CanvasObject) fyne.Position {
		return fyne.CurrentApp().Driver().AbsolutePositionForObject(o).AddXY(10, o.Size().Height/2)
	}
	turn := func(o fyne.CanvasObject, dx, dy float32) {
		if dy != 0 {
			test.Scroll(w.Canvas(), over(o), dx, dy)
			return
		}
		// The toolkit's test says of no turn where in the window it is.
		e := &fyne.ScrollEvent{Scrolled: fyne.NewDelta(dx, dy)}
		e.AbsolutePosition = over(o)
		s.Content.(*fyne.Container).Objects[1].(fyne.Scrollable).Scrolled(e)
	}

	turn(field, 0, -10)
	assert.EqualValues(t, 10, s.Offset.Y, "over a field")
	turn(wide, 0, -10)
	assert.EqualValues(t, 20, s.Offset.Y, "over a table")
	turn(wide, -15, 0)
	assert.EqualValues(t, 20, s.Offset.Y)
	assert.EqualValues(t, 15, wide.Offset.X, "to the side a table scrolls by itself")
	turn(form.Objects[2], 0, 20)
	assert.Zero(t, s.Offset.Y)
	turn(form.Objects[2], -15, 0)
	assert.EqualValues(t, 15, wide.Offset.X, "where nothing scrolls to the side nothing does")

	test.TapCanvas(w.Canvas(), over(form.Objects[2]))
	assert.Equal(t, 1, tapped, "a hand still reaches what is under the wheel")
}
