package balance

import (
	"context"
	"math"
	"slices"

	"ripplewright/internal/work/design"
)

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
	return slices.DeleteFunc(cautionCodes(&q.Result), func(code string) bool { return b.had[code] || !b.cautions(code) })
}
