package userdata

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/atomicfile"
)

// Path returns where a file of the maker's own is kept: in ripplewright's part
// of the user's configuration folder. what names it in errors, likewise below.
func Path(file, what string) (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", flaw.New("folder of %s: %v", what, err)
	}
	return filepath.Join(dir, "ripplewright", file), nil
}

// DataPath returns where a file or folder lies that the program keeps by itself: in
// ripplewright's part of the user's data folder, which is that of the XDG Base
// Directory Specification 0.8 where a system has no other.
func DataPath(file, what string) (string, error) {
	var dir string
	var err error
	switch runtime.GOOS {
	case "windows":
		dir, err = os.UserCacheDir() // %LocalAppData%
	case "darwin", "ios":
		dir, err = os.UserConfigDir() // ~/Library/Application Support
	default:
		if dir = os.Getenv("XDG_DATA_HOME"); !filepath.IsAbs(dir) {
			dir, err = os.UserHomeDir()
			dir = filepath.Join(dir, ".local", "share")
		}
	}
	if err != nil {
		return "", flaw.New("folder of %s: %v", what, err)
	}
	return filepath.Join(dir, "ripplewright", file), nil
}

// Read returns the contents of the file at path, none if it is not there, and
// sweeps away what killed savers of it have left.
func Read(path, what string) ([]byte, error) {
	atomicfile.Sweep(path)
	data, _, err := atomicfile.Read(path, yamltext.MaxSize)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, flaw.New("%s: %v", what, err)
	}
	return data, nil
}

// Write makes data the contents of the file at path, all of it or, after an
// error, none. Folders that are missing are made.
func Write(path, what string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return flaw.New("%s: %v", what, err)
	}
	return atomicfile.Write(path, data)
}
