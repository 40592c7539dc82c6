package spare

import (
	"runtime"
	"runtime/debug"
	"runtime/metrics"
)

// Between these shares of what lives, in percent, garbage is collected: more often would keep
// a processor busy, and more seldom is the runtime's own way.
const least, most = 15, 100

// slack is the memory, in bytes, that the runtime has for itself and that lies between what
// lives, beside a tenth of that.
const slack = 20 << 20

// Bound has garbage collected when there are about so many bytes of it, and what was free
// given back beyond that, from the next collection on. The runtime would let both grow with
// what lives, which on a page with large pictures is twice as much as on others.
func Bound(garbage uint64) {
	tune(garbage)
	// What nobody holds is found by the next collection.
	runtime.SetFinalizer(new([64]byte), func(*[64]byte) { Bound(garbage) })
}

// tune sets shares from what lived at the last collection.
func tune(garbage uint64) {
	sample := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	metrics.Read(sample)
	live := sample[0].Value.Uint64()
	debug.SetGCPercent(share(garbage, live))
	debug.SetMemoryLimit(int64(room(garbage, live)))
}

// share is how much garbage is, in percent of what lives.
func share(garbage, live uint64) int {
	return int(min(max(100*garbage/max(live, 1), least), most))
}

// room is what the runtime needs where so much lives. Much less would have it collect without
// end.
func room(garbage, live uint64) uint64 {
	return live + live/10 + max(garbage, live*least/100) + slack
}
