//go:build unix

package atomicfile

import (
	"errors"
	"os"
	"syscall"
)

// syncFolder makes a rename in the folder durable. File systems that cannot
// sync a folder say EINVAL or ENOTSUP, and have nothing more to offer.
func syncFolder(path string) error {
	d, err := os.Open(path)
	if err != nil {
		return err
	}
	err = d.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, syscall.ENOTSUP) {
		err = nil
	}
	return errors.Join(err, d.Close())
}
