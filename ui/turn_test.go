package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
)

// TestTurningLeavesTheBenchBehind: neither its hint nor its keys go on where it
// cannot be seen.
func TestTurningLeavesTheBenchBehind(t *testing.T) {
	b := newBed(t)
	b.win.Canvas().Focus(b.bench.rail)
	b.frame()
	assert.Contains(t, b.status.Text, "Drag the handle")
	b.turnTo(0)
	b.frame()
	assert.Empty(t, b.status.Text)
	assert.Nil(t, b.win.Canvas().Focused())

	b.turnTo(-1)
	for _, o := range test.LaidOutObjects(b.bench.object) {
		if h, ok := o.(desktop.Hoverable); ok && !strings.Contains(b.status.Text, "The foam's share") {
			h.MouseIn(&desktop.MouseEvent{})
		}
	}
	assert.Contains(t, b.status.Text, "The foam's share")
	b.turnTo(0)
	assert.Empty(t, b.status.Text)

	b.win.Canvas().Focus(b.nav[2])
	b.turnTo(1)
	assert.Equal(t, fyne.Focusable(b.nav[2]), b.win.Canvas().Focused(), "one goes on from the button that was pressed")
}
