package balance

import (
	"context"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"
)

// squares is a sum of squares to make small: residuals returns so many numbers
// for a point, smooth but for kinks.
type squares interface {
	count() int
	residuals(u, into []float64)
}

// minimiser finds where a sum of squares is least, near where it begins. It
// returns the best point that it has seen, after a cancelled context too.
type minimiser interface {
	minimise(ctx context.Context, of squares, from []float64, steps int) (u []float64, sum float64)
}

// newton is gonum's Newton method with the Hessian of Gauss and Newton, which
// the residuals' slopes give away: some ten steps where a method that knows only
// the sum takes hundreds. gonum, because its line search and its care of an
// unfit Hessian are well kept; 0.15.1, because later ones ask for a newer Go.
type newton struct{}

// slope is the step of the finite differences, in units of a lever: far above
// what rounding leaves of a residual, far below a kink.
const slope = 1e-4

func (newton) minimise(ctx context.Context, of squares, from []float64, steps int) ([]float64, float64) {
	d := newDescent(of, from)
	if len(from) == 0 {
		return d.best, d.sum(d.best)
	}
	problem := optimize.Problem{
		Func: d.sum, Grad: d.gradient, Hess: d.hessian,
		Status: func() (optimize.Status, error) {
			if ctx.Err() != nil {
				return optimize.RuntimeLimit, nil
			}
			return optimize.NotTerminated, nil
		},
	}
	// The method stops with an error where a kink leaves no way down; what it has
	// found by then is the answer.
	_, _ = optimize.Minimize(problem, from, &optimize.Settings{
		MajorIterations: steps, FuncEvaluations: 12 * steps, GradientThreshold: 1e-7,
		Converger: &optimize.FunctionConverge{Absolute: 1e-10, Relative: 1e-5, Iterations: 3},
	}, &optimize.Newton{Linesearcher: &optimize.Backtracking{}})
	return d.best, d.bestSum
}

// descent is a sum of squares as the method asks for it, and the best point seen.
type descent struct {
	of      squares
	best    []float64
	bestSum float64

	at, residuals []float64 // where the slopes are known, and what the residuals are there
	jac           []float64 // the slopes, by lever
	known         bool
	r, moved      []float64 // room to work
}

func newDescent(of squares, from []float64) *descent {
	n, m := len(from), of.count()
	return &descent{
		of: of, best: append([]float64(nil), from...), bestSum: math.Inf(1),
		at: make([]float64, n), residuals: make([]float64, m), jac: make([]float64, n*m), r: make([]float64, m), moved: make([]float64, n),
	}
}

func (d *descent) sum(u []float64) float64 {
	d.of.residuals(u, d.r)
	s := dot(d.r, d.r)
	if s < d.bestSum {
		d.bestSum = s
		copy(d.best, u)
	}
	return s
}

// look works out the slopes at u, once for gradient and Hessian.
func (d *descent) look(u []float64) {
	if d.known && slices.Equal(d.at, u) {
		return
	}
	copy(d.at, u)
	d.of.residuals(u, d.residuals)
	copy(d.moved, u)
	m := len(d.r)
	for i := range u {
		d.moved[i] = u[i] + slope
		d.of.residuals(d.moved, d.r)
		for k := range d.r {
			d.jac[i*m+k] = (d.r[k] - d.residuals[k]) / slope
		}
		d.moved[i] = u[i]
	}
	d.known = true
}

// slopes are those of the residuals along lever i.
func (d *descent) slopes(i int) []float64 { return d.jac[i*len(d.r) : (i+1)*len(d.r)] }

func (d *descent) gradient(grad, u []float64) {
	d.look(u)
	for i := range grad {
		grad[i] = 2 * dot(d.slopes(i), d.residuals)
	}
}

func (d *descent) hessian(h *mat.SymDense, u []float64) {
	d.look(u)
	for i := range u {
		for j := i; j < len(u); j++ {
			h.SetSym(i, j, 2*dot(d.slopes(i), d.slopes(j)))
		}
	}
}

func dot(a, b []float64) float64 {
	s := 0.0
	for k := range a {
		s += a[k] * b[k]
	}
	return s
}
