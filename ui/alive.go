package ui

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"ripplewright/ui/kit"
)

// bells tell when the toolkit cleans up. It then also forgets of which window an object on
// screen is that was not refreshed itself for a minute (2.7.1: a painted frame marks none of
// its objects as seen, yet puts off the walk that does), and from then on shows nothing of
// what changes in it: the window stands still. The next frame that is painted finds them all
// again, but nobody asks for one.
//
// What can be seen of it from outside is that it drops the renderers of widgets that nobody
// asked for theirs for a minute. The bells are such widgets, in no window: they are asked in
// turn, so that of one the time is always up.
type bells struct {
	ring  [bellsInTurn]*bell
	next  int
	asked time.Time
	rung  bool
	known time.Time // when the toolkit was last asked of all that can be seen
}

// toolkitForgets is after how long the toolkit drops what it is not asked for.
const (
	toolkitForgets = time.Minute
	bellEvery      = 4 * time.Second
	bellsInTurn    = int(toolkitForgets/bellEvery) + 1
)

// cleaned reports whether the toolkit has cleaned up since it was asked last. Ask once a frame.
func (b *bells) cleaned(now time.Time) bool {
	if now.Sub(b.asked) >= bellEvery {
		b.asked = now
		if b.ring[b.next] == nil {
			b.ring[b.next] = &bell{dropped: func() { b.rung = true }}
			b.ring[b.next].ExtendBaseWidget(b.ring[b.next])
		}
		b.ring[b.next].MinSize() // asks for its renderer
		b.next = (b.next + 1) % bellsInTurn
	}
	rung := b.rung
	b.rung = false
	return rung
}

// keepAlive has the toolkit know what is on screen, and paint it anew where it has forgotten.
func (w *Window) keepAlive(now time.Time) {
	if now.Sub(w.bells.known) >= toolkitForgets/3 {
		w.bells.known = now
		kit.Know(w.win.Canvas())
	}
	if w.bells.cleaned(now) {
		paintAnew(w.win.Canvas())
	}
}

// paintAnew has the toolkit paint the next frame, whatever it knows of its objects: for it
// an overlay has come and gone.
func paintAnew(c fyne.Canvas) {
	o := canvas.NewRectangle(nil)
	c.Overlays().Add(o)
	c.Overlays().Remove(o)
}

// A bell is never shown.
type bell struct {
	widget.BaseWidget
	dropped func()
}

// CreateRenderer implements fyne.Widget.
func (b *bell) CreateRenderer() fyne.WidgetRenderer { return bellRenderer{b} }

type bellRenderer struct{ of *bell }

func (bellRenderer) Layout(fyne.Size)             {}
func (bellRenderer) MinSize() (none fyne.Size)    { return }
func (bellRenderer) Refresh()                     {}
func (bellRenderer) Objects() []fyne.CanvasObject { return nil }
func (r bellRenderer) Destroy()                   { r.of.dropped() }
