package tubpage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/show/say"
	"ripplewright/ui/page"
)

// The two views of a label, as their switch names them.
const (
	panelView say.Message = "Panel, names and claims"
	wholeView say.Message = "The whole label of a tub"
)

// beside is a page that shows one of two views.
type beside struct {
	page.Page // the panel's
	whole     *View
	which     *widget.RadioGroup
	stack     *fyne.Container
	object    fyne.CanvasObject
}

// Beside puts the view beside the page of the panel, a switch over both.
func Beside(panel page.Page, whole *View) page.Page {
	b := &beside{Page: panel, whole: whole}
	b.which = page.Choice(func() { b.Show() }, panelView.String(), wholeView.String())
	b.which.Horizontal = true
	b.stack = container.NewStack(panel.Object(), whole.Object())
	whole.Object().Hide()
	b.object = container.NewBorder(b.which, nil, nil, nil, b.stack)
	return b
}

// Object implements page.Page.
func (b *beside) Object() fyne.CanvasObject { return b.object }

// Show implements page.Page.
func (b *beside) Show() {
	if b.which.Selected == wholeView.String() {
		b.Page.Leave()
		b.Page.Object().Hide()
		b.whole.Object().Show()
		b.whole.Show()
		return
	}
	b.whole.Leave()
	b.whole.Object().Hide()
	b.Page.Object().Show()
	b.Page.Show()
}

// Leave implements page.Page.
func (b *beside) Leave() {
	b.Page.Leave()
	b.whole.Leave()
}
