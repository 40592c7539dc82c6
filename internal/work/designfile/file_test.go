package designfile

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/design"
)

// onDisk returns hazelnut.yaml loaded from a folder of its own.
func onDisk(t *testing.T) *File {
	t.Helper()
	path := filepath.Join(t.TempDir(), "hazelnut.yaml")
	require.NoError(t, os.WriteFile(path, readTestFile(t, "hazelnut.yaml"), 0o644))
	f, err := Load(path)
	require.NoError(t, err)
	return f
}

func content(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

func TestSavedDesignsLoadAgain(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.yaml")
	d := design.New().WithLineAdded(design.SyrupPart, design.Line{Ingredient: "sugar", Grams: 180})
	f, err := Save(path, nil, d, SaveOptions{})
	require.NoError(t, err)
	assert.Equal(t, path, f.Path())
	got, err := Load(path)
	require.NoError(t, err)
	assert.True(t, got.Design.Equal(d))
	assert.Equal(t, content(t, path), string(got.Bytes()))

	// Saving again through what Save returned is no conflict.
	d.Name = "Second thoughts"
	var old string
	_, err = Save(path, f, d, SaveOptions{KeepOld: func(data []byte) error { old = string(data); return nil }})
	require.NoError(t, err)
	assert.Equal(t, string(f.Bytes()), old)
}

func TestAFileChangedOnDiskIsNotReplaced(t *testing.T) {
	f := onDisk(t)
	d := f.Design.WithGrams(design.DensePart, 0, 500)
	other := content(t, f.Path()) + "# by another hand\n"
	require.NoError(t, os.WriteFile(f.Path(), []byte(other), 0o644))

	changed, err := f.ChangedOnDisk()
	require.NoError(t, err)
	assert.True(t, changed)
	_, err = Save(f.Path(), f, d, SaveOptions{})
	var conflict *ChangedOnDiskError
	require.ErrorAs(t, err, &conflict)
	assert.Equal(t, f.Path(), conflict.Path)
	assert.Equal(t, other, content(t, f.Path()))

	_, err = Save(f.Path(), f, d, SaveOptions{Force: true})
	require.NoError(t, err)
	got, err := Load(f.Path())
	require.NoError(t, err)
	assert.True(t, got.Design.Equal(d))
}

// A clock that ticks slower than programs write gives two contents one date, and they
// may be as long as each other.
func TestAChangeInTheSameMomentIsAChange(t *testing.T) {
	f := onDisk(t)
	info, err := os.Stat(f.Path())
	require.NoError(t, err)
	other := strings.Replace(content(t, f.Path()), "name: ", "name: X", 1)
	other = other[:len(other)-2] + "\n" // as long as it was
	require.Len(t, other, int(info.Size()))
	require.NoError(t, os.WriteFile(f.Path(), []byte(other), 0o644))
	require.NoError(t, os.Chtimes(f.Path(), time.Time{}, info.ModTime()))
	changed, err := f.ChangedOnDisk()
	require.NoError(t, err)
	assert.True(t, changed)
}

func TestANewDateAloneIsNoChange(t *testing.T) {
	f := onDisk(t)
	require.NoError(t, os.Chtimes(f.Path(), time.Time{}, time.Now().Add(time.Hour)))
	changed, err := f.ChangedOnDisk()
	require.NoError(t, err)
	assert.False(t, changed)
	_, err = Save(f.Path(), f, f.Design, SaveOptions{})
	assert.NoError(t, err)
}

func TestALostFileIsWrittenAgain(t *testing.T) {
	f := onDisk(t)
	require.NoError(t, os.Remove(f.Path()))
	changed, err := f.ChangedOnDisk()
	require.NoError(t, err)
	assert.False(t, changed)
	_, err = Save(f.Path(), f, f.Design, SaveOptions{})
	require.NoError(t, err)
	assert.Equal(t, string(f.Bytes()), content(t, f.Path()))
}

func TestSavingUnderAnotherNameReplacesNothingUnasked(t *testing.T) {
	f := onDisk(t)
	path := filepath.Join(filepath.Dir(f.Path()), "taken.yaml")
	require.NoError(t, os.WriteFile(path, []byte("letters"), 0o644))
	_, err := Save(path, f, f.Design, SaveOptions{})
	var exists *ExistsError
	require.ErrorAs(t, err, &exists)
	assert.Equal(t, "letters", content(t, path))
	saved, err := Save(path, f, f.Design, SaveOptions{Force: true})
	require.NoError(t, err)
	assert.Equal(t, path, saved.Path())

	// Nothing is lost with an empty file.
	empty := filepath.Join(filepath.Dir(f.Path()), "empty.yaml")
	require.NoError(t, os.WriteFile(empty, nil, 0o644))
	_, err = Save(empty, nil, f.Design, SaveOptions{})
	assert.NoError(t, err)
}

func TestLoadNamesTheFile(t *testing.T) {
	_, err := Load(filepath.Join(designs, "missing.yaml"))
	assert.ErrorIs(t, err, fs.ErrNotExist)
	assert.ErrorContains(t, err, "missing.yaml")
	path := filepath.Join(designs, "broken.yaml")
	_, err = Load(path)
	assert.ErrorContains(t, err, path+":4: nmae: unknown key")
}

func TestLoadReadsNoMoreThanADesignMayHave(t *testing.T) {
	path := filepath.Join(t.TempDir(), "huge.yaml")
	require.NoError(t, os.WriteFile(path, nil, 0o644))
	require.NoError(t, os.Truncate(path, 1<<33))
	_, err := Load(path)
	assert.ErrorContains(t, err, "this is no design")
}
