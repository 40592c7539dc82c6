package photo

import (
	"image"
	"image/draw"
	"math"

	scale "golang.org/x/image/draw"
	"golang.org/x/image/math/f64"

	"ripplewright/internal/matter/num"
)

// tint is how much of the ink lies over what is taken for foam: no food is as blue.
const tint = 0.3

var ink = [3]uint8{20, 60, 220}

// Small returns a picture with at most mostPixels along its longer side, and how many of
// its pixels one of im's is.
func Small(im image.Image, mostPixels int) (small *image.RGBA, perFraction float64) {
	size := im.Bounds().Size()
	per := math.Min(1, float64(mostPixels)/float64(max(size.X, size.Y)))
	small = image.NewRGBA(image.Rect(0, 0, max(1, int(per*float64(size.X)+0.5)), max(1, int(per*float64(size.Y)+0.5))))
	if per == 1 {
		draw.Draw(small, small.Rect, im, im.Bounds().Min, draw.Src)
	} else {
		from, box, _ := few(im, im.Bounds(), per)
		scale.BiLinear.Scale(small, small.Rect, from, box, draw.Src, nil)
	}
	return small, per
}

// Part returns size pixels of a picture from at on, of im, so many times as large.
func Part(im image.Image, at Point, size image.Point, zoomFactor float64) *image.RGBA {
	part := image.NewRGBA(image.Rectangle{Max: size})
	b := im.Bounds()
	to := f64.Aff3{zoomFactor, 0, -(at.X + float64(b.Min.X)) * zoomFactor, 0, zoomFactor, -(at.Y + float64(b.Min.Y)) * zoomFactor}
	scale.ApproxBiLinear.Transform(part, to, im, b, draw.Src, nil)
	return part
}

// Over draws the mask over a picture that Small made smaller by perFraction: what is
// foam tinted, and its edge as a line.
func (m *Mask) Over(small *image.RGBA, perFraction float64) *image.RGBA {
	out := image.NewRGBA(small.Rect)
	copy(out.Pix, small.Pix)
	m.OverPart(out, Point{}, perFraction)
	return out
}

// OverPart draws the mask over what Part has made of the picture from at on.
func (m *Mask) OverPart(part *image.RGBA, at Point, zoomFactor float64) {
	foamAt := func(i, j int) (foam, inside bool) {
		f, in := m.At(Point{at.X + (float64(i)+0.5)/zoomFactor, at.Y + (float64(j)+0.5)/zoomFactor})
		return f > level, in
	}
	num.Parallel(part.Rect.Dy(), func(j int) {
		for i := range part.Rect.Dx() {
			here, in := foamAt(i, j)
			if !in {
				continue
			}
			right, inRight := foamAt(i+1, j)
			below, inBelow := foamAt(i, j+1)
			share := 0.0
			switch {
			case inRight && right != here || inBelow && below != here:
				share = 1
			case here:
				share = tint
			}
			pix := part.Pix[j*part.Stride+4*i:]
			for c, v := range ink {
				pix[c] = uint8(float64(pix[c]) + share*(float64(v)-float64(pix[c])) + 0.5)
			}
		}
	})
}
