package rescue

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var noon = time.Date(2026, 11, 27, 12, 0, 0, 0, time.UTC)

func writing(text string) func(string) error {
	return func(path string) error { return os.WriteFile(path, []byte(text), 0o600) }
}

func TestARunKeepsItsLatestDesignAndTheNextOneFindsIt(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "not", "there", "yet")
	f := At(dir)
	assert.Empty(t, f.Waiting())
	first, err := f.Keep(noon, writing("one"))
	require.NoError(t, err)
	again, err := f.Keep(noon.Add(time.Hour), writing("two"))
	require.NoError(t, err)
	assert.Equal(t, first, again)
	assert.Empty(t, f.Waiting(), "its own is at hand")

	next := At(dir)
	assert.Equal(t, []string{first}, next.Waiting())
	second, err := next.Keep(noon.Add(2*time.Hour), writing("three"))
	require.NoError(t, err)
	assert.Equal(t, []string{second, first}, At(dir).Waiting(), "the latest first")
	require.NoError(t, next.Safe())
	assert.Equal(t, []string{first}, At(dir).Waiting())
	require.NoError(t, next.Safe(), "once is enough")

	last := At(dir)
	last.Take(first)
	assert.Empty(t, last.Waiting())
	require.NoError(t, last.Safe())
	assert.Empty(t, At(dir).Waiting())
}

func TestReportsAreNoDesigns(t *testing.T) {
	f := At(t.TempDir())
	path, err := f.Report(noon, "what happened")
	require.NoError(t, err)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "what happened", string(text))
	assert.Empty(t, f.Waiting())
}

func TestWithoutAFolderNothingIsKept(t *testing.T) {
	f := At("")
	_, err := f.Keep(noon, writing("x"))
	require.Error(t, err)
	_, err = f.Report(noon, "x")
	require.Error(t, err)
	assert.Empty(t, f.Waiting())
	require.NoError(t, f.Safe())
}

func TestADesignThatCouldNotBeWrittenIsNotKept(t *testing.T) {
	f := At(t.TempDir())
	_, err := f.Keep(noon, func(string) error { return errors.New("full") })
	require.EqualError(t, err, "full")
	require.NoError(t, f.Safe())
}
