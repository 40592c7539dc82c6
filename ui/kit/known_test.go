package kit

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
)

func TestEveryOneIsWhatCanBeSeenInADividedRoomToo(t *testing.T) {
	test.NewTempApp(t)
	left, right, below, hidden := NewTextField(), NewTextField(), widget.NewLabel("below"), NewTextField()
	hidden.Hide()
	room := container.NewVBox(container.NewHSplit(container.NewVScroll(container.NewPadded(left)), container.NewStack(right, hidden)), below)
	seen := map[fyne.CanvasObject]int{}
	everyOne(room, func(o fyne.CanvasObject) { seen[o]++ })
	for _, o := range []fyne.CanvasObject{left, right, below, room} {
		assert.Equal(t, 1, seen[o])
	}
	assert.Zero(t, seen[hidden])
}
