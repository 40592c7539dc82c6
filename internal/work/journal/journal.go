// Package journal keeps unsaved work in a folder of its maker's, so that an end that
// nobody asked for costs seconds.
//
// Each window writes one page, in the form of a design file with its circumstances in
// comments before it. While the window lives it holds a lock beside the page; a page
// that nobody holds was left by a window that was killed, and waits for an answer.
// A page is replaced whole or not at all.
package journal

import (
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/headed"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/work/atomicfile"
)

// Page is what one window has not saved.
type Page struct {
	Path string            // of the design's file, "" where it has none
	Read [sha256.Size]byte // the hash of that file as the window has last read or written it
	At   time.Time         // of the last change; seconds count
	Text []byte            // the design, as its file would say it
}

// Folder is where the pages of all windows are.
type Folder struct{ dir string }

// At returns the journal in the folder dir, which need not be there yet; "" keeps
// nothing.
func At(dir string) *Folder { return &Folder{dir} }

// ErrNowhere says that the system names no folder to keep work in.
var ErrNowhere = flaw.New("this computer names no folder to keep it in")

const (
	pageEnd  = ".yaml"
	lockEnd  = ".lock"
	idLength = 16
	keyPath  = "unsaved work of"
	keyRead  = "as last read"
	keyAt    = "changed"
)

// mostBytes is how long a page may be: a design with a path of any length.
const mostBytes = yamltext.MaxSize + 64<<10

var (
	ownFile = regexp.MustCompile(`^([0-9a-f]{16})(\.yaml|\.lock)$`)
	ownTemp = regexp.MustCompile(`^\.([0-9a-f]{16})\.yaml\.[0-9a-f]{16}\.tmp$`)
)

// Writer writes the page of one window. Its methods are for one goroutine at a time.
type Writer struct {
	path string // of the page
	lock claimed
}

// Open begins a page, which is not there before the first Keep.
func (f *Folder) Open() (*Writer, error) {
	if f.dir == "" {
		return nil, ErrNowhere
	}
	if err := os.MkdirAll(f.dir, 0o700); err != nil {
		return nil, err
	}
	var id [idLength / 2]byte
	if _, err := rand.Read(id[:]); err != nil {
		return nil, err
	}
	path := filepath.Join(f.dir, hex.EncodeToString(id[:])+pageEnd)
	lock, err := claim(lockOf(path))
	if err != nil {
		return nil, err
	}
	return &Writer{path, lock}, nil
}

func lockOf(page string) string { return strings.TrimSuffix(page, pageEnd) + lockEnd }

// Path returns where the page is: a design file that can be opened as any other.
func (w *Writer) Path() string { return w.path }

// Keep makes p the page, and has it on the disk when it returns. After an error the
// page is as it was.
func (w *Writer) Keep(p Page) error {
	if err := os.MkdirAll(filepath.Dir(w.path), 0o700); err != nil {
		return err
	}
	return atomicfile.Write(w.path, encode(p))
}

// Clear takes the page away: its work is saved, or its maker has let it go.
func (w *Writer) Clear() error { return gone(os.Remove(w.path)) }

// Close lets go of the page, which stays where it is if it was not cleared.
func (w *Writer) Close() { w.lock.release() }

func gone(err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

func encode(p Page) []byte {
	return headed.Put(p.Text, headed.Word{Key: keyPath, Value: p.Path},
		headed.Word{Key: keyRead, Value: hex.EncodeToString(p.Read[:])},
		headed.Word{Key: keyAt, Value: p.At.UTC().Format(time.RFC3339)})
}

// Decode reads the text of a page. One whose head is lost is a design without a file.
func Decode(data []byte) Page {
	values, text, ok := headed.Take(data, keyPath, keyRead, keyAt)
	if !ok {
		return Page{Text: data}
	}
	p := Page{Path: values[0], Text: text}
	if !filepath.IsAbs(p.Path) {
		p.Path = ""
	}
	if hash, err := hex.DecodeString(values[1]); err == nil && len(hash) == len(p.Read) {
		copy(p.Read[:], hash)
	}
	if at, err := time.Parse(time.RFC3339, values[2]); err == nil {
		p.At = at
	}
	return p
}

// Left is a page whose window is gone.
type Left struct {
	Page
	path string
}

// Waiting returns the pages whose windows are gone, the latest first, and clears away
// what else those have left here and beside the designs that they were writing.
func (f *Folder) Waiting() []Left {
	if f.dir == "" {
		return nil
	}
	entries, err := os.ReadDir(f.dir)
	if err != nil {
		return nil
	}
	sweepOpened(f.dir, entries)
	var ids []string
	for _, e := range entries {
		for _, own := range [...]*regexp.Regexp{ownFile, ownTemp} {
			if m := own.FindStringSubmatch(e.Name()); m != nil && !slices.Contains(ids, m[1]) {
				ids = append(ids, m[1])
			}
		}
	}
	var list []Left
	for _, id := range ids {
		if left, ok := look(filepath.Join(f.dir, id+pageEnd)); ok {
			list = append(list, left)
		}
	}
	slices.SortFunc(list, func(a, b Left) int { return b.At.Compare(a.At) })
	return list
}

// look reads a page unless a window holds it.
func look(path string) (Left, bool) {
	lock, err := claim(lockOf(path))
	if err != nil {
		return Left{}, false
	}
	defer lock.release()
	atomicfile.Sweep(path)
	data, info, err := atomicfile.Read(path, mostBytes)
	if err != nil {
		return Left{}, false
	}
	left := Left{Decode(data), path}
	if left.At.IsZero() {
		left.At = info.ModTime()
	}
	if left.Path != "" {
		atomicfile.Sweep(left.Path)
	}
	return left, true
}

// Take makes a page that was left this window's own, in place of what it has: it
// stays until it is cleared. The error may say that another window has taken it.
func (w *Writer) Take(l Left) error {
	lock, err := claim(lockOf(l.path))
	if err != nil {
		return err
	}
	defer lock.release()
	return os.Rename(l.path, w.path)
}

// Forget takes away a page that was left.
func (f *Folder) Forget(l Left) error {
	lock, err := claim(lockOf(l.path))
	if err != nil {
		return err
	}
	defer lock.release()
	return gone(os.Remove(l.path))
}

// Where returns the path of a page that was left.
func (l Left) Where() string { return l.path }
