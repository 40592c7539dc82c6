package balance

import (
	"context"
	"math"
	"slices"
)

// alternatives returns designs that meet the wishes too, each without what the
// ones before it move furthest.
func (b *balancer) alternatives(ctx context.Context, x []float64) []Alternative {
	var out []Alternative
	held := map[int]bool{}
	for range mostAlternatives + 2 {
		furthest, by := -1, 0.05
		for i := range b.levers {
			if u := math.Abs(b.units(i, x[i])); !held[i] && u > by {
				furthest, by = i, u
			}
		}
		if furthest < 0 || ctx.Err() != nil {
			break
		}
		held[furthest] = true
		x, _ = b.search(ctx, held, 1)
		x = b.settle(ctx, x)
		q, outcomes, cautions, err := b.answer(ctx, x)
		if err != nil || len(cautions) > 0 || slices.ContainsFunc(outcomes, func(o Outcome) bool { return !o.Met }) {
			break
		}
		out = append(out, Alternative{q, outcomes})
		if len(out) == mostAlternatives {
			break
		}
	}
	return out
}
