package page

import (
	"context"
	"sync"
	"time"
)

// newest does work away from the window's thread, one at a time: asking for
// more cancels what runs and replaces what waits.
type newest struct {
	mu      sync.Mutex
	next    func(context.Context)
	cancel  context.CancelFunc // of what runs
	running bool
}

// ask has work done as soon as what runs has ended. Its context is cancelled by
// the next ask, and by stop.
func (n *newest) ask(work func(context.Context)) {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.next = work
	if n.running {
		n.cancel()
		return
	}
	n.running = true
	n.begin()
}

// begin takes the work that waits; the lock is held.
func (n *newest) begin() {
	work := n.next
	n.next = nil
	var ctx context.Context
	ctx, n.cancel = context.WithCancel(context.Background())
	go func() {
		work(ctx)
		n.mu.Lock()
		defer n.mu.Unlock()
		n.cancel()
		if n.running = n.next != nil; n.running {
			n.begin()
		}
	}()
}

// stop cancels what runs and drops what waits.
func (n *newest) stop() {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.next = nil
	if n.running {
		n.cancel()
	}
}

// rest waits until nothing newer has been asked for some time, and reports
// whether that is so.
func rest(ctx context.Context) bool {
	select {
	case <-ctx.Done():
		return false
	case <-time.After(180 * time.Millisecond):
		return true
	}
}
