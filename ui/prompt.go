package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"
)

// promptButton is one answer to a question.
type promptButton struct {
	name string
	main bool
	do   func()
}

// ask shows a dialog with its answers; each of them must hide it.
func (w *Window) ask(title string, content fyne.CanvasObject, answers ...promptButton) *dialog.CustomDialog {
	var row []fyne.CanvasObject
	for _, a := range answers {
		b := widget.NewButton(a.name, a.do)
		if a.main {
			b.Importance = widget.HighImportance
		}
		row = append(row, b)
	}
	dg := dialog.NewCustomWithoutButtons(title, content, w.win)
	dg.SetButtons(row)
	dg.Show()
	return dg
}
