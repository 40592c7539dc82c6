package ui

import (
	"runtime/debug"
	"time"

	"ripplewright/internal/desk/mishap"
)

// restAfter is how long nothing has happened before the window gives back the memory that
// work has left behind: a page's first pictures and a search leave some 20 to 60 MB, which
// the runtime would keep for minutes.
const restAfter = 2 * time.Second

// A rest follows on work, once.
type rest struct {
	since time.Time // the last work; zero: it has rested since
}

// worked takes note that something has happened.
func (r *rest) worked() { r.since = time.Now() }

// look gives memory back, away from the window's thread, when it is time.
func (r *rest) look() {
	if !r.since.IsZero() && time.Since(r.since) > restAfter {
		r.since = time.Time{}
		mishap.Go(debug.FreeOSMemory)
	}
}
