package num

import (
	"fmt"
	"math"
)

// BracketError says that a root was asked for on an interval whose ends do not
// have opposite signs, so nothing promises that there is one inside.
type BracketError struct {
	A, B   float64 // the interval
	FA, FB float64 // the function at its ends
}

func (e *BracketError) Error() string {
	return fmt.Sprintf("root between %g and %g: the function is %g and %g there, without a change of sign", e.A, e.B, e.FA, e.FB)
}

// maxRootSteps is far above what Brent's method needs: bisection alone
// exhausts the 64 bits of a float64 in about as many steps.
const maxRootSteps = 200

// Root returns a point in [a, b] where the continuous f changes sign, to
// within tol in x (and never closer than rounding allows; tol may be 0).
//
// f(a) and f(b) must have opposite signs or one of them must be 0; otherwise,
// and when f is NaN at an end, it returns NaN and a *BracketError.
//
// Source: Brent R.P. 1973, Algorithms for Minimization without Derivatives,
// ch. 4 (procedure zero): inverse quadratic interpolation guarded by bisection.
func Root(f func(float64) float64, a, b, tol float64) (float64, error) {
	fa, fb := f(a), f(b)
	if !(fa <= 0 && fb >= 0 || fa >= 0 && fb <= 0) {
		return math.NaN(), &BracketError{a, b, fa, fb}
	}
	c, fc := a, fa
	d := b - a
	e := d
	for range maxRootSteps {
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		near := 2*epsilon*math.Abs(b) + tol/2
		half := (c - b) / 2
		if math.Abs(half) <= near || fb == 0 {
			return b, nil
		}
		if math.Abs(e) < near || math.Abs(fa) <= math.Abs(fb) {
			d, e = half, half
		} else if step, ok := interpolate(a, b, c, fa, fb, fc, near, e); ok {
			d, e = step, d
		} else {
			d, e = half, half
		}
		a, fa = b, fb
		if math.Abs(d) > near {
			b += d
		} else {
			b += math.Copysign(near, half)
		}
		fb = f(b)
		if (fb > 0) == (fc > 0) {
			c, fc = a, fa
			d = b - a
			e = d
		}
	}
	return b, nil
}

// RootOrEnd returns Root's point, and where f has one sign throughout the end of
// [a, b] at which it is nearer to 0: an answer held within the range in which it
// is sought. It is NaN where f is NaN at an end.
func RootOrEnd(f func(float64) float64, a, b, tol float64) float64 {
	x, err := Root(f, a, b, tol)
	none, ok := err.(*BracketError)
	switch {
	case !ok:
		return x
	case math.Abs(none.FA) < math.Abs(none.FB):
		return a
	case math.Abs(none.FB) < math.Abs(none.FA):
		return b
	}
	return math.NaN()
}

// interpolate proposes Brent's step from b by the secant or by inverse
// quadratic interpolation; ok is false when bisection would do better.
func interpolate(a, b, c, fa, fb, fc, near, previous float64) (step float64, ok bool) {
	half := (c - b) / 2
	var p, q float64
	s := fb / fa
	if a == c {
		p, q = 2*half*s, 1-s
	} else {
		r, u := fb/fc, fa/fc
		p = s * (2*half*u*(u-r) - (b-a)*(r-1))
		q = (u - 1) * (r - 1) * (s - 1)
	}
	if p > 0 {
		q = -q
	}
	p = math.Abs(p)
	if 2*p >= min(3*half*q-math.Abs(near*q), math.Abs(previous*q)) {
		return 0, false
	}
	return p / q, true
}

// epsilon is the distance from 1 to the next float64.
const epsilon = 0x1p-52
