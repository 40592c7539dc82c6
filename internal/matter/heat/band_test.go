package heat

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// band is a symmetric matrix of n rows with w diagonals below the main one,
// row by row: element (i, i-k) is at i*(w+1)+k for k = 0…w. Factor turns it
// into its Cholesky factor in place.
type band struct {
	n, w int
	a    []float64
}

// newBand returns a zero matrix of n rows and half-bandwidth w.
func newBand(n, w int) *band { return &band{n, w, make([]float64, n*(w+1))} }

// Row returns row i for writing: the diagonal first, then the elements to the
// left of it. Elements left of the first column must stay 0.
func (b *band) Row(i int) []float64 { return b.a[i*(b.w+1) : (i+1)*(b.w+1)] }

// Factor replaces the matrix by its Cholesky factor L (M = L Lᵀ), keeping the
// reciprocal of L's diagonal. It reports whether the matrix was positive
// definite; if not, its contents are lost. It allocates nothing.
func (b *band) Factor() bool {
	w := b.w
	for i := 0; i < b.n; i++ {
		row := b.Row(i)
		for k := min(w, i); k > 0; k-- {
			other := b.Row(i - k)
			sum := row[k]
			m := min(w-k, i-k)
			left, right := row[k+1:k+1+m], other[1:1+m]
			for l, v := range left {
				sum -= v * right[l]
			}
			row[k] = sum * other[0]
		}
		d := row[0]
		for _, v := range row[1:] {
			d -= v * v
		}
		if !(d > 0) {
			return false
		}
		row[0] = 1 / math.Sqrt(d)
	}
	return true
}

// Solve overwrites x, the right-hand side, with the solution, after Factor. It
// allocates nothing.
func (b *band) Solve(x []float64) {
	w := b.w
	for i := range x {
		row := b.Row(i)
		sum := x[i]
		m := min(w, i)
		for k := 1; k <= m; k++ {
			sum -= row[k] * x[i-k]
		}
		x[i] = sum * row[0]
	}
	for i := len(x) - 1; i >= 0; i-- {
		row := b.Row(i)
		v := x[i] * row[0]
		x[i] = v
		m := min(w, i)
		for k := 1; k <= m; k++ {
			x[i-k] -= row[k] * v
		}
	}
}

func TestBandCholeskySolutionSatisfiesTheSystem(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	for _, c := range []struct{ n, w int }{{1, 0}, {5, 1}, {12, 3}, {40, 9}} {
		m, full := newBand(c.n, c.w), make([][]float64, c.n)
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
	m := newBand(2, 1)
	m.Row(0)[0], m.Row(1)[0], m.Row(1)[1] = 1, 1, 2
	assert.False(t, m.Factor(), "indefinite")
}
