package balance

import (
	"context"
	"math"
	"slices"
)

// alternatives returns designs that do as well as a's nearest by other means, each
// without what the ones before it move furthest; where wishes pull against each other,
// then those in which another of them gives way.
func (b *balancer) alternatives(ctx context.Context, x []float64, a *Answer) []Alternative {
	var out []Alternative
	add := func(x []float64, will func(o []Outcome) bool) {
		q, outcomes, cautions, err := b.answer(ctx, x)
		if err != nil || len(cautions) > len(a.Cautions) || !will(outcomes) || !b.differs(&q, a, out) {
			return
		}
		out = append(out, Alternative{q, outcomes})
	}
	held := map[int]bool{}
	for at := x; len(out) < mostAlternatives && len(held) < mostAlternatives+1 && ctx.Err() == nil; {
		furthest, by := -1, 0.05
		for i := range b.levers {
			if u := math.Abs(b.units(i, at[i])); !held[i] && u > by {
				furthest, by = i, u
			}
		}
		if furthest < 0 {
			break
		}
		held[furthest] = true
		at, _ = b.search(ctx, held, 1)
		at = b.settle(ctx, at)
		add(at, func(o []Outcome) bool { return asGood(o, a.Outcomes) })
	}
	for i := range a.Conflicts {
		if c := &a.Conflicts[i]; c.met != nil && len(out) < mostAlternatives+mostConflicts && ctx.Err() == nil {
			add(c.met, func(o []Outcome) bool { return !sameMet(o, a.Outcomes) })
		}
	}
	return out
}

// asGood reports whether what one design meets another does, and misses hardly more of
// the rest.
func asGood(o, than []Outcome) bool {
	for i := range o {
		was, is := math.Abs(than[i].Wish.miss(than[i].Value)), math.Abs(o[i].Wish.miss(o[i].Value))
		if than[i].Met && !o[i].Met || !than[i].Met && is > 1.2*was+0.2 {
			return false
		}
	}
	return true
}

func sameMet(a, b []Outcome) bool {
	return slices.EqualFunc(a, b, func(a, b Outcome) bool { return a.Met == b.Met })
}

// alike is within what share of a change another is the same to a maker.
const alike = 0.15

// differs reports whether q moves other things than the nearest and the alternatives that
// there are, or one of them much further or less.
func (b *balancer) differs(q *Proposal, a *Answer, out []Alternative) bool {
	all := []*Proposal{&a.Nearest}
	for i := range out {
		all = append(all, &out[i].Proposal)
	}
	return !slices.ContainsFunc(all, func(o *Proposal) bool {
		return sameMoves(o.Changes, q.Changes) && slices.EqualFunc(o.Changes, q.Changes, func(x, y Change) bool {
			by, than := x.After-y.After, math.Max(math.Abs(x.After-x.Before), math.Abs(y.After-y.Before))
			return math.Abs(by) <= alike*than
		})
	})
}
