package balance

import (
	"context"
	"math"
	"slices"
)

// Conflict is a wish that cannot be met, and what it pulls against.
type Conflict struct {
	Wish    Wish
	Nearest float64 // the value closest to its band that can be had, if nothing else is wished

	// Against is what must be given up for the wish to be met: wishes by their
	// place, or codes of cautions. Alone says that even then it cannot.
	Against  []int
	Cautions []string
	Alone    bool

	// Trade is what one costs the other, from the nearest design to the wish
	// met; of the first wish of Against.
	Trade []Trade
}

// Trade is one point of a trade-off.
type Trade struct {
	Value   float64 // of the wish that is not met
	Against float64 // of the other
	Proposal
}

const (
	mostConflicts = 3
	tradePoints   = 7
	insist        = 50 // weight of a wish that is held to
)

// conflicts says of what is missed at x what it pulls against.
func (b *balancer) conflicts(ctx context.Context, x []float64, a *Answer) []Conflict {
	var out []Conflict
	for i := range a.Outcomes {
		if o := &a.Outcomes[i]; !o.Met && len(out) < mostConflicts && ctx.Err() == nil {
			out = append(out, b.conflict(ctx, x, i))
		}
	}
	return out
}

// without returns the search for the problem with some of its wishes left out
// and the i-th held to.
func (b *balancer) without(i int, drop func(k int) bool) *balancer {
	c := *b
	q := *b.problem
	q.wishes = slices.Clone(b.wishes)
	for k := range q.wishes {
		switch {
		case k == i:
			q.wishes[k].Weight = insist
		case drop(k):
			q.wishes[k].Weight = 0
		}
	}
	c.problem = &q
	return &c
}

// reach searches from x and returns the point with the value of wish i there.
func (b *balancer) reach(ctx context.Context, x []float64, i int) ([]float64, float64, bool) {
	free := b.loose()
	y, v := x, math.NaN()
	for _, from := range [...][]float64{x, b.at} { // the design itself, where the first is caught
		y, _ = b.descend(ctx, b.inRange(from, nil), free, shortDescent)
		s, err := b.m.Sketch(b.design(y))
		if err != nil {
			continue
		}
		if v = b.wishes[i].Value(&s); b.wishes[i].Met(v) {
			return y, v, true
		}
	}
	return y, v, false
}

func (b *balancer) conflict(ctx context.Context, x []float64, i int) Conflict {
	c := Conflict{Wish: b.wishes[i]}
	bare := b.without(i, func(int) bool { return true })
	_, withCautions, met := bare.reach(ctx, x, i)
	c.Nearest = withCautions
	if !met {
		free := *bare
		q := *bare.problem
		q.cautions, q.eats = nil, false
		free.problem = &q
		y, v, ok := free.reach(ctx, x, i)
		if ok {
			c.Cautions = b.broken(y)
			return c
		}
		c.Alone, c.Nearest = true, v
		return c
	}
	for k := range b.wishes {
		if k == i {
			continue
		}
		if _, _, met := b.without(i, func(j int) bool { return j == k }).reach(ctx, x, i); met {
			c.Against = append(c.Against, k)
		}
	}
	if len(c.Against) == 0 { // no single one: all of them together
		for k := range b.wishes {
			if k != i {
				c.Against = append(c.Against, k)
			}
		}
	}
	if len(c.Against) > 0 {
		c.Trade = b.trade(ctx, x, i, c.Against[0])
	}
	return c
}

// broken lists the cautions of x that the design did not have.
func (b *balancer) broken(x []float64) []string {
	q := b.evaluate(x, b.before.Own)
	if q == nil {
		return nil
	}
	return b.cautionsOf(q)
}

// trade walks wish i from where it stands at x into its band and notes what
// becomes of wish k.
func (b *balancer) trade(ctx context.Context, x []float64, i, k int) []Trade {
	s, err := b.m.Sketch(b.design(x))
	if err != nil {
		return nil
	}
	from := b.wishes[i].Value(&s)
	to := math.Min(math.Max(from, b.wishes[i].Low), b.wishes[i].High)
	var out []Trade
	for n := range tradePoints {
		if ctx.Err() != nil {
			break
		}
		at := from + (to-from)*float64(n)/(tradePoints-1)
		c := b.without(i, func(int) bool { return false })
		c.wishes[i].Low, c.wishes[i].High = at, at
		x, _, _ = c.reach(ctx, x, i)
		q := c.evaluate(c.rounded(x, finenesses[len(finenesses)-1]), b.before.Own)
		if q == nil {
			continue
		}
		s, err := b.m.Sketch(q.full)
		if err != nil {
			continue
		}
		if b.written != nil {
			q.Changes = changesOf(b.m.Library(), *b.written, q.full)
		}
		w := &b.wishes[i]
		v := w.Value(&s)
		if len(out) > 0 && math.Abs(w.miss(v)) >= math.Abs(w.miss(out[len(out)-1].Value)) {
			continue // the search was caught on the way
		}
		out = append(out, Trade{v, b.wishes[k].Value(&s), *q})
	}
	return out
}
