//go:build unix

package ui

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A pipe that nobody writes to keeps whoever reads it waiting.
func TestAFileDialogDoesNotWaitForAPipe(t *testing.T) {
	b := newBed(t)
	folder := t.TempDir()
	pipe := filepath.Join(folder, "doorbell")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "notes"), []byte("two yolks"), 0o600))
	place, err := storage.ListerForURI(storage.NewFileURI(folder))
	require.NoError(t, err)

	listed := make(chan string, 1)
	go func() {
		can, err := storage.CanRead(storage.NewFileURI(pipe))
		assert.NoError(t, err)
		assert.False(t, can)
		listed <- storage.NewFileURI(pipe).MimeType()
	}()
	select {
	case kind := <-listed:
		assert.Equal(t, "text/plain", kind, "as of any file that cannot be read")
	case <-time.After(10 * time.Second):
		t.Fatal("the pipe is waited for")
	}

	d := dialog.NewFileOpen(nil, b.win)
	d.SetLocation(place)
	d.Show()
	d.Hide()
	r, err := storage.Reader(storage.NewFileURI(filepath.Join(folder, "notes")))
	require.NoError(t, err, "others are read as before")
	require.NoError(t, r.Close())
}
