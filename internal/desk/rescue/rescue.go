// Package rescue keeps reports of what went wrong in the program. The work itself is
// in the journal.
package rescue

import (
	"path/filepath"
	"time"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/userdata"
)

// A Folder keeps reports.
type Folder struct{ dir string }

// At returns the folder at dir, which need not be there yet; "" keeps nothing.
func At(dir string) *Folder { return &Folder{dir} }

var errNowhere = flaw.New("this computer names no folder to keep it in")

// Report writes a report and returns its path.
func (f *Folder) Report(at time.Time, text string) (string, error) {
	if f.dir == "" {
		return "", errNowhere
	}
	path := filepath.Join(f.dir, "report "+at.Format("2006-01-02 150405")+".txt")
	return path, userdata.Write(path, "report", []byte(text))
}
