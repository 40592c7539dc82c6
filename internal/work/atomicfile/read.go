package atomicfile

import (
	"io"
	"io/fs"
	"os"

	"ripplewright/internal/form/flaw"
)

// NotRegularError says that a path leads to something else than a file, such
// as a pipe or a device, which might never end.
type NotRegularError struct{ Path string }

// Words are what is wrong.
func (e *NotRegularError) Words() error {
	return flaw.New("%s is not a regular file", e.Path)
}

func (e *NotRegularError) Error() string { return e.Words().Error() }

// Read returns the content of the regular file at path, or its first most+1
// bytes if it is longer than most, and what the system says of it. It waits
// for nobody: a path that leads to no regular file is a *NotRegularError.
func Read(path string, most int64) ([]byte, fs.FileInfo, error) {
	// A pipe would hold up even the opening, so look first.
	if info, err := os.Stat(path); err != nil {
		return nil, nil, err
	} else if info.IsDir() {
		return nil, nil, &fs.PathError{Op: "read", Path: path, Err: flaw.New("is a folder")}
	} else if !info.Mode().IsRegular() {
		return nil, nil, &NotRegularError{path}
	}
	f, err := os.OpenFile(path, os.O_RDONLY|dontWait, 0)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, nil, &NotRegularError{path}
	}
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	return data, info, err
}
