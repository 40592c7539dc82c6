package spare

import (
	"os"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatWasFreedIsGivenBack(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("reads /proc")
	}
	const many = 64 << 20
	before := resident(t)
	work := make([]byte, many)
	for at := 0; at < len(work); at += 4096 {
		work[at] = 1
	}
	assert.Greater(t, resident(t)-before, many*3/4)
	runtime.KeepAlive(work)
	work = nil
	GiveBack()
	assert.Less(t, resident(t)-before, many/4)
}

// resident is the memory that this process has, in bytes.
func resident(t *testing.T) int {
	t.Helper()
	b, err := os.ReadFile("/proc/self/statm")
	require.NoError(t, err)
	pages, err := strconv.Atoi(strings.Fields(string(b))[1])
	require.NoError(t, err)
	return pages * os.Getpagesize()
}
