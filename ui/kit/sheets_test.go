package kit_test

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"

	"ripplewright/ui/kit"
)

// a4 is a picture of so many pages of A4.
func a4(pages int) []kit.Sheet {
	var out []kit.Sheet
	for range pages {
		out = append(out, kit.Sheet{Image: image.NewRGBA(image.Rect(0, 0, 210, 297)), WidthMM: 210, HeightMM: 297})
	}
	return out
}

func TestSheetsTellHowFineTheirPicturesMustBe(t *testing.T) {
	s := kit.NewSheetView()
	told := 0
	s.OnFit = func() { told++ }
	assert.Zero(t, s.DPI(210, 297), "before it has a size")
	window(t, s, 424, 700)
	s.ShowSheets(a4(2))
	assert.Positive(t, told)
	assert.InDelta(t, 400/210.*25.4, s.DPI(210, 297), 0.5, "as wide as the view but its edges")
	told = 0
	s.ShowFit(150)
	assert.Equal(t, 1, told)
	assert.InDelta(t, 1.5*96, s.DPI(210, 297), 0.5)
	s.ShowFit(150)
	assert.Equal(t, 1, told, "nothing has changed")
	s.ShowFit(kit.FitPage)
	assert.InDelta(t, 400/210.*25.4, s.DPI(210, 297), 0.5, "the width is what limits it")
}

func TestTwoWholeSheetsStandBesideEachOtherWhereTheyCan(t *testing.T) {
	s := kit.NewSheetView()
	window(t, s, 970, 720)
	s.ShowSheets(a4(1))
	s.ShowFit(kit.FitPage)
	assert.InDelta(t, 696/297.*25.4, s.DPI(210, 297), 0.5, "as high as the view")
	s.ShowSheets(a4(2))
	assert.InDelta(t, 466/210.*25.4, s.DPI(210, 297), 0.5, "half as wide as the view")
	key(s, fyne.KeyEnd)
	assert.Zero(t, s.Offset().Y, "there is nothing below")
}

func TestSheetsScrollByKeys(t *testing.T) {
	s := kit.NewSheetView()
	window(t, s, 424, 300)
	s.ShowSheets(a4(2))
	at := func(name fyne.KeyName) fyne.Position { key(s, name); return s.Offset() }
	step := at(fyne.KeyDown).Y
	assert.Positive(t, step)
	assert.Greater(t, at(fyne.KeyPageDown).Y, 3*step)
	end := at(fyne.KeyEnd).Y
	assert.Equal(t, end, at(fyne.KeyDown).Y, "the end is the end")
	assert.Less(t, at(fyne.KeyPageUp).Y, end)
	assert.Zero(t, at(fyne.KeyHome).Y)
	assert.Zero(t, at(fyne.KeyUp).Y)
	assert.Zero(t, at(fyne.KeyRight).X, "as wide as the view: nothing at the right")
	s.ShowFit(200)
	assert.Positive(t, at(fyne.KeyRight).X)
	assert.Zero(t, at(fyne.KeyLeft).X)
	key(s, fyne.KeyPageDown)
	was := s.Offset().Y
	s.ShowSheets(a4(2))
	assert.Equal(t, was, s.Offset().Y, "new pictures leave it where it was")
}
