package kit

import (
	"image"
	"math"
	"math/rand"
	"sort"

	"ripplewright/internal/show/chart"
)

// ribbons is a picture of a cut face in level, waving ribbons, for when nobody
// has drawn the real one. It promises one thing: the foam's share of the face.
type ribbons struct {
	img    *image.RGBA
	field  []float32 // how early a place turns to foam
	bubble []int8    // relief of the foam, brighter or darker
	order  []float32 // scratch, the field sorted over the face
	taper  float64   // top over base that order was sorted for
}

const ribbonSide = 288 // pixels; about the tub's size on screen

// build makes the two textures that do not depend on the share.
func (r *ribbons) build() {
	const n = ribbonSide
	r.img = image.NewRGBA(image.Rect(0, 0, n, n))
	r.field = make([]float32, n*n)
	r.bubble = make([]int8, n*n)
	for j := 0; j < n; j++ {
		for i := 0; i < n; i++ {
			x, y := float64(i)/n, float64(j)/n
			sag := .035*math.Sin(5.1*x+.7) + .018*math.Sin(13*x+2.3*y) + .012*math.Sin(23*x+5*y+1.1)
			r.field[j*n+i] = float32(math.Cos(2*math.Pi*4*(y+sag)) + .06*math.Sin(9*x+4*y))
		}
	}
	rng := rand.New(rand.NewSource(1)) // always the same bubbles
	for k := 0; k < 1900; k++ {
		cx, cy := rng.Float64()*n, rng.Float64()*n
		radius := 1.6 + 3.4*math.Pow(rng.Float64(), 2.5)
		for j := max(0, int(cy-radius-1)); j < min(n, int(cy+radius+2)); j++ {
			for i := max(0, int(cx-radius-1)); i < min(n, int(cx+radius+2)); i++ {
				dx, dy := float64(i)-cx, float64(j)-cy
				e := math.Hypot(dx, dy) / radius
				if e > 1.15 {
					continue
				}
				v := -46 * math.Exp(-math.Pow((e-.92)/.22, 2)) // the ring
				if e < .75 {
					v = 6 - 16*(dx+dy)/radius*.5 // lit from the upper left
				}
				r.bubble[j*n+i] = int8(v)
			}
		}
	}
}

// threshold is the value of the field above which lies share of the face, which
// is as wide as the picture at its wider end.
func (r *ribbons) threshold(share, taper float64) float32 {
	const n = ribbonSide
	if r.taper != taper {
		r.taper = taper
		r.order = r.order[:0]
		wide := math.Max(1, taper)
		for j := 0; j < n; j += 2 {
			half := (taper + (1-taper)*(float64(j)+.5)/n) / wide * n / 2
			for i := 0; i < n; i += 2 {
				if math.Abs(float64(i)+.5-n/2) <= half {
					r.order = append(r.order, r.field[j*n+i])
				}
			}
		}
		sort.Slice(r.order, func(a, b int) bool { return r.order[a] > r.order[b] })
	}
	i := int(math.Round(share * float64(len(r.order))))
	switch {
	case i <= 0:
		return r.order[0] + 1
	case i >= len(r.order):
		return r.order[len(r.order)-1] - 1
	}
	return (r.order[i-1] + r.order[i]) / 2
}

// draw returns the face with foam over share of it, 0 to 1. taper is the face's
// width at the top over that at the foot.
func (r *ribbons) draw(share, taper float64, dense, foam chart.Colour) *image.RGBA {
	if r.img == nil {
		r.build()
	}
	const n = ribbonSide
	limit := r.threshold(math.Max(0, math.Min(1, share)), taper)
	edge := chart.Blend(dense, chart.RGB(0x3A2308), .45)
	for j := 0; j < n; j++ {
		// Custard is a little darker towards the floor of the tub.
		deep := -10 * float32(j) / n
		for i := 0; i < n; i++ {
			k := j*n + i
			v := r.field[k] - limit
			slope := float32(.06)
			if j > 0 {
				slope = max(.02, abs32(r.field[k]-r.field[k-n]))
			}
			cover := min(1, max(0, v/slope+.5)) // of the pixel, by foam
			line := max(0, 1-abs32(v/slope)/1.3) * .55
			light := cover*float32(r.bubble[k]) + (1-cover)*deep
			at := r.img.Pix[k*4 : k*4+4 : k*4+4]
			at[0] = mixByte(dense.R, foam.R, edge.R, cover, line, light)
			at[1] = mixByte(dense.G, foam.G, edge.G, cover, line, light)
			at[2] = mixByte(dense.B, foam.B, edge.B, cover, line, light)
			at[3] = 255
		}
	}
	return r.img
}

func mixByte(dense, foam, edge uint8, cover, line, light float32) uint8 {
	v := float32(dense)*(1-cover) + float32(foam)*cover + light
	v += (float32(edge) - v) * line
	return uint8(min(255, max(0, v)))
}

func abs32(v float32) float32 {
	if v < 0 {
		return -v
	}
	return v
}
