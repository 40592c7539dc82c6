// Package designfile keeps designs on disk: readable YAML, written by the
// program and by hand.
//
// Reading is strict and reports everything wrong at once, each with file, line
// and key. Writing changes only what changed in the design, so that comments,
// order and layout of a file edited by hand survive. Saving is atomic, and
// never replaces bytes that nobody has read. Format describes the file.
//
// What lies behind the YAML, such as its parser, is known to this package
// only; an own ingredient's form belongs to package ingredient.
package designfile

import (
	"crypto/sha256"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"time"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/design"
)

// File is a design as a file holds it, together with what is needed to write
// it back. It is immutable. The zero File is a document not yet written.
type File struct {
	Name   string        // the name in messages; a path if it came from disk
	Design design.Design // what the file says

	raw   []byte         // the bytes, with the comments
	at    map[string]int // line of each key
	path  string         // absolute; "" if it never was on disk
	stamp Stamp
}

// Stamp tells whether a file on disk is still the one that was read.
type Stamp struct {
	Modified time.Time
	Size     int64
	Hash     [sha256.Size]byte
	taken    time.Time // when all this was looked at
}

// ChangedOnDiskError says that a file is no longer what was opened.
type ChangedOnDiskError struct {
	Path     string
	Modified time.Time // when it was last changed
}

// Words are what is wrong.
func (e *ChangedOnDiskError) Words() error {
	return flaw.New("%s was changed by something else since it was opened (at %s)", e.Path, e.Modified.Format("2006-01-02 15:04:05"))
}

func (e *ChangedOnDiskError) Error() string { return e.Words().Error() }

// ExistsError says that another file has the name already.
type ExistsError struct{ Path string }

// Words are what is wrong.
func (e *ExistsError) Words() error {
	return flaw.New("%s exists already and holds something else", e.Path)
}

func (e *ExistsError) Error() string { return e.Words().Error() }

// Line returns the line, from 1, where the key at path stands in the file, or
// the nearest key around it; 0 if there is none. A path is one of a
// design.Problem, as in "dense.lines[2].grams".
func (f *File) Line(path string) int { return lineOf(f.at, path) }

// Path returns the absolute path of the file on disk, "" if it is on none.
func (f *File) Path() string { return f.path }

// Hash returns the hash of the content as it was last read or written.
func (f *File) Hash() [sha256.Size]byte { return f.stamp.Hash }

// LastRead returns f as a file that was last read when its content had that hash: with
// any other it has been changed on disk since.
func (f *File) LastRead(hash [sha256.Size]byte) *File {
	g := *f
	if hash != f.stamp.Hash {
		g.stamp = Stamp{Hash: hash}
	}
	return &g
}

// Seen returns f as a file whose content on disk, whatever it is now, may be replaced.
func (f *File) Seen() (*File, error) {
	_, now, err := read(f.path)
	if err != nil {
		return nil, flaw.New("looking at the file to replace: %v", err)
	}
	g := *f
	g.stamp = now
	return &g, nil
}

// Bytes returns the file's content. The caller must not change it.
func (f *File) Bytes() []byte { return f.raw }

// Load reads the design file at path. The error is an *Error if the content
// is at fault, and one of package os otherwise.
func Load(path string) (*File, error) { return LoadWith(path, nil) }

// LoadWith does as Load, and holds the lines' ingredients against lib, as
// DecodeWith does.
func LoadWith(path string, lib *ingredient.Library) (*File, error) {
	data, stamp, err := read(path)
	if err != nil {
		return nil, flaw.New("reading the design: %v", err)
	}
	f, err := DecodeWith(path, data, lib)
	if err != nil {
		return nil, err
	}
	return f.from(path, stamp)
}

// from returns f as the file at path.
func (f *File) from(path string, stamp Stamp) (*File, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return nil, flaw.New("reading the design: %v", err)
	}
	g := *f
	g.Name, g.path, g.stamp = path, abs, stamp
	return &g, nil
}

// read returns the content of path, or its beginning if it is longer than a
// design may be.
func read(path string) ([]byte, Stamp, error) {
	data, info, err := atomicfile.Read(path, MaxSize)
	if err != nil {
		return nil, Stamp{}, err
	}
	return data, Stamp{info.ModTime(), info.Size(), sha256.Sum256(data), time.Now()}, nil
}

