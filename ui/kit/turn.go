package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
)

// NewLeaves lays objects on each other like the leaves of a book, open at the
// first. Those below are hidden and cost nothing, but they lie in the window,
// since a change of the theme reaches only what does.
func NewLeaves(leaves ...fyne.CanvasObject) *fyne.Container {
	for _, o := range leaves[1:] {
		o.Hide()
	}
	return container.New(leafLayout{}, leaves...)
}

// Turn opens the book at a leaf of it.
func Turn(book *fyne.Container, leaf fyne.CanvasObject) {
	for _, o := range book.Objects {
		if o != leaf && o.Visible() {
			o.Hide()
		}
	}
	leaf.Move(fyne.NewPos(0, 0))
	leaf.Resize(book.Size())
	leaf.Show()
	canvas.Refresh(book)
}

// leafLayout gives all the room to the leaf that is open, and none to what is
// not looked at.
type leafLayout struct{}

// Layout implements fyne.Layout.
func (leafLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		if o.Visible() {
			o.Move(fyne.NewPos(0, 0))
			o.Resize(size)
		}
	}
}

// MinSize implements fyne.Layout.
func (leafLayout) MinSize(objects []fyne.CanvasObject) fyne.Size {
	for _, o := range objects {
		if o.Visible() {
			return o.MinSize()
		}
	}
	return fyne.Size{}
}
