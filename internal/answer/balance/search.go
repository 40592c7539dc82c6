package balance

import (
	"context"
	"math"
	"slices"
)

// search returns the best point, the levers of held staying where they are, and
// what its objective is.
func (b *balancer) search(ctx context.Context, held map[int]bool, starts int) ([]float64, float64) {
	var free, whole []int
	for i := range b.levers {
		switch {
		case held[i]:
		case b.levers[i].Whole > 0:
			whole = append(whole, i)
		default:
			free = append(free, i)
		}
	}
	loose := append(slices.Clone(free), whole...)
	best, bestSum := b.inRange(b.at, held), math.Inf(1)
	for _, from := range b.starts(loose, starts) {
		if ctx.Err() != nil {
			break
		}
		for i := range from {
			if held[i] {
				from[i] = best[i]
			}
		}
		if x, sum := b.descend(ctx, from, loose, longDescent); sum < bestSum {
			best, bestSum = x, sum
		}
	}
	if len(whole) == 0 {
		return best, bestSum
	}
	return b.whole(ctx, best, free, whole)
}

// The starts from which what is still missed is looked for once more, with what is
// moved weighing so little, beside what is missed, that nothing is left out for it.
const (
	onceMore   = 8
	justEnough = 1e-8
)

// insist returns a point that misses less than x, wherever it lies, x itself where
// there is none. Whole levers stay.
func (b *balancer) insist(ctx context.Context, x []float64) []float64 {
	_, sum, ok := b.gaps(x)
	if !ok {
		return x
	}
	q := *b.problem
	q.change = justEnough
	free := b.loose()
	starts := [][]float64{x}
	for i := 0; i < len(starts) && sum > nothing && ctx.Err() == nil; i++ {
		for k := range b.levers {
			if b.levers[k].Whole > 0 {
				starts[i][k] = x[k]
			}
		}
		q.press(ctx, starts[i], free, longDescent, func(y []float64) bool {
			_, now, ok := b.gaps(y)
			if ok && now < sum {
				x, sum = y, now
			}
			return now <= nothing
		})
		if i == 0 && sum > nothing {
			starts = append(starts, b.starts(free, onceMore)...)
		}
	}
	return x
}

// press descends from x in the levers of free, again and again without those that have
// come to an end of their range, since they stop the others there. It ends where done.
func (p *problem) press(ctx context.Context, x []float64, free []int, steps int, done func(x []float64) bool) {
	for len(free) > 0 && ctx.Err() == nil {
		x, _ = p.descend(ctx, x, free, steps)
		inside := slices.DeleteFunc(slices.Clone(free), func(k int) bool { return x[k] <= p.levers[k].Low || x[k] >= p.levers[k].High })
		if done(x) || len(inside) == len(free) {
			return
		}
		free = inside
	}
}

// nothing is a sum of squares that rounding hides.
const nothing = 1e-5

// inRange returns x with each lever in its range but those held.
func (p *problem) inRange(x []float64, held map[int]bool) []float64 {
	out := append([]float64(nil), x...)
	for i := range out {
		if l := &p.levers[i]; !held[i] {
			out[i] = math.Min(math.Max(out[i], l.Low), l.High)
		}
	}
	return out
}

// hardly is how far a lever may be moved, in its units, to be put back where
// nothing is missed for it.
const hardly = 0.5

// settle puts back what x moves hardly, one after the other from the least on,
// as long as nothing more is missed.
func (b *balancer) settle(ctx context.Context, x []float64) []float64 {
	_, sum, ok := b.gaps(x)
	if !ok || sum > enough {
		return x
	}
	var moved, back []int
	for i := range b.levers {
		if u := math.Abs(b.units(i, x[i])); b.levers[i].Whole == 0 && u > 0 && b.at[i] >= b.levers[i].Low && b.at[i] <= b.levers[i].High {
			if moved = append(moved, i); u < hardly {
				back = append(back, i)
			}
		}
	}
	slices.SortStableFunc(back, func(i, j int) int { return cmp(math.Abs(b.units(i, x[i])), math.Abs(b.units(j, x[j]))) })
	for _, i := range back {
		if ctx.Err() != nil {
			break
		}
		y := slices.Clone(x)
		y[i] = b.at[i]
		rest := slices.DeleteFunc(slices.Clone(moved), func(k int) bool { return k == i })
		y, _ = b.descend(ctx, y, rest, shortDescent)
		if _, now, ok := b.gaps(y); ok && now <= sum+1e-5 {
			x, moved = y, rest
		}
	}
	return x
}
