package ui

import (
	"fmt"
	"time"

	"ripplewright/internal/design"
)

// hands remembers the oldest change by a hand that no frame shows yet.
type hands struct {
	oldest time.Time
	n      int
}

func (h *hands) moved() {
	if h.n++; h.n == 1 {
		h.oldest = time.Now()
	}
}

// event logs an effect that a test of the real window waits for.
func (w *Window) event(format string, args ...any) {
	if w.Events != nil {
		fmt.Fprintf(w.Events, format+"\n", args...)
	}
}

// sayWhenPainted logs the design once the screen shows it, and how long that
// took since the oldest hand that it answers.
//
// The toolkit does input, animations (and so the latch, which calls this),
// painting and the swap of buffers in one turn of its loop, and serves what is
// posted between turns. So what is posted here runs when the frame is out. What
// cannot be seen from inside is how long a motion waited for its turn: at 60
// turns a second, 8 ms on average.
func (w *Window) sayWhenPainted() {
	if w.Events == nil {
		return
	}
	h, updated, d := w.hands, time.Now(), w.Design()
	w.hands = hands{}
	w.Post(func() {
		if h.n > 0 {
			now := time.Now()
			w.event("painted ms=%.1f update=%.1f hands=%d", ms(now.Sub(h.oldest)), ms(updated.Sub(h.oldest)), h.n)
		}
		w.event("design foam=%g serving=%g count=%d grams=%g", d.Blend.FoamVolumePercent, d.Serving.TemperatureC, d.Tubs.Count, firstGrams(d))
	})
}

func ms(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }

func firstGrams(d design.Design) float64 {
	if len(d.Dense.Lines) == 0 {
		return 0
	}
	return d.Dense.Lines[0].Grams
}
