package newest

import (
	"context"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/desk/mishap"
)

// idle waits until nothing runs.
func idle(t *testing.T, w *Work) {
	t.Helper()
	require.Eventually(t, func() bool { return !w.Busy() }, 20*time.Second, time.Millisecond)
}

func TestOfManyRequestsTheFirstIsCancelledAndTheLastIsDone(t *testing.T) {
	var w Work
	began, ended := make(chan struct{}), make(chan error, 1)
	w.Ask(func(ctx context.Context) {
		close(began)
		<-ctx.Done()
		ended <- ctx.Err()
	})
	<-began
	var done atomic.Int32
	for i := int32(1); i <= 100; i++ {
		w.Ask(func(ctx context.Context) {
			if ctx.Err() == nil {
				done.Store(i)
			}
		})
	}
	assert.ErrorIs(t, <-ended, context.Canceled)
	idle(t, &w)
	assert.EqualValues(t, 100, done.Load())
}

func TestOneAtATime(t *testing.T) {
	var w Work
	var at, most atomic.Int32
	for i := 0; i < 200; i++ {
		w.Ask(func(context.Context) {
			if n := at.Add(1); n > most.Load() {
				most.Store(n)
			}
			time.Sleep(100 * time.Microsecond)
			at.Add(-1)
		})
		time.Sleep(50 * time.Microsecond)
	}
	idle(t, &w)
	assert.EqualValues(t, 1, most.Load())
}

func TestStopCancelsWhatRunsAndDropsWhatWaits(t *testing.T) {
	var w Work
	began := make(chan struct{})
	w.Ask(func(ctx context.Context) { close(began); <-ctx.Done() })
	<-began
	var did atomic.Bool
	w.Ask(func(context.Context) { did.Store(true) })
	w.Stop()
	idle(t, &w)
	assert.False(t, did.Load())
	w.Stop() // of nothing
	w.Ask(func(context.Context) { did.Store(true) })
	idle(t, &w)
	assert.True(t, did.Load(), "it can be asked again")
}

func TestAPanicDoesNotEndTheWork(t *testing.T) {
	told := make(chan mishap.Mishap, 1)
	defer mishap.Tell(func(m mishap.Mishap) { told <- m })()
	var w Work
	w.Ask(func(context.Context) { panic("spilt") })
	assert.Equal(t, "spilt", (<-told).Value)
	idle(t, &w)
	var did atomic.Bool
	w.Ask(func(context.Context) { did.Store(true) })
	idle(t, &w)
	assert.True(t, did.Load())
}

func TestRestEndsWithANewerRequest(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	assert.True(t, Rest(ctx))
	cancel()
	assert.False(t, Rest(ctx))
}

func TestHeldWorkWaitsForItsRelease(t *testing.T) {
	release := Hold()
	done := make(chan struct{})
	var n Work
	n.Ask(func(context.Context) { close(done) })
	select {
	case <-done:
		t.Fatal("not held")
	case <-time.After(20 * time.Millisecond):
	}
	release()
	release() // a second time does nothing
	<-done
}
