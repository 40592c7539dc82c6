package balance

import (
	"context"
	"math"
	"slices"
	"sort"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
)

// mender looks for remedies.
type mender struct {
	*problem
	own   []*ingredient.Ingredient
	found Remedies
	first []bool // by lever: it acts on a fault itself, so that a remedy may begin with it
}

// hopeless is after how many tries in vain nothing more is expected.
const hopeless = 3

// mostMoves is how many levers a remedy may move before all may.
const mostMoves = 6

// longLook is after how many sketches no other remedy is looked for beside one: a bench
// waits for it.
const longLook = 1200

func (n *mender) look(ctx context.Context) {
	banned := map[int]bool{}
	best, bestSum := append([]float64(nil), n.at...), math.Inf(1)
	note := func(x []float64) {
		if _, sum, ok := n.gaps(x); ok && sum < bestSum {
			best, bestSum = x, sum
		}
	}
	if _, sum, ok := n.gaps(n.at); ok {
		bestSum = sum * 0.98 // what is no better in earnest is not worth a change
	}
	for try, vain := 0, 0; vain < hopeless && len(n.found.List) < MostRemedies && ctx.Err() == nil; try++ {
		if len(n.found.List) > 0 && *n.looks > longLook {
			break
		}
		x, set := n.pursue(ctx, banned, n.first)
		if len(set) == 0 {
			break
		}
		note(x)
		if vain++; n.take(x) {
			vain = 0
		} else if try == 0 {
			n.more(ctx, x, set, note)
		}
		n.ban(banned, n.foremost(x, set))
	}
	n.sift()
	if len(n.found.List) > 0 || ctx.Err() != nil {
		return
	}
	n.nearest(best)
}

// more moves more than a remedy should, where x with those of set moved is none: rather
// that than nothing.
func (n *mender) more(ctx context.Context, x []float64, set []int, note func(x []float64)) {
	if y := n.throw(ctx); y != nil {
		note(y)
		n.take(y)
	}
	if len(n.found.List) == 0 {
		y, _ := n.pursueFrom(ctx, x, set, 2*mostMoves, nil, nil)
		note(y)
		n.take(y)
	}
}

// ban leaves lever i out of the next remedy, and with the grams of a sugar those
// of all sugars of its part: more honey instead of more sugar is no other remedy.
func (n *mender) ban(banned map[int]bool, i int) {
	banned[i] = true
	l := &n.levers[i]
	if !n.sweetens(l) {
		return
	}
	for k := range n.levers {
		if o := &n.levers[k]; o.Part == l.Part && n.sweetens(o) {
			banned[k] = true
		}
	}
}

// sweetens reports whether a lever moves the grams of a sugar.
func (n *mender) sweetens(l *Lever) bool {
	if l.Kind != Grams {
		return false
	}
	id := l.With
	if l.Line >= 0 {
		id = n.d.Lines(l.Part)[l.Line].Ingredient
	}
	in, ok := n.m.Library().Find(id)
	return ok && kind.Of(in) == kind.Sugar
}

// sift puts the remedies in the order of what they move and drops those that
// turn a design over where another hardly touches it.
func (n *mender) sift() {
	list := n.found.List
	sort.SliceStable(list, func(i, j int) bool { return n.cost(&list[i]) < n.cost(&list[j]) })
	for i := range list {
		if n.cost(&list[i]) > 2.5*n.cost(&list[0])+4 {
			n.found.List = list[:i]
			return
		}
	}
}

// take adds the proposal of x to the remedies if it is good and not one of them.
func (n *mender) take(x []float64) bool {
	q, ok := n.propose(x, n.own, func(q *Proposal) bool { return q.Result.Verdict.Good })
	if !ok || len(q.Changes) == 0 {
		return false
	}
	for i := range n.found.List {
		if sameMoves(n.found.List[i].Changes, q.Changes) {
			return false
		}
	}
	n.found.List = append(n.found.List, q)
	return true
}

// sameMoves reports whether two remedies move the same things.
func sameMoves(a, b []Change) bool {
	return slices.EqualFunc(a, b, func(a, b Change) bool {
		return a.Path == b.Path && a.Part == b.Part && a.Line == b.Line && a.Ingredient == b.Ingredient
	})
}

// cost orders remedies: how many things they move, and how far.
func (n *mender) cost(q *Proposal) float64 {
	sum := 0.0
	for _, c := range q.Changes {
		sum++
		for i := range n.levers {
			l := &n.levers[i]
			if l.Kind != Swap && l.Path == c.Path && (l.Path != "" || l.Part == c.Part && l.Line == c.Line) {
				sum += price(l) * math.Abs(c.After-c.Before) / l.Unit / 2
				break
			}
		}
	}
	return sum
}

// foremost is the lever of set that is moved furthest.
func (n *mender) foremost(x []float64, set []int) int {
	best, far := set[0], -1.0
	for _, i := range set {
		if by := math.Abs(n.units(i, x[i])) * price(&n.levers[i]); by > far {
			best, far = i, by
		}
	}
	return best
}

// nearest tells what x, the closest that was found, leaves unmet.
func (n *mender) nearest(x []float64) {
	q, _ := n.propose(x, n.own, func(*Proposal) bool { return false })
	is := &q.Result
	if len(q.Changes) > 0 {
		n.found.Nearest = &q
	} else if r, err := n.m.Evaluate(n.d); err == nil {
		is = &r
	}
	for i, e := range [...]model.Eating{is.Verdict.Dense, is.Verdict.Foam} {
		if e.How != model.EatsWell && e.How != model.NotThere && e.How != model.NotKnown {
			n.found.Unmet = append(n.found.Unmet, Unmet{Phase: &e, Role: roles[i]})
		}
	}
	for _, code := range cautionCodes(is) {
		n.found.Unmet = append(n.found.Unmet, Unmet{Code: code})
	}
}
