package ui

import (
	"testing"
	"time"

	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
)

// Of one bell the time is always up, once the program is a minute old.
func TestABellIsAlwaysAboutToRing(t *testing.T) {
	test.NewTempApp(t)
	var b bells
	var asked [bellsInTurn]time.Time
	start := time.Now()
	for at := start; at.Sub(start) < 10*toolkitForgets; at = at.Add(100 * time.Millisecond) {
		next := b.next
		assert.False(t, b.cleaned(at))
		if b.next != next {
			asked[next] = at
		}
		up := 0
		for _, a := range asked {
			if !a.IsZero() && at.Sub(a) >= toolkitForgets {
				up++
			}
		}
		if at.Sub(start) > toolkitForgets+time.Second {
			assert.GreaterOrEqual(t, up, 1, at.Sub(start))
		}
		assert.LessOrEqual(t, up, 1, "the others are asked in time")
	}
}

func TestABellRingsOnceWhenTheToolkitDropsIt(t *testing.T) {
	test.NewTempApp(t)
	var b bells
	now := time.Now()
	assert.False(t, b.cleaned(now))
	test.WidgetRenderer(b.ring[0]).Destroy() // as the toolkit does
	assert.True(t, b.cleaned(now))
	assert.False(t, b.cleaned(now))
}

func TestTheNextFrameIsPaintedWithoutATrace(t *testing.T) {
	b := newBed(t)
	b.win.Canvas().Focus(b.bench.rail)
	b.askUnits()
	top, focused := b.win.Canvas().Overlays().Top(), b.win.Canvas().Focused()
	paintAnew(b.win.Canvas())
	assert.Same(t, top, b.win.Canvas().Overlays().Top())
	assert.Equal(t, focused, b.win.Canvas().Focused())

	b.bells.rung = true
	b.frame()
	assert.False(t, b.bells.rung, "it is listened to in every frame")
}
