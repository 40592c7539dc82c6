package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/desk/places"
	"ripplewright/internal/show/say"
	"ripplewright/ui/page/pagetest"
)

// TestTurningLeavesTheBenchBehind: neither its hint nor its keys go on where it
// cannot be seen.
func TestTurningLeavesTheBenchBehind(t *testing.T) {
	b := newBed(t)
	b.win.Canvas().Focus(b.bench.rail)
	b.frame()
	assert.Contains(t, b.status.Text, "Drag the handle")
	b.turnTo(places.Figures)
	b.frame()
	assert.Empty(t, b.status.Text)
	assert.Nil(t, b.win.Canvas().Focused())

	b.turnTo(places.Bench)
	for _, o := range test.LaidOutObjects(b.bench.object) {
		if h, ok := o.(desktop.Hoverable); ok && !strings.Contains(b.status.Text, "The foam's share") {
			h.MouseIn(&desktop.MouseEvent{})
		}
	}
	assert.Contains(t, b.status.Text, "The foam's share")
	b.turnTo(places.Figures)
	assert.Empty(t, b.status.Text)

	b.turnTo(places.Bench)
	b.Say("Added: 4.33 g vanilla extract")
	b.turnTo(places.Figures)
	assert.Empty(t, b.status.Text, "what was done on the page before")

	b.win.Canvas().Focus(b.signs.tabs[places.Ripple])
	b.turnTo(places.Ripple)
	assert.Equal(t, fyne.Focusable(b.signs.tabs[places.Ripple]), b.win.Canvas().Focused(), "one goes on from the tab that was pressed")
	b.turnTo(places.Label)
	assert.Nil(t, b.win.Canvas().Focused(), "the tab is out of sight")
}

// TestAPageKnowsTheKeysThatNoWidgetHas: after a click beside everything, Space
// still leads on in the kitchen.
func TestAPageKnowsTheKeysThatNoWidgetHas(t *testing.T) {
	b := newBed(t)
	b.turnTo(places.Steps)
	assert.NotNil(t, b.win.Canvas().Focused())
	b.win.Canvas().Unfocus()
	b.looseKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	assert.Contains(t, pagetest.Texts(b.shown().Object()), "Step 2 of")
	b.turnTo(places.Bench)
	b.looseKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	b.turnTo(places.Steps)
	assert.Contains(t, pagetest.Texts(b.shown().Object()), "Step 2 of", "it was not in view")
}

// TestAllPagesAreReachedByKeyboard: by the keys of the groups, by those for the next page,
// and in the row by arrows and Enter; the row and the menu mark where one is.
func TestAllPagesAreReachedByKeyboard(t *testing.T) {
	b := newBed(t)
	marked := func() (group, page string) {
		for _, x := range b.signs.heads {
			if x.Here() {
				group += x.Text
			}
		}
		for _, x := range b.signs.tabs[:places.Figures] {
			if x.Here() {
				require.True(t, x.Visible(), x.Text)
				page += x.Text
			}
		}
		return group, page
	}
	for p := places.Place(0); int(p) < places.Count-1; p++ {
		group, here := marked()
		assert.Equal(t, p.Name(), here)
		assert.Equal(t, places.Groups[p.Group()].Name.String(), group)
		assert.True(t, b.item("Go", group, here).Checked)
		b.menu("Go", say.NextPage.String())
	}
	assert.Equal(t, places.Bench, b.way.At(), "once around")
	b.menu("Go", "Learn")
	assert.Equal(t, places.Sure, b.way.At(), "where one was last")
	b.menu("Go", say.PageBefore.String())
	assert.Equal(t, places.Library, b.way.At())

	c := b.win.Canvas()
	c.Focus(b.signs.heads[0])
	key := func(names ...fyne.KeyName) {
		for _, n := range names {
			c.Focused().TypedKey(&fyne.KeyEvent{Name: n})
		}
	}
	key(fyne.KeyRight, fyne.KeyRight, fyne.KeyReturn)
	assert.Equal(t, places.Cost, b.way.At())
	key(fyne.KeyRight, fyne.KeyRight, fyne.KeyRight, fyne.KeySpace)
	assert.Equal(t, places.Card, b.way.At())
	key(fyne.KeyLeft, fyne.KeyLeft, fyne.KeyLeft, fyne.KeyLeft, fyne.KeyLeft, fyne.KeyLeft, fyne.KeyLeft, fyne.KeyReturn)
	assert.Equal(t, places.Bench, b.way.At(), "no further than the first: Think, where one was last")
}

// All figures stand in no row: they open from the bench, and Escape leads back.
func TestAllFiguresOpenFromTheBench(t *testing.T) {
	b := newBed(t)
	b.menu("Go", say.AllFigures.String())
	assert.Equal(t, places.Figures, b.way.At())
	assert.True(t, b.signs.tabs[places.Bench].Here())
	b.looseKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	assert.Equal(t, places.Bench, b.way.At())
}

// A page is made when somebody first asks for it.
func TestPagesAreMadeWhenTheyAreOpened(t *testing.T) {
	b := newBed(t)
	for p := places.Place(0); int(p) < places.Count; p++ {
		assert.Nil(t, b.pages[p], p.Name())
	}
	b.turnTo(places.Day)
	assert.NotNil(t, b.pages[places.Day])
	assert.Len(t, b.content.Objects, 2)
}
