package kit

import (
	"image"
	"math/rand"
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/draw/raster"
)

// Whatever part of a drawing changes from frame to frame, the layers show what is painted
// whole, but for the rounding of one film over another.
func TestLayersShowWhatIsPaintedWhole(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	const w, h, n = 60, 40, 9
	picture := image.NewRGBA(image.Rect(0, 0, 10, 10))
	box := func(r *rand.Rand) draw.Rect {
		x, y := r.Float64()*w, r.Float64()*h
		return draw.Rect{X0: x, Y0: y, X1: x + 2 + r.Float64()*30, Y1: y + 2 + r.Float64()*20}
	}
	var seeds [n]int64
	fill := func(d *draw.List) {
		d.Reset(w, h)
		for i, seed := range seeds {
			r := rand.New(rand.NewSource(seed))
			b, c := box(r), draw.Colour{R: uint8(r.Intn(256)), G: uint8(r.Intn(256)), A: uint8(40 + r.Intn(216))}
			switch d.RoundBox(b, 3); {
			case i == n/2:
				d.EndPicture(picture, b)
			case i%2 == 0:
				d.EndFill(c)
			default:
				d.EndStroke(draw.Stroke{Width: 1.5, Colour: c})
			}
		}
	}
	var whole, inLayers raster.Painter
	var l layers
	var now, before draw.List
	for range 400 {
		now, before = before, now
		for k := rng.Intn(3); k > 0; k-- {
			seeds[rng.Intn(n)] = rng.Int63n(1000)
		}
		rng.Read(picture.Pix)
		for i := 3; i < len(picture.Pix); i += 4 {
			picture.Pix[i] = 255
		}
		fill(&now)
		l.follow(alike(&now, &before))
		if rng.Intn(4) == 0 {
			continue // a drawing that no frame shows
		}
		size := 1 + rng.Intn(8)/7 // now and then of a finer screen
		want, got := whole.Resize(w*size, h*size), inLayers.Resize(w*size, h*size)
		whole.Clear(draw.Colour{})
		whole.Paint(&now, float64(size))
		l.paint(&inLayers, &now, got, float64(size))
		for i := range want.Pix {
			require.InDelta(t, want.Pix[i], got.Pix[i], n, "part %d of pixel %d", i%4, i/4)
		}
	}
}

func TestADrawingThatIsTheSameIsNotPaintedAgain(t *testing.T) {
	s := newSketch(nil, func(d *draw.List, w, h float64) { d.Box(draw.Rect{X1: w, Y1: h / 2}, draw.RGB(1)) }).layered()
	s.size = fyne.NewSize(20, 10)
	s.Refresh()
	s.paint(20, 10)
	require.Equal(t, 0, s.layers.under.n)
	s.Refresh()
	require.Equal(t, 0, s.layers.below, "nothing was told to follow")
}
