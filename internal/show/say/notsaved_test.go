package say

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWhyADesignIsNotSavedIsSaidPlainly(t *testing.T) {
	_, gone := os.Create(filepath.Join(t.TempDir(), "not", "there"))
	for want, err := range map[string]error{
		"The disk is full.":             &fs.PathError{Op: "write", Path: "/quay/a.yaml", Err: syscall.ENOSPC},
		"Nothing may be written":        &fs.PathError{Op: "open", Path: "/quay/a.yaml", Err: syscall.EACCES},
		"The folder is not there":       gone,
		"The design is not saved. It s": errors.New("name: must be UTF-8 text"),
	} {
		text := CouldNotSave(err)
		assert.Contains(t, text, want)
		assert.Contains(t, text, "It stays in this window")
		assert.Contains(t, text, err.Error()[1:], "and the system's own words")
	}
}
