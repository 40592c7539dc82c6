package journal

import (
	"os"
	"path/filepath"
	"testing"
	"testing/quick"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var noon = time.Date(2026, 11, 27, 12, 0, 0, 0, time.UTC)

func page(path, text string, at time.Time) Page {
	return Page{Path: path, Read: [32]byte{1, 2, 3}, At: at, Text: []byte(text)}
}

func open(t *testing.T, f *Folder) *Writer {
	w, err := f.Open()
	require.NoError(t, err)
	t.Cleanup(w.Close)
	return w
}

func names(t *testing.T, dir string) (list []string) {
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	for _, e := range entries {
		list = append(list, e.Name())
	}
	return list
}

func TestAPageWaitsOnceItsWindowIsGone(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "not", "there", "yet")
	f := At(dir)
	assert.Empty(t, f.Waiting())
	first, second := open(t, f), open(t, f)
	require.NoError(t, first.Keep(page("/quay/a.yaml", "one", noon)))
	require.NoError(t, first.Keep(page("/quay/a.yaml", "two", noon.Add(time.Minute))))
	require.NoError(t, second.Keep(page("", "three", noon.Add(time.Hour))))
	assert.Empty(t, f.Waiting(), "both windows live")

	first.Close()
	left := f.Waiting()
	require.Len(t, left, 1)
	assert.Equal(t, page("/quay/a.yaml", "two", noon.Add(time.Minute)), left[0].Page)
	second.Close()
	left = f.Waiting()
	require.Len(t, left, 2)
	assert.Equal(t, "three", string(left[0].Text), "the latest first")

	third := open(t, f)
	require.NoError(t, third.Take(left[0]))
	require.Len(t, f.Waiting(), 1, "it is the third window's now")
	require.Error(t, open(t, f).Take(left[0]), "and no other's")
	require.NoError(t, f.Forget(left[1]))
	require.NoError(t, f.Forget(left[1]), "once is enough")
	require.NoError(t, third.Clear())
	require.NoError(t, third.Clear())
	third.Close()
	assert.Empty(t, f.Waiting())
}

func TestAClosedJournalLeavesNothingBehind(t *testing.T) {
	dir := t.TempDir()
	w := open(t, At(dir))
	require.NoError(t, w.Keep(page("", "one", noon)))
	require.NoError(t, w.Clear())
	w.Close()
	assert.Empty(t, names(t, dir))
}

func TestTheNextStartSweepsWhatKilledWindowsLeft(t *testing.T) {
	dir, designs := t.TempDir(), t.TempDir()
	old := time.Now().Add(-time.Minute)
	litter := func(folder, name string) string {
		p := filepath.Join(folder, name)
		require.NoError(t, os.WriteFile(p, []byte("half"), 0o600))
		require.NoError(t, os.Chtimes(p, old, old))
		return p
	}
	quay := filepath.Join(designs, "quay.yaml")
	w := open(t, At(dir))
	require.NoError(t, w.Keep(page(quay, "one", noon)))
	w.Close()
	left := filepath.Base(w.Path())
	gone := []string{
		litter(dir, "0123456789abcdef.lock"),
		litter(dir, ".0123456789abcdef.yaml.0123456789abcdef.tmp"),
		litter(dir, "."+left+".0123456789abcdef.tmp"),
		litter(designs, ".quay.yaml.0123456789abcdef.tmp"),
	}
	mine := litter(dir, "notes.txt")
	assert.Len(t, At(dir).Waiting(), 1)
	for _, p := range gone {
		assert.NoFileExists(t, p)
	}
	assert.FileExists(t, mine)
	assert.ElementsMatch(t, []string{left, "notes.txt"}, names(t, dir))
}

func TestAPageKeepsWhateverItsPathIs(t *testing.T) {
	require.NoError(t, quick.Check(func(name string, text []byte, read [32]byte, at uint32) bool {
		p := Page{"/" + name, read, time.Unix(int64(at), 0).UTC(), text}
		got := Decode(encode(p))
		return got.Path == p.Path && got.Read == read && got.At.Equal(p.At) && string(got.Text) == string(text)
	}, nil))
}

func TestAPageWithoutItsHeadIsADesignWithoutAFile(t *testing.T) {
	for _, text := range []string{"", "ripplewright: 1\n", "# unsaved work of: \"/a\"\nripplewright: 1\n"} {
		assert.Equal(t, Page{Text: []byte(text)}, Decode([]byte(text)))
	}
	assert.Empty(t, Decode(encode(Page{Path: "beside/me.yaml"})).Path, "no folder says where that is")
}

func TestWithoutAFolderNothingIsKept(t *testing.T) {
	_, err := At("").Open()
	require.ErrorIs(t, err, ErrNowhere)
	assert.Empty(t, At("").Waiting())
}

func TestAFolderThatVanishesIsMadeAgain(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "journal")
	w := open(t, At(dir))
	require.NoError(t, os.RemoveAll(dir))
	require.NoError(t, w.Keep(page("", "one", noon)))
	w.Close()
	assert.Len(t, At(dir).Waiting(), 1)
}

func FuzzDecode(f *testing.F) {
	f.Add(encode(page("/quay/a.yaml", "ripplewright: 1\n", noon)))
	f.Add([]byte("# unsaved work of: \"\"\n# as last read: \"0\"\n# changed: \"yesterday\"\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		p := Decode(data)
		if again := Decode(encode(p)); again.Path != p.Path || again.Read != p.Read || string(again.Text) != string(p.Text) {
			t.Fatalf("%q comes back as %v", data, again)
		}
	})
}

func TestADesignIsOpenInOneWindow(t *testing.T) {
	dir := t.TempDir()
	design := filepath.Join(dir, "quay.yaml")
	require.NoError(t, os.WriteFile(design, nil, 0o644))
	other := filepath.Join(dir, "link.yaml")
	require.NoError(t, os.Symlink(design, other))
	f := At(filepath.Join(dir, "journal"))
	first, err := f.Opened(design)
	require.NoError(t, err)
	for _, path := range []string{design, other} {
		_, err = f.Opened(path)
		require.ErrorIs(t, err, ErrElsewhere, path)
	}
	assert.False(t, first.Knocked(), "nobody has said that they are there")
	require.NoError(t, f.Knock(other))
	assert.True(t, first.Knocked())
	assert.False(t, first.Knocked(), "once")
	require.NoError(t, f.Knock(design))
	assert.True(t, first.Knocked(), "and of each")
	another, err := f.Opened(filepath.Join(dir, "other.yaml"))
	require.NoError(t, err)
	another.Close()
	require.Empty(t, f.Waiting())
	_, err = f.Opened(design)
	require.ErrorIs(t, err, ErrElsewhere, "sweeping leaves what is held")
	first.Close()
	assert.Error(t, f.Knock(design), "nobody is there")
	again, err := f.Opened(other)
	require.NoError(t, err)
	assert.False(t, again.Knocked())
	again.Close()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "journal", "0123456789abcdef.open"), nil, 0o600)) // of a window that was killed
	require.Empty(t, f.Waiting())
	assert.Empty(t, names(t, filepath.Join(dir, "journal")))
	_, err = At("").Opened(design)
	assert.ErrorIs(t, err, ErrNowhere)
}
