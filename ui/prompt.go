package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// promptButton is one answer to a question.
type promptButton struct {
	name string
	main bool
	do   func()
}

// newPrompt is a question's text over its answers.
func newPrompt(text string, answers [3]promptButton) fyne.CanvasObject {
	row := container.NewHBox(layout.NewSpacer())
	for _, a := range answers {
		b := widget.NewButton(a.name, a.do)
		if a.main {
			b.Importance = widget.HighImportance
		}
		row.Add(b)
	}
	row.Add(layout.NewSpacer())
	return container.NewVBox(widget.NewLabel(text), row)
}
