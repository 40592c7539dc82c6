package report

import (
	"encoding/json"
	"io"
	"time"

	"ripplewright/internal/show/say"
	"ripplewright/internal/work/versions"
)

// Versions are those of a design.
type Versions struct {
	File, Folder string
	List         []versions.Version
}

// WriteText writes a line for each.
func (v Versions) WriteText(w io.Writer) error {
	p := &page{w: w}
	if len(v.List) == 0 {
		p.line("%s", say.NoVersionOf(v.File))
	}
	for _, x := range v.List {
		p.line("%s", say.VersionTitle(x.Number, x.At, x.Note, x.Batch))
		p.line("    %s", x.Path)
	}
	return p.err
}

// MarshalJSON writes file, folder and versions: number, at, note, batch, path.
func (v Versions) MarshalJSON() ([]byte, error) {
	list := []dict{}
	for _, x := range v.List {
		list = append(list, dict{"number": x.Number, "at": x.At.Format(time.RFC3339), "note": x.Note, "batch": x.Batch, "path": x.Path})
	}
	return json.Marshal(dict{"file": v.File, "folder": v.Folder, "versions": list})
}
