package raster

import (
	"context"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/draw"
)

// written is the picture of one text, 100 by 20 units at 3 pixels each.
func written(t *testing.T, text draw.Text) []uint8 {
	t.Helper()
	text.At, text.Size, text.Colour = draw.Point{X: 2, Y: 15}, 12, draw.RGB(0)
	d := &draw.List{W: 100, H: 20}
	d.Write(text)
	img, _, err := Pages(context.Background(), []*draw.List{d}, 3)
	require.NoError(t, err)
	return img.Pix
}

// A name of 10,000 letters once asked the rasterizer for more than it can hold.
func TestATextLongerThanThePictureIsCutAtItsEdge(t *testing.T) {
	long := written(t, draw.Text{S: strings.Repeat("x", 100000), Rise: draw.Baseline})
	assert.Equal(t, written(t, draw.Text{S: strings.Repeat("x", 40), Rise: draw.Baseline}), long)
	assert.NotEqual(t, written(t, draw.Text{S: strings.Repeat("x", 10), Rise: draw.Baseline}), long)
}

func TestALetterWithoutAGlyphIsTheMark(t *testing.T) {
	assert.Equal(t, written(t, draw.Text{S: "a□b"}), written(t, draw.Text{S: "a柚b"}))
	assert.NotEqual(t, written(t, draw.Text{S: "a b"}), written(t, draw.Text{S: "a柚b"}))
}

func TestPagesStandOneUnderTheOther(t *testing.T) {
	var lists []*draw.List
	for _, c := range []draw.Colour{draw.RGB(0xff0000), draw.RGB(0x0000ff)} {
		d := &draw.List{W: 10, H: 8}
		d.Box(draw.Rect{X0: -3, Y0: 2, X1: 20, Y1: 30}, c) // beyond its page
		lists = append(lists, d)
	}
	whole, each, err := Pages(context.Background(), lists, 1)
	require.NoError(t, err)
	require.Len(t, each, 2)
	assert.Equal(t, color.RGBA{255, 0, 0, 255}, whole.RGBAAt(5, 7))
	assert.Equal(t, color.RGBA{0xd0, 0xd0, 0xd0, 255}, whole.RGBAAt(5, 8), "the edge of the page")
	assert.Equal(t, color.RGBA{255, 255, 255, 255}, whole.RGBAAt(5, 9), "the first page stays on its own")
	assert.Equal(t, color.RGBA{0, 0, 255, 255}, each[1].At(5, 2))
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, _, err = Pages(ctx, lists, 1)
	assert.ErrorIs(t, err, context.Canceled)
}

// A text turned by half a turn is the picture of the upright one, upside down.
func TestATurnedTextIsTheUprightOneTurned(t *testing.T) {
	at := func(turn float64) *image.RGBA {
		d := &draw.List{W: 60, H: 60}
		d.Write(draw.Text{At: draw.Point{X: 30, Y: 30}, S: "Quay", Size: 12, Rise: draw.Baseline, Turn: turn})
		d.Texts[0].Colour = draw.RGB(0)
		img, _, err := Pages(context.Background(), []*draw.List{d}, 2)
		require.NoError(t, err)
		return img
	}
	upright, turned := at(0), at(math.Pi)
	off := 0
	for y := range 120 {
		for x := range 120 {
			a, b := upright.RGBAAt(x, y).R, turned.RGBAAt(119-x, 119-y).R
			if max(a, b)-min(a, b) > 8 {
				off++
			}
		}
	}
	assert.Zero(t, off)
	assert.NotEqual(t, upright.Pix, turned.Pix)
}
