package balance

import (
	"context"
	"math"
	"slices"
	"strconv"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/label"
	"ripplewright/internal/work/design"
)

// Answer is what a search for wishes finds.
type Answer struct {
	Met          bool // every wish is, without a caution that the design did not have
	Nearest      Proposal
	Outcomes     []Outcome // of the nearest, in the order of the wishes
	Cautions     []string  // codes of what the nearest warns of and the design did not
	Alternatives []Alternative
	Conflicts    []Conflict
}

// All are the nearest design, the alternatives and the points of trade-offs.
func (a *Answer) All() []*Proposal {
	all := []*Proposal{&a.Nearest}
	for i := range a.Alternatives {
		all = append(all, &a.Alternatives[i].Proposal)
	}
	for i := range a.Conflicts {
		for k := range a.Conflicts[i].Trade {
			all = append(all, &a.Conflicts[i].Trade[k].Proposal)
		}
	}
	return all
}

// Outcome is what becomes of a wish.
type Outcome struct {
	Wish  Wish
	Value float64
	Met   bool
	Lacks []label.Limit // of a name of food that is not met
}

// Alternative is another design that does as well, by other means.
type Alternative struct {
	Proposal
	Outcomes []Outcome
}

// The numbers of what is looked for beside the nearest design.
const (
	mostAlternatives = 2
	scattered        = 3 // starts beside the design itself
	longDescent      = 25
	shortDescent     = 8
)

// Balance looks for the design nearest to d that meets what is asked. The error
// is that of Evaluate, or the context's.
func Balance(ctx context.Context, m *model.Model, d design.Design, ask Ask) (Answer, error) {
	before, err := m.Evaluate(d)
	if err != nil {
		return Answer{}, err
	}
	p, err := problemOf(m, d, &ask)
	if err != nil {
		return Answer{}, err
	}
	had := map[string]bool{}
	for i := range before.Warnings {
		had[before.Warnings[i].Code] = had[before.Warnings[i].Code] || spoils(&before.Warnings[i])
	}
	b := balancer{problem: p, before: d, had: had, kitchen: cold.Default()}
	if ask.Kitchen != nil {
		b.kitchen = *ask.Kitchen
	}
	if err := b.follow(ctx, d, &before); err != nil {
		return Answer{}, err
	}
	if ask.whole() {
		s, err := m.Sketch(d)
		if err != nil {
			return Answer{}, err
		}
		made := scaleRounded(asMade(d, &s, false))
		b.written = &made
	}
	a := Answer{}
	x, err := b.find(ctx, &a)
	if err != nil {
		return Answer{}, err
	}
	a.Met = len(a.Cautions) == 0 && !slices.ContainsFunc(a.Outcomes, func(o Outcome) bool { return !o.Met })
	if a.Met {
		a.Alternatives = b.alternatives(ctx, x)
	} else {
		a.Conflicts = b.conflicts(ctx, x, &a)
	}
	return a, ctx.Err()
}

// find puts the nearest design into a and returns where the levers stand in it.
// Minutes are those of its own tub: where they turn out otherwise than the last
// tub's promised, it looks once more.
func (b *balancer) find(ctx context.Context, a *Answer) ([]float64, error) {
	for round := 1; ; round++ {
		x, _ := b.search(ctx, nil, scattered)
		x = b.settle(ctx, b.insist(ctx, x))
		var err error
		if a.Nearest, a.Outcomes, a.Cautions, err = b.answer(ctx, x); err != nil {
			return nil, err
		}
		late := func(o Outcome) bool { return o.Wish.Of == TubMinutes && !o.Met }
		if round == followed || ctx.Err() != nil || !slices.ContainsFunc(a.Outcomes, late) {
			return x, nil
		}
	}
}

// balancer searches one problem again and again.
type balancer struct {
	*problem
	before  design.Design   // as the maker has it
	written *design.Design  // as made of it, where the problem is of that
	had     map[string]bool // codes of its cautions
	kitchen cold.Profile
}

// outcomes returns what becomes of the wishes in d.
func (b *balancer) outcomes(d design.Design) ([]Outcome, error) {
	s, err := b.m.Sketch(d)
	if err != nil {
		return nil, err
	}
	out := make([]Outcome, len(b.wishes))
	for i := range b.wishes {
		w := &b.wishes[i]
		v := w.Value(&s)
		out[i] = Outcome{Wish: *w, Value: v, Met: w.Met(v)}
		if w.Of == TubMinutes {
			out[i].Value = math.Max(v, 0)
		}
		if !out[i].Met {
			out[i].Lacks = missing(&s, w)
		}
	}
	return out, nil
}

