package num

import (
	"fmt"
	"math"
	"sort"
)

// TableError says which row of an interpolation table cannot be used.
type TableError struct {
	Row    int     // counted from 0
	X, Y   float64 // the row as given
	Reason string
}

func (e *TableError) Error() string {
	return fmt.Sprintf("interpolation table, row %d (%g, %g): %s", e.Row, e.X, e.Y, e.Reason)
}

// Pchip is a piecewise cubic through given points that overshoots nowhere:
// where the points rise the curve rises, and an extremum of the curve is an
// extremum of the points. Its first derivative is continuous.
//
// Source: Fritsch F.N., Butland J. 1984, "A method for constructing local
// monotone piecewise cubic interpolants", SIAM J. Sci. Stat. Comput. 5:300,
// with the three-point end slopes of Moler C. 2004, Numerical Computing with
// MATLAB, ch. 3 (function pchiptx).
type Pchip struct {
	x, y, slope []float64
}

// NewPchip returns the curve through (x[i], y[i]), of which it keeps copies.
// It needs two points or more, finite, with x rising; otherwise the error is a
// *TableError.
func NewPchip(x, y []float64) (*Pchip, error) {
	if len(x) != len(y) || len(x) < 2 {
		return nil, fmt.Errorf("interpolation table: %d abscissae and %d ordinates, want as many of both and at least 2", len(x), len(y))
	}
	for i := range x {
		if math.IsNaN(x[i]) || math.IsNaN(y[i]) || math.IsInf(x[i], 0) || math.IsInf(y[i], 0) {
			return nil, &TableError{i, x[i], y[i], "not a finite number"}
		}
		if i > 0 && x[i] <= x[i-1] {
			return nil, &TableError{i, x[i], y[i], "abscissa does not rise"}
		}
	}
	p := &Pchip{x: append([]float64(nil), x...), y: append([]float64(nil), y...), slope: make([]float64, len(x))}
	n := len(x)
	if n == 2 {
		s := (y[1] - y[0]) / (x[1] - x[0])
		p.slope[0], p.slope[1] = s, s
		return p, nil
	}
	for i := 1; i < n-1; i++ {
		p.slope[i] = harmonic(x[i]-x[i-1], x[i+1]-x[i], p.secant(i-1), p.secant(i))
	}
	p.slope[0] = endSlope(x[1]-x[0], x[2]-x[1], p.secant(0), p.secant(1))
	p.slope[n-1] = endSlope(x[n-1]-x[n-2], x[n-2]-x[n-3], p.secant(n-2), p.secant(n-3))
	return p, nil
}

func (p *Pchip) secant(i int) float64 { return (p.y[i+1] - p.y[i]) / (p.x[i+1] - p.x[i]) }

// harmonic is the weighted harmonic mean of two secants, 0 at an extremum.
func harmonic(h0, h1, s0, s1 float64) float64 {
	if s0*s1 <= 0 {
		return 0
	}
	w0, w1 := 2*h1+h0, h1+2*h0
	return (w0 + w1) / (w0/s0 + w1/s1)
}

// endSlope is the one-sided three-point slope, limited so that the end
// interval stays monotone.
func endSlope(h0, h1, s0, s1 float64) float64 {
	s := ((2*h0+h1)*s0 - h0*s1) / (h0 + h1)
	switch {
	case s*s0 <= 0:
		return 0
	case s0*s1 <= 0 && math.Abs(s) > 3*math.Abs(s0):
		return 3 * s0
	}
	return s
}

// Range returns the first and last abscissa.
func (p *Pchip) Range() (first, last float64) { return p.x[0], p.x[len(p.x)-1] }

// At returns the curve at x, or NaN when x is NaN or outside Range.
func (p *Pchip) At(x float64) float64 {
	i, ok := p.interval(x)
	if !ok {
		return math.NaN()
	}
	h := p.x[i+1] - p.x[i]
	return Hermite((x-p.x[i])/h, h, p.y[i], p.slope[i], p.y[i+1], p.slope[i+1])
}

// Slope returns the curve's derivative at x, or NaN when x is NaN or outside
// Range.
func (p *Pchip) Slope(x float64) float64 {
	i, ok := p.interval(x)
	if !ok {
		return math.NaN()
	}
	h := p.x[i+1] - p.x[i]
	t := (x - p.x[i]) / h
	return 6*t*(1-t)*(p.y[i+1]-p.y[i])/h + (1-t)*(1-3*t)*p.slope[i] + t*(3*t-2)*p.slope[i+1]
}

// interval finds the i with x[i] <= x <= x[i+1].
func (p *Pchip) interval(x float64) (int, bool) {
	n := len(p.x)
	if !(x >= p.x[0] && x <= p.x[n-1]) {
		return 0, false
	}
	return min(max(sort.SearchFloat64s(p.x, x)-1, 0), n-2), true
}

// Hermite returns the cubic that has values y0, y1 and slopes s0, s1 at the
// ends of an interval of length h, at the fraction t (0 to 1) of it.
func Hermite(t, h, y0, s0, y1, s1 float64) float64 {
	r := 1 - t
	return y0 + t*t*(3-2*t)*(y1-y0) + h*t*r*(r*s0-t*s1)
}
