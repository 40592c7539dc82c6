package keeping

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/session"
	"ripplewright/internal/work/journal"
)

func newSession(t *testing.T) *session.Session {
	return session.New(model.New(market.Library(t)), market.Plain())
}

func newKeeper(t *testing.T, f *journal.Folder, tell func(error)) *Keeper {
	if tell == nil {
		tell = func(err error) {
			if err != nil {
				t.Errorf("not kept: %v", err)
			}
		}
	}
	k := Open(f, tell, func() {}, func() {}, func() {})
	t.Cleanup(func() { k.Close() })
	return k
}

func overrun(s *session.Session, percent float64) {
	d := s.Design()
	d.Foam.OverrunPercent = percent
	s.Commit(d, "overrun")
}

// within waits for what must come to be, for as long as work may be lost.
func within(t *testing.T, what string, done func() bool) {
	for end := time.Now().Add(5 * time.Second); !done(); time.Sleep(20 * time.Millisecond) {
		require.True(t, time.Now().Before(end), what)
	}
}

func TestWorkIsKeptWithinFiveSecondsAlsoWhileAHandNeverRests(t *testing.T) {
	f := journal.At(t.TempDir())
	s := newSession(t)
	k := newKeeper(t, f, nil)
	k.Look(s)
	page := func() bool {
		_, err := os.Stat(k.page.Path())
		return err == nil
	}
	assert.False(t, page(), "nothing is unsaved")
	percent := 200.0
	within(t, "kept while a slider moves", func() bool {
		percent += 0.1
		d := s.Design()
		d.Foam.OverrunPercent = percent
		s.Preview(d)
		k.Look(s)
		return page()
	})
	require.NoError(t, s.Save(filepath.Join(t.TempDir(), "quay.yaml"), false))
	k.Look(s)
	within(t, "cleared once it is saved", func() bool { return !page() })
}

func TestWhatIsKeptIsTheLatest(t *testing.T) {
	f := journal.At(t.TempDir())
	s := newSession(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, s.Save(path, false))
	k := newKeeper(t, f, nil)
	for percent := 210.0; percent <= 250; percent += 10 {
		overrun(s, percent)
		k.Look(s)
	}
	require.NoError(t, k.Close())
	left := Waiting(f, s.Model().Library())
	require.Len(t, left, 1)
	assert.Equal(t, path, left[0].Path)
	assert.Equal(t, FileAsRead, left[0].File)
	assert.Equal(t, 250.0, left[0].Work.Foam.OverrunPercent)
	assert.NotEqual(t, 250.0, left[0].Says.Foam.OverrunPercent)
}

func TestAnOfferSaysHowItsFileIsFound(t *testing.T) {
	for name, c := range map[string]struct {
		meanwhile func(path string) error
		want      FileState
		path      bool // the session has its file back
		changed   bool // and saving asks
	}{
		"as it was": {func(string) error { return nil }, FileAsRead, true, false},
		"changed": {func(path string) error {
			data, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			return os.WriteFile(path, append(data, "# by another hand\n"...), 0o644)
		}, FileChanged, true, true},
		"gone":   {os.Remove, FileGone, false, false},
		"broken": {func(path string) error { return os.WriteFile(path, []byte("ripplewright: [\n"), 0o644) }, FileBroken, false, false},
	} {
		t.Run(name, func(t *testing.T) {
			f := journal.At(t.TempDir())
			s := newSession(t)
			path := filepath.Join(t.TempDir(), "quay.yaml")
			require.NoError(t, s.Save(path, false))
			k := newKeeper(t, f, nil)
			overrun(s, 280)
			k.Look(s)
			require.NoError(t, k.Close())
			require.NoError(t, c.meanwhile(path))

			left := Waiting(f, s.Model().Library())
			require.Len(t, left, 1)
			assert.Equal(t, c.want, left[0].File)
			next, k2 := newSession(t), newKeeper(t, f, nil)
			require.NoError(t, k2.Open(left[0], next, "unsaved work"))
			assert.Equal(t, 280.0, next.Design().Foam.OverrunPercent)
			assert.True(t, next.Dirty())
			assert.Equal(t, c.path, next.Path() != "")
			assert.Equal(t, c.changed, next.ChangedOnDisk())
			assert.Equal(t, c.path, next.Undo(), "back to what the file says")
		})
	}
}

func TestAFullOrLostFolderIsToldOnceAndTriedAgain(t *testing.T) {
	place := t.TempDir()
	dir := filepath.Join(place, "journal")
	var told []error
	s := newSession(t)
	k := newKeeper(t, journal.At(dir), func(err error) { told = append(told, err) })
	require.NoError(t, os.RemoveAll(dir))
	require.NoError(t, os.WriteFile(dir, nil, 0o600)) // nothing can be made there now
	for range 3 {
		overrun(s, s.Design().Foam.OverrunPercent-10)
		k.Look(s)
		_, err := k.Flush()
		require.Error(t, err)
	}
	require.Len(t, told, 1, "said once")
	require.Error(t, told[0])
	assert.True(t, s.Dirty(), "the work stays in the window")

	require.NoError(t, os.Remove(dir))
	path, err := k.Flush()
	require.NoError(t, err)
	assert.FileExists(t, path)
	require.Len(t, told, 2)
	assert.NoError(t, told[1])
}

func TestAnotherProgramIsNoticed(t *testing.T) {
	s := newSession(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, s.Save(path, false))
	noticed := make(chan bool, 10)
	k := Open(journal.At(t.TempDir()), func(error) {}, func() { noticed <- true }, func() {}, func() {})
	defer k.Close()
	k.Look(s)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, append(data, "# by another hand\n"...), 0o644))
	select {
	case <-noticed:
	case <-time.After(20 * time.Second):
		t.Fatal("not noticed")
	}
}
