// Package atomicfile replaces a file as a whole or not at all.
//
// Whatever goes wrong while writing (a full disk, a lost program, a power
// cut), the path holds either all of the old bytes or all of the new ones.
package atomicfile

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"ripplewright/internal/form/flaw"
)

// maxLinks is how many symbolic links are followed before giving up on a loop.
const maxLinks = 40

// Write makes data the content of the file at path.
//
// The bytes go to a new file beside the target, reach the disk, and take the
// target's name in one step; on Unix the folder is then made durable too. An
// existing file keeps its permissions, a new one gets 0666 less the umask. A
// symbolic link stays a link: the file it leads to is replaced. A file that
// may not be written is not replaced either, and a hard link to the old bytes
// keeps them. What killed savers of the same file have left is swept away. The
// error names the path; after any error but that of the last,
// the folder's, step the old file is intact.
func Write(path string, data []byte) error {
	return disk.write(path, data, nil)
}

// WriteKeepingOld does as Write does, and hands keep the bytes that are about to be
// replaced, if there are any. If keep fails nothing is replaced.
func WriteKeepingOld(path string, data []byte, keep func(old []byte) error) error {
	return disk.write(path, data, keep)
}

// system is what Write needs of the disk, so that a test can fill it up.
type system struct {
	create     func(path string, mode fs.FileMode) (file, error)
	rename     func(from, to string) error
	syncFolder func(path string) error
}

// file is the part of os.File that is written through.
type file interface {
	io.WriteCloser
	Sync() error
	Chmod(mode fs.FileMode) error
}

var disk = system{
	create: func(path string, mode fs.FileMode) (file, error) {
		return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	},
	rename:     os.Rename,
	syncFolder: syncFolder,
}

func (s system) write(path string, data []byte, keep func(old []byte) error) error {
	if err := s.replace(path, data, keep); err != nil {
		return flaw.New("saving %s: %v", path, err)
	}
	Sweep(path)
	return nil
}

func (s system) replace(path string, data []byte, keep func(old []byte) error) error {
	target, err := follow(path)
	if err != nil {
		return err
	}
	info, err := os.Stat(target)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return s.put(target, data, nil)
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return &NotRegularError{target}
	}
	// A rename asks the folder's leave, not the file's: ask for that here.
	w, err := os.OpenFile(target, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	w.Close()
	if keep != nil {
		old, err := os.ReadFile(target)
		if err != nil {
			return err
		}
		if err := keep(old); err != nil {
			return flaw.New("keeping the old file: %v", err)
		}
	}
	return s.put(target, data, info)
}

// put writes data beside target and renames it there, with the permissions of
// old if there is one.
func (s system) put(target string, data []byte, old fs.FileInfo) (err error) {
	var name [8]byte
	if _, err := rand.Read(name[:]); err != nil {
		return err
	}
	temp := filepath.Join(filepath.Dir(target), "."+filepath.Base(target)+"."+hex.EncodeToString(name[:])+".tmp")
	f, err := s.create(temp, 0o666)
	if err != nil {
		return err
	}
	held, _ := hold(temp) // so that no sweeper takes it for a leftover
	defer held.Close()
	if err := fill(f, data, old); err != nil {
		os.Remove(temp)
		return err
	}
	if err := s.rename(temp, target); err != nil {
		os.Remove(temp)
		return err
	}
	return s.syncFolder(filepath.Dir(target))
}

// fill brings data to the disk and closes f, whatever happens.
func fill(f file, data []byte, old fs.FileInfo) (err error) {
	defer func() { err = errors.Join(err, f.Close()) }()
	if old != nil {
		if err := f.Chmod(old.Mode().Perm()); err != nil {
			return err
		}
	}
	if _, err := f.Write(data); err != nil {
		return err
	}
	return f.Sync()
}

// follow returns the path that path leads to through symbolic links; the last
// one need not exist.
func follow(path string) (string, error) {
	for i := 0; i < maxLinks; i++ {
		info, err := os.Lstat(path)
		if errors.Is(err, fs.ErrNotExist) {
			return path, nil
		}
		if err != nil {
			return "", err
		}
		if info.Mode()&fs.ModeSymlink == 0 {
			return path, nil
		}
		to, err := os.Readlink(path)
		if err != nil {
			return "", err
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return "", flaw.New("too many symbolic links")
}
