package photo

import (
	"math"

	"github.com/lucasb-eyer/go-colorful"

	"ripplewright/internal/matter/num"
)

// mixed tells a mixture of the light of two phases by its place between their colours.
type mixed struct{ places [mixtures + 1]float64 }

const mixtures = 64

func (p *phases) mixed() (m mixed) {
	dx, dy, dz := colorful.OkLabToXyz(p.dense[0], p.dense[1], p.dense[2])
	fx, fy, fz := colorful.OkLabToXyz(p.foam[0], p.foam[1], p.foam[2])
	for i := range m.places {
		t := float64(i) / mixtures
		l, a, b := colorful.XyzToOkLab(dx+t*(fx-dx), dy+t*(fy-dy), dz+t*(fz-dz))
		m.places[i] = p.place(lab{l, a, b})
		if i > 0 { // a mixture of very unlike hues may turn back by a hair
			m.places[i] = math.Max(m.places[i], m.places[i-1]+1e-6)
		}
	}
	return m
}

// share returns the foam's share of the mixture whose place is at, beyond 0 and 1 by line.
func (m *mixed) share(at float64) float64 {
	lo, hi := 0, mixtures
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; m.places[mid] <= at {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (float64(lo) + (at-m.places[lo])/(m.places[hi]-m.places[lo])) / mixtures
}

// mask returns the foam's share of each pixel, with the picture's grain in it.
func (s *straight) mask(p *phases) []float32 {
	out := make([]float32, s.w*s.h)
	mix, light := p.mixed(), p.lattice()
	num.Parallel(s.h, func(j int) {
		for i := range s.w {
			x, y := s.place(i, j)
			at := j*s.w + i
			share := mix.share(p.place(s.at(at).times(1 / light.at(x, y))))
			out[at] = float32(clamp(share, -beyond, 1+beyond))
		}
	})
	return out
}

// filled returns a mask whose pixels beside the outline and outside are as the nearest
// inside towards the middle.
func (s *straight) filled(in []float32) []float32 {
	out := make([]float32, len(in))
	midX, midY := float64(s.w)/2, float64(s.h)/2
	edge := int(math.Ceil(wallPixels))
	num.Parallel(s.h, func(j int) {
		for i := range s.w {
			x, y := min(max(i, edge), s.w-1-edge), min(max(j, edge), s.h-1-edge)
			for far := 1.0; !s.inside[y*s.w+x] && far > 0; far -= 0.5 / (midX + midY) {
				x, y = int(midX+far*(float64(i)-midX)), int(midY+far*(float64(j)-midY))
			}
			out[j*s.w+i] = in[y*s.w+x]
		}
	})
	return out
}

// beyond bounds a pixel that is darker or lighter than both phases.
const beyond = 0.5

// lattice is the light at the nodes of a lattice over the cut.
type lattice [latticeCells + 1][latticeCells + 1]float64

const latticeCells = 48

func (p *phases) lattice() *lattice {
	var l lattice
	var spare []float64
	for j := range l {
		for i := range l[j] {
			spare = terms(p.degree, 2*float64(i)/latticeCells-1, 2*float64(j)/latticeCells-1, spare)
			ln := p.lit(spare)
			if p.shade != nil {
				ln += p.shade[j][i]
			}
			l[j][i] = math.Exp(ln)
		}
	}
	return &l
}

// at returns the multiplier at a place, −1 to 1, bilinear between nodes.
func (l *lattice) at(x, y float64) float64 {
	x, y = (x+1)/2*latticeCells, (y+1)/2*latticeCells
	i, j := min(int(x), latticeCells-1), min(int(y), latticeCells-1)
	s, t := x-float64(i), y-float64(j)
	top := l[j][i] + s*(l[j][i+1]-l[j][i])
	low := l[j+1][i] + s*(l[j+1][i+1]-l[j+1][i])
	return top + t*(low-top)
}

// smoothed returns a mask with a Gaussian of that many pixels over it.
func smoothed(in []float32, w, h int, sigma float64) []float32 {
	if sigma <= 0.1 {
		return in
	}
	reach := int(math.Ceil(3 * sigma))
	kernel := make([]float32, 2*reach+1)
	sum := float32(0)
	for i := range kernel {
		d := float64(i - reach)
		kernel[i] = float32(math.Exp(-d * d / (2 * sigma * sigma)))
		sum += kernel[i]
	}
	for i := range kernel {
		kernel[i] /= sum
	}
	along, out := make([]float32, len(in)), make([]float32, len(in))
	num.Parallel(h, func(j int) {
		row := in[j*w : (j+1)*w]
		for i := range row {
			v := float32(0)
			for k, f := range kernel {
				v += f * row[min(max(i+k-reach, 0), w-1)]
			}
			along[j*w+i] = v
		}
	})
	num.Parallel(h, func(j int) {
		to := out[j*w : (j+1)*w]
		for k, f := range kernel {
			from := along[min(max(j+k-reach, 0), h-1)*w:][:w]
			for i, v := range from {
				to[i] += f * v
			}
		}
	})
	return out
}

// snapped returns a mask whose pixels near one phase wholly are that phase.
func snapped(in []float32) []float32 {
	out := make([]float32, len(in))
	for i, v := range in {
		out[i] = float32(clamp((float64(v)-dead)/(1-2*dead), 0, 1))
	}
	return out
}

// dead is how far from one phase wholly a pixel's share of foam is taken for grain.
const dead = 0.08

// sharpened returns a mask with what a lens has spread gathered again, by as much as it
// differs from a softer one.
func sharpened(in, softer []float32) []float32 {
	out := make([]float32, len(in))
	for i, v := range in {
		out[i] = v + sharpening*(v-softer[i])
	}
	return out
}

const sharpening = 1.2
