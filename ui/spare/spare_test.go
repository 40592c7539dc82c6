package spare

import (
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWhatIsFreeIsGivenBack(t *testing.T) {
	const many = 64 << 20
	var before, after runtime.MemStats
	GiveBack()
	runtime.ReadMemStats(&before)
	work := make([]byte, many)
	for at := 0; at < len(work); at += 4096 {
		work[at] = 1
	}
	runtime.KeepAlive(work)
	GiveBack()
	runtime.ReadMemStats(&after)
	held := func(m *runtime.MemStats) uint64 { return m.HeapSys - m.HeapReleased }
	assert.Less(t, held(&after), held(&before)+many/4)
}
