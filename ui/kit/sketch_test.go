package kit

import (
	"image"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/raster"
)

// The raster of a sketch holds the part with marks; its pixels are those of the whole.
func TestOnlyThePartWithMarksIsPainted(t *testing.T) {
	box := draw.Rect{X0: 30.5, Y0: 12, X1: 60, Y1: 20}
	s := newSketch(nil, func(d *draw.List, w, h float64) {
		if box.Dx() > 0 {
			d.Box(box, draw.RGB(0xff0000))
			d.Segment(draw.Stroke{Width: 3, Colour: draw.RGB(0xff)}, box.X0, box.Y0, box.X1, box.Y1)
		}
	})
	s.Layout(fyne.NewSize(100.4, 50))
	assert.Equal(t, fyne.NewPos(28, 9), s.raster.Position())
	assert.Equal(t, fyne.NewSize(35, 14), s.raster.Size())
	for _, scale := range []int{1, 2} {
		var p raster.Painter
		whole := p.Resize(101*scale, 50*scale)
		p.Clear(draw.Colour{})
		p.Paint(&s.drawing, float64(scale))
		got := s.paint(35*scale, 14*scale).(*image.RGBA)
		require.Equal(t, image.Rect(0, 0, 35*scale, 14*scale), got.Rect)
		inked := 0
		for y := 0; y < whole.Rect.Dy(); y++ {
			for x := 0; x < whole.Rect.Dx(); x++ {
				want, at := whole.RGBAAt(x, y), image.Pt(x-28*scale, y-9*scale)
				if want.A > 0 {
					inked++
					require.True(t, at.In(got.Rect), "pixel %d, %d lies outside", x, y)
				}
				if at.In(got.Rect) {
					require.Equal(t, want, got.RGBAAt(at.X, at.Y), "pixel %d, %d", x, y)
				}
			}
		}
		assert.Positive(t, inked)
	}

	box.X1 = 40 // while one drags it does not become smaller
	s.Refresh()
	assert.Equal(t, fyne.NewSize(35, 14), s.raster.Size())
	s.Layout(fyne.NewSize(101, 50))
	assert.Equal(t, fyne.NewSize(15, 14), s.raster.Size())

	box = draw.Rect{}
	s.Layout(fyne.NewSize(100, 50))
	assert.True(t, s.raster.Hidden, "nothing to paint")
}

// Two lines that had no room for the second are whole when they get it, where the first
// stands as it stood.
func TestLettersThatWereCutShowWhenTheyGetRoom(t *testing.T) {
	test.NewTempApp(t)
	l := NewLines(2, fyne.TextAlignLeading, theme.SizeNameText, fyne.TextStyle{})
	l.ShowText("one\ntwo")
	s := test.WidgetRenderer(l).(*sketch)
	line := l.height()
	l.Resize(fyne.NewSize(200, line))
	assert.LessOrEqual(t, s.raster.Size().Height, line+1)
	l.Resize(fyne.NewSize(200, 2*line))
	assert.Greater(t, s.raster.Size().Height, 1.5*line)
}
