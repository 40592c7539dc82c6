package num

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Parallel calls do for 0 … n−1, on all processors, in no order. A panic of one
// is the caller's, who may catch it; the others are still called.
func Parallel(n int, do func(i int)) {
	workers := min(runtime.GOMAXPROCS(0), n)
	var next atomic.Int64
	var all sync.WaitGroup
	var panicked atomic.Pointer[any]
	one := func(i int) {
		defer func() {
			if v := recover(); v != nil {
				panicked.Store(&v)
			}
		}()
		do(i)
	}
	for k := 0; k < workers; k++ {
		all.Add(1)
		go func() {
			defer all.Done()
			for {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				one(i)
			}
		}()
	}
	all.Wait()
	if v := panicked.Load(); v != nil {
		panic(*v)
	}
}
