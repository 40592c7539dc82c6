//go:build unix

package journal

import (
	"os"
	"syscall"
)

// claim takes the lock at path, or says that another has it.
func claim(path string) (claimed, error) {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return claimed{}, err
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		f.Close()
		return claimed{}, errHeld
	}
	// Another may have let go of the lock, and so removed it, since it was opened.
	ours, err := f.Stat()
	there, err2 := os.Stat(path)
	if err != nil || err2 != nil || !os.SameFile(ours, there) {
		f.Close()
		return claimed{}, errHeld
	}
	return claimed{f}, nil
}

func letGo(f *os.File) {
	os.Remove(f.Name()) // while it is held, so that nobody else's is removed
	f.Close()
}
