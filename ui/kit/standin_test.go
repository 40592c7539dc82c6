package kit

import (
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tab is the key as the window gives it, and the next frame.
func tab(c fyne.Canvas) {
	if f, ok := c.Focused().(fyne.Tabbable); ok && f.AcceptsTab() {
		c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyTab})
	} else {
		c.FocusNext()
	}
	StandIn(c)
}

func folderOf(t *testing.T, names ...string) fyne.ListableURI {
	dir := t.TempDir()
	for _, n := range names {
		require.NoError(t, os.WriteFile(filepath.Join(dir, n), nil, 0o644))
	}
	l, err := storage.ListerForURI(storage.NewFileURI(dir))
	require.NoError(t, err)
	return l
}

// Escape closes the toolkit's dialogs of files and of a folder from each of their parts,
// in both of their views, and asks nothing.
func TestEscapeClosesTheToolkitsDialogsFromEachOfTheirParts(t *testing.T) {
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(900, 700))
	c, dir := w.Canvas(), folderOf(t, "one.yaml", "two.yaml")
	dialogs := map[string]func() *dialog.FileDialog{
		"open": func() *dialog.FileDialog {
			return dialog.NewFileOpen(func(r fyne.URIReadCloser, _ error) { assert.Nil(t, r) }, w)
		},
		"save": func() *dialog.FileDialog {
			return dialog.NewFileSave(func(r fyne.URIWriteCloser, _ error) { assert.Nil(t, r) }, w)
		},
		"folder": func() *dialog.FileDialog {
			return dialog.NewFolderOpen(func(u fyne.ListableURI, _ error) { assert.Nil(t, u) }, w)
		},
	}
	for name, files := range dialogs {
		for _, view := range []dialog.ViewLayout{dialog.ListView, dialog.GridView} {
			for tabs := range 14 {
				dg := files()
				dg.SetLocation(dir)
				dg.SetView(view)
				dg.Show()
				NameByEscape(c)
				for range tabs {
					tab(c)
				}
				if c.Focused() == nil { // the window's own key
					require.Zero(t, tabs, name)
					Dismiss(c)
				} else {
					c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
				}
				require.Nil(t, c.Overlays().Top(), "%s, part %d: %T", name, tabs, c.Focused())
			}
		}
	}
	dialog.ShowConfirm("Sure?", "It goes.", func(yes bool) { assert.False(t, yes) }, w)
	tab(c)
	tab(c)
	c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	require.Nil(t, c.Overlays().Top())
}

// The keyboard is on the files from the start; arrows and Space choose one there, Tab leads
// through every part and around, and Return presses a button.
func TestAFileIsOpenedByKeys(t *testing.T) {
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(900, 700))
	c := w.Canvas()
	var opened []string
	dg := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		require.NoError(t, err)
		opened = append(opened, r.URI().Name())
		r.Close()
	}, w)
	dg.SetLocation(folderOf(t, "one.yaml", "two.yaml"))
	dg.SetView(dialog.ListView)
	dg.Show()
	FocusFiles(c)
	press := func(k fyne.KeyName) { c.Focused().TypedKey(&fyne.KeyEvent{Name: k}) }
	press(fyne.KeyDown) // past the folder above
	press(fyne.KeyDown)
	press(fyne.KeySpace)
	visited := map[fyne.Focusable]int{}
	for range 40 {
		tab(c)
		visited[c.Focused().(*standIn).of]++
	}
	require.Greater(t, len(visited), 6, "buttons, places, the folders above and the files")
	for part, n := range visited {
		assert.Greater(t, n, 1, "%T is come back to", part)
	}
	for {
		if b, ok := c.Focused().(*standIn).of.(*widget.Button); ok && b.Text == "Open" {
			break
		}
		tab(c)
	}
	press(fyne.KeyReturn)
	assert.Equal(t, []string{"two.yaml"}, opened)
	assert.Nil(t, c.Overlays().Top())
}

// A hand clicks files as well: what has the keyboard for them lies over nothing.
func TestAStandInLiesOverNoFile(t *testing.T) {
	w := test.NewTempWindow(t, widget.NewLabel(""))
	w.Resize(fyne.NewSize(900, 700))
	c := w.Canvas()
	dg := dialog.NewFileOpen(func(fyne.URIReadCloser, error) {}, w)
	dg.SetLocation(folderOf(t, "one.yaml"))
	dg.Show()
	FocusFiles(c)
	s, ok := c.Focused().(*standIn)
	require.True(t, ok)
	dg.Resize(fyne.NewSize(800, 600))
	assert.Zero(t, s.Size())
}
