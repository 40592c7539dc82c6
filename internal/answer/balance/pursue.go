package balance

import (
	"context"
	"math"
	"slices"
)

// reaches are how far a lever is tried, as shares of its range.
var reaches = [...]float64{0.03, 0.08, 0.18, 0.35, 0.6, 1}

// pursue moves one lever after the other, each the one that helps most, until
// nothing is missed. It returns where the levers then stand, and which are moved.
func (p *problem) pursue(ctx context.Context, banned map[int]bool, first []bool) (x []float64, set []int) {
	return p.pursueFrom(ctx, p.at, nil, mostMoves, banned, first)
}

// pursueFrom is pursue that goes on from x, where those of set are moved, until so many
// are.
func (p *problem) pursueFrom(ctx context.Context, from []float64, moved []int, most int, banned map[int]bool, first []bool) (x []float64, set []int) {
	x, set = slices.Clone(from), slices.Clone(moved)
	_, sum, ok := p.gaps(x)
	if !ok {
		return x, nil
	}
	for len(set) < most && sum > 0 && ctx.Err() == nil {
		known := map[int]attempt{}
		if len(set) == 0 {
			known = p.opening
		}
		best, to := p.foremostAt(x, sum, known, func(i int) bool {
			return !banned[i] && !slices.Contains(set, i) && (len(set) > 0 || first == nil || first[i])
		})
		if best < 0 {
			break
		}
		set = append(set, best)
		x[best] = to
		x = p.polish(ctx, x, set)
		_, sum, _ = p.gaps(x)
		if sum < enough {
			break
		}
	}
	if sum < enough {
		x, set = p.prune(ctx, x, set)
	}
	return x, set
}

// polish moves those levers of set that need not be whole to where least is missed.
func (p *problem) polish(ctx context.Context, x []float64, set []int) []float64 {
	if free := slices.DeleteFunc(slices.Clone(set), func(i int) bool { return p.levers[i].Whole > 0 }); len(free) > 0 {
		x, _ = p.descend(ctx, x, free, 12)
	}
	return x
}

// enough is what may be missed still: within what the clearance leaves.
const enough = 1e-3

// prune puts back what turns out not to be needed once all of set is moved.
func (p *problem) prune(ctx context.Context, x []float64, set []int) ([]float64, []int) {
	for k := 0; k < len(set) && len(set) > 1; {
		y := append([]float64(nil), x...)
		y[set[k]] = p.at[set[k]]
		rest := slices.Delete(slices.Clone(set), k, k+1)
		y = p.polish(ctx, y, rest)
		if _, sum, ok := p.gaps(y); ok && sum < enough {
			x, set, k = y, rest, 0
			continue
		}
		k++
	}
	return x, set
}

// An attempt is a lever moved alone: to what, what is then missed, and a score that
// is less for what meets more by moving less.
type attempt struct {
	lever                int
	value, missed, score float64
}

// The attempts of levers that may move: all are guessed, and of these so many of
// the best are made, and more while a guess is better than what has been made.
const leastAttempts = 4

// foremostAt returns the lever that helps most at x, where sum is missed, and
// where to move it; −1 where none helps in earnest. It adds to known what it has
// made of attempts at x.
func (p *problem) foremostAt(x []float64, sum float64, known map[int]attempt, may func(i int) bool) (lever int, to float64) {
	r, _, ok := p.gaps(x)
	if !ok {
		return -1, 0
	}
	var guesses []attempt
	for i := range p.levers {
		if t, ok := known[i]; ok && may(i) {
			guesses = append(guesses, t)
		} else if may(i) {
			guesses = append(guesses, p.guess(x, r, i, sum))
		}
	}
	slices.SortStableFunc(guesses, func(a, b attempt) int { return cmp(a.score, b.score) })
	best := attempt{lever: -1, score: math.Inf(1)}
	for n, g := range guesses {
		if n >= leastAttempts && best.score <= g.score {
			break
		}
		t, ok := known[g.lever]
		if !ok {
			t = p.try(x, g.lever, sum)
			known[g.lever] = t
		}
		if t.score < best.score && t.missed < sum*0.97 {
			best = t
		}
	}
	return best.lever, best.value
}

// eachReach calls f with the values of lever i that are tried from x on.
func (p *problem) eachReach(x float64, i int, f func(v, moved float64)) {
	l := &p.levers[i]
	for _, end := range [...]float64{l.Low, l.High} {
		for _, by := range reaches {
			v := x + by*(end-x)
			if l.Whole > 0 {
				v = l.Whole * math.Round(v/l.Whole)
			}
			if v != x && v >= l.Low && v <= l.High {
				f(v, price(l)*math.Abs(v-p.at[i])/l.Unit+price(l))
			}
		}
	}
}

func score(missed, sum, moved float64) float64 { return missed/sum*40 + moved }

// guess is the best attempt of lever i by the slopes of r, what is missed at x, as
// far as they hold. Those of a lever in whole steps do not: its guess is the best
// there could be.
func (p *problem) guess(x, r []float64, i int, sum float64) attempt {
	l := &p.levers[i]
	best := attempt{lever: i, value: x[i], missed: sum, score: math.Inf(1)}
	step := 0.01 * (l.High - l.Low)
	if x[i]+step > l.High {
		step = -step
	}
	y := slices.Clone(x)
	y[i] += step
	next, _, ok := p.gaps(y)
	if l.Whole > 0 || !ok {
		best.score = 0
		return best
	}
	p.eachReach(x[i], i, func(v, moved float64) {
		s := 0.0
		for k := range r {
			if d := next[k] - r[k]; r[k]*(r[k]+d*(v-x[i])/step) > 0 { // within its band nothing is missed
				e := r[k] + d*(v-x[i])/step
				s += e * e
			}
		}
		if at := score(s, sum, moved); at < best.score {
			best.value, best.missed, best.score = v, s, at
		}
	})
	return best
}

// try moves lever i alone.
func (p *problem) try(x []float64, i int, sum float64) attempt {
	y := slices.Clone(x)
	best := attempt{lever: i, value: x[i], missed: sum, score: math.Inf(1)}
	p.eachReach(x[i], i, func(v, moved float64) {
		y[i] = v
		if _, s, ok := p.gaps(y); ok && score(s, sum, moved) < best.score {
			best.value, best.missed, best.score = v, s, score(s, sum, moved)
		}
	})
	return best
}
