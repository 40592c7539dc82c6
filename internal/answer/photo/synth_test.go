package photo_test

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/photo"
	"ripplewright/internal/matter/ripple"
)

// A scene is a photograph of a known cut, drawn here: the tub lies aslant before the
// camera, the light falls unevenly, the lens blurs, the sensor has its grain, and the
// file is a JPEG.
type scene struct {
	cut         ripple.Settings
	foam, dense color.NRGBA
	across      float64 // pixels of the cut's longer side, about
	tilt, turn  float64 // rad, out of the picture's plane; in which direction
	roll        float64 // rad, in it
	distance    float64 // of the camera, in widths of the cut
	slope, edge float64 // of the light: across, and towards the corners
	slopeTo     float64 // rad
	hand        float64 // of the light that a hand's shadow takes
	over        shadow  // where it lies
	exposure    float64 // of the brighter phase in the middle, of the whole range
	blur        float64 // pixels, one standard deviation
	grain       float64 // steps of 255, one standard deviation
	quality     int     // of the JPEG
}

var seaside = [][2]color.NRGBA{ // foam, custard
	{{0xfb, 0xf6, 0xea, 255}, {0xd9, 0xa4, 0x41, 255}},
	{{0xf7, 0xe3, 0xb0, 255}, {0x8a, 0x4a, 0x1c, 255}},
	{{0xfb, 0xf6, 0xea, 255}, {0xcb, 0xb0, 0x83, 255}},
	{{0xb8, 0x94, 0x7e, 255}, {0x4a, 0x2f, 0x24, 255}},
	{{0xf2, 0xb7, 0xc0, 255}, {0xb2, 0x30, 0x4b, 255}},
	{{0xbd, 0xd0, 0xa8, 255}, {0x4f, 0x70, 0x40, 255}},
	{{0xb1, 0xa9, 0xcf, 255}, {0x3c, 0x33, 0x58, 255}},
	{{0xe3, 0xe6, 0xbd, 255}, {0xa9, 0xad, 0x62, 255}},
	{{0xfd, 0xd9, 0xa0, 255}, {0xe8, 0xa3, 0x2b, 255}},
}

func drawnAt(r *rand.Rand) scene {
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	c := seaside[r.Intn(len(seaside))]
	s := scene{foam: c[0], dense: c[1], across: between(300, 800), tilt: between(0, 20) * math.Pi / 180, turn: between(0, 2*math.Pi),
		roll: between(-6, 6) * math.Pi / 180, distance: between(2.5, 6), slope: between(0, 0.25), edge: between(0, 0.2), slopeTo: between(0, 2*math.Pi),
		exposure: between(0.55, 0.95), blur: between(0.5, 1.6), grain: between(0.5, 4), quality: 75 + r.Intn(21)}
	motion := []string{"plunge", "fold", "eight", "drag", "mixed"}[r.Intn(5)]
	strokes, err := ripple.Sequence(motion, r.Intn(15), 0, 0)
	if err != nil {
		panic(err)
	}
	tub := ripple.RoundTub(85, 83)
	view := ripple.Side
	switch r.Intn(4) {
	case 1:
		tub = ripple.BoxTub(120, 80, 8, 53)
	case 2:
		tub = ripple.RoundTub(124, 41)
	case 3:
		view = ripple.Top
	}
	s.cut = ripple.Settings{Tub: tub, View: view, FoamFraction: between(0.2, 0.6), Layout: ripple.Layout(r.Intn(4)), Strokes: strokes, Seed: r.Uint64()}
	return s
}

// shadow is where a hand's shadow lies: an ellipse about a place of the picture, which is −1
// to 1, and how soft its edge is.
type shadow struct{ x, y, reach, flat, soft float64 }

// corner is the shadow over the lower right.
var corner = shadow{0.8, 0.7, 0.8, 0.6, 0.08}

// photograph is a scene's picture with what a maker would mark in it, and the truth.
type photograph struct {
	jpeg   []byte
	ask    photo.Request
	truth  ripple.Measure
	raster *ripple.Raster
	mm     float64 // of a pixel, about
}

func toLinear(v uint8) float64 {
	s := float64(v) / 255
	if s <= 0.04045 {
		return s / 12.92
	}
	return math.Pow((s+0.055)/1.055, 2.4)
}

