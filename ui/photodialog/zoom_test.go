package photodialog

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/photo"
)

// Magnified, what is under the pointer stays there, a mark is set between the pixels of
// the small picture, and what is shown is the picture's own.
func TestThePictureIsMagnifiedToSetAMark(t *testing.T) {
	d := opened(t)
	d.place(t)
	m := d.marks
	whole := m.image.Image
	m.choose(1)
	pointer := m.onScreen(photo.Point{X: 300, Y: 250})
	for range 4 {
		m.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: pointer}, Scrolled: fyne.NewDelta(0, 10)})
	}
	require.Greater(t, m.times, float32(4))
	at := m.onScreen(photo.Point{X: 300, Y: 250})
	assert.InDelta(t, pointer.X, at.X, 0.5)
	assert.InDelta(t, pointer.Y, at.Y, 0.5)
	require.NotEqual(t, whole, m.image.Image)

	// The shown part is of the picture: the pixel under the pointer is the picture's.
	corner := m.image.Position()
	shown := m.image.Image.At(int(at.X-corner.X), int(at.Y-corner.Y))
	r, g, b, _ := color.RGBAModel.Convert(d.opened.Picture.At(300, 250)).RGBA()
	r2, g2, b2, _ := shown.RGBA()
	for i, v := range []uint32{r, g, b} {
		assert.InDelta(t, float64(v>>8), float64([]uint32{r2, g2, b2}[i]>>8), 40)
	}

	was := m.places[1]
	m.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	assert.InDelta(t, 1/float64(m.times), was.X-m.places[1].X, 1e-9, "less than a pixel")
	p := m.onScreen(m.places[1])
	assert.True(t, p.X >= 0 && p.Y >= 0 && p.X <= m.Size().Width && p.Y <= m.Size().Height, "the chosen mark is brought into sight")
	m.Tapped(&fyne.PointEvent{Position: pointer})
	assert.InDelta(t, float64(pointer.X), float64(m.onScreen(m.places[1]).X), 0.5, "and goes where a hand points")
	for range 20 {
		m.TypedRune('-')
	}
	assert.Equal(t, float32(1), m.times)
	assert.Equal(t, whole, m.image.Image)
	for range 20 {
		m.TypedRune('+')
	}
	assert.Equal(t, float32(mostTimes), m.times)
}

// Magnified, the mask lies over the picture as well: whether a thin ribbon was seen is judged
// there. It goes with the answer.
func TestTheMaskLiesOverTheMagnifiedPicture(t *testing.T) {
	d := opened(t)
	d.place(t)
	m := d.marks
	m.choose(5)
	for range 3 {
		m.TypedRune('+')
	}
	atFoam := func() (r, b uint32) {
		at, corner := m.onScreen(m.places[5]), m.image.Position()
		r, _, b, _ = m.image.Image.At(int(at.X-corner.X), int(at.Y-corner.Y)).RGBA()
		return r, b
	}
	plainRed, plainBlue := atFoam()
	test.Tap(d.measure)
	d.host.Until(func() bool { return d.answer != nil || len(d.events) > 1 })
	require.NotNil(t, d.answer, d.events)
	red, blue := atFoam()
	assert.Less(t, red, plainRed*9/10)
	d.changed()
	red2, blue2 := atFoam()
	assert.Equal(t, [2]uint32{plainRed, plainBlue}, [2]uint32{red2, blue2})
	assert.Greater(t, blue, red)
}
