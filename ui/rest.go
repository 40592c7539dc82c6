package ui

import (
	"time"

	"ripplewright/internal/desk/mishap"
	"ripplewright/ui/spare"
)

// Work leaves memory behind: a page's first pictures and a search some 20 to 60 MB. The
// window gives it back when nothing has happened for restAfter, and each workFor while
// hands do not rest.
const (
	restAfter = 2 * time.Second
	workFor   = 10 * time.Second
)

// A rest follows on work, once.
type rest struct {
	begun, last time.Time // of the work since memory was given back; zero: there was none
}

// worked takes note that something has happened.
func (r *rest) worked(now time.Time) {
	r.last = now
	if r.begun.IsZero() {
		r.begun = now
	}
}

// due reports whether it is time to give memory back, once.
func (r *rest) due(now time.Time) bool {
	if r.begun.IsZero() || now.Sub(r.last) <= restAfter && now.Sub(r.begun) <= workFor {
		return false
	}
	r.begun = time.Time{}
	return true
}

// giveBack gives memory back, away from the window's thread, when it is time.
func (w *Window) giveBack() {
	if w.rest.due(time.Now()) {
		mishap.Go(spare.GiveBack)
	}
}
