package raster

import (
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/draw"
)

// covered is the ink on the picture in whole pixels, drawn black on clear.
func covered(img *image.RGBA) (sum float64) {
	for i := 3; i < len(img.Pix); i += 4 {
		sum += float64(img.Pix[i]) / 255
	}
	return
}

var black = draw.RGB(0)

func TestFilledAreaIsTheOutlinesArea(t *testing.T) {
	// The shoelace formula is the judge of random triangles and of an ellipse.
	rng := rand.New(rand.NewSource(3))
	var p Painter
	img := p.Resize(80, 60)
	for i := 0; i < 300; i++ {
		var d draw.List
		d.Reset(80, 60)
		var tri [3]draw.Point
		for k := range tri {
			tri[k] = draw.Point{X: rng.Float64() * 80, Y: rng.Float64() * 60}
			d.To(tri[k].X, tri[k].Y)
		}
		d.EndFill(black)
		p.Clear(draw.Colour{})
		p.Paint(&d, 1)
		area := math.Abs((tri[1].X-tri[0].X)*(tri[2].Y-tri[0].Y)-(tri[2].X-tri[0].X)*(tri[1].Y-tri[0].Y)) / 2
		// x/image/vector reckons small pictures in fixed point, which costs up to
		// a fiftieth of a pixel for every pixel of edge (measured here).
		edge := 0.0
		for k, a := range tri {
			edge += math.Hypot(a.X-tri[(k+1)%3].X, a.Y-tri[(k+1)%3].Y)
		}
		require.InDelta(t, area, covered(img), .5+.02*edge, "%v", tri)
	}
	var d draw.List
	d.Reset(40, 30)
	d.Arc(20, 15, 15, 10, 0, 2*math.Pi)
	d.EndFill(black)
	p.Clear(draw.Colour{})
	p.Paint(&d, 2)
	assert.InDelta(t, math.Pi*30*20, covered(img), 12) // a polygon is a little smaller
}

func TestOutlinesBeyondThePictureAreCutAtItsEdge(t *testing.T) {
	var p Painter
	img := p.Resize(50, 40)
	for _, r := range []draw.Rect{{X0: -10, Y0: -10, X1: 60, Y1: 60}, {X0: -1e4, Y0: 10, X1: 1e4, Y1: 20}, {X0: -1e7, Y0: 10, X1: 1e7, Y1: 20}, {X0: 20, Y0: -500, X1: 30, Y1: 500}, {X0: 20, Y0: -1e7, X1: 30, Y1: 1e7}} {
		var d draw.List
		d.Reset(50, 40)
		d.Box(r, black)
		p.Clear(draw.Colour{})
		p.Paint(&d, 1)
		want := (math.Min(50, r.X1) - math.Max(0, r.X0)) * (math.Min(40, r.Y1) - math.Max(0, r.Y0))
		assert.InDelta(t, want, covered(img), .5, "%v", r)
	}
	// A slanted one comes in and goes out without leaving anything behind.
	var d draw.List
	d.Reset(50, 40)
	d.To(-30, 10)
	d.To(80, 20)
	d.To(80, 90)
	d.EndFill(black)
	p.Clear(draw.Colour{})
	p.Paint(&d, 1)
	p.Clear(draw.Colour{})
	d.Reset(50, 40)
	d.Box(draw.Rect{X0: 1, Y0: 1, X1: 3, Y1: 3}, black)
	p.Paint(&d, 1)
	assert.InDelta(t, 4, covered(img), .05)
}

func TestStrokeInkIsLengthTimesWidth(t *testing.T) {
	var p Painter
	img := p.Resize(120, 120)
	for _, angle := range []float64{0, .3, math.Pi / 4, 1.2, math.Pi / 2, 2.5} {
		for _, width := range []float64{.5, 1, 2.2, 6} {
			s, c := math.Sincos(angle)
			var d draw.List
			d.Reset(120, 120)
			d.Segment(draw.Stroke{Width: width, Colour: black}, 60-40*c, 60-40*s, 60+40*c, 60+40*s)
			p.Clear(draw.Colour{})
			p.Paint(&d, 1)
			// Round ends add a disc. A line as thin as a pixel, sampled at the
			// pixels' middles, has up to 13 % more or less, as it happens to lie.
			want := 80*width + math.Pi/4*math.Max(1, width*width)*math.Min(1, width)
			part := .03
			if width <= 1 {
				part = .13
			}
			assert.InDelta(t, want, covered(img), part*want+1.5, "angle %g width %g", angle, width)
		}
	}
}

func TestFastStrokeIsTheObviousSlowOne(t *testing.T) {
	rng := rand.New(rand.NewSource(4))
	var p Painter
	img := p.Resize(60, 50)
	for n := 0; n < 60; n++ {
		var d draw.List
		d.Reset(60, 50)
		var pts []draw.Point
		for i := 0; i < 4; i++ {
			pts = append(pts, draw.Point{X: rng.Float64()*90 - 15, Y: rng.Float64()*80 - 15})
			d.To(pts[i].X, pts[i].Y)
		}
		width := 1 + 4*rng.Float64()
		d.EndStroke(draw.Stroke{Width: width, Colour: black})
		p.Clear(draw.Colour{})
		p.Paint(&d, 1)
		for y := 0; y < 50; y++ {
			for x := 0; x < 60; x++ {
				e := math.Inf(1)
				for i := 0; i < 3; i++ {
					e = math.Min(e, distance(draw.Point{X: float64(x) + .5, Y: float64(y) + .5}, pts[i], pts[i+1]))
				}
				want := 255 * math.Max(0, math.Min(1, width/2+.5-e))
				require.InDelta(t, want, float64(img.RGBAAt(x, y).A), 1.01, "(%d, %d) of %v", x, y, pts)
			}
		}
	}
}

func distance(p, a, b draw.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	f := math.Max(0, math.Min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/(dx*dx+dy*dy)))
	return math.Hypot(p.X-a.X-f*dx, p.Y-a.Y-f*dy)
}

func TestPictureIsStretchedAndClipped(t *testing.T) {
	src := image.NewNRGBA(image.Rect(0, 0, 2, 1))
	src.Set(0, 0, color.NRGBA{R: 255, A: 255})
	src.Set(1, 0, color.NRGBA{B: 255, A: 255})
	var p Painter
	img := p.Resize(40, 20)
	p.Clear(draw.Colour{})
	var d draw.List
	d.Reset(40, 20)
	for _, p := range [...]draw.Point{{X: 5, Y: 5}, {X: 35, Y: 5}, {X: 35, Y: 15}, {X: 5, Y: 15}} {
		d.To(p.X, p.Y)
	}
	d.EndPicture(src, draw.Rect{X0: 0, Y0: 0, X1: 40, Y1: 20})
	p.Paint(&d, 1)
	assert.Equal(t, color.RGBA{R: 255, A: 255}, img.RGBAAt(6, 10))
	assert.Equal(t, color.RGBA{B: 255, A: 255}, img.RGBAAt(33, 10))
	assert.Equal(t, color.RGBA{}, img.RGBAAt(2, 10))
	assert.InDelta(t, 300, covered(img), .5)
}
