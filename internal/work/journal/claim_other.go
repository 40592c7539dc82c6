//go:build !unix

package journal

import (
	"errors"
	"io/fs"
	"os"
)

// claim takes the lock at path, or says that another has it. Here a file that is open
// cannot be removed, which is the lock.
func claim(path string) (claimed, error) {
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return claimed{}, errHeld
	}
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return claimed{}, errHeld
	}
	return claimed{f}, nil
}

func letGo(f *os.File) {
	f.Close()
	os.Remove(f.Name())
}
