//go:build unix

package atomicfile

import (
	"io"
	"os"
	"syscall"
)

// dontWait keeps the opening of a pipe from waiting for its writer.
const dontWait = syscall.O_NONBLOCK

// hold marks the file at path as in use until the closer is closed, which the
// end of the process does as well. It reports false if another holds it, or if
// nobody can tell.
func hold(path string) (io.Closer, bool) {
	f, err := os.OpenFile(path, os.O_RDONLY|dontWait, 0)
	if err != nil {
		return nothing{}, false
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		f.Close()
		return nothing{}, false
	}
	return f, true
}
