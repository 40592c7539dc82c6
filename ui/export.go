package ui

import (
	"errors"
	"path/filepath"
	"strings"

	"ripplewright/internal/desk/mishap"
)

// Export implements page.Host. The file dialog asks before a file is replaced.
func (w *Window) Export(name string, write func(path string) error) {
	w.choosePath(fileName(name), filepath.Ext(name), func(path string) {
		w.exportTo(path, write)
	})
}

func (w *Window) exportTo(path string, write func(path string) error) {
	w.Say("Writing " + path + " …")
	mishap.Go(func() {
		_, err := mishap.Answer(func() (none struct{}, err error) { return none, write(path) })
		w.Post(func() {
			if err != nil {
				w.Say("Not written: " + path)
				if !errors.Is(err, mishap.ErrCaught) { // the net says that
					w.problem(err)
				}
				return
			}
			w.Say("Wrote " + path)
			w.event("exported %s", path)
		})
	})
}

// fileName is name without what a file system or a dialog would stumble over.
func fileName(name string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) {
			return '-'
		}
		return r
	}, name)
}
