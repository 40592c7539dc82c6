// Package versions keeps what a design once said, with a note, in a folder beside its
// file: a plain design file for each version, with its circumstances in comments before
// it. So whatever reads or compares designs reads and compares versions.
package versions

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/headed"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/designfile"
)

// Version is what a design once said.
type Version struct {
	Number int // from 1, in the order of their moments
	At     time.Time
	Note   string // one line
	Batch  string // the batch that it was kept for, "" for none
	Path   string // a design file that can be opened as any other

	text []byte
}

// Text returns the design as its file said it.
func (v Version) Text() []byte { return v.text }

// Design reads the version, with the lines' ingredients held against lib. The error
// names file, line and key.
func (v Version) Design(lib *ingredient.Library) (*designfile.File, error) {
	return designfile.DecodeWith(v.Path, v.text, lib)
}

const (
	stamp   = "2006-01-02-150405"
	ending  = ".yaml"
	beside  = ".versions"
	keyKept = "version kept"
	keyNote = "note"
	keyOf   = "for batch"

	// MostNote is how many letters of a note are kept.
	MostNote = 200
	// Most is how many versions of a design are read.
	Most = 2000
)

// mostBytes is how long a version may be: a design with its note.
const mostBytes = yamltext.MaxSize + 16<<10

// own are names of versions; a second one in a second has a number.
var own = regexp.MustCompile(`^(\d{4}-\d\d-\d\d-\d{6})(-\d{1,3})?\.yaml$`)

// Beside returns the folder in which the versions of the design file at path are.
func Beside(path string) string {
	return strings.TrimSuffix(path, filepath.Ext(path)) + beside
}

// DesignOf returns the path of the design that the file at path is a version of, path
// itself for one that is none.
func DesignOf(path string) string {
	folder := filepath.Dir(path)
	if filepath.Ext(folder) != beside {
		return path
	}
	return strings.TrimSuffix(folder, beside) + filepath.Ext(path)
}

// Keep keeps text, what the design at path says or is to say, as a version.
func Keep(path string, text []byte, note, batch string, at time.Time) error {
	if len(text) > yamltext.MaxSize {
		return flaw.New("the design is longer than %d bytes", yamltext.MaxSize)
	}
	dir := Beside(path)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return flaw.New("keeping a version: %v", err)
	}
	data := headed.Put(text, headed.Word{Key: keyKept, Value: at.Format(time.RFC3339)},
		headed.Word{Key: keyNote, Value: oneLine(note)}, headed.Word{Key: keyOf, Value: oneLine(batch)})
	name := filepath.Join(dir, at.UTC().Format(stamp))
	for n := 1; n < 999; n++ {
		file := name + ending
		if n > 1 {
			file = fmt.Sprintf("%s-%03d%s", name, n, ending)
		}
		if _, err := os.Lstat(file); errors.Is(err, fs.ErrNotExist) {
			return atomicfile.Write(file, data)
		}
	}
	return flaw.New("keeping a version: there are too many of this second")
}

// oneLine is a note without line ends and beyond its most letters.
func oneLine(text string) string {
	r := []rune(strings.Join(strings.Fields(text), " "))
	return string(r[:min(len(r), MostNote)])
}

// List returns the versions of the design file at path, the oldest first. A file in
// their folder that is none is passed over; one without its head has no note.
func List(path string) ([]Version, error) {
	dir := Beside(path)
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, flaw.New("versions: %v", err)
	}
	var list []Version
	for _, e := range entries {
		m := own.FindStringSubmatch(e.Name())
		if m == nil || !e.Type().IsRegular() {
			continue
		}
		if len(list) == Most {
			return nil, flaw.New("versions: %s holds more than %d; move older ones elsewhere", dir, Most)
		}
		v := Version{Path: filepath.Join(dir, e.Name())}
		data, _, err := atomicfile.Read(v.Path, mostBytes)
		if err != nil {
			return nil, flaw.New("versions: %v", err)
		}
		v.At, _ = time.Parse(stamp, m[1])
		v.read(data)
		list = append(list, v)
	}
	slices.SortStableFunc(list, func(a, b Version) int {
		if c := a.At.Compare(b.At); c != 0 {
			return c
		}
		return strings.Compare(strings.TrimSuffix(a.Path, ending), strings.TrimSuffix(b.Path, ending))
	})
	for i := range list {
		list[i].Number = i + 1
	}
	return list, nil
}

// read takes the head off the text of a version.
func (v *Version) read(data []byte) {
	values, text, ok := headed.Take(data, keyKept, keyNote, keyOf)
	v.text = text
	if !ok {
		return
	}
	if at, err := time.Parse(time.RFC3339, values[0]); err == nil {
		v.At = at
	}
	v.Note, v.Batch = oneLine(values[1]), oneLine(values[2])
}

// UnknownError says that there is no version of a number.
type UnknownError struct{ Number, Last int }

// Words are what is wrong.
func (e *UnknownError) Words() error {
	if e.Last == 0 {
		return flaw.New("there is no version %d: none is kept", e.Number)
	}
	return flaw.New("there is no version %d: they go from 1 to %d", e.Number, e.Last)
}

func (e *UnknownError) Error() string { return e.Words().Error() }

// Find returns the version of that number.
func Find(list []Version, number int) (Version, error) {
	if number < 1 || number > len(list) {
		return Version{}, &UnknownError{number, len(list)}
	}
	return list[number-1], nil
}

// ForBatch keeps text as the version that a batch was made by, unless the latest one
// says the same.
func ForBatch(path string, text []byte, batch string, at time.Time) error {
	list, err := List(path)
	if err != nil {
		return err
	}
	if n := len(list); n > 0 && schemaline.Same(list[n-1].text, text) {
		return nil
	}
	return Keep(path, text, "", batch, at)
}
