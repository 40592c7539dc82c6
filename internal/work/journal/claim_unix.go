//go:build unix

package journal

import (
	"os"
	"syscall"
)

// claim takes the lock at path, or says that another has it.
func claim(path string) (claimed, error) {
	for {
		c, gone, err := try(path)
		if !gone {
			return c, err
		}
	}
}

// try is claim, unless the lock was let go of, and so removed, since it was opened.
func try(path string) (c claimed, gone bool, err error) {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return claimed{}, false, err
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		f.Close()
		return claimed{}, false, errHeld
	}
	ours, err := f.Stat()
	there, err2 := os.Stat(path)
	if err != nil || err2 != nil || !os.SameFile(ours, there) {
		f.Close()
		return claimed{}, true, nil
	}
	return claimed{f}, false, nil
}

func letGo(f *os.File) {
	os.Remove(f.Name()) // while it is held, so that nobody else's is removed
	f.Close()
}
