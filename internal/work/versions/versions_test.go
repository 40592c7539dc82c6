package versions

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/designfile"
)

var noon = time.Date(2026, 11, 27, 12, 0, 0, 0, time.UTC)

const quay = "ripplewright: 1\nname: Quay # ours\ndense: {lines: []}\nfoam: {lines: []}\n"

func TestVersionsAreDesignsOfTheirOwn(t *testing.T) {
	path := filepath.Join(t.TempDir(), "quay.yaml")
	list, err := List(path)
	require.NoError(t, err)
	assert.Empty(t, list)
	require.NoError(t, Keep(path, []byte(quay), "as everyone\nliked it", "", noon))
	require.NoError(t, Keep(path, []byte(quay+"# more\n"), "", "2026-11-27 a", noon))
	require.NoError(t, Keep(path, []byte(quay), "an older one", "", noon.Add(-time.Hour)))
	require.NoError(t, os.WriteFile(filepath.Join(Beside(path), "notes.txt"), nil, 0o644))

	list, err = List(path)
	require.NoError(t, err)
	require.Len(t, list, 3)
	for i, want := range []struct{ note, batch, text string }{
		{"an older one", "", quay}, {"as everyone liked it", "", quay}, {"", "2026-11-27 a", quay + "# more\n"},
	} {
		assert.Equal(t, i+1, list[i].Number)
		assert.Equal(t, want.note, list[i].Note)
		assert.Equal(t, want.batch, list[i].Batch)
		assert.Equal(t, want.text, string(list[i].Text()))
		f, err := designfile.Load(list[i].Path)
		require.NoError(t, err, "any reader of designs reads it")
		assert.Equal(t, "Quay", f.Design.Name)
	}
	v, err := Find(list, 2)
	require.NoError(t, err)
	assert.Equal(t, 2, v.Number)
	for _, n := range []int{0, 4, -1} {
		_, err = Find(list, n)
		assert.ErrorContains(t, err, "from 1 to 3")
	}
}

func TestABatchKeepsAVersionOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "quay.yaml")
	for i, text := range []string{quay, quay, quay + "# more\n", quay} {
		require.NoError(t, ForBatch(path, []byte(text), "batch", noon.Add(time.Duration(i)*time.Hour)))
	}
	list, err := List(path)
	require.NoError(t, err)
	assert.Len(t, list, 3)
}

func TestAnEditedHeadLosesTheNoteAlone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, os.MkdirAll(Beside(path), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(Beside(path), "2026-11-27-120000.yaml"), []byte("# version of mine\n"+quay), 0o644))
	list, err := List(path)
	require.NoError(t, err)
	require.Len(t, list, 1)
	assert.Equal(t, noon, list[0].At)
	_, err = list[0].Design(nil)
	require.NoError(t, err)
}

func TestAHostileNoteStaysANote(t *testing.T) {
	path := filepath.Join(t.TempDir(), "quay.yaml")
	note := "a\nripplewright: 2\r\u202eb\x1b[31m\u2028" + strings.Repeat("x", 10000)
	require.NoError(t, Keep(path, []byte(quay), note, note, noon))
	list, err := List(path)
	require.NoError(t, err)
	require.Len(t, list, 1)
	assert.LessOrEqual(t, len([]rune(list[0].Note)), MostNote)
	f, err := list[0].Design(nil)
	require.NoError(t, err)
	assert.Equal(t, "Quay", f.Design.Name)
	_, err = designfile.Load(list[0].Path)
	require.NoError(t, err)
}

func TestNameOfTheFolderIsTheDesigns(t *testing.T) {
	assert.Equal(t, "/quay/a.b.versions", Beside("/quay/a.b.yaml"))
	assert.Equal(t, "/quay/a.versions", Beside("/quay/a"))
}

func FuzzRead(f *testing.F) {
	f.Add([]byte("# version kept: \"2026-11-27T12:00:00Z\"\n# note: \"a\"\n# for batch: \"\"\n" + quay))
	f.Add([]byte(quay))
	f.Fuzz(func(t *testing.T, data []byte) {
		var v Version
		v.read(data)
		if strings.ContainsAny(v.Note+v.Batch, "\n\r") || len([]rune(v.Note)) > MostNote {
			t.Fatalf("note %q", v.Note)
		}
	})
}

func TestAVersionKnowsItsDesign(t *testing.T) {
	for path, want := range map[string]string{
		"/quay/toffee.versions/2026-11-28-094000.yaml": "/quay/toffee.yaml",
		"toffee.versions/2026-11-28-094000.yaml":       "toffee.yaml",
		"/quay/toffee.yaml":                            "/quay/toffee.yaml",
		"toffee.yaml":                                  "toffee.yaml",
	} {
		assert.Equal(t, want, DesignOf(path))
	}
}
