package spare

import (
	"runtime"
	"runtime/debug"
	"runtime/metrics"
)

// Between these shares of what lives, in percent, garbage is collected: more often would keep
// a processor busy, and more seldom is the runtime's own way.
const least, most = 15, 100

// Bound has garbage collected when there are about so many bytes of it, from the next
// collection on. The runtime would let it grow with what lives, which on a page with large
// pictures is twice as much as on others.
func Bound(garbage uint64) {
	tune(garbage)
	// What nobody holds is found by the next collection.
	runtime.SetFinalizer(new([64]byte), func(*[64]byte) { Bound(garbage) })
}

// tune sets the share from what lived at the last collection.
func tune(garbage uint64) {
	live := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	metrics.Read(live)
	debug.SetGCPercent(share(garbage, live[0].Value.Uint64()))
}

// share is how much garbage is, in percent of what lives.
func share(garbage, live uint64) int {
	return int(min(max(100*garbage/max(live, 1), least), most))
}
