// Package backups keeps the last saves of every design in a folder of its maker's, each
// in the form of a design file with its circumstances in comments before it.
package backups

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"
	"unicode/utf8"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/headed"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/atomicfile"
)

// Most is how many saves of a design are kept.
const Most = 10

// Folder is where the saves of all designs are.
type Folder struct{ dir string }

// At returns the backups in the folder dir, which need not be there yet; "" keeps none.
func At(dir string) *Folder { return &Folder{dir} }

// Save is what a design's file held once.
type Save struct {
	At   time.Time
	Path string // of the backup: a design file that can be opened as any other
}

// Of names: a save by its moment, so that they sort; its ending is a design's.
const (
	stamp   = "2006-01-02 150405.000"
	ending  = ".yaml"
	keyOf   = "save of"
	keyWhen = "saved"
)

// mostBytes is how long a backup may be: a design with a path of any length.
const mostBytes = yamltext.MaxSize + 64<<10

// mostName is how many bytes of a design's name its folder has.
const mostName = 60

// ErrNowhere says that the system names no folder to keep backups in.
var ErrNowhere = flaw.New("this computer names no folder to keep backups in")

// Keep adds text as a save of the design file at path, unless it is what the latest
// one holds, and lets go of the oldest beyond Most.
func (f *Folder) Keep(path string, text []byte, at time.Time) error {
	if f.dir == "" {
		return ErrNowhere
	}
	dir := f.of(path)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	saves := list(dir)
	if len(saves) > 0 {
		if last, err := saves[0].Text(); err == nil && bytes.Equal(last, text) {
			return nil
		}
		if !at.After(saves[0].At) { // two in a moment, or a clock set back
			at = saves[0].At.Add(time.Millisecond)
		}
	}
	name := filepath.Join(dir, at.UTC().Format(stamp)+ending)
	data := headed.Put(text, headed.Word{Key: keyOf, Value: path}, headed.Word{Key: keyWhen, Value: at.UTC().Format(time.RFC3339)})
	if err := atomicfile.Write(name, data); err != nil {
		return err
	}
	return drop(saves, Most-1)
}

// drop lets go of the oldest saves, so that at most that many stay.
func drop(saves []Save, most int) error {
	for _, s := range saves[min(len(saves), most):] {
		if err := os.Remove(s.Path); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	return nil
}

// Of returns the saves of the design file at path, the latest first.
func (f *Folder) Of(path string) []Save {
	if f.dir == "" {
		return nil
	}
	saves := list(f.of(path))
	_ = drop(saves, Most) // a saver that was killed may have left one more
	return saves[:min(len(saves), Most)]
}

// of is the folder of a design: its name, for people, and a hash of where it is.
func (f *Folder) of(path string) string {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	if abs, err := filepath.Abs(path); err == nil {
		path = abs
	}
	hash := sha256.Sum256([]byte(path))
	name := filepath.Base(path)
	for len(name) > mostName {
		_, n := utf8.DecodeLastRuneInString(name)
		name = name[:len(name)-n]
	}
	return filepath.Join(f.dir, name+" "+hex.EncodeToString(hash[:6]))
}

// list reads a folder, and clears away what killed savers have left there.
func list(dir string) []Save {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil
	}
	var saves []Save
	for _, e := range entries {
		at, err := time.Parse(stamp+ending, e.Name())
		if err == nil && e.Type().IsRegular() {
			saves = append(saves, Save{at, filepath.Join(dir, e.Name())})
			continue
		}
		if name := e.Name(); len(name) > len(stamp+ending) && name[0] == '.' {
			atomicfile.Sweep(filepath.Join(dir, name[1:1+len(stamp+ending)]))
		}
	}
	slices.Reverse(saves) // from the latest
	return saves
}

// Text returns what the design's file held.
func (s Save) Text() ([]byte, error) {
	data, _, err := atomicfile.Read(s.Path, mostBytes)
	if err != nil {
		return nil, err
	}
	_, text, _ := headed.Take(data, keyOf, keyWhen)
	return text, nil
}
