package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/desk/keeping"
	"ripplewright/internal/work/backups"
	"ripplewright/internal/work/designfile"
	"ripplewright/ui/kit"
)

// dies ends the window as a crash does: what it has kept stays.
func (b *bed) dies() {
	b.frame()
	require.NoError(b.t, b.keeper.Close())
}

// rises is the next start, over the same journal.
func (b *bed) rises() *bed {
	next := newBed(b.t)
	next.keeper.Close()
	next.Journal = b.Journal
	next.keepWork()
	b.t.Cleanup(func() { next.keeper.Close() })
	next.greet()
	return next
}

func (b *bed) waiting() []keeping.Offer { return keeping.Waiting(b.Journal, b.Model().Library()) }

func (b *bed) key(name fyne.KeyName) {
	e := &fyne.KeyEvent{Name: name}
	if f := b.win.Canvas().Focused(); f != nil {
		f.TypedKey(e)
	} else {
		b.win.Canvas().OnTypedKey()(e)
	}
	b.frame()
}

func TestUnsavedWorkIsOfferedUntilItIsSaved(t *testing.T) {
	b := newBed(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	b.saveTo(path, true, nil)
	was := b.Design()
	d := b.Design()
	d.Foam.OverrunPercent = 280
	b.Commit(d, "overrun")
	b.dies()

	next := b.rises()
	said := unbroken(next.dialogTexts())
	assert.Contains(t, said, unbroken("Ripplewright ended before"))
	assert.Contains(t, said, unbroken(path))
	assert.Contains(t, said, unbroken("→ 280"))
	next.key(fyne.KeyEscape) // later
	assert.Empty(t, next.dialogTexts())
	assert.False(t, next.Session.Dirty(), "nothing is applied unasked")
	assert.Len(t, next.waiting(), 1)

	next.menu("File", "Unsaved work…")
	next.key(fyne.KeyReturn) // open it
	assert.True(t, next.Design().Equal(d))
	assert.Equal(t, path, next.Session.Path())
	assert.True(t, next.Session.Dirty())
	assert.Empty(t, next.waiting(), "it is this window's now")
	require.True(t, next.Session.Undo())
	assert.True(t, next.Design().Equal(was), "back to what the file says")
	require.True(t, next.Session.Redo())

	next.dies()
	last := next.rises()
	require.Len(t, last.waiting(), 1, "and waits until it is saved")
	last.key(fyne.KeyReturn)
	last.saveTo("", false, nil)
	last.dies()
	assert.Empty(t, last.waiting())
	f, err := designfile.Load(path)
	require.NoError(t, err)
	assert.True(t, f.Design.Equal(d))
}

func TestDiscardedWorkIsNotOffered(t *testing.T) {
	b := newBed(t)
	d := b.Design()
	d.Name = "Saltmarsh toffee"
	b.Commit(d, "name")
	b.frame()
	_, err := b.keeper.Flush()
	require.NoError(t, err)
	b.close()
	b.press("Discard")
	b.dies()
	assert.Empty(t, b.waiting())
}

func TestWhoseDesignToKeepIsAsked(t *testing.T) {
	theirs := func(b *bed, path string) {
		data, err := os.ReadFile(path)
		require.NoError(b.t, err)
		f, err := designfile.Decode(path, data)
		require.NoError(b.t, err)
		d := f.Design
		d.Serving.TemperatureC = -17
		_, err = designfile.Save(path, f, d, designfile.SaveOptions{Force: true})
		require.NoError(b.t, err)
	}
	for _, c := range []struct {
		name, answer   string
		saved, serving float64
	}{
		{"keep mine", "Keep mine", -9, -9},
		{"take theirs", "Take theirs", -17, -17},
	} {
		for _, saving := range []bool{false, true} {
			b := newBed(t)
			path := filepath.Join(t.TempDir(), "quay.yaml")
			b.saveTo(path, true, nil)
			d := b.Design()
			d.Serving.TemperatureC = -9
			b.Commit(d, "serving temperature")
			theirs(b, path)
			if saving {
				b.save(nil)
			} else {
				b.lookAtDisk()
			}
			require.Contains(t, unbroken(b.dialogTexts()), unbroken("Another program or window has changed"), c.name)
			assert.Contains(t, unbroken(b.dialogTexts()), unbroken("−9 → −17"))
			b.press("See both")
			assert.Contains(t, unbroken(b.dialogTexts()), unbroken("From yours to theirs"))
			b.key(fyne.KeyReturn)
			b.press(c.answer)
			b.frame()
			assert.Equal(t, c.serving, b.Design().Serving.TemperatureC)
			if c.name == "take theirs" {
				assert.False(t, b.Session.Dirty())
				require.True(t, b.Session.Undo())
				assert.Equal(t, -9.0, b.Design().Serving.TemperatureC, "mine is a step back")
				require.True(t, b.Session.Redo())
			}
			b.save(nil)
			require.Empty(t, b.dialogTexts(), "no second question")
			f, err := designfile.Load(path)
			require.NoError(t, err)
			assert.Equal(t, c.saved, f.Design.Serving.TemperatureC, "%s, saving %t", c.name, saving)
		}
	}
}

func TestAChangeByAnotherProgramIsNoticedWhileTheWindowHasTheFocus(t *testing.T) {
	b := newBed(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	b.saveTo(path, true, nil)
	b.frame()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, append(data, "# by another hand\n"...), 0o644))
	assert.True(t, b.happens(func() bool { return b.asking() }), "nobody has left the window and come back")
}

