package librarypage

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/desk/larder"
	"ripplewright/internal/food/ingredient"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

// ItemOf is an ingredient in a finder.
func ItemOf(in *ingredient.Ingredient) kit.FinderItem {
	title, second := larder.Titled(in)
	return kit.FinderItem{ID: in.ID, Title: title, Subtitle: second, Group: larder.GroupName(in.Group)}
}

// newFigureTable is a table of a record's figures, no wider than reads well.
func newFigureTable() (*kit.Figures, fyne.CanvasObject) {
	t := kit.NewFigures(larder.FigureHeads()...)
	return t, container.New(&capped{em: 34, inset: true}, t)
}

// showFigures puts the figures of a record into the table.
func showFigures(t *kit.Figures, in *ingredient.Ingredient) {
	t.ShowFigures(larder.FigureRows(page.Reads, in))
}

// told are sections under their headings.
func told(sections []larder.Section) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, s := range sections {
		out = append(out, page.Heading(s.Title))
		for _, l := range s.Lines {
			out = append(out, page.Prose(l))
		}
	}
	return out
}

// capped gives its object the width there is, up to so many times the text's
// size, and sets it in as far as a label's text if asked.
type capped struct {
	em    float32
	inset bool
}

func (c *capped) left() float32 {
	if c.inset {
		return theme.InnerPadding()
	}
	return 0
}

// Layout implements fyne.Layout.
func (c *capped) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		o.Move(fyne.NewPos(c.left(), 0))
		o.Resize(fyne.NewSize(max(o.MinSize().Width, min(size.Width-c.left(), c.em*theme.TextSize())), size.Height))
	}
}

// MinSize implements fyne.Layout.
func (c *capped) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().AddWidthHeight(c.left(), 0)
}

// atLeast gives its object a width of so many times the text's size or more.
type atLeast struct{ em float32 }

// Layout implements fyne.Layout.
func (a *atLeast) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	objects[0].Resize(size)
}

// MinSize implements fyne.Layout.
func (a *atLeast) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize().Max(fyne.NewSize(a.em*theme.TextSize(), 0))
}
