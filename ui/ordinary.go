package ui

import (
	"io/fs"
	"os"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage/repository"
)

// ordinary reads ordinary files alone. The toolkit's file dialog reads the beginning of each
// file of a folder, on the window's thread, to choose its sign: a pipe or a device, which may
// never say a word, would keep the window waiting for good.
type ordinary struct{ allFiles }

// allFiles is what the toolkit can do with the files of a disk.
type allFiles interface {
	repository.WritableRepository
	repository.AppendableRepository
	repository.DeleteAllRepository
	repository.HierarchicalRepository
	repository.ListableRepository
	repository.CopyableRepository
	repository.MovableRepository
}

// readOrdinaryFiles has the toolkit read no others from now on.
func readOrdinaryFiles() {
	r, err := repository.ForScheme("file")
	if err != nil {
		return
	}
	if all, ok := r.(allFiles); ok {
		repository.Register("file", ordinary{all})
	}
}

// Reader implements repository.Repository.
func (o ordinary) Reader(u fyne.URI) (fyne.URIReadCloser, error) {
	if err := isOrdinary(u); err != nil {
		return nil, err
	}
	return o.allFiles.Reader(u)
}

// CanRead implements repository.Repository.
func (o ordinary) CanRead(u fyne.URI) (bool, error) {
	if isOrdinary(u) != nil {
		return false, nil
	}
	return o.allFiles.CanRead(u)
}

func isOrdinary(u fyne.URI) error {
	info, err := os.Stat(u.Path())
	if err == nil && !info.Mode().IsRegular() && !info.IsDir() {
		err = &fs.PathError{Op: "read", Path: u.Path(), Err: fs.ErrInvalid}
	}
	return err
}
