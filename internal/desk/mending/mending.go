// Package mending looks for remedies of the open design while hands go on, and
// remembers which of its lines must not move.
package mending

import (
	"context"
	"time"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/work/design"
)

// rest is how long a design must rest before remedies are looked for, so that a
// dragging hand has the machine for itself.
const rest = 120 * time.Millisecond

// asked is what remedies are looked for.
type asked struct {
	m     *model.Model
	d     design.Design
	r     *model.Result
	locks balance.Locks
	in    cold.Profile
}

// comparison asks what remedies bring beside what they are for.
type comparison struct {
	*asked
	found *balance.Remedies
}

// Mender looks for remedies away from the window's thread, for the newest design
// only. Its methods are for the window's thread.
type Mender struct {
	found   *balance.Remedies // of the design shown last; nil until known
	last    *asked
	locked  map[lineKey]bool
	answers *newest.Answers[*asked, balance.Remedies]
	besides *newest.Answers[comparison, []*balance.Beside]
	kitchen func(design.Design) cold.Profile
}

// lineKey names a line for as long as the program runs: lines move, and what is
// locked is an ingredient in its part.
type lineKey struct {
	part design.Part
	id   string
}

// New returns a mender whose answers come by post; known is told of each: when remedies
// are found, and when it is known what they bring beside, in the kitchen of a design.
func New(post func(func()), kitchen func(design.Design) cold.Profile, known func()) *Mender {
	n := &Mender{locked: map[lineKey]bool{}, kitchen: kitchen}
	n.answers = newest.NewAnswers(post,
		func(ctx context.Context, q *asked) (balance.Remedies, error) {
			select {
			case <-ctx.Done():
				return balance.Remedies{}, ctx.Err()
			case <-time.After(rest):
			}
			found := balance.Mend(ctx, q.m, q.d, q.r, q.locks)
			_ = found.TimeOut(ctx, q.in) // else there are no minutes
			return found, nil
		},
		func(q *asked, found balance.Remedies, err error) {
			if q != n.last || err != nil {
				return
			}
			n.found = &found
			known()
			n.besides.Ask(comparison{q, n.found})
		})
	n.besides = newest.NewAnswers(post,
		func(ctx context.Context, q comparison) ([]*balance.Beside, error) {
			return balance.Compare(ctx, q.d, q.r, q.in, q.found.All())
		},
		func(q comparison, told []*balance.Beside, err error) {
			if q.found == n.found && err == nil {
				balance.Told(q.found.All(), told)
				known()
			}
		})
	return n
}

// Show has remedies looked for of d, whose evaluation by m is r, unless that is
// what was shown last. A good design needs none.
func (n *Mender) Show(m *model.Model, d design.Design, r *model.Result) {
	if n.last != nil && n.last.m == m && n.last.d.Equal(d) {
		return
	}
	n.look(m, d, r)
}

func (n *Mender) look(m *model.Model, d design.Design, r *model.Result) {
	own := *r // the session's is overwritten by the next
	n.last, n.found = &asked{m: m, d: d, r: &own, locks: n.Locks(d), in: n.kitchen(d)}, nil
	n.besides.Stop()
	if own.Verdict.Good || own.Verdict.Empty {
		n.found = &balance.Remedies{}
		n.answers.Stop()
		return
	}
	n.answers.Ask(n.last)
}

// Found returns the remedies of the design shown last, nil until they are known.
func (n *Mender) Found() *balance.Remedies { return n.found }

// Locked reports whether line i of part p of d must not move.
func (n *Mender) Locked(d *design.Design, p design.Part, i int) bool {
	return n.locked[keyOf(d, p, i)]
}

// Lock says whether line i of part p of d may move from now on, and looks again.
func (n *Mender) Lock(d *design.Design, p design.Part, i int, on bool) {
	n.locked[keyOf(d, p, i)] = on
	if n.last != nil {
		n.look(n.last.m, n.last.d, n.last.r)
	}
}

// Locks returns what must not move of d.
func (n *Mender) Locks(d design.Design) balance.Locks {
	l := balance.Locks{Lines: map[balance.LineAt]bool{}}
	for _, p := range design.Parts {
		for i := range d.Lines(p) {
			if n.Locked(&d, p, i) {
				l.Lines[balance.LineAt{Part: p, Line: i}] = true
			}
		}
	}
	return l
}

func keyOf(d *design.Design, p design.Part, i int) lineKey {
	return lineKey{p, d.Lines(p)[i].Ingredient}
}
