package photo

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// parallel calls do for 0 … n−1, on all processors, in no order.
func parallel(n int, do func(i int)) {
	var next atomic.Int64
	var all sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		all.Add(1)
		go func() {
			defer all.Done()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		}()
	}
	all.Wait()
}
