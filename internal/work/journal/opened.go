package journal

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"os"
	"path/filepath"
	"regexp"

	"ripplewright/internal/form/flaw"
)

// ErrElsewhere says that another window has a design open.
var ErrElsewhere = flaw.New("another window has it open")

const openedEnd = ".open"

var ownOpened = regexp.MustCompile(`^[0-9a-f]{16}\.open$`)

// Opened tells other windows of the same maker that this one has a design open, until it
// is closed or its process ends, however that ends.
type Opened struct {
	lock  claimed
	heard int64 // bytes of its file: a knock is one
}

// Opened says that a window has the design at path open. The error is ErrElsewhere where
// another has.
func (f *Folder) Opened(path string) (*Opened, error) {
	if f.dir == "" {
		return nil, ErrNowhere
	}
	if err := os.MkdirAll(f.dir, 0o700); err != nil {
		return nil, err
	}
	lock, err := claim(filepath.Join(f.dir, openedName(path)))
	if errors.Is(err, errHeld) {
		err = ErrElsewhere
	}
	if err != nil {
		return nil, err
	}
	if err := lock.file.Truncate(0); err != nil { // knocks at a window that was killed
		lock.release()
		return nil, err
	}
	return &Opened{lock: lock}, nil
}

// Knock lets the window that has the design at path open know that another has opened it
// too.
func (f *Folder) Knock(path string) error {
	file, err := os.OpenFile(filepath.Join(f.dir, openedName(path)), os.O_WRONLY|os.O_APPEND, 0)
	if err != nil {
		return err
	}
	_, err = file.Write([]byte{'.'})
	return errors.Join(err, file.Close())
}

// Knocked reports whether another window has opened the design since it was asked last.
func (o *Opened) Knocked() bool {
	info, err := o.lock.file.Stat()
	if err != nil || info.Size() <= o.heard {
		return false
	}
	o.heard = info.Size()
	return true
}

// openedName is the same by whichever links a file is reached.
func openedName(path string) string {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	sum := sha256.Sum256([]byte(path))
	return hex.EncodeToString(sum[:idLength/2]) + openedEnd
}

// Close says that the design is no longer open.
func (o *Opened) Close() { o.lock.release() }

// sweepOpened takes away what windows that were killed have left of theirs.
func sweepOpened(dir string, entries []os.DirEntry) {
	for _, e := range entries {
		if ownOpened.MatchString(e.Name()) {
			if lock, err := claim(filepath.Join(dir, e.Name())); err == nil {
				lock.release()
			}
		}
	}
}
