package ripple

import (
	"context"
	"image"
	"image/color"
	"math"
	"sync"

	"ripplewright/internal/matter/num"
)

// Style is how a cut is painted.
type Style struct {
	Foam, Dense color.NRGBA // alpha is ignored; the zero colours are DefaultStyle's
	Plain       bool        // without texture and shading, for a picture that follows a slider
}

// DefaultStyle is a pale foam in a yolk-coloured custard.
func DefaultStyle() Style {
	return Style{Foam: color.NRGBA{0xfb, 0xf6, 0xea, 0xff}, Dense: color.NRGBA{0xd9, 0xa4, 0x41, 0xff}}
}

// Render samples and paints the cut at px pixels along its longer side; see
// Raster for px, progress and the error.
func (c *Cut) Render(ctx context.Context, px int, s Style, progress func(done float64)) (*image.RGBA, error) {
	samples := unevenSamples
	if s.Plain {
		samples = plainSamples
	}
	b := benches.Get().(*bench)
	defer benches.Put(b)
	if err := c.follow(ctx, &b.field, px, samples, progress); err != nil {
		return nil, err
	}
	b.field.cut(c, &b.raster)
	return b.raster.paint(s, b), nil
}

// Picture cuts the field so that fraction of the tub, 0 to 1, is foam, and paints it. The
// error wraps a *FieldError.
func (f *Origins) Picture(fraction float64, s Style) (*image.RGBA, error) {
	c, err := f.of.WithFoam(fraction)
	if err != nil {
		return nil, err
	}
	b := benches.Get().(*bench)
	defer benches.Put(b)
	var r Raster
	r.FoamFractions, r.spare = b.raster.FoamFractions, b.raster.spare
	f.cut(c, &r)
	b.raster.FoamFractions, b.raster.spare = r.FoamFractions, r.spare
	return r.paint(s, b), nil
}

// bench holds what a picture is made on, so that one picture after another needs no
// new memory.
type bench struct {
	field                    Origins
	raster                   Raster
	edge, glow, pores, spare []float32
}

var benches = sync.Pool{New: func() any { return new(bench) }}

// Lengths of the painting, in mm of an 85 mm tub; wider tubs scale them up, so
// that every picture shows them.
const (
	edgeBlurMM  = 0.42 // rounding of the foam's edge
	glowBlurMM  = 1.5  // depth to which light passes from one phase into the other
	shadowMM    = 0.7  // length of the shadow foam throws
	wallShadeMM = 1.8
)

// light comes from the upper left; y is down as in the picture.
const lightX, lightY = -0.6, -0.8

// Paint draws the cut: the foam slightly raised, with bubbles, the custard smooth,
// so that the phases differ without colour too. The bubbles are a sign for foam and
// not to scale. Outside the tub the picture is transparent.
func (r *Raster) Paint(s Style) *image.RGBA {
	b := benches.Get().(*bench)
	defer benches.Put(b)
	return r.paint(s, b)
}

func (r *Raster) paint(s Style, b *bench) *image.RGBA {
	if s.Foam == (color.NRGBA{}) {
		s.Foam = DefaultStyle().Foam
	}
	if s.Dense == (color.NRGBA{}) {
		s.Dense = DefaultStyle().Dense
	}
	p := &painter{Raster: r, unit: math.Max(r.out.w, r.out.h) / 85 / r.PixelMM}
	foam, dense := linearOf(s.Foam), linearOf(s.Dense)
	for i := range foam {
		p.dense[i], p.more[i] = float32(dense[i]), float32(foam[i]-dense[i])
	}
	im := image.NewRGBA(image.Rect(0, 0, r.Width, r.Height))
	row := p.plainRow
	if !s.Plain {
		p.texture(b)
		row = p.row
	}
	num.Parallel((r.Height+stretch-1)/stretch, func(k int) {
		for j := k * stretch; j < min((k+1)*stretch, r.Height); j++ {
			row(im, j)
		}
	})
	return im
}

// plainRow paints row j of a picture without texture.
func (p *painter) plainRow(im *image.RGBA, j int) {
	const steps = 64 // of the mixture: a channel changes by less than 4 from one to the next
	var mixed [steps + 1][4]uint8
	for k := range mixed {
		for c := range p.dense {
			mixed[k][c] = displayed(p.dense[c] + float32(k)/steps*p.more[c])
		}
		mixed[k][3] = 255
	}
	pix := im.Pix[j*im.Stride:][:4*p.Width]
	foam, inside := p.FoamFractions[j*p.Width:][:p.Width], p.InsideFractions[j*p.Width:][:p.Width]
	for i, in := range inside {
		if in == 0 {
			continue
		}
		colour := &mixed[int(foam[i]*steps+0.5)]
		if in == 1 {
			copy(pix[4*i:4*i+4], colour[:])
			continue
		}
		for c, v := range colour {
			pix[4*i+c] = uint8(float32(v)*in + 0.5)
		}
	}
}

type painter struct {
	*Raster
	dense, more [3]float32 // linear light of the custard, and how much more the foam has
	unit        float64    // pixels per mm of an 85 mm tub
	edge, glow  []float32  // blurred shares of foam
	pores       []float32  // light of the bubbles: 0 none, negative dark
	wall        []float32  // light lost at so many quarters of a pixel from the wall
	lift        float32    // of the foam's edge, per difference of its share

	shadowX, shadowY int // pixels from a place to what shades it
}

