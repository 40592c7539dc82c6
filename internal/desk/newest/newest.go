// Package newest does work in the background, of the newest request only.
package newest

import (
	"context"
	"sync"
	"time"

	"ripplewright/internal/desk/mishap"
)

// Work does work away from the window's thread, one at a time: asking for
// more cancels what runs and replaces what waits.
type Work struct {
	mu      sync.Mutex
	next    func(context.Context)
	cancel  context.CancelFunc // of what runs
	running bool
}

// held is what Hold holds back.
var held sync.WaitGroup

// Hold has all work wait for its release, as while a window opens, which needs the
// processors for its first frame.
func Hold() (release func()) {
	held.Add(1)
	return sync.OnceFunc(held.Done)
}

// Ask has work done as soon as what runs has ended. Its context is cancelled by
// the next Ask, and by Stop.
func (n *Work) Ask(work func(context.Context)) {
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
func (n *Work) begin() {
	work := n.next
	n.next = nil
	var ctx context.Context
	ctx, n.cancel = context.WithCancel(context.Background())
	go func() {
		held.Wait()
		mishap.Do(func() { work(ctx) })
		n.mu.Lock()
		defer n.mu.Unlock()
		n.cancel()
		if n.running = n.next != nil; n.running {
			n.begin()
		}
	}()
}

// Stop cancels what runs and drops what waits.
func (n *Work) Stop() {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.next = nil
	if n.running {
		n.cancel()
	}
}

// Rest waits until nothing newer has been asked for some time, and reports
// whether that is so.
func Rest(ctx context.Context) bool {
	select {
	case <-ctx.Done():
		return false
	case <-time.After(180 * time.Millisecond):
		return true
	}
}

// Busy reports whether something runs or waits.
func (n *Work) Busy() bool {
	n.mu.Lock()
	defer n.mu.Unlock()
	return n.running
}
