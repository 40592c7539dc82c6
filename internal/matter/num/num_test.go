package num

import (
	"errors"
	"math"
	"math/rand"
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

func TestPchipPassesThroughItsPointsAndKeepsTheirOrder(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for trial := 0; trial < 200; trial++ {
		n := 2 + rng.Intn(12)
		x, y := make([]float64, n), make([]float64, n)
		for i := 1; i < n; i++ {
			x[i] = x[i-1] + 0.01 + rng.Float64()
			y[i] = y[i-1] + math.Max(0, rng.NormFloat64())*math.Pow(10, 3*rng.Float64())
		}
		p, err := NewPchip(x, y)
		require.NoError(t, err)
		last := math.Inf(-1)
		for k := 0; k <= 500; k++ {
			v := p.At(math.Min(x[n-1]*float64(k)/500, x[n-1]))
			require.GreaterOrEqual(t, v, last-1e-9*(y[n-1]+1))
			last = v
		}
		for i := range x {
			require.InDelta(t, y[i], p.At(x[i]), 1e-9*(1+math.Abs(y[i])))
		}
	}
}

func TestPchipSlopeIsTheDerivative(t *testing.T) {
	p, err := NewPchip([]float64{0, 1, 2, 4, 7}, []float64{0, 1, 4, 5, 5.5})
	require.NoError(t, err)
	for _, x := range []float64{0.3, 0.9, 1.7, 2.5, 3.9, 6} {
		const h = 1e-5
		assert.InDelta(t, (p.At(x+h)-p.At(x-h))/(2*h), p.Slope(x), 1e-8)
	}
}

func TestPchipIsExactOnALine(t *testing.T) {
	p, err := NewPchip([]float64{0, 0.5, 3}, []float64{1, 2, 7})
	require.NoError(t, err)
	assert.InDelta(t, 4.2, p.At(1.6), 1e-14)
}

func TestPchipRefusesWhatItCannotInterpolate(t *testing.T) {
	for name, c := range map[string]struct{ x, y []float64 }{
		"abscissa repeats": {[]float64{0, 1, 1}, []float64{0, 1, 2}},
		"NaN":              {[]float64{0, 1}, []float64{0, math.NaN()}},
		"infinite":         {[]float64{0, math.Inf(1)}, []float64{0, 1}},
		"one point":        {[]float64{0}, []float64{0}},
		"lengths differ":   {[]float64{0, 1}, []float64{0}},
	} {
		_, err := NewPchip(c.x, c.y)
		assert.Error(t, err, name)
	}
	p, err := NewPchip([]float64{0, 1}, []float64{0, 1})
	require.NoError(t, err)
	for _, x := range []float64{-0.1, 1.1, math.NaN()} {
		assert.True(t, math.IsNaN(p.At(x)) && math.IsNaN(p.Slope(x)), "%v", x)
	}
}

func TestTridiagonalSolutionSatisfiesTheSystem(t *testing.T) {
	rng := rand.New(rand.NewSource(2))
	for n := 1; n < 30; n++ {
		lower, diag, upper, b := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
		for i := range diag {
			lower[i], upper[i], b[i] = rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()
			diag[i] = 0.1 + math.Abs(lower[i]) + math.Abs(upper[i])
		}
		m, err := FactorTridiagonal(lower, diag, upper)
		require.NoError(t, err)
		x := append([]float64(nil), b...)
		m.Solve(x)
		for i := range x {
			got := diag[i] * x[i]
			if i > 0 {
				got += lower[i] * x[i-1]
			}
			if i < n-1 {
				got += upper[i] * x[i+1]
			}
			require.InDelta(t, b[i], got, 1e-12)
		}
	}
	_, err := FactorTridiagonal([]float64{0, 1}, []float64{1, 1}, []float64{1, 0})
	assert.Error(t, err, "singular")
}

func TestBandCholeskySolutionSatisfiesTheSystem(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for _, c := range []struct{ n, w int }{{1, 0}, {5, 1}, {12, 3}, {40, 9}} {
		m, full := NewBand(c.n, c.w), make([][]float64, c.n)
		for i := range full {
			full[i] = make([]float64, c.n)
			for k := 1; k <= min(c.w, i); k++ {
				v := rng.NormFloat64()
				full[i][i-k], full[i-k][i] = v, v
			}
		}
		for i := range full {
			for _, v := range full[i] {
				full[i][i] += math.Abs(v)
			}
			full[i][i] += 0.1
			for k := 0; k <= min(c.w, i); k++ {
				m.Row(i)[k] = full[i][i-k]
			}
		}
		x, b := make([]float64, c.n), make([]float64, c.n)
		for i := range b {
			b[i] = rng.NormFloat64()
			x[i] = b[i]
		}
		require.True(t, m.Factor())
		m.Solve(x)
		for i := range b {
			sum := 0.0
			for j, v := range full[i] {
				sum += v * x[j]
			}
			require.InDelta(t, b[i], sum, 1e-12)
		}
	}
	m := NewBand(2, 1)
	m.Row(0)[0], m.Row(1)[0], m.Row(1)[1] = 1, 1, 2
	assert.False(t, m.Factor(), "indefinite")
}