func toShown(v float64) float64 {
	if v <= 0.0031308 {
		return 12.92 * v
	}
	return 1.055*math.Pow(v, 1/2.4) - 0.055
}

// camera projects a place on the cut, mm from its middle, y down, to the picture.
func (s *scene) camera(w, h float64) func(x, y float64) (float64, float64) {
	long := math.Max(w, h)
	f := s.distance * s.across
	ax, ay := math.Cos(s.turn), math.Sin(s.turn) // the axis that it is tilted about
	sin, cos := math.Sincos(s.tilt)
	rs, rc := math.Sincos(s.roll)
	return func(x, y float64) (float64, float64) {
		x, y = rc*x-rs*y, rs*x+rc*y
		along, aside := x*ax+y*ay, -x*ay+y*ax
		z := s.distance*long + aside*sin
		aside *= cos
		x, y = along*ax-aside*ay, along*ay+aside*ax
		return f * x / z, f * y / z
	}
}

func (s *scene) take(t testing.TB, r *rand.Rand) photograph {
	t.Helper()
	cut, err := ripple.Stir(s.cut)
	require.NoError(t, err)
	raster, err := cut.Raster(context.Background(), 1200, nil)
	require.NoError(t, err)
	w, h := cut.SizeMM()
	see := s.camera(w, h)

	// The picture's frame about the cut.
	var corner [4]photo.Point
	lowX, lowY, highX, highY := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	box := [4][2]float64{{-w / 2, -h / 2}, {w / 2, -h / 2}, {w / 2, h / 2}, {-w / 2, h / 2}}
	for _, c := range box {
		x, y := see(c[0], c[1])
		lowX, lowY, highX, highY = math.Min(lowX, x), math.Min(lowY, y), math.Max(highX, x), math.Max(highY, y)
	}
	const rim = 40
	place := func(x, y float64) photo.Point {
		px, py := see(x, y)
		return photo.Point{X: px - lowX + rim, Y: py - lowY + rim}
	}
	marks := box
	if s.cut.View == ripple.Top {
		marks = [4][2]float64{{0, -h / 2}, {w / 2, 0}, {0, h / 2}, {-w / 2, 0}}
	}
	for i, c := range marks {
		corner[i] = place(c[0], c[1])
	}
	pw, ph := int(highX-lowX+2*rim), int(highY-lowY+2*rim)

	// Light on the sensor, three samples a pixel either way, from the outline's own map.
	var from [4]photo.Point
	for i, c := range box {
		from[i] = place(c[0], c[1])
	}
	back := plane(from)
	light := make([][3]float64, pw*ph)
	var foam, dense [3]float64
	most := 0.0
	for c, v := range [][2]uint8{{s.foam.R, s.dense.R}, {s.foam.G, s.dense.G}, {s.foam.B, s.dense.B}} {
		foam[c], dense[c] = toLinear(v[0]), toLinear(v[1])
		most = math.Max(most, math.Max(foam[c], dense[c]))
	}
	k := toLinear(uint8(255*s.exposure)) / most / (1 + s.slope)
	const n = 3
	for j := range ph {
		for i := range pw {
			var sum [3]float64
			for a := range n * n {
				x, y := float64(i)+(float64(a%n)+0.5)/n, float64(j)+(float64(a/n)+0.5)/n
				u, v := back(x, y)
				share, in := at(raster, u, v)
				for c := range sum {
					col := (share*foam[c] + (1-share)*dense[c]) * in
					col += (1 - in) * 0.25 // the board it lies on
					sum[c] += col / (n * n)
				}
			}
			x, y := 2*(float64(i)+0.5)/float64(pw)-1, 2*(float64(j)+0.5)/float64(ph)-1
			shade := (1 + s.slope*(x*math.Cos(s.slopeTo)+y*math.Sin(s.slopeTo))/1.4) * (1 - s.edge*(x*x+y*y)/2)
			if o := s.over; s.hand > 0 {
				shade *= 1 - s.hand/(1+math.Exp((math.Hypot(x-o.x, (y-o.y)/o.flat)-o.reach)/o.soft))
			}
			for c := range sum {
				light[j*pw+i][c] = sum[c] * shade * k
			}
		}
	}
	light = blurred(light, pw, ph, s.blur)
	im := image.NewRGBA(image.Rect(0, 0, pw, ph))
	for at, l := range light {
		for c := range l {
			im.Pix[4*at+c] = uint8(math.Min(math.Max(255*toShown(math.Max(l[c], 0))+s.grain*r.NormFloat64()+0.5, 0), 255))
		}
		im.Pix[4*at+3] = 255
	}
	var file bytes.Buffer
	require.NoError(t, jpeg.Encode(&file, im, &jpeg.Options{Quality: s.quality}))

	out := photograph{jpeg: file.Bytes(), raster: raster}
	fx, fy := spot(raster, true)
	dx, dy := spot(raster, false)
	out.ask = photo.Request{Outline: corner, Tub: s.cut.Tub, View: s.cut.View, Foam: place(fx-w/2, fy-h/2), Dense: place(dx-w/2, dy-h/2)}
	return out
}

