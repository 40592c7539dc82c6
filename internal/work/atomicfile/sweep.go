package atomicfile

import (
	"os"
	"path/filepath"
	"regexp"
	"time"
)

// leftover is the name of a temporary file behind that of its target.
var leftover = regexp.MustCompile(`^\.[0-9a-f]{16}\.tmp$`)

// settled is how old a temporary file is before it can be a leftover: between
// its making and its lock lies less.
const settled = time.Second

// Sweep removes what savers of path that were killed have left beside it, known
// by its name. One that a running saver holds, and any other file, stays.
func Sweep(path string) {
	target, err := follow(path)
	if err != nil {
		return
	}
	folder, err := os.Open(filepath.Dir(target))
	if err != nil {
		return
	}
	defer folder.Close()
	base := "." + filepath.Base(target)
	for {
		names, err := folder.Readdirnames(256)
		for _, name := range names {
			if len(name) > len(base) && name[:len(base)] == base && leftover.MatchString(name[len(base):]) {
				sweepOne(filepath.Join(filepath.Dir(target), name))
			}
		}
		if err != nil {
			return
		}
	}
}

func sweepOne(path string) {
	info, err := os.Lstat(path)
	if err != nil || !info.Mode().IsRegular() || time.Since(info.ModTime()) < settled {
		return
	}
	held, free := hold(path)
	if !free {
		return
	}
	os.Remove(path)
	held.Close()
}

// nothing is held where the system has no locks.
type nothing struct{}

func (nothing) Close() error { return nil }
