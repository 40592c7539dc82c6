package spare

import (
	"runtime"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestShare(t *testing.T) {
	for _, x := range []struct {
		live uint64
		want int
	}{
		{0, 100}, {8 << 20, 100}, {32 << 20, 50}, {40 << 20, 40}, {100 << 20, 16}, {400 << 20, 15},
	} {
		assert.Equal(t, x.want, share(16<<20, x.live), x.live)
	}
}

func TestGarbageIsBoundedWhateverLives(t *testing.T) {
	defer debug.SetGCPercent(debug.SetGCPercent(100))
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(-1))
	Bound(16 << 20)
	percent := func() int {
		p := debug.SetGCPercent(100)
		debug.SetGCPercent(p)
		return p
	}
	live := make([]byte, 100<<20)
	for range 100 { // the share is set by another goroutine, after the collection
		runtime.GC()
		if percent() < 20 {
			break
		}
	}
	assert.InDelta(t, 16, percent(), 2, "100 MB and a little live")
	limit := debug.SetMemoryLimit(-1)
	assert.Greater(t, limit, int64(100+16)<<20, "all of it fits")
	assert.Less(t, limit, int64(100+16+60)<<20)
	runtime.KeepAlive(live)
}
