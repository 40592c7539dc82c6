package balance

import (
	"context"
	"math"
	"slices"
	"strconv"
	"strings"
)

// lattice is a search over whole numbers: each point with the other levers set anew
// for it, once.
type lattice struct {
	*balancer
	free, levers []int // the others, and the whole ones
	all          []int
	seen         map[string]bool
	best         []float64 // nil until there is one
	bestSum      float64
}

// whole searches the whole numbers around x, which lets them be anything: it
// walks from one lattice point to the best of its neighbours, the other levers
// set anew for each, until none is better.
func (b *balancer) whole(ctx context.Context, x []float64, free, whole []int) ([]float64, float64) {
	l := lattice{b, free, whole, append(slices.Clone(free), whole...), map[string]bool{}, nil, math.Inf(1)}
	for _, c := range l.corners(x) {
		l.look(ctx, x, c)
	}
	for round := 0; l.best != nil && round < mostWalks && l.walk(ctx); round++ {
	}
	if l.best == nil {
		return x, math.Inf(1)
	}
	if y, _ := b.descend(ctx, l.best, free, longDescent); b.objective(y, l.all) < l.bestSum {
		return y, b.objective(y, l.all)
	}
	return l.best, l.bestSum
}

// How many corners of a cell are looked at, and how many steps are walked from the best.
const mostCorners, mostWalks = 16, 4

// corners are those of the cell that x lies in, the nearest of them where it has many.
func (l *lattice) corners(x []float64) [][]float64 {
	corners := [][]float64{{}}
	for _, i := range l.levers {
		v := &l.balancer.levers[i]
		var more [][]float64
		low := v.Whole * math.Floor(x[i]/v.Whole)
		for _, c := range corners {
			for _, at := range [...]float64{low, low + v.Whole} {
				if at >= v.Low && at <= v.High {
					more = append(more, append(slices.Clone(c), at))
				}
			}
		}
		if len(more) > mostCorners {
			slices.SortStableFunc(more, func(p, q []float64) int { return cmp(l.far(p, x, l.levers), l.far(q, x, l.levers)) })
			more = more[:mostCorners]
		}
		corners = more
	}
	return corners
}

// look sets the other levers, from where they stand in from, for the whole ones at at,
// and reports whether that is the best by now.
func (l *lattice) look(ctx context.Context, from, at []float64) bool {
	y := slices.Clone(from)
	var key strings.Builder
	for k, i := range l.levers {
		y[i] = at[k]
		key.WriteString(strconv.FormatFloat(at[k], 'g', -1, 64) + " ")
	}
	if l.seen[key.String()] || ctx.Err() != nil && l.best != nil {
		return false
	}
	l.seen[key.String()] = true
	y, _ = l.descend(ctx, y, l.free, shortDescent)
	if sum := l.objective(y, l.all); sum < l.bestSum {
		l.best, l.bestSum = y, sum
		return true
	}
	return false
}

// walk looks at the neighbours of the best point, and reports whether one is better.
func (l *lattice) walk(ctx context.Context) bool {
	centre, from := make([]float64, len(l.levers)), l.best
	for k, i := range l.levers {
		centre[k] = l.best[i]
	}
	better := false
	for k, i := range l.levers {
		for _, by := range [...]float64{-1, 1} {
			v := &l.balancer.levers[i]
			at := slices.Clone(centre)
			at[k] += by * v.Whole
			if at[k] >= v.Low && at[k] <= v.High {
				better = l.look(ctx, from, at) || better
			}
		}
	}
	return better
}

// far is how far the first whole levers at c are from x.
func (b *balancer) far(c, x []float64, whole []int) float64 {
	sum := 0.0
	for k := range c {
		by := (c[k] - x[whole[k]]) / b.levers[whole[k]].Unit
		sum += by * by
	}
	return sum
}

func cmp(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
