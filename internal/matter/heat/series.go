package heat

import (
	"fmt"
	"math"

	"ripplewright/internal/matter/num"
)

// Series is the exact cooling of a slab (half thickness L), cylinder or sphere
// (radius L) with constant properties, uniform at first, in air of constant
// temperature: Y = (T − Tair)/(Tstart − Tair) as a sum over eigenvalues.
//
// Source: Incropera F.P., DeWitt D.P., Fundamentals of Heat and Mass Transfer,
// ch. 5 (eqs 5.39–5.52; numbers from memory): β tan β = Bi, β J₁(β)/J₀(β) = Bi
// and 1 − β cot β = Bi.
type Series struct {
	shape Shape
	beta  []float64
	c     []float64
}

// terms of the series: the last is below 1e-12 from Fo = 1e-3 on.
const terms = 60

// NewSeries finds the eigenvalues for the Biot number bi = hL/k > 0.
func NewSeries(s Shape, bi float64) (*Series, error) {
	if !(bi > 0) || math.IsInf(bi, 0) {
		return nil, fmt.Errorf("series of a cooling body: Biot number %g", bi)
	}
	if s < PlaneWall || s > Ball {
		return nil, fmt.Errorf("series of a cooling body: unknown shape %d", s)
	}
	out := &Series{shape: s}
	for n := 0; n < terms; n++ {
		lo, hi := eigenBracket(s, n)
		b, err := num.Root(func(b float64) float64 { return eigen(s, b, bi) }, lo, hi, 0)
		if err != nil {
			return nil, fmt.Errorf("eigenvalue %d: %w", n, err)
		}
		out.beta = append(out.beta, b)
		out.c = append(out.c, amplitude(s, b))
	}
	return out, nil
}

// eigen is zero at the eigenvalues, without the poles of the printed form.
func eigen(s Shape, b, bi float64) float64 {
	switch s {
	case LongCylinder:
		return b*math.J1(b) - bi*math.J0(b)
	case Ball:
		return (1-bi)*math.Sin(b) - b*math.Cos(b)
	default:
		return b*math.Sin(b) - bi*math.Cos(b)
	}
}

// eigenBracket holds eigenvalue n for every Bi: of the slab (nπ, nπ + π/2), of
// the cylinder from a zero of J₁ to the next of J₀, of the sphere (nπ, (n+1)π).
func eigenBracket(s Shape, n int) (lo, hi float64) {
	switch s {
	case LongCylinder:
		if n > 0 {
			lo = besselZero(math.J1, (float64(n)+0.25)*math.Pi)
		}
		return lo, besselZero(math.J0, (float64(n)+0.75)*math.Pi)
	case Ball:
		if n == 0 {
			return 1e-6, math.Pi
		}
		return float64(n) * math.Pi, float64(n+1) * math.Pi
	default:
		return float64(n) * math.Pi, (float64(n) + 0.5) * math.Pi
	}
}

// besselZero refines McMahon's first term, which is within 0.1 of the zero
// (Abramowitz & Stegun 1964, 9.5.12).
func besselZero(f func(float64) float64, near float64) float64 {
	z, err := num.Root(f, near-0.3, near+0.3, 0)
	if err != nil {
		panic("heat: " + err.Error())
	}
	return z
}

func amplitude(s Shape, b float64) float64 {
	switch s {
	case LongCylinder:
		return 2 / b * math.J1(b) / (math.J0(b)*math.J0(b) + math.J1(b)*math.J1(b))
	case Ball:
		return 4 * (math.Sin(b) - b*math.Cos(b)) / (2*b - math.Sin(2*b))
	default:
		return 4 * math.Sin(b) / (2*b + math.Sin(2*b))
	}
}

// At returns Y at the fraction x (0 to 1) of L from the centre and the Fourier
// number fo = αt/L² > 0.
func (s *Series) At(x, fo float64) float64 {
	return s.sum(fo, func(b float64) float64 {
		switch {
		case s.shape == LongCylinder:
			return math.J0(b * x)
		case s.shape == Ball && x == 0:
			return 1
		case s.shape == Ball:
			return math.Sin(b*x) / (b * x)
		default:
			return math.Cos(b * x)
		}
	})
}

// Mean returns Y averaged over the volume at the Fourier number fo.
func (s *Series) Mean(fo float64) float64 {
	return s.sum(fo, func(b float64) float64 {
		switch s.shape {
		case LongCylinder:
			return 2 * math.J1(b) / b
		case Ball:
			return 3 * (math.Sin(b) - b*math.Cos(b)) / (b * b * b)
		default:
			return math.Sin(b) / b
		}
	})
}

func (s *Series) sum(fo float64, profile func(float64) float64) float64 {
	y := 0.0
	for i, b := range s.beta {
		y += s.c[i] * math.Exp(-b*b*fo) * profile(b)
	}
	return y
}
