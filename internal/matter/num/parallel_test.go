package num

import (
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestAPanicInParallelIsTheCallers(t *testing.T) {
	var done atomic.Int64
	assert.PanicsWithValue(t, "spilt", func() {
		Parallel(50, func(i int) {
			if i == 7 {
				panic("spilt")
			}
			done.Add(1)
		})
	})
	assert.EqualValues(t, 49, done.Load())
}
