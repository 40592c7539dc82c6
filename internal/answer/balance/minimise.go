package balance

import (
	"context"
	"math"

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
	n, m := len(from), of.count()
	at := struct {
		u, r []float64
		jac  []float64 // by lever, m each
		ok   bool
	}{u: make([]float64, n), r: make([]float64, m), jac: make([]float64, n*m)}
	best, bestSum := append([]float64(nil), from...), math.Inf(1)
	r, moved := make([]float64, m), make([]float64, n)
	sum := func(u []float64) float64 {
		of.residuals(u, r)
		s := 0.0
		for _, x := range r {
			s += x * x
		}
		if s < bestSum {
			bestSum = s
			copy(best, u)
		}
		return s
	}
	look := func(u []float64) { // slopes at u, once for gradient and Hessian
		same := at.ok
		for i := range u {
			same = same && at.u[i] == u[i]
		}
		if same {
			return
		}
		copy(at.u, u)
		of.residuals(u, at.r)
		copy(moved, u)
		for i := range u {
			moved[i] = u[i] + slope
			of.residuals(moved, r)
			for k := range r {
				at.jac[i*m+k] = (r[k] - at.r[k]) / slope
			}
			moved[i] = u[i]
		}
		at.ok = true
	}
	dot := func(a, b []float64) float64 {
		s := 0.0
		for k := range a {
			s += a[k] * b[k]
		}
		return s
	}
	if n == 0 {
		return best, sum(best)
	}
	problem := optimize.Problem{
		Func: sum,
		Grad: func(grad, u []float64) {
			look(u)
			for i := range grad {
				grad[i] = 2 * dot(at.jac[i*m:(i+1)*m], at.r)
			}
		},
		Hess: func(h *mat.SymDense, u []float64) {
			look(u)
			for i := range n {
				for j := i; j < n; j++ {
					h.SetSym(i, j, 2*dot(at.jac[i*m:(i+1)*m], at.jac[j*m:(j+1)*m]))
				}
			}
		},
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
	return best, bestSum
}
