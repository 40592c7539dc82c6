package keeping

import (
	"os"
	"path/filepath"
	"regexp"

	"ripplewright/internal/work/atomicfile"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/journal"
)

// rescued are the designs that the program kept before it had a journal.
var rescued = regexp.MustCompile(`^rescued \d{4}-\d\d-\d\d \d{6}\.yaml$`)

// Adopt makes the designs that a program before this one has rescued in the folder dir
// pages of f that wait for an answer. One that cannot be read or moved stays.
func Adopt(f *journal.Folder, dir string) {
	entries, _ := os.ReadDir(dir) // none without the folder
	for _, e := range entries {
		if rescued.MatchString(e.Name()) {
			adopt(f, filepath.Join(dir, e.Name()))
		}
	}
}

func adopt(f *journal.Folder, path string) {
	data, info, err := atomicfile.Read(path, designfile.MaxSize)
	if err != nil {
		return
	}
	if _, err := designfile.Decode(path, data); err != nil {
		return
	}
	w, err := f.Open()
	if err != nil {
		return
	}
	defer w.Close()
	if w.Keep(journal.Page{At: info.ModTime(), Text: data}) == nil {
		_ = os.Remove(path) // if it stays, it is offered twice
	}
}
