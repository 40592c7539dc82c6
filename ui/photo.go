package ui

import (
	"ripplewright/internal/desk/cutphoto"
	"ripplewright/internal/matter/ripple"
	"ripplewright/ui/notebookpage"
	"ripplewright/ui/photodialog"
)

// readPhoto has a photograph marked and measured, and noted in the batch.
func (w *Window) readPhoto(notes *notebookpage.Page) {
	w.pickPicture(func(path string) {
		photodialog.Show(w, photodialog.Setup{Told: w.event, Note: func(a *cutphoto.Answer, view ripple.View) {
			notes.Noted(a.Cut(view), path)
		}}, path)
	})
}
