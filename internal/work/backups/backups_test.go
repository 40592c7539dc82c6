package backups

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var noon = time.Date(2026, 11, 27, 12, 0, 0, 0, time.UTC)

func texts(t *testing.T, saves []Save) (all []string) {
	for _, s := range saves {
		text, err := s.Text()
		require.NoError(t, err)
		all = append(all, string(text))
	}
	return all
}

func TestTheLastTenSavesAreKept(t *testing.T) {
	f := At(filepath.Join(t.TempDir(), "not", "there", "yet"))
	path := filepath.Join(t.TempDir(), "quay.yaml")
	assert.Empty(t, f.Of(path))
	var want []string
	for i := range 13 {
		text := fmt.Sprintf("ripplewright: 1\nname: n%d\n", i)
		require.NoError(t, f.Keep(path, []byte(text), noon.Add(time.Duration(i)*time.Second)))
		want = append([]string{text}, want...)
	}
	assert.Equal(t, want[:Most], texts(t, f.Of(path)), "the latest first")
	assert.Equal(t, noon.Add(12*time.Second), f.Of(path)[0].At)
	extra := filepath.Join(filepath.Dir(f.Of(path)[0].Path), "2026-11-20 120000.000.yaml") // of a saver that was killed
	require.NoError(t, os.WriteFile(extra, nil, 0o600))
	assert.Equal(t, want[:Most], texts(t, f.Of(path)))
	assert.NoFileExists(t, extra)
	require.NoError(t, f.Keep(path, []byte(want[0]), noon.Add(time.Hour)))
	assert.Equal(t, want[:Most], texts(t, f.Of(path)), "the same again is no other save")
}

func TestEachDesignHasItsOwn(t *testing.T) {
	f := At(t.TempDir())
	for _, path := range []string{"/quay/a.yaml", "/pier/a.yaml", "/quay/" + strings.Repeat("å", 125) + ".yaml", "/quay/a\nb\x1b.yaml"} {
		require.NoError(t, f.Keep(path, []byte(path), noon))
		assert.Equal(t, []string{path}, texts(t, f.Of(path)), path)
	}
}

func TestALinkToADesignIsThatDesign(t *testing.T) {
	f := At(t.TempDir())
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, os.WriteFile(path, nil, 0o644))
	link := filepath.Join(t.TempDir(), "link.yaml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip("no symbolic links here")
	}
	require.NoError(t, f.Keep(link, []byte("one"), noon))
	assert.Equal(t, []string{"one"}, texts(t, f.Of(path)))
}

func TestSavesInAMomentAndClocksSetBackKeepTheirOrder(t *testing.T) {
	f := At(t.TempDir())
	for i, at := range []time.Time{noon, noon, noon.Add(-time.Hour), noon} {
		require.NoError(t, f.Keep("/quay/a.yaml", []byte(fmt.Sprint(i)), at))
	}
	assert.Equal(t, []string{"3", "2", "1", "0"}, texts(t, f.Of("/quay/a.yaml")))
}

func TestWithoutAFolderThereAreNone(t *testing.T) {
	require.ErrorIs(t, At("").Keep("/quay/a.yaml", nil, noon), ErrNowhere)
	assert.Empty(t, At("").Of("/quay/a.yaml"))
}

// A save that a hand or a broken disk has changed is still a text, never more than was
// there.
func FuzzText(f *testing.F) {
	f.Add([]byte("ripplewright: 1\n"))
	f.Add([]byte("# saved: \"2026-11-27T12:00:00Z\"\n# of: \"/quay/a.yaml\"\n\nripplewright: 1\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		folder, path := At(t.TempDir()), filepath.Join(t.TempDir(), "quay.yaml")
		require.NoError(t, folder.Keep(path, []byte("ripplewright: 1\n"), noon))
		save := folder.Of(path)[0]
		require.NoError(t, os.WriteFile(save.Path, data, 0o600))
		text, err := folder.Of(path)[0].Text()
		require.NoError(t, err)
		require.True(t, bytes.HasSuffix(data, text))
	})
}
