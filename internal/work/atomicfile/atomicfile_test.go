package atomicfile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// kept writes "old" to a new file with mode 0640 and returns its path.
func kept(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "ripple.yaml")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o640))
	require.NoError(t, os.Chmod(path, 0o640))
	return path
}

// holds asserts the content of path and that nothing else lies in its folder
// but the names given.
func holds(t *testing.T, path, content string, others ...string) {
	t.Helper()
	got, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, content, string(got))
	entries, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	var names []string
	for _, e := range entries {
		if e.Name() != filepath.Base(path) {
			names = append(names, e.Name())
		}
	}
	assert.Equal(t, others, names)
}

func TestWriteReplacesTheWholeFileAndKeepsItsMode(t *testing.T) {
	path := kept(t)
	require.NoError(t, Write(path, []byte("new and longer")))
	holds(t, path, "new and longer")
	if runtime.GOOS != "windows" {
		info, err := os.Stat(path)
		require.NoError(t, err)
		assert.Equal(t, fs.FileMode(0o640), info.Mode().Perm())
	}
}

func TestWriteMakesANewFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "fresh.yaml")
	require.NoError(t, Write(path, nil))
	holds(t, path, "")
}

func TestTheReplacedBytesAreHandedOver(t *testing.T) {
	path := kept(t)
	var old []string
	keep := func(data []byte) error { old = append(old, string(data)); return nil }
	require.NoError(t, WriteKeepingOld(path, []byte("second"), keep))
	require.NoError(t, WriteKeepingOld(path, []byte("third"), keep))
	assert.Equal(t, []string{"old", "second"}, old)
	holds(t, path, "third")
	require.NoError(t, WriteKeepingOld(filepath.Join(t.TempDir(), "new.yaml"), nil, keep))
	assert.Len(t, old, 2, "a new file replaces nothing")
	full := errors.New("no room")
	require.ErrorIs(t, WriteKeepingOld(path, []byte("fourth"), func([]byte) error { return full }), full)
	holds(t, path, "third")
}

func TestSymbolicLinksStayLinks(t *testing.T) {
	path := kept(t)
	folder := t.TempDir()
	link := filepath.Join(folder, "link.yaml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip("no symbolic links here")
	}
	require.NoError(t, os.Symlink("link.yaml", filepath.Join(folder, "second.yaml")))
	require.NoError(t, Write(filepath.Join(folder, "second.yaml"), []byte("new")))
	holds(t, path, "new")
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&fs.ModeSymlink)

	// A link to a file that does not exist yet makes that file.
	require.NoError(t, os.Remove(path))
	require.NoError(t, Write(link, []byte("again")))
	holds(t, path, "again")

	require.NoError(t, os.Symlink("loop", filepath.Join(folder, "loop")))
	assert.ErrorContains(t, Write(filepath.Join(folder, "loop"), nil), "loop")
}

func TestWhatCannotBeReplacedIsNamed(t *testing.T) {
	folder := t.TempDir()
	assert.ErrorContains(t, Write(folder, nil), folder)
	gone := filepath.Join(folder, "gone", "x.yaml")
	err := Write(gone, nil)
	assert.ErrorContains(t, err, gone)
	assert.ErrorIs(t, err, fs.ErrNotExist)
}

// faulty is a file that breaks at one step.
type faulty struct {
	file
	write, sync, shut error
}

func (f faulty) Write(p []byte) (int, error) {
	if f.write != nil {
		n, _ := f.file.Write(p[:len(p)/2])
		return n, f.write
	}
	return f.file.Write(p)
}

func (f faulty) Sync() error {
	if f.sync != nil {
		return f.sync
	}
	return f.file.Sync()
}

func (f faulty) Close() error { return errors.Join(f.file.Close(), f.shut) }

func TestTheOldFileSurvivesEveryFailure(t *testing.T) {
	full := syscall.ENOSPC
	breaking := func(f faulty) system {
		s := disk
		s.create = func(path string, mode fs.FileMode) (file, error) {
			inner, err := disk.create(path, mode)
			f.file = inner
			return f, err
		}
		return s
	}
	noCreate, noRename := disk, disk
	noCreate.create = func(string, fs.FileMode) (file, error) { return nil, full }
	noRename.rename = func(string, string) error { return full }
	for name, s := range map[string]system{
		"creating": noCreate,
		"writing":  breaking(faulty{write: full}),
		"syncing":  breaking(faulty{sync: full}),
		"closing":  breaking(faulty{shut: full}),
		"renaming": noRename,
	} {
		t.Run(name, func(t *testing.T) {
			path := kept(t)
			err := s.write(path, []byte("new"), nil)
			assert.ErrorIs(t, err, full)
			assert.ErrorContains(t, err, path)
			holds(t, path, "old")
		})
	}
}

func TestAFullDeviceLeavesTheOldFile(t *testing.T) {
	if _, err := os.Stat("/dev/full"); err != nil {
		t.Skip("no /dev/full here")
	}
	s := disk
	s.create = func(string, fs.FileMode) (file, error) {
		f, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
		return keepsMode{f}, err
	}
	path := kept(t)
	err := s.write(path, []byte("new"), nil)
	assert.ErrorIs(t, err, syscall.ENOSPC)
	holds(t, path, "old")
}

// keepsMode leaves the device's own permissions alone.
type keepsMode struct{ file }

func (keepsMode) Chmod(fs.FileMode) error { return nil }

func BenchmarkWrite(b *testing.B) {
	path := filepath.Join(b.TempDir(), "ripple.yaml")
	data := make([]byte, 2048)
	for i := 0; i < b.N; i++ {
		if err := Write(path, data); err != nil {
			b.Fatal(err)
		}
	}
}
