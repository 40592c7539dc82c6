//go:build unix

package preferences

import (
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAPipeIsNotWaitedFor(t *testing.T) {
	path := filepath.Join(t.TempDir(), "preferences.json")
	if err := syscall.Mkfifo(path, 0o600); err != nil {
		t.Skip(err)
	}
	said, err := Aside(path, kinds, now)
	require.NoError(t, err)
	assert.Contains(t, said, "not a regular file")
}
