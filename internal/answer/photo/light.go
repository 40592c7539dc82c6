package photo

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// phases are the two colours of a cut under even light, and the light: by how much it
// multiplies OKLab's three numbers, the logarithm as a polynomial over the cut. (Light
// itself is the cube of that.)
type phases struct {
	dense, foam lab
	light       []float64 // of terms
	degree      int
	shade       *shade  // nil: none beyond that
	trace       *phases // as they are with a shade too shallow to tell from fine filaments; nil: none
}

// terms are the powers of a polynomial of so many degrees, of places −1 to 1.
func terms(degree int, x, y float64, out []float64) []float64 {
	out = out[:0]
	for d := 0; d <= degree; d++ {
		for k := 0; k <= d; k++ {
			out = append(out, math.Pow(x, float64(d-k))*math.Pow(y, float64(k)))
		}
	}
	return out
}

// lit returns the logarithm of the light where terms are these.
func (p *phases) lit(terms []float64) float64 {
	sum := 0.0
	for i, v := range terms {
		sum += p.light[i] * v
	}
	return sum
}

// place returns where a colour lies from dense, 0, to foam, 1.
func (p *phases) place(c lab) float64 {
	way := p.foam.less(p.dense)
	return c.less(p.dense).dot(way) / way.dot(way)
}

// sampled are pixels of a cut for finding the light, spread evenly.
type sampled struct {
	x, y float64 // −1 to 1
	c    lab
}

// mostSampled is how many pixels tell the light.
const mostSampled = 20000

// samples returns pixels spread over the cut that lie within a phase, by colours about
// which differ little beside distance, that of the phases; any pixels where few do. clear says that most pixels do.
func (s *straight) samples(distance float64) (of []sampled, clear bool) {
	step := max(1, int(math.Sqrt(float64(s.w*s.h)/mostSampled)))
	var calm, all []sampled
	for j := step/2 + beside; j < s.h-beside; j += step {
		for i := step/2 + beside; i < s.w-beside; i += step {
			at := j*s.w + i
			if !s.inside[at] {
				continue
			}
			x, y := s.place(i, j)
			q := sampled{x, y, s.at(at)}
			all = append(all, q)
			if s.at(at-beside).less(s.at(at+beside)).size() < calmShare*distance &&
				s.at(at-beside*s.w).less(s.at(at+beside*s.w)).size() < calmShare*distance {
				calm = append(calm, q)
			}
		}
	}
	if len(calm) > len(all)/10 {
		return calm, float64(len(calm)) > clearShare*float64(len(all))
	}
	return all, false
}

// A pixel lies within a phase if its neighbours, so many pixels away on both sides, differ
// by less than this share of what the phases do.
const (
	beside     = 3
	calmShare  = 0.12
	clearShare = 0.5
)

// place is a pixel's place from −1 to 1.
func (s *straight) place(i, j int) (x, y float64) {
	return 2*(float64(i)+0.5)/float64(s.w) - 1, 2*(float64(j)+0.5)/float64(s.h) - 1
}

// The light is found by turns with which phase a pixel is: from even light on, with ever
// more terms. What is near a phase's colour is taken for it, the nearer the more, so that
// the colours settle where pixels crowd, not halfway to the mixtures.
const (
	lightDegree = 3
	lightRounds = 6
	blackest    = 0.02 // colours under it tell nothing of the light
	fewest      = 20   // pixels that a phase's colour is taken from
	calming     = 1e-5 // of the samples, for each term: a light that little tells of is even
)

// nearest is how near is near, of the way between the phases, by the degree of the light.
var nearest = [lightDegree + 1]float64{1: 0.3, 2: 0.2, 3: 0.15}

// even finds the colours of the phases and the light from the colours of their spots.
func (s *straight) even(dense, foam lab) phases {
	p := phases{dense: dense, foam: foam, light: make([]float64, 1)}
	all, clear := s.samples(dense.less(foam).size())
	for degree := 1; degree <= lightDegree; degree++ {
		p.light = append(p.light, make([]float64, len(terms(degree, 0, 0, nil))-len(p.light))...)
		p.degree = degree
		for range lightRounds {
			if !p.improve(all) {
				return p
			}
		}
	}
	if clear { // else filaments too fine to be seen may look like a phase in the dark
		p.shaded(all)
	}
	return p
}

// improve moves the light by weighted least squares of its logarithm, and the colours to
// the weighted mean of the pixels taken for them. It reports whether the pixels tell it.
func (p *phases) improve(all []sampled) bool {
	n := len(p.light)
	normal, right := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	var spare []float64
	var colours [2]gathered
	for _, q := range all {
		spare = terms(p.degree, q.x, q.y, spare)
		c := q.c.times(math.Exp(-p.lit(spare)))
		at, ref, of := p.place(c), p.dense, &colours[0]
		if at > 0.5 {
			at, ref, of = 1-at, p.foam, &colours[1]
		}
		near := at / nearest[p.degree]
		w := 1 - near*near
		if w <= 0 || c.size() < blackest {
			continue
		}
		of.add(c, w*w)
		miss := math.Log(c.size() / ref.size())
		for i, t := range spare {
			right.SetVec(i, right.AtVec(i)+w*t*miss)
			for j := i; j < n; j++ {
				normal.SetSym(i, j, normal.At(i, j)+w*t*spare[j])
			}
		}
	}
	for i := range n {
		normal.SetSym(i, i, normal.At(i, i)+calming*float64(len(all)))
	}
	colours[0].mean(&p.dense)
	colours[1].mean(&p.foam)
	var move mat.VecDense
	var c mat.Cholesky
	if !c.Factorize(normal) || c.SolveVecTo(&move, right) != nil {
		return false
	}
	for i := 1; i < n; i++ { // how bright it is on the whole is the colours'
		p.light[i] += move.AtVec(i)
	}
	return true
}

// gathered are colours taken for a phase's.
type gathered struct {
	sum    lab
	weight float64
	n      int
}

func (g *gathered) add(c lab, weight float64) {
	for i := range c {
		g.sum[i] += weight * c[i]
	}
	g.weight += weight
	g.n++
}

// mean sets c to their mean, if they are enough.
func (g *gathered) mean(c *lab) {
	if g.n >= fewest && g.weight > 0 {
		*c = g.sum.times(1 / g.weight)
	}
}

// middle returns the median of each number of some colours.
func middle(of [3][]float64) (c lab) {
	for i := range c {
		slices.Sort(of[i])
		c[i] = of[i][len(of[i])/2]
	}
	return c
}
