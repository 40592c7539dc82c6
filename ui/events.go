package ui

import (
	"fmt"
	"time"

	"ripplewright/internal/work/design"
)

// latency remembers the oldest change by a hand that no frame shows yet.
type latency struct {
	oldest time.Time
	n      int
}

func (h *latency) moved() {
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

// painting is what a frame shows that may not be out yet.
type painting struct {
	latency latency
	updated time.Time
	design  design.Design
}

// sayWhenPainted has the design logged once the screen shows it, and how long
// that took since the oldest hand that it answers.
//
// The toolkit does input, animations (and so the latch, which calls this),
// painting and the swap of buffers in one turn of its loop. Between turns it
// serves what was handed to it, but tosses a coin if the next turn is due. So
// the frame is out when that is served or the next turn begins, whichever
// comes first. What cannot be seen from inside is how long a motion waited for
// its turn: at 60 turns a second, 8 ms on average.
func (w *Window) sayWhenPainted() {
	if w.Events == nil {
		return
	}
	w.out = &painting{w.latency, time.Now(), w.Design()}
	w.latency = latency{}
	if w.soon != nil {
		w.soon(w.painted)
	}
}

// begin tells, once, when the first frame is on screen. What is handed over from within a
// turn of the toolkit's loop is served when the turn has been painted.
func (w *Window) begin() {
	if w.ticked || w.soon == nil {
		return
	}
	w.ticked = true
	w.soon(func() {
		w.event("first unix_ms=%d", time.Now().UnixMilli())
		if w.Begun != nil {
			w.Begun()
		}
	})
}

// painted logs what the last frame has brought on screen.
func (w *Window) painted() {
	p := w.out
	if p == nil {
		return
	}
	w.out = nil
	if from := p.latency.oldest; p.latency.n > 0 {
		w.event("painted ms=%.1f update=%.1f hands=%d", ms(time.Since(from)), ms(p.updated.Sub(from)), p.latency.n)
	}
	d := p.design
	w.event("design foam=%g serving=%g count=%d grams=%g", d.Blend.FoamVolumePercent, d.Serving.TemperatureC, d.Tubs.Count, firstGrams(d))
}

func ms(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }

func firstGrams(d design.Design) float64 {
	if len(d.Dense.Lines) == 0 {
		return 0
	}
	return d.Dense.Lines[0].Grams
}
