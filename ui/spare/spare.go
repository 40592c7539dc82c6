// Package spare bounds the memory that work leaves behind, and gives it back: the runtime
// would keep it for minutes, and the C library, with which the toolkit and the screen's driver
// keep their pictures, for good.
package spare

import (
	"runtime"
	"runtime/debug"
)

// GiveBack gives back what is free. It takes some 30 ms of another processor.
func GiveBack() {
	runtime.GC() // what pools have ready outlives one collection
	debug.FreeOSMemory()
	trim()
}
