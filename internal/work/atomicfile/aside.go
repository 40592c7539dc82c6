package atomicfile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"ripplewright/internal/form/flaw"
)

// Aside renames the file at path, with the word "broken" and the time in its name, and
// returns where it is then. Nothing is replaced.
func Aside(path string, now time.Time) (kept string, err error) {
	ext := filepath.Ext(path)
	name := strings.TrimSuffix(path, ext) + now.Format(" broken 2006-01-02 150405")
	for n := 1; n < 100; n++ {
		kept = name + ext
		if n > 1 {
			kept = fmt.Sprintf("%s %d%s", name, n, ext)
		}
		if _, err := os.Lstat(kept); errors.Is(err, fs.ErrNotExist) {
			return kept, os.Rename(path, kept)
		}
	}
	return "", flaw.New("putting %s aside: there are too many broken ones", path)
}
