package atomicfile_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/atomicfile"
)

func TestAppendAddsAndNeverTouchesWhatWasThere(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.txt")
	require.NoError(t, atomicfile.Append(path, 0, []byte("one\n")))
	require.NoError(t, os.Chmod(path, 0o600))
	require.NoError(t, atomicfile.Append(path, 4, []byte("two\n")))
	got, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "one\ntwo\n", string(got))
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm())
}

func TestAppendRefusesAFileThatHasChanged(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.txt")
	require.NoError(t, os.WriteFile(path, []byte("another hand"), 0o644))
	assert.ErrorIs(t, atomicfile.Append(path, 4, []byte("x")), atomicfile.ErrChanged)
	assert.ErrorIs(t, atomicfile.Append(path, 0, []byte("x")), atomicfile.ErrChanged)
	got, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "another hand", string(got))
	assert.Error(t, atomicfile.Append(filepath.Dir(path), 0, []byte("x")), "a folder")
	assert.Error(t, atomicfile.Append(path+"-none", 3, []byte("x")), "a file that has gone")
}
