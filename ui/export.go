package ui

import (
	"errors"
	"path/filepath"

	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/show/say"
)

// Export implements page.Host. The file dialog asks before a file is replaced.
func (w *Window) Export(name string, write func(path string) error) {
	w.choosePath(name, filepath.Ext(name), func(path string) {
		w.exportTo(path, write)
	})
}

func (w *Window) exportTo(path string, write func(path string) error) {
	w.Say(say.Writing(path))
	mishap.Go(func() {
		_, err := mishap.Answer(func() (none struct{}, err error) { return none, write(path) })
		w.Post(func() {
			if err != nil {
				w.Say(say.NotWritten(path))
				if !errors.Is(err, mishap.ErrCaught) { // the net says that
					w.problem(err)
				}
				return
			}
			w.Say(say.Wrote(path))
			w.event("exported %s", path)
		})
	})
}