// SaveOptions adjusts Save. The zero SaveOptions asks before it replaces.
type SaveOptions struct {
	Force   bool                   // replace whatever is there; set it when the user has said so
	KeepOld func(old []byte) error // handed what is about to be replaced, which stays if it fails; nil: nobody is
	Schemas schemaline.Schemas     // where editors find the JSON Schema, for a file that names none; nil: it does not say
}

// Save writes d to path in the form of f, the file it was read from, and
// returns the new file; f is nil for a design that never was in one.
//
// The file is replaced as a whole or not at all. Unless forced, the error is a
// *ChangedOnDiskError if the file is no longer what f holds, and an
// *ExistsError if path is not f's own and something else stands there; an
// empty file and a lost one do not count. (Between this look and the
// replacement another program has less than a millisecond to write.) A design
// that Decode would refuse is not written: the error is then an *Error without
// lines.
func Save(path string, f *File, d design.Design, o SaveOptions) (*File, error) {
	if f == nil || f.raw == nil {
		f = blank()
	}
	next, err := f.encode(path, d)
	if err != nil {
		return nil, err
	}
	next = next.headed(o.Schemas)
	if !o.Force {
		if err := f.mayReplace(path); err != nil {
			return nil, err
		}
	}
	if err := atomicfile.WriteKeepingOld(path, next.raw, o.KeepOld); err != nil {
		return nil, err
	}
	stamp := Stamp{Size: int64(len(next.raw)), Hash: sha256.Sum256(next.raw), taken: time.Now()}
	if info, err := os.Stat(path); err == nil {
		stamp.Modified = info.ModTime()
	}
	return next.from(path, stamp)
}

// headed is f with the line that names its schema, f itself where it has one or there is
// no room for it.
func (f *File) headed(s schemaline.Schemas) *File {
	if text := s.Head(f.raw, schemaline.Design); len(text) != len(f.raw) {
		if with, err := Decode(f.Name, text); err == nil {
			with.Design = f.Design
			return with
		}
	}
	return f
}

var begins = regexp.MustCompile(`(?m)^\s*\{?\s*["']?ripplewright["']?\s*:`)

// IsDesign reports whether a design file lies at path, sound or broken: nothing
// but a design may take its place.
func IsDesign(path string) bool {
	data, _, err := read(path)
	return err == nil && begins.Match(yamltext.Unix(data))
}

// mayReplace returns an error if path holds bytes that nobody has read.
func (f *File) mayReplace(path string) error {
	_, now, err := read(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return flaw.New("looking at the file to replace: %v", err)
	case now.Size == 0 || f.path != "" && now.same(f.stamp):
		return nil
	}
	if abs, err := filepath.Abs(path); err == nil && abs == f.path {
		return &ChangedOnDiskError{path, now.Modified}
	}
	return &ExistsError{path}
}

// same reports whether the contents are the same; a new date alone is no
// change.
func (s Stamp) same(o Stamp) bool { return s.Size == o.Size && s.Hash == o.Hash }

// coarsest is how far apart two writes may be and have one date: FAT keeps even
// seconds, Linux the tick of its clock, some milliseconds (from memory).
const coarsest = 2 * time.Second

// ChangedOnDisk reports whether the file on disk is no longer what f holds.
// It reads the file only if date or size differ or the date is too fresh to tell, so it
// may be called whenever the window gains focus. A file that is gone has not changed.
func (f *File) ChangedOnDisk() (bool, error) {
	if f.path == "" {
		return false, nil
	}
	info, err := os.Stat(f.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	case err != nil:
		return false, flaw.New("looking for changes: %v", err)
	case info.Size() == f.stamp.Size && info.ModTime().Equal(f.stamp.Modified) && f.stamp.taken.Sub(f.stamp.Modified) > coarsest:
		return false, nil
	}
	_, now, err := read(f.path)
	if err != nil {
		return false, flaw.New("looking for changes: %v", err)
	}
	return !now.same(f.stamp), nil
}
