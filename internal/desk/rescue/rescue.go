// Package rescue keeps what a mishap might have cost: the design as it was, and
// a report of what went wrong.
package rescue

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"ripplewright/internal/work/userdata"
)

// A Folder keeps rescued designs and reports.
type Folder struct {
	dir  string
	kept string // the design that this run of the program has kept, "" if none
}

// At returns the folder at dir, which need not be there yet; "" keeps nothing.
func At(dir string) *Folder { return &Folder{dir: dir} }

// Of the files: a design waits to be opened, a report to be sent.
const (
	designs = "rescued "
	reports = "report "
	stamp   = "2006-01-02 150405"
)

var errNowhere = errors.New("this computer names no folder to keep it in")

// Keep has write make a file of the design, and returns its path. A run of the
// program keeps one: the latest.
func (f *Folder) Keep(at time.Time, write func(path string) error) (string, error) {
	if f.dir == "" {
		return "", errNowhere
	}
	if err := os.MkdirAll(f.dir, 0o700); err != nil {
		return "", err
	}
	path := f.kept
	if path == "" {
		path = filepath.Join(f.dir, designs+at.Format(stamp)+".yaml")
	}
	if err := write(path); err != nil {
		return "", err
	}
	f.kept = path
	return path, nil
}

// Report writes a report and returns its path.
func (f *Folder) Report(at time.Time, text string) (string, error) {
	if f.dir == "" {
		return "", errNowhere
	}
	path := filepath.Join(f.dir, reports+at.Format(stamp)+".txt")
	return path, userdata.Write(path, "report", []byte(text))
}

// Waiting returns the designs that runs before this one have kept, the latest
// first.
func (f *Folder) Waiting() []string {
	entries, err := os.ReadDir(f.dir)
	if f.dir == "" || err != nil {
		return nil
	}
	var list []string
	for _, e := range entries {
		if path := filepath.Join(f.dir, e.Name()); strings.HasPrefix(e.Name(), designs) && e.Type().IsRegular() && path != f.kept {
			list = append(list, path)
		}
	}
	slices.Sort(list)
	slices.Reverse(list)
	return list
}

// Safe says that the design is safe elsewhere, or that its maker has let it go:
// what this run has kept is forgotten.
func (f *Folder) Safe() error {
	if f.kept == "" {
		return nil
	}
	path := f.kept
	f.kept = ""
	return f.Forget(path)
}

// Take makes a design that was kept by an earlier run this run's own: it stays
// until it is safe.
func (f *Folder) Take(path string) { f.kept = path }

// Forget removes a design that was kept.
func (f *Folder) Forget(path string) error { return os.Remove(path) }
