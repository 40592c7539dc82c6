package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"github.com/stretchr/testify/assert"
)

// asked counts how often an object is asked for its least size.
type asked struct {
	widget.Label
	n int
}

func (a *asked) MinSize() fyne.Size { a.n++; return a.Label.MinSize() }

func TestAKeptSizeIsAskedForAgainWhenSomethingChanges(t *testing.T) {
	test.NewTempApp(t)
	a := &asked{}
	a.Text = "a line"
	c := container.New(keep(layout.NewVBoxLayout()), a)
	c.Resize(fyne.NewSize(200, 200))
	one := c.MinSize()
	before := a.n
	c.MinSize()
	assert.Equal(t, before, a.n, "kept")

	c.Add(widget.NewLabel("another"))
	two := c.MinSize()
	assert.Greater(t, two.Height, one.Height, "one came")
	a.Hide()
	c.Refresh()
	assert.Less(t, c.MinSize().Height, two.Height, "one went")
	a.Show()
	a.Text = "a line that is a good deal longer than it was before"
	c.Refresh()
	assert.Greater(t, c.MinSize().Width, two.Width, "one grew")
}
