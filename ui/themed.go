package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// themed is a rectangle that takes its colour from the theme.
type themed struct {
	widget.BaseWidget
	rect *canvas.Rectangle
	name fyne.ThemeColorName
}

// CreateRenderer implements fyne.Widget.
func (t *themed) CreateRenderer() fyne.WidgetRenderer {
	t.ExtendBaseWidget(t)
	return &themedRenderer{t}
}

type themedRenderer struct{ t *themed }

func (r *themedRenderer) Layout(s fyne.Size)           { r.t.rect.Resize(s) }
func (r *themedRenderer) MinSize() fyne.Size           { return r.t.rect.MinSize() }
func (r *themedRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.t.rect} }
func (r *themedRenderer) Destroy()                     {}
func (r *themedRenderer) Refresh() {
	r.t.rect.FillColor = theme.ColorForWidget(r.t.name, r.t)
	r.t.rect.Refresh()
}
