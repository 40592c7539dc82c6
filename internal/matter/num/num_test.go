package num

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestRootFindsKnownRoots(t *testing.T) {
	for name, c := range map[string]struct {
		f    func(float64) float64
		a, b float64
		want float64
	}{
		"line":                {func(x float64) float64 { return 2*x - 3 }, -10, 10, 1.5},
		"root at an end":      {func(x float64) float64 { return x }, 0, 1, 0},
		"ends the wrong way":  {func(x float64) float64 { return x*x - 2 }, 2, 0, math.Sqrt2},
		"fixed point of cos":  {func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 0.7390851332151607},
		"flat triple root":    {func(x float64) float64 { return math.Pow(x-1, 3) }, 0, 3, 1},
		"jump":                {func(x float64) float64 { return math.Copysign(1, x-0.25) }, 0, 1, 0.25},
		"first zero of J0":    {math.J0, 2, 3, 2.404825557695773}, // Abramowitz & Stegun 1964, table 9.5
		"Wallis's cubic 2.09": {func(x float64) float64 { return x*x*x - 2*x - 5 }, 2, 3, 2.0945514815423265},
	} {
		x, err := Root(c.f, c.a, c.b, 0)
		require.NoError(t, err, name)
		assert.InDelta(t, c.want, x, 1e-5*boolTo(name == "flat triple root")+1e-14, name)
	}
}

func boolTo(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func TestRootWithoutChangeOfSignIsABracketError(t *testing.T) {
	for _, f := range []func(float64) float64{
		func(x float64) float64 { return x*x + 1 },
		func(float64) float64 { return math.NaN() },
	} {
		x, err := Root(f, -1, 1, 0)
		var bracket *BracketError
		assert.True(t, errors.As(err, &bracket))
		assert.True(t, math.IsNaN(x))
	}
}

// A range without a change of sign holds the answer at the end that is nearer to
// one.
func TestAnAnswerIsHeldWithinTheRangeInWhichItIsSought(t *testing.T) {
	line := func(x float64) float64 { return x - 3 }
	assert.InDelta(t, 3, RootOrEnd(line, 0, 10, 0), 1e-12)
	assert.Equal(t, 5.0, RootOrEnd(line, 5, 10, 0))
	assert.Equal(t, 2.0, RootOrEnd(line, 0, 2, 0))
	assert.True(t, math.IsNaN(RootOrEnd(func(float64) float64 { return math.NaN() }, 0, 1, 0)))
}

// Source: de Boor 1978, A Practical Guide to Splines, ch. IV: a cubic is given by
// its values and slopes at two points.
func TestHermiteIsExactOnACubic(t *testing.T) {
	value := func(x float64) float64 { return 2*x*x*x - 3*x*x + 0.5*x - 7 }
	slope := func(x float64) float64 { return 6*x*x - 6*x + 0.5 }
	const from, h = -1.3, 2.9
	for _, f := range []float64{0, 0.2, 0.5, 0.9, 1} {
		assert.InDelta(t, value(from+f*h), Hermite(f, h, value(from), slope(from), value(from+h), slope(from+h)), 1e-12)
	}
}
