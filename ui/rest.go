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
func (r *rest) worked() {
	r.last = time.Now()
	if r.begun.IsZero() {
		r.begun = r.last
	}
}

// look gives memory back, away from the window's thread, when it is time.
func (r *rest) look() {
	if !r.begun.IsZero() && (time.Since(r.last) > restAfter || time.Since(r.begun) > workFor) {
		r.begun = time.Time{}
		mishap.Go(spare.GiveBack)
	}
}
