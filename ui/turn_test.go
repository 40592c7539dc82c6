package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"

	"ripplewright/ui/page/pagetest"
	"ripplewright/ui/theme"
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

// TestTheRowOfPagesIsOneRow with the largest text on a small screen.
func TestTheRowOfPagesIsOneRow(t *testing.T) {
	b := newBed(t)
	b.App.Settings().SetTheme(theme.New(theme.Options{TextScale: 1.5}))
	b.win.Resize(fyne.NewSize(startWidth, 720))
	for _, n := range b.nav {
		assert.Equal(t, b.nav[0].Position().Y, n.Position().Y, n.Text)
	}
}

// TestAPageKnowsTheKeysThatNoWidgetHas: after a click beside everything, Space
// still leads on in the kitchen.
func TestAPageKnowsTheKeysThatNoWidgetHas(t *testing.T) {
	b := newBed(t)
	b.menu("View", "In the kitchen")
	assert.NotNil(t, b.win.Canvas().Focused())
	b.win.Canvas().Unfocus()
	b.looseKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	assert.Contains(t, pagetest.Texts(b.pages[b.current].Object()), "Step 2 of")
	b.menu("View", "Bench")
	b.looseKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	b.menu("View", "In the kitchen")
	assert.Contains(t, pagetest.Texts(b.pages[b.current].Object()), "Step 2 of", "it was not in view")
}
