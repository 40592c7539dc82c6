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

	// Trade is what one costs the others, from the nearest design to the wish met.
	Trade []Trade

	met []float64 // where the levers stand at its end; nil where the wish is not met there
}

// Trade is one point of a trade-off.
type Trade struct {
	Value   float64   // of the wish that is not met
	Against []float64 // of the others, in the order of the conflict's
	Proposal
}

const (
	mostConflicts = 3
	tradePoints   = 7
	insist        = 5000 // weight of a wish that is held to, whatever it costs the others
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
	w := &b.wishes[i]
	best, v, met := x, math.NaN(), false
	for _, from := range [...][]float64{x, b.at} { // the design itself, where the first is caught
		b.press(ctx, b.inRange(from, nil), free, shortDescent, func(y []float64) bool {
			s, err := b.sketch(y)
			if err != nil {
				return false
			}
			if now := w.Value(s); math.IsNaN(v) || math.Abs(w.miss(now)) < math.Abs(w.miss(v)) {
				best, v = y, now
			}
			met = w.Met(v)
			return met
		})
		if met {
			break
		}
	}
	return best, v, met
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
		b.trade(ctx, x, i, &c)
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

// trade walks wish i from where it stands at x into its band and notes in c what
// becomes of those against it.
func (b *balancer) trade(ctx context.Context, x []float64, i int, c *Conflict) {
	s, err := b.m.Sketch(b.design(x))
	if err != nil {
		return
	}
	from := b.wishes[i].Value(&s)
	to := math.Min(math.Max(from, b.wishes[i].Low), b.wishes[i].High)
	for n := range tradePoints {
		if ctx.Err() != nil {
			break
		}
		at := from + (to-from)*float64(n)/(tradePoints-1)
		held := b.without(i, func(int) bool { return false })
		held.wishes[i].Low, held.wishes[i].High = at, at
		x, _, _ = held.reach(ctx, x, i)
		q := held.evaluate(held.rounded(x, finenesses[len(finenesses)-1]), b.before.Own)
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
		if last := len(c.Trade) - 1; last >= 0 && math.Abs(w.miss(v)) >= math.Abs(w.miss(c.Trade[last].Value)) {
			continue // the search was caught on the way
		}
		t := Trade{Value: v, Proposal: *q}
		for _, k := range c.Against {
			t.Against = append(t.Against, b.wishes[k].Value(&s))
		}
		c.Trade = append(c.Trade, t)
		if w.Met(v) {
			c.met = x
		}
	}
}
