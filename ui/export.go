package ui

import (
	"path/filepath"
	"strings"
)

// Export implements page.Host. The file dialog asks before a file is replaced.
func (w *Window) Export(name string, write func(path string) error) {
	w.choosePath(fileName(name), filepath.Ext(name), func(path string) {
		w.Say("Writing " + path + " …")
		go func() {
			err := write(path)
			w.Post(func() {
				if err != nil {
					w.Say("Not written: " + path)
					w.problem(err)
					return
				}
				w.Say("Wrote " + path)
				w.event("exported %s", path)
			})
		}()
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
