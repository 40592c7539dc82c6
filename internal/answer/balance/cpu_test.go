package balance

import (
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// used is the time that this program has had a processor, which on a busy machine is less
// than what a clock tells.
func used(t testing.TB) time.Duration {
	var r syscall.Rusage
	require.NoError(t, syscall.Getrusage(syscall.RUSAGE_SELF, &r))
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}
