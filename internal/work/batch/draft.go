package batch

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"ripplewright/internal/work/atomicfile"
)

// Drafts is a folder of its maker's that keeps what is noted of batches and not written
// down yet, one for each design, so that no crash costs a reading.
type Drafts struct{ dir string }

// DraftsAt returns the drafts in the folder dir, which need not be there yet; "" keeps
// none.
func DraftsAt(dir string) *Drafts { return &Drafts{dir} }

// unnamed stands in the file for a batch that has no name yet.
const unnamed = "not written down"

func (d *Drafts) of(design string) string {
	hash := sha256.Sum256([]byte(design))
	return filepath.Join(d.dir, hex.EncodeToString(hash[:8])+".yaml")
}

// Keep makes b the draft of the design file of that path; with nothing noted there is
// none any more. What no file of batches could hold is left out.
func (d *Drafts) Keep(design string, b Batch) error {
	if d.dir == "" || design == "" {
		return nil
	}
	path := d.of(design)
	if b.Blank() {
		if err := os.Remove(path); !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		return nil
	}
	if b.ID == "" {
		b.ID = unnamed
	}
	for range entries {
		at, wrong := b.Problem()
		if wrong == nil {
			break
		}
		e, _ := EntryAt(at)
		e.Set(&b, "")
	}
	text, err := Encode(b)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(d.dir, 0o700); err != nil {
		return err
	}
	return atomicfile.Write(path, text)
}

// Of returns the draft of the design file of that path, the zero Batch where there is
// none that can be read.
func (d *Drafts) Of(design string) Batch {
	if d.dir == "" || design == "" {
		return Batch{}
	}
	path := d.of(design)
	atomicfile.Sweep(path)
	n, err := Load(path)
	if err != nil || len(n.Batches) != 1 {
		return Batch{}
	}
	b := n.Batches[0]
	if b.ID == unnamed {
		b.ID = ""
	}
	return b
}

// Blank reports whether nothing is noted in b.
func (b *Batch) Blank() bool {
	for _, f := range entries {
		if f.Path != "batch" && f.Text(b) != "" {
			return false
		}
	}
	return true
}