// answer proposes x, rounded as coarsely as keeps what it meets. Minutes are those
// of the tub that is proposed, and are timed by it from then on.
func (b *balancer) answer(ctx context.Context, x []float64) (q Proposal, out []Outcome, cautions []string, err error) {
	exact := b.evaluate(x, b.before.Own)
	if exact == nil {
		_, err := b.m.Evaluate(b.design(x))
		return q, nil, nil, err
	}
	best, err := b.outcomes(exact.Design)
	if err != nil {
		return q, nil, nil, err
	}
	keeps := func(q *Proposal) bool {
		now, err := b.outcomes(q.Design)
		if err != nil {
			return false
		}
		for i := range now {
			if best[i].Met && !now[i].Met || !best[i].Met && math.Abs(now[i].Wish.miss(now[i].Value)) > math.Abs(best[i].Wish.miss(best[i].Value))+0.1 {
				return false
			}
		}
		return len(b.cautionsOf(q)) <= len(b.cautionsOf(exact))
	}
	q, ok := b.propose(x, b.before.Own, keeps)
	if !ok {
		q = *exact
	}
	if b.written != nil {
		q.Changes = changesOf(b.m.Library(), *b.written, q.full)
	}
	if err := b.follow(ctx, q.Design, &q.Result); err != nil {
		return q, nil, nil, err
	}
	out, err = b.outcomes(q.Design)
	return q, out, b.cautionsOf(&q), err
}

// cautionsOf returns the codes that q warns of and the design did not.
func (b *balancer) cautionsOf(q *Proposal) []string {
	var out []string
	for i := range q.Result.Warnings {
		w := &q.Result.Warnings[i]
		if spoils(w) && !b.had[w.Code] && b.cautions(w.Code) && !slices.Contains(out, w.Code) {
			out = append(out, w.Code)
		}
	}
	return out
}

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
		y := starts[i]
		for of := free; len(of) > 0; {
			y, _ = q.descend(ctx, y, of, longDescent)
			_, now, ok := b.gaps(y)
			if ok && now < sum {
				x, sum = y, now
			}
			// What has come to an end of its range stops the others there.
			inside := slices.DeleteFunc(slices.Clone(of), func(k int) bool { return y[k] <= b.levers[k].Low || y[k] >= b.levers[k].High })
			if now <= nothing || len(inside) == len(of) {
				break
			}
			of = inside
		}
		if i == 0 && sum > nothing {
			starts = append(starts, b.starts(free, onceMore)...)
		}
	}
	return x
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

// whole searches the whole numbers around x, which lets them be anything: it
// walks from one lattice point to the best of its neighbours, the other levers
// set anew for each, until none is better.
func (b *balancer) whole(ctx context.Context, x []float64, free, whole []int) ([]float64, float64) {
	all := append(slices.Clone(free), whole...)
	seen := map[string]bool{}
	best, bestSum := []float64(nil), math.Inf(1)
	look := func(from []float64, at []float64) bool {
		y := append([]float64(nil), from...)
		var key strings.Builder
		for k, i := range whole {
			y[i] = at[k]
			key.WriteString(strconv.FormatFloat(at[k], 'g', -1, 64) + " ")
		}
		if seen[key.String()] || ctx.Err() != nil && best != nil {
			return false
		}
		seen[key.String()] = true
		y, _ = b.descend(ctx, y, free, shortDescent)
		if sum := b.objective(y, all); sum < bestSum {
			best, bestSum = y, sum
			return true
		}
		return false
	}
	// The corners of the cell that x lies in, then neighbours as long as they help.
	corners := [][]float64{{}}
	for _, i := range whole {
		l := &b.levers[i]
		var more [][]float64
		low := l.Whole * math.Floor(x[i]/l.Whole)
		for _, c := range corners {
			for _, v := range [...]float64{low, low + l.Whole} {
				if v >= l.Low && v <= l.High {
					more = append(more, append(slices.Clone(c), v))
				}
			}
		}
		if len(more) > 16 { // the nearer half: no more than 16 corners are looked at
			slices.SortStableFunc(more, func(p, q []float64) int { return cmp(b.far(p, x, whole), b.far(q, x, whole)) })
			more = more[:16]
		}
		corners = more
	}
	for _, c := range corners {
		look(x, c)
	}
	for round := 0; best != nil && round < 4; round++ {
		centre, from := make([]float64, len(whole)), best
		for k, i := range whole {
			centre[k] = best[i]
		}
		better := false
		for k, i := range whole {
			for _, by := range [...]float64{-1, 1} {
				l := &b.levers[i]
				at := slices.Clone(centre)
				at[k] += by * l.Whole
				if at[k] >= l.Low && at[k] <= l.High {
					better = look(from, at) || better
				}
			}
		}
		if !better {
			break
		}
	}
	if best == nil {
		return x, math.Inf(1)
	}
	if y, _ := b.descend(ctx, best, free, longDescent); b.objective(y, all) < bestSum {
		best, bestSum = y, b.objective(y, all)
	}
	return best, bestSum
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
