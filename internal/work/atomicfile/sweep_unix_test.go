//go:build unix

package atomicfile

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLeftoversOfKilledSaversAreSwept(t *testing.T) {
	path := kept(t)
	folder := filepath.Dir(path)
	old := time.Now().Add(-time.Minute)
	make := func(name string) string {
		p := filepath.Join(folder, name)
		require.NoError(t, os.WriteFile(p, []byte("half"), 0o600))
		require.NoError(t, os.Chtimes(p, old, old))
		return p
	}
	gone := []string{make(".ripple.yaml.0123456789abcdef.tmp"), make(".ripple.yaml.ffffffffffffffff.tmp")}
	held := make(".ripple.yaml.aaaaaaaaaaaaaaaa.tmp")
	lock, free := hold(held)
	require.True(t, free)
	defer lock.Close()
	fresh := make(".ripple.yaml.bbbbbbbbbbbbbbbb.tmp")
	require.NoError(t, os.Chtimes(fresh, time.Now(), time.Now()))
	stay := []string{held, fresh, path,
		make(".other.yaml.0123456789abcdef.tmp"), make(".ripple.yaml.0123456789ABCDEF.tmp"), make(".ripple.yaml.0123.tmp"),
		make("ripple.yaml.0123456789abcdef.tmp"), make(".ripple.yaml.0123456789abcdef.tmp.keep")}
	require.NoError(t, Write(path, []byte("new")))
	for _, p := range gone {
		assert.NoFileExists(t, p)
	}
	for _, p := range stay {
		assert.FileExists(t, p)
	}
}

func TestPipesAndDevicesAreNeitherReadNorReplaced(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe.yaml")
	require.NoError(t, syscall.Mkfifo(pipe, 0o644))
	link := filepath.Join(t.TempDir(), "link.yaml")
	require.NoError(t, os.Symlink(pipe, link))
	for _, path := range []string{pipe, link, os.DevNull} {
		_, _, err := Read(path, 10)
		var not *NotRegularError
		assert.ErrorAs(t, err, &not, path)
		assert.ErrorContains(t, Write(path, []byte("new")), "is not a regular file")
	}
}

func TestReadEndsWhereItIsTold(t *testing.T) {
	path := kept(t)
	data, info, err := Read(path, 1)
	require.NoError(t, err)
	assert.Equal(t, "ol", string(data), "one byte more, to tell that there is more")
	assert.EqualValues(t, 3, info.Size())
	_, _, err = Read(filepath.Dir(path), 10)
	assert.ErrorContains(t, err, "is a folder")
}
