package photodialog

import (
	"context"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/photo"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/cutphoto"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/batch"
	"ripplewright/ui/page/pagetest"
)

// desk is a dialog over a picture of the design's own cut, with its marks in the right
// places.
type desk struct {
	*reading
	host   *pagetest.Host
	raster *ripple.Raster
	events []string
	noted  *batch.Batch
}

func opened(t *testing.T) *desk {
	test.NewTempApp(t)
	d := &desk{host: pagetest.NewHost(t, market.Plain())}
	d.host.Win.Resize(fyne.NewSize(1200, 800))
	cut, err := ripple.Stir(tub.Ripple(d.host.Now))
	require.NoError(t, err)
	d.raster, err = cut.Raster(context.Background(), 600, nil)
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "cut.png")
	f, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, d.raster.Paint(tub.Style(d.host.Now))))
	require.NoError(t, f.Close())
	d.reading = show(d.host, Setup{Told: func(event string, args ...any) { d.events = append(d.events, fmt.Sprintf(event, args...)) },
		Note: func(a *cutphoto.Answer, view ripple.View) {
			d.noted = &batch.Batch{Cut: a.Cut(view)}
		}}, path)
	d.host.Until(func() bool { return d.opened != nil })
	return d
}

// place marks the whole picture, and spots that are of one phase about them.
func (d *desk) place(t *testing.T) {
	w, h := float64(d.raster.Width), float64(d.raster.Height)
	d.marks.places = cutphoto.Places{{X: 0, Y: 0}, {X: w, Y: 0}, {X: w, Y: h}, {X: 0, Y: h}}
	for i, want := range []float32{0, 1} {
		found := false
		for at := range d.raster.FoamFractions {
			x, y := at%d.raster.Width, at/d.raster.Width
			if x > 20 && y > 20 && x < d.raster.Width-20 && y < d.raster.Height-20 && d.pure(x, y, want) {
				d.marks.places[4+i], found = photo.Point{X: float64(x), Y: float64(y)}, true
				break
			}
		}
		require.True(t, found)
	}
}

func (d *desk) pure(x, y int, want float32) bool {
	const reach = 12
	for j := y - reach; j <= y+reach; j++ {
		for i := x - reach; i <= x+reach; i++ {
			if d.raster.FoamFractions[j*d.raster.Width+i] != want {
				return false
			}
		}
	}
	return true
}

func TestAPictureIsMeasuredAndNoted(t *testing.T) {
	d := opened(t)
	d.keep()
	assert.Nil(t, d.noted, "nothing is measured yet")
	d.place(t)
	test.Tap(d.measure)
	d.host.Until(func() bool { return d.answer != nil || len(d.events) > 1 })
	require.NotNil(t, d.answer, d.events)
	assert.True(t, d.table.Visible())
	assert.InDelta(t, d.answer.Computed.FoamFraction, d.answer.Reading.FoamFraction.Value, 0.02)
	assert.InEpsilon(t, d.answer.Computed.Foam.MeanMM, d.answer.Reading.FoamMeanMM.Value, 0.12)
	assert.Same(t, d.answer.Over, d.marks.image.Image, "the mask lies over the picture")
	d.keep()
	require.NotNil(t, d.noted)
	assert.True(t, d.noted.Cut.RibbonMM.Known)
	assert.Equal(t, "side", d.noted.Cut.View)
}

func TestMarksMoveByHandAndByKeys(t *testing.T) {
	d := opened(t)
	m := d.marks
	m.Resize(fyne.NewSize(600, 600))
	m.TypedRune('f')
	assert.Equal(t, 5, m.chosen)
	was := m.places[5]
	m.TypedKey(&fyne.KeyEvent{Name: fyne.KeyRight})
	m.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	assert.Equal(t, photo.Point{X: was.X + 1, Y: was.Y - 1}, m.places[5])

	from := m.onScreen(m.places[0])
	m.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: from.AddXY(-15, -10)}, Dragged: fyne.NewDelta(-15, -10)})
	m.DragEnd()
	assert.Equal(t, 0, m.chosen, "the mark under the hand")
	to := m.onScreen(m.places[0])
	assert.InDelta(t, from.X-15, to.X, 0.1)
	assert.InDelta(t, from.Y-10, to.Y, 0.1)

	far := fyne.NewPos(300, 300)
	m.choose(4)
	m.places[4], m.places[5] = photo.Point{X: 5, Y: 5}, photo.Point{X: 9, Y: 9}
	m.Tapped(&fyne.PointEvent{Position: far})
	at := m.onScreen(m.places[4])
	assert.InDelta(t, far.X, at.X, 0.1)
	m.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	assert.Nil(t, d.host.Win.Canvas().Overlays().Top())
}

func TestAFileThatIsNoPictureSaysSo(t *testing.T) {
	test.NewTempApp(t)
	h := pagetest.NewHost(t, market.Plain())
	path := filepath.Join(t.TempDir(), "words.jpg")
	require.NoError(t, os.WriteFile(path, []byte("no picture"), 0o600))
	var events []string
	r := show(h, Setup{Told: func(event string, args ...any) { events = append(events, fmt.Sprintf(event, args...)) }}, path)
	h.Until(func() bool { return len(events) > 0 })
	assert.Contains(t, r.news.Text, "JPEG or a PNG")
	assert.True(t, r.measure.Disabled())
}
