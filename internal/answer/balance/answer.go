package balance

import (
	"context"
	"slices"

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

// Alternative is another design that does as well, by other means, or in which another
// of the wishes that pull apart gives way.
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
	b, a, x, err := look(ctx, m, d, &before, &ask, false)
	if err != nil {
		return Answer{}, err
	}
	if !a.Met && !ask.NoSwaps {
		if c, wide, y, err := look(ctx, m, d, &before, &ask, true); err == nil && wide.betters(&a) {
			b, a, x = c, wide, y
		}
	}
	if !a.Met {
		a.Conflicts = b.conflicts(ctx, x, &a)
	}
	a.Alternatives = b.alternatives(ctx, x, &a)
	return a, ctx.Err()
}

// look looks for the nearest design with what is at hand, or wide with what few kitchens
// keep; x is where the levers stand in it.
func look(ctx context.Context, m *model.Model, d design.Design, before *model.Result, ask *Ask, wide bool) (b balancer, a Answer, x []float64, err error) {
	p, err := problemOf(m, d, ask, wide)
	if err != nil {
		return b, a, nil, err
	}
	had := map[string]bool{}
	for _, code := range cautionCodes(before) {
		had[code] = true
	}
	b = balancer{problem: p, before: d, had: had, kitchen: cold.Default()}
	if ask.Kitchen != nil {
		b.kitchen = *ask.Kitchen
	}
	if err := b.follow(ctx, d, before); err != nil {
		return b, a, nil, err
	}
	if ask.whole() {
		s, err := m.Sketch(d)
		if err != nil {
			return b, a, nil, err
		}
		made := scaleRounded(asMade(d, &s, false))
		b.written = &made
	}
	if x, err = b.find(ctx, &a); err != nil {
		return b, a, nil, err
	}
	a.Met = len(a.Cautions) == 0 && !slices.ContainsFunc(a.Outcomes, func(o Outcome) bool { return !o.Met })
	return b, a, x, nil
}

// betters reports whether a meets more than b: all, or another wish with no caution more.
func (a *Answer) betters(b *Answer) bool {
	count := func(of []Outcome) (n int) {
		for i := range of {
			if of[i].Met {
				n++
			}
		}
		return n
	}
	return a.Met || count(a.Outcomes) > count(b.Outcomes) && len(a.Cautions) <= len(b.Cautions)
}

// find puts the nearest design into a and returns where the levers stand in it.
// Minutes are those of its own tub: where they turn out otherwise than the last
// tub's promised, it looks once more.
func (b *balancer) find(ctx context.Context, a *Answer) ([]float64, error) {
	for round := 1; ; round++ {
		x := b.best(ctx)
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

// best returns the best point, of whole pieces or, where those are weighed beside other
// wishes and cost more than that, of others.
func (b *balancer) best(ctx context.Context) []float64 {
	find := func(b *balancer) ([]float64, float64) {
		x, _ := b.search(ctx, nil, scattered)
		x = b.settle(ctx, b.insist(ctx, x))
		_, sum, _ := b.gaps(x)
		return x, sum
	}
	x, sum := find(b)
	if sum < enough {
		return x
	}
	for _, c := range b.relaxed() {
		if y, now := find(c.balancer); now+c.costs < sum {
			x, sum = y, now+c.costs
		}
	}
	return x
}

// balancer searches one problem again and again.
type balancer struct {
	*problem
	before  design.Design   // as the maker has it
	written *design.Design  // as made of it, where the problem is of that
	had     map[string]bool // codes of its cautions
	kitchen cold.Profile
}
