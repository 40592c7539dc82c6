package atomicfile

import (
	"errors"
	"io/fs"
	"os"

	"ripplewright/internal/form/flaw"
)

// ErrChanged says that a file is not as long as it was when it was read.
var ErrChanged = flaw.New("the file has changed meanwhile; read it again")

// Append adds data to the end of the regular file at path, which must still have the
// given size, and brings it to the disk; one that is not there, of size 0, is made as
// Write makes it. A power cut may leave a part of data at the end, and never touches
// what was there; where writing fails the part is taken off again. The error names the
// path.
func Append(path string, size int64, data []byte) error {
	if err := appendTo(path, size, data); err != nil {
		return flaw.New("adding to %s: %v", path, err)
	}
	return nil
}

func appendTo(path string, size int64, data []byte) (err error) {
	target, err := follow(path)
	if err != nil {
		return err
	}
	info, err := os.Stat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist) && size == 0:
		return disk.put(target, data, nil)
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return &NotRegularError{target}
	}
	f, err := os.OpenFile(target, os.O_WRONLY|os.O_APPEND, 0)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	if info, err = f.Stat(); err != nil {
		return err
	}
	if info.Size() != size {
		return ErrChanged
	}
	if _, err := f.Write(data); err != nil {
		return errors.Join(err, f.Truncate(size))
	}
	return f.Sync()
}
