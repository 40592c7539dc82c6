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
// which differ little beside distance, that of the phases; any pixels where few do.
func (s *straight) samples(distance float64) []sampled {
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
		return calm
	}
	return all
}

// A pixel lies within a phase if its neighbours, so many pixels away on both sides, differ
// by less than this share of what the phases do.
const (
	beside    = 3
	calmShare = 0.12
)

// place is a pixel's place from −1 to 1.
func (s *straight) place(i, j int) (x, y float64) {
	return 2*(float64(i)+0.5)/float64(s.w) - 1, 2*(float64(j)+0.5)/float64(s.h) - 1
}

// The light is found by turns with which phase a pixel is: from even light on, with ever
// more terms.
const (
	lightDegree = 4
	lightRounds = 6
	certain     = 0.3  // nearer than this to a phase's colour a pixel is taken for it
	blackest    = 0.02 // colours under it tell nothing of the light
	fewest      = 20   // pixels that a phase's colour is taken from
	calming     = 1e-5 // of the samples, for each term: a light that little tells of is even
)

// even finds the colours of the phases and the light from the colours of their spots.
func (s *straight) even(dense, foam lab) phases {
	p := phases{dense: dense, foam: foam, light: make([]float64, 1)}
	all := s.samples(dense.less(foam).size())
	for degree := 1; degree <= lightDegree; degree++ {
		p.light = append(p.light, make([]float64, len(terms(degree, 0, 0, nil))-len(p.light))...)
		p.degree = degree
		for range lightRounds {
			if !p.improve(all) {
				return p
			}
		}
	}
	return p
}

// improve moves the light by weighted least squares of its logarithm, and the colours to
// the middle of the pixels taken for them. It reports whether the pixels tell it.
func (p *phases) improve(all []sampled) bool {
	n := len(p.light)
	normal, right := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	var spare []float64
	var of [2][3][]float64
	for _, q := range all {
		t := terms(p.degree, q.x, q.y, spare)
		spare = t
		sum := 0.0
		for i, v := range t {
			sum += p.light[i] * v
		}
		c := q.c.times(math.Exp(-sum))
		at := p.place(c)
		k, ref := 0, p.dense
		if at > 0.5 {
			k, ref, at = 1, p.foam, 1-at
		}
		w := 1 - at*at/(certain*certain)
		if w <= 0 || c.size() < blackest {
			continue
		}
		for i := range c {
			of[k][i] = append(of[k][i], c[i])
		}
		miss := math.Log(c.size() / ref.size())
		for i := range t {
			right.SetVec(i, right.AtVec(i)+w*t[i]*miss)
			for j := i; j < n; j++ {
				normal.SetSym(i, j, normal.At(i, j)+w*t[i]*t[j])
			}
		}
	}
	for i := range n {
		normal.SetSym(i, i, normal.At(i, i)+calming*float64(len(all)))
	}
	p.recolour(&of)
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

// recolour sets the colours to the middle of what was taken for them.
func (p *phases) recolour(of *[2][3][]float64) {
	for k, to := range []*lab{&p.dense, &p.foam} {
		if len(of[k][0]) >= fewest {
			*to = middle(of[k])
		}
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
