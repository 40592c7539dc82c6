package ui

import (
	"sync"

	"ripplewright/internal/desk/mishap"
)

// posts hold what workers want done on the window's thread until the next frame
// does it. The toolkit's own queue is served one call at a time between frames,
// so that answers come late when frames are slow.
type posts struct {
	mu    sync.Mutex
	queue []func()
}

func (p *posts) add(f func()) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.queue = append(p.queue, f)
}

// serve does what has been asked for so far, and reports whether that was anything.
func (p *posts) serve() bool {
	p.mu.Lock()
	queue := p.queue
	p.queue = nil
	p.mu.Unlock()
	for _, f := range queue {
		mishap.Do(f) // one that goes wrong leaves the others theirs
	}
	return len(queue) > 0
}
