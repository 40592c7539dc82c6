package ui

import (
	"path/filepath"
	"strings"

	"ripplewright/internal/atomicfile"
	"ripplewright/internal/label"
	"ripplewright/internal/report"
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

// exportLabel writes the label's figures as text.
func (w *Window) exportLabel(region label.Region) {
	l, err := label.For(w.Result().Food(w.Design()), region, label.Options{})
	if err != nil {
		w.problem(err)
		return
	}
	w.Export("label-"+string(region)+".txt", func(path string) error {
		var text strings.Builder
		if err := (report.Label{Label: l}).WriteText(&text); err != nil {
			return err
		}
		return atomicfile.Write(path, []byte(text.String()))
	})
}
