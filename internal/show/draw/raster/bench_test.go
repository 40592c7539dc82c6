package raster

import (
	"image"
	"image/color"
	"math"
	"testing"

	"github.com/srwiley/rasterx"
	xdraw "golang.org/x/image/draw"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"

	"ripplewright/internal/show/draw"
)

// strokes is a plot's worth of strokes: four curves of 400 points, one of them
// dashed, one dotted, a grid and a hatch, on 640 by 400 units.
func strokes() *draw.List {
	d := &draw.List{W: 640, H: 400}
	for x := 40.0; x < 640; x += 60 {
		d.Segment(draw.Stroke{Width: 1, Colour: draw.RGB(0xE2D8C3)}, x, 10, x, 380)
	}
	for y := 10.0; y < 390; y += 40 {
		d.Segment(draw.Stroke{Width: 1, Colour: draw.RGB(0xE2D8C3)}, 40, y, 630, y)
	}
	box := []draw.Point{{X: 250, Y: 10}, {X: 380, Y: 10}, {X: 380, Y: 380}, {X: 250, Y: 380}}
	d.Texture(box, draw.Rising, 7, draw.Stroke{Width: 1, Colour: draw.Fade(draw.RGB(0x356B3F), .4)})
	for k, dash := range []draw.Dash{draw.Solid, draw.Dashed, draw.Dotted, draw.Solid} {
		for i := range 400 {
			t := float64(i) / 399
			d.To(40+590*t, 30+320*math.Pow(t, 1+float64(k)))
		}
		d.EndStroke(draw.Stroke{Width: 2, Dash: dash, Colour: draw.RGB(0x924A0C)})
	}
	return d
}

// fills is a tub's worth of fills: films, walls, discs and round boxes.
func fills() *draw.List {
	d := &draw.List{W: 640, H: 400}
	for k := range 12 {
		d.Arc(320, 120, 300-float64(8*k), 60, math.Pi, 2*math.Pi)
		d.To(560, 380)
		d.To(80, 380)
		d.EndFill(draw.Fade(draw.RGB(0x174A5A), .09))
	}
	for k := range 30 {
		d.Arc(20+20*float64(k), 200, 4, 4, 0, 2*math.Pi)
		d.EndFill(draw.RGB(0x924A0C))
		d.RoundBox(draw.Rect{X0: 20 * float64(k), Y0: 300, X1: 20*float64(k) + 15, Y1: 320}, 4)
		d.EndFill(draw.RGB(0x356B3F))
	}
	return d
}

// BenchmarkLibraries is the judge of which code fills and strokes: ours, or the
// libraries in the module graph anyway.
func BenchmarkLibraries(b *testing.B) {
	for _, c := range []struct {
		name string
		list *draw.List
		with func(img *image.RGBA, d *draw.List, scale float64)
	}{
		{"stroke/ours", strokes(), painted()},
		{"stroke/rasterx", strokes(), rasterxStrokes()},
		{"fill/vector through our mask", fills(), painted()},
		{"fill/vector alone", fills(), vectorFills()},
		{"picture/ours", picture(), painted()},
		{"picture/x-image", picture(), scaledPictures()},
	} {
		for _, scale := range []float64{1, 2} {
			b.Run(c.name+[]string{"", "/640x400", "/1280x800"}[int(scale)], func(b *testing.B) {
				img := image.NewRGBA(image.Rect(0, 0, int(640*scale), int(400*scale)))
				b.ReportAllocs()
				for range b.N {
					c.with(img, c.list, scale)
				}
			})
		}
	}
}

// picture is the cut of a tub, clipped to its sides.
func picture() *draw.List {
	d := &draw.List{W: 640, H: 400}
	img := image.NewRGBA(image.Rect(0, 0, 320, 320))
	for i := range img.Pix {
		img.Pix[i] = uint8(i * i)
		if i%4 == 3 {
			img.Pix[i] = 255
		}
	}
	for _, p := range [...]draw.Point{{X: 100, Y: 40}, {X: 420, Y: 40}, {X: 400, Y: 360}, {X: 120, Y: 360}} {
		d.To(p.X, p.Y)
	}
	d.EndPicture(img, draw.Rect{X0: 100, Y0: 40, X1: 420, Y1: 360})
	return d
}

func painted() func(*image.RGBA, *draw.List, float64) {
	var p Painter
	return func(img *image.RGBA, d *draw.List, scale float64) {
		p.Resize(img.Rect.Dx(), img.Rect.Dy())
		p.Paint(d, scale)
	}
}

func fix(p draw.Point, k float64) fixed.Point26_6 {
	return fixed.Point26_6{X: fixed.Int26_6(p.X * k * 64), Y: fixed.Int26_6(p.Y * k * 64)}
}

func rasterxStrokes() func(*image.RGBA, *draw.List, float64) {
	var dasher *rasterx.Dasher
	return func(img *image.RGBA, d *draw.List, scale float64) {
		if dasher == nil {
			w, h := img.Rect.Dx(), img.Rect.Dy()
			dasher = rasterx.NewDasher(w, h, rasterx.NewScannerGV(w, h, img, img.Rect))
		}
		for i := range d.Marks {
			m := &d.Marks[i]
			var dashes []float64
			for _, l := range m.Line.Dash.Pattern() {
				dashes = append(dashes, l*m.Line.Width*scale)
			}
			dasher.Clear()
			dasher.SetColor(m.Line.Colour)
			dasher.SetStroke(fixed.Int26_6(m.Line.Width*scale*64), 0, rasterx.RoundCap, rasterx.RoundCap, rasterx.RoundGap, rasterx.Round, dashes, 0)
			m.Pieces(func(line []draw.Point) {
				dasher.Start(fix(line[0], scale))
				for _, p := range line[1:] {
					dasher.Line(fix(p, scale))
				}
				dasher.Stop(false)
			})
			dasher.Draw()
		}
	}
}

func vectorFills() func(*image.RGBA, *draw.List, float64) {
	var r vector.Rasterizer
	return func(img *image.RGBA, d *draw.List, scale float64) {
		for i := range d.Marks {
			m := &d.Marks[i]
			box := image.Rectangle{}
			for _, p := range m.Points {
				x, y := int(p.X*scale), int(p.Y*scale)
				box = box.Union(image.Rect(x, y, x+2, y+2))
			}
			box = box.Intersect(img.Rect)
			r.Reset(box.Dx(), box.Dy())
			for k, p := range m.Points {
				x, y := float32(p.X*scale-float64(box.Min.X)), float32(p.Y*scale-float64(box.Min.Y))
				if k == 0 {
					r.MoveTo(x, y)
				} else {
					r.LineTo(x, y)
				}
			}
			r.ClosePath()
			r.Draw(img, box, image.NewUniform(color.Color(m.Fill)), image.Point{})
		}
	}
}

func scaledPictures() func(*image.RGBA, *draw.List, float64) {
	var p Painter
	return func(img *image.RGBA, d *draw.List, scale float64) {
		p.Resize(img.Rect.Dx(), img.Rect.Dy())
		for i := range d.Marks {
			m := &d.Marks[i]
			p.outline(m.Points, scale)
			f := m.Frame
			to := image.Rect(int(f.X0*scale), int(f.Y0*scale), int(f.X1*scale), int(f.Y1*scale))
			xdraw.BiLinear.Scale(img, to, m.Picture, m.Picture.Bounds(), xdraw.Over, &xdraw.Options{DstMask: &p.mask})
			clear(p.mask.Pix)
			p.dirty = image.Rectangle{}
		}
	}
}
