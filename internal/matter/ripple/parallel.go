package ripple

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// parallel calls do for 0 … n−1, on all processors, in no order.
func parallel(n int, do func(i int)) {
	workers := min(runtime.GOMAXPROCS(0), n)
	var next atomic.Int64
	var all sync.WaitGroup
	for k := 0; k < workers; k++ {
		all.Add(1)
		go func() {
			defer all.Done()
			for {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				do(i)
			}
		}()
	}
	all.Wait()
}
