package num

import (
	"fmt"
	"math"
)

// Tridiagonal is a factored tridiagonal matrix, ready to solve for any number
// of right-hand sides.
type Tridiagonal struct {
	lower, pivot, upper []float64 // pivot holds reciprocals
}

// FactorTridiagonal factors the n×n matrix with the given diagonals: lower[i]
// stands left of diag[i] (lower[0] is ignored) and upper[i] right of it
// (upper[n-1] is ignored). The slices are copied.
//
// There is no pivoting, so the matrix should be diagonally dominant or
// symmetric positive definite; a zero pivot is an error.
func FactorTridiagonal(lower, diag, upper []float64) (*Tridiagonal, error) {
	n := len(diag)
	if len(lower) != n || len(upper) != n {
		return nil, fmt.Errorf("tridiagonal matrix: diagonals of %d, %d and %d elements, want as many", len(lower), n, len(upper))
	}
	m := &Tridiagonal{append([]float64(nil), lower...), make([]float64, n), append([]float64(nil), upper...)}
	for i, d := range diag {
		if i > 0 {
			d -= lower[i] * m.upper[i-1]
		}
		if d == 0 || math.IsNaN(d) {
			return nil, fmt.Errorf("tridiagonal matrix: pivot %d is %g", i, d)
		}
		m.pivot[i] = 1 / d
		m.upper[i] *= m.pivot[i]
	}
	return m, nil
}

// Solve overwrites b with the solution x of M x = b. It panics when b has
// another length than the matrix.
func (m *Tridiagonal) Solve(b []float64) {
	n := len(m.pivot)
	if len(b) != n {
		panic("num: right-hand side does not fit the tridiagonal matrix")
	}
	for i := range b {
		if i > 0 {
			b[i] -= m.lower[i] * b[i-1]
		}
		b[i] *= m.pivot[i]
	}
	for i := n - 2; i >= 0; i-- {
		b[i] -= m.upper[i] * b[i+1]
	}
}

// Band is a symmetric matrix of n rows with w diagonals below the main one,
// row by row: element (i, i-k) is at i*(w+1)+k for k = 0…w. Factor turns it
// into its Cholesky factor in place.
type Band struct {
	n, w int
	a    []float64
}

// NewBand returns a zero matrix of n rows and half-bandwidth w.
func NewBand(n, w int) *Band { return &Band{n, w, make([]float64, n*(w+1))} }

// Row returns row i for writing: the diagonal first, then the elements to the
// left of it. Elements left of the first column must stay 0.
func (b *Band) Row(i int) []float64 { return b.a[i*(b.w+1) : (i+1)*(b.w+1)] }

// Factor replaces the matrix by its Cholesky factor L (M = L Lᵀ), keeping the
// reciprocal of L's diagonal. It reports whether the matrix was positive
// definite; if not, its contents are lost. It allocates nothing.
func (b *Band) Factor() bool {
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
func (b *Band) Solve(x []float64) {
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
