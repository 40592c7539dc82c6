package photo

import (
	"image"
	"image/draw"
	"math"

	"github.com/lucasb-eyer/go-colorful"
	scale "golang.org/x/image/draw"

	"ripplewright/internal/matter/num"
)

// straight is the box around a cut on square pixels, in OKLab.
type straight struct {
	w, h    int
	mm      float64      // of a pixel
	lab     [3][]float32 // row by row
	clipped float64      // share of it whose light is beyond the picture's
	cut     []bool       // pixels whose middle lies in the cut
	inside  []bool       // and not beside its edge, where the wall shows
}

// mostSide is how many pixels the longer side of a straightened cut has at most.
const mostSide = 1600

// linearLight is a step of a channel as linear light, 0 to 1.
var linearLight = func() (t [256]float32) {
	for i := range t {
		v, _, _ := colorful.Color{R: float64(i) / 255}.LinearRgb()
		t[i] = float32(v)
	}
	return t
}()

// crop returns the part of im about the outline, made smaller so that a pixel of it is no
// finer than the straightened cut needs, and what a pixel of im is of it.
func crop(im image.Image, o Outline, by float64) (part *image.RGBA, origin Point, per float64) {
	low, high := o[0], o[0]
	for _, p := range o {
		low = Point{math.Min(low.X, p.X), math.Min(low.Y, p.Y)}
		high = Point{math.Max(high.X, p.X), math.Max(high.Y, p.Y)}
	}
	b := im.Bounds()
	box := image.Rect(int(low.X)-2, int(low.Y)-2, int(high.X)+3, int(high.Y)+3).Add(b.Min).Intersect(b)
	origin = Point{float64(box.Min.X - b.Min.X), float64(box.Min.Y - b.Min.Y)}
	if by >= 1 {
		part = image.NewRGBA(image.Rectangle{Max: box.Size()})
		draw.Draw(part, part.Bounds(), im, box.Min, draw.Src)
		return part, origin, 1
	}
	size := image.Pt(max(1, int(float64(box.Dx())*by)), max(1, int(float64(box.Dy())*by)))
	part = image.NewRGBA(image.Rectangle{Max: size})
	whole, n := box, 0
	im, box, n = few(im, box, by)
	if n > 1 { // what is over at the edges is gone
		whole.Max = whole.Min.Add(box.Size().Mul(n))
	}
	scale.BiLinear.Scale(part, part.Bounds(), im, box, draw.Src, nil)
	box = whole
	return part, origin, float64(size.X) / float64(box.Dx())
}

// straighten returns the cut of w by h mm that the outline frames.
func straighten(im image.Image, o Outline, m *homography, w, h float64) *straight {
	_, fine := m.pixelsMM(w, h)
	s := &straight{mm: math.Max(fine, math.Max(w, h)/mostSide)}
	s.w, s.h = int(math.Ceil(w/s.mm)), int(math.Ceil(h/s.mm))
	part, origin, per := crop(im, o, fine/s.mm)
	for c := range s.lab {
		s.lab[c] = make([]float32, s.w*s.h)
	}
	over := make([]int, s.h)
	num.Parallel(s.h, func(j int) {
		for i := range s.w {
			x, y := m.at((float64(i)+0.5)*s.mm/w, (float64(j)+0.5)*s.mm/h)
			// A pixel's light is that of its middle.
			c, high := sample(part, (x-origin.X)*per-0.5, (y-origin.Y)*per-0.5)
			if high {
				over[j]++
			}
			l, a, b := colorful.XyzToOkLab(colorful.LinearRgbToXyz(c[0], c[1], c[2]))
			at := j*s.w + i
			s.lab[0][at], s.lab[1][at], s.lab[2][at] = float32(l), float32(a), float32(b)
		}
	})
	for _, n := range over {
		s.clipped += float64(n) / float64(s.w*s.h)
	}
	return s
}

// sample returns the linear light of a picture at x, y, and whether two channels of it
// are as high as they can be.
func sample(p *image.RGBA, x, y float64) (c [3]float64, high bool) {
	x, y = clamp(x, 0, float64(p.Rect.Dx()-1)), clamp(y, 0, float64(p.Rect.Dy()-1))
	i, j := min(int(x), p.Rect.Dx()-2), min(int(y), p.Rect.Dy()-2)
	i, j = max(i, 0), max(j, 0)
	s, t := x-float64(i), y-float64(j)
	next, below := 4, p.Stride
	if p.Rect.Dx() < 2 {
		next = 0
	}
	if p.Rect.Dy() < 2 {
		below = 0
	}
	at := j*p.Stride + 4*i
	full := 0
	for k := range c {
		v := func(at int) float64 { return float64(linearLight[p.Pix[at+k]]) }
		top := v(at) + s*(v(at+next)-v(at))
		low := v(at+below) + s*(v(at+below+next)-v(at+below))
		c[k] = top + t*(low-top)
		if p.Pix[at+k] >= 254 {
			full++
		}
	}
	return c, full >= 2
}

func clamp(v, lo, hi float64) float64 { return math.Min(math.Max(v, lo), hi) }

// at returns a pixel's colour.
func (s *straight) at(k int) lab {
	return lab{float64(s.lab[0][k]), float64(s.lab[1][k]), float64(s.lab[2][k])}
}

// lab is a colour in OKLab.
type lab [3]float64

func (a lab) less(b lab) lab      { return lab{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func (a lab) times(k float64) lab { return lab{a[0] * k, a[1] * k, a[2] * k} }
func (a lab) dot(b lab) float64   { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a lab) size() float64       { return math.Sqrt(a.dot(a)) }
