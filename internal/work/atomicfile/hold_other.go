//go:build !unix

package atomicfile

import (
	"io"
	"os"
	"time"
)

const dontWait = 0

// abandoned is the age at which a temporary file has no saver any more, where
// no lock can tell.
const abandoned = time.Hour

// hold reports whether nobody can be writing the file at path any more.
func hold(path string) (io.Closer, bool) {
	info, err := os.Stat(path)
	return nothing{}, err == nil && time.Since(info.ModTime()) > abandoned
}