// plane returns the map from the picture to the unit square whose corners are p.
func plane(p [4]photo.Point) func(x, y float64) (u, v float64) {
	// Eight equations of u = (ax+by+c)/(gx+hy+1), v alike, by elimination.
	var m [8][9]float64
	for i, uv := range [4][2]float64{{0, 0}, {1, 0}, {1, 1}, {0, 1}} {
		x, y := p[i].X, p[i].Y
		m[2*i] = [9]float64{x, y, 1, 0, 0, 0, -uv[0] * x, -uv[0] * y, uv[0]}
		m[2*i+1] = [9]float64{0, 0, 0, x, y, 1, -uv[1] * x, -uv[1] * y, uv[1]}
	}
	for c := range 8 {
		best := c
		for r := c; r < 8; r++ {
			if math.Abs(m[r][c]) > math.Abs(m[best][c]) {
				best = r
			}
		}
		m[c], m[best] = m[best], m[c]
		for r := range 8 {
			if r != c {
				f := m[r][c] / m[c][c]
				for k := range 9 {
					m[r][k] -= f * m[c][k]
				}
			}
		}
	}
	var s [8]float64
	for i := range s {
		s[i] = m[i][8] / m[i][i]
	}
	return func(x, y float64) (float64, float64) {
		w := s[6]*x + s[7]*y + 1
		return (s[0]*x + s[1]*y + s[2]) / w, (s[3]*x + s[4]*y + s[5]) / w
	}
}

// at returns the foam at a place of the raster's unit square, and how much of it lies in
// the tub.
func at(r *ripple.Raster, u, v float64) (foam, in float64) {
	i, j := int(math.Floor(u*float64(r.Width))), int(math.Floor(v*float64(r.Height)))
	if i < 0 || j < 0 || i >= r.Width || j >= r.Height {
		return 0, 0
	}
	k := j*r.Width + i
	return float64(r.FoamFractions[k]), float64(r.InsideFractions[k])
}

func blurred(in [][3]float64, w, h int, sigma float64) [][3]float64 {
	reach := int(math.Ceil(3 * sigma))
	kernel := make([]float64, 2*reach+1)
	sum := 0.0
	for i := range kernel {
		d := float64(i - reach)
		kernel[i] = math.Exp(-d * d / (2 * sigma * sigma))
		sum += kernel[i]
	}
	pass := func(in [][3]float64, dx, dy int) [][3]float64 {
		out := make([][3]float64, len(in))
		for j := range h {
			for i := range w {
				for k, f := range kernel {
					x, y := min(max(i+dx*(k-reach), 0), w-1), min(max(j+dy*(k-reach), 0), h-1)
					for c := range 3 {
						out[j*w+i][c] += f / sum * in[y*w+x][c]
					}
				}
			}
		}
		return out
	}
	return pass(pass(in, 1, 0), 0, 1)
}

// spot returns the middle of the widest place of a phase, in mm from the upper left.
func spot(r *ripple.Raster, foam bool) (x, y float64) {
	dist := make([]int, len(r.FoamFractions))
	best := 0
	for k, f := range r.FoamFractions {
		pure := r.InsideFractions[k] == 1 && (foam && f > 0.999 || !foam && f < 0.001)
		if pure && k%r.Width > 0 && k >= r.Width {
			dist[k] = 1 + min(dist[k-1], dist[k-r.Width], dist[k-r.Width-1])
			if dist[k] > dist[best] {
				best = k
			}
		}
	}
	half := float64(dist[best]) / 2
	return (float64(best%r.Width) + 1 - half) * r.PixelMM, (float64(best/r.Width) + 1 - half) * r.PixelMM
}