func TestASecondWindowOnOneDesignIsToldWhenItOpens(t *testing.T) {
	b := newBed(t)
	path := filepath.Join(t.TempDir(), "quay.yaml")
	b.saveTo(path, true, nil)
	b.frame()
	second := newBed(t)
	second.keeper.Close()
	second.Journal = b.Journal
	second.keepWork()
	t.Cleanup(func() { second.keeper.Close() })
	require.True(t, b.happens(func() bool { _, err := b.Journal.Opened(path); return err != nil }))
	second.open(path)
	require.True(t, second.happens(second.asking))
	assert.Contains(t, unbroken(second.dialogTexts()), unbroken("Another window has quay.yaml open"))
	assert.True(t, b.happens(func() bool { return strings.Contains(b.status.Text, "Another window has opened quay.yaml too") }), "the first is told as well")
	assert.False(t, b.asking(), "nothing has happened to the first one's work")
	second.key(fyne.KeyEscape)
	second.openElsewhere()
	assert.False(t, second.asking(), "said once")

	b.dies()
	third := b.rises()
	require.True(t, second.happens(func() bool { _, err := b.Journal.Opened(path); return err != nil }), "the second has it to itself now")
	third.open(path)
	require.True(t, third.happens(third.asking), "and is seen in its turn")
	third.press("Save as…")
	assert.Contains(t, unbroken(third.dialogTexts()), "Save")
}

func TestEarlierSavesAndVersionsAreAStepOfUndoAway(t *testing.T) {
	b := newBed(t)
	b.Session.BackUp(backups.At(t.TempDir()))
	b.menu("File", "Keep a version…")
	assert.Empty(t, b.dialogTexts(), "there is no file to keep it beside")
	first := b.Design()
	b.saveTo(filepath.Join(t.TempDir(), "quay.yaml"), true, nil)
	b.menu("File", "Keep a version…")
	test.Type(b.win.Canvas().Focused(), "as everyone liked it")
	b.key(fyne.KeyReturn)
	second := first
	second.Foam.OverrunPercent = 280
	b.Commit(second, "overrun")
	b.saveTo("", false, nil)

	for item, said := range map[string]string{"Versions…": "as everyone liked it", "Earlier saves…": "202"} {
		b.menu("File", item)
		assert.Contains(t, unbroken(b.dialogTexts()), unbroken(said))
		if item == "Earlier saves…" { // the latest is what is open
			assert.Contains(t, b.dialogTexts(), "Nothing differs.")
			for _, o := range test.LaidOutObjects(b.win.Canvas().Overlays().Top()) {
				if s, ok := o.(*kit.Select); ok && len(s.Options) == 2 {
					s.SetSelectedIndex(1)
				}
			}
		}
		assert.Contains(t, unbroken(b.dialogTexts()), unbroken("280 → "))
		b.key(fyne.KeyReturn)
		assert.True(t, b.Design().Equal(first), item)
		require.True(t, b.Session.Undo())
		assert.True(t, b.Design().Equal(second), item)
	}
}