// texture prepares the light on a picture that is more than plain.
func (p *painter) texture(b *bench) {
	for _, a := range []*[]float32{&b.edge, &b.glow, &b.pores, &b.spare} {
		*a = grown(*a, len(p.FoamFractions))
	}
	p.blur(b.edge, edgeBlurMM*p.unit, b)
	p.blur(b.glow, glowBlurMM*p.unit, b)
	p.bubbles(b.pores, b.edge, p.unit)
	p.edge, p.glow, p.pores = b.edge, b.glow, b.pores
	p.lift = float32(0.42 / 2 * p.unit)
	k := shadowMM * p.unit * 1.6
	p.shadowX, p.shadowY = int(lightX*k), int(lightY*k)
	// As far as it can be seen.
	p.wall = make([]float32, 2+int(4*5*wallShadeMM*p.unit))
	for i := range p.wall {
		p.wall[i] = float32(0.16 * math.Exp(-float64(i)/4/p.unit/wallShadeMM))
	}
}

func (p *painter) row(im *image.RGBA, j int) {
	pix := im.Pix[j*im.Stride:][:4*p.Width]
	for i := 0; i < p.Width; i++ {
		at := j*p.Width + i
		in := p.InsideFractions[at]
		if in == 0 {
			continue
		}
		mix, shade := p.lit(i, j, at, p.FoamFractions[at])
		out := pix[4*i : 4*i+4]
		for c := range p.dense {
			v := displayed((p.dense[c] + mix*p.more[c]) * shade)
			if in < 1 {
				v = uint8(float32(v)*in + 0.5)
			}
			out[c] = v
		}
		out[3] = uint8(255*in + 0.5)
	}
}

// lit returns the mixture of colours at a pixel and the light on it.
func (p *painter) lit(i, j, at int, share float32) (mix, shade float32) {
	glow := p.glow[at]
	// A little of each phase's colour shines through the other near the edge.
	mix = share + 0.13*(glow-share)

	// The foam stands up from the cut with a rounded edge.
	row := p.edge[j*p.Width : (j+1)*p.Width]
	left, right := row[max(i-1, 0)], row[min(i+1, p.Width-1)]
	up, down := p.edge[max(j-1, 0)*p.Width+i], p.edge[min(j+1, p.Height-1)*p.Width+i]
	slope := ((right-left)*lightX + (down-up)*lightY) * p.lift
	shade = 1 - clamp(slope, -0.20, 0.16)

	// Its shadow falls on the custard to the lower right.
	si, sj := min(max(i+p.shadowX, 0), p.Width-1), min(max(j+p.shadowY, 0), p.Height-1)
	shade *= 1 - 0.20*(1-share)*p.edge[sj*p.Width+si]
	// Foam scatters light: thin filaments are dimmer than the heart of a ribbon.
	shade *= 1 - 0.07*share*(1-glow)
	shade *= 1 + share*p.pores[at]

	// Walls and corners get less light.
	x, y := (float64(i)+0.5)*p.PixelMM, (float64(j)+0.5)*p.PixelMM
	dx, dy := float32(x/p.out.w-0.46), float32(y/p.out.h-0.44)
	shade *= 1.03 - 0.24*(dx*dx+dy*dy)
	if at := max(p.out.depth(x, p.out.h-y), 0) * 4 / p.PixelMM; at < float64(len(p.wall)-1) {
		k := int(at)
		shade *= 1 - (p.wall[k] + float32(at-float64(k))*(p.wall[k+1]-p.wall[k]))
	}
	return mix, shade
}

// bubbles sets light to that of small pores, strewn by the seed where the foam is
// wide enough for them. edge is the blurred share of foam.
func (r *Raster) bubbles(light, edge []float32, unit float64) {
	clear(light)
	rnd := stream(r.seed, 2+uint64(r.view))
	const pitch = 1.15 // mm between places for a bubble
	cols, rows := int(float64(r.Width)/unit/pitch)+1, int(float64(r.Height)/unit/pitch)+1
	for j := 0; j < rows; j++ {
		for i := 0; i < cols; i++ {
			x := (float64(i) + rnd.between(0.05, 0.95)) * pitch * unit
			y := (float64(j) + rnd.between(0.05, 0.95)) * pitch * unit
			u, keep := rnd.unit(), rnd.unit()
			radius := (0.17 + 0.42*u*u*u*u + 0.10*u) * unit
			if keep < 0.82 && r.fits(edge, x, y, radius) {
				r.bubble(light, x, y, radius)
			}
		}
	}
}

// fits reports whether a bubble lies within foam.
func (r *Raster) fits(edge []float32, x, y, radius float64) bool {
	for _, d := range [...][2]float64{{0, 0}, {1.2, 0}, {-1.2, 0}, {0, 1.2}, {0, -1.2}} {
		i, j := int(x+d[0]*radius), int(y+d[1]*radius)
		if i < 0 || j < 0 || i >= r.Width || j >= r.Height || r.InsideFractions[j*r.Width+i] < 1 || edge[j*r.Width+i] < 0.86 {
			return false
		}
	}
	return true
}

// bubble adds a pore: dark where its wall turns from the light, bright opposite.
func (r *Raster) bubble(light []float32, x, y, radius float64) {
	for j := max(int(y-radius-1), 0); j <= min(int(y+radius+1), r.Height-1); j++ {
		for i := max(int(x-radius-1), 0); i <= min(int(x+radius+1), r.Width-1); i++ {
			dx, dy := float64(i)+0.5-x, float64(j)+0.5-y
			if dx*dx+dy*dy >= (radius+0.5)*(radius+0.5) {
				continue
			}
			cover := min(radius-math.Sqrt(dx*dx+dy*dy)+0.5, 1) * min(1, 1.4*radius)
			facing := (dx*lightX + dy*lightY) / radius // 1 at the wall nearest the light
			light[j*r.Width+i] += float32(cover * (-0.13 - 0.17*facing))
		}
	}
}
