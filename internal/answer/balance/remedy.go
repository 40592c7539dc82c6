package balance

import (
	"context"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// MostRemedies is how many remedies are looked for.
const MostRemedies = 3

// Remedies are what mends a design.
type Remedies struct {
	// List has up to MostRemedies, each of which gives a good verdict in one
	// step, the one that moves least first.
	List []Proposal
	// Unmet is, where none does, what cannot be met together with the rest, and
	// Nearest what comes closest; nil where nothing comes closer.
	Unmet   []Unmet
	Nearest *Proposal
}

// Unmet is a part of a good verdict that stays out of reach: a phase that does
// not eat well, or a caution.
type Unmet struct {
	Phase *model.Eating // as it stays; nil of a caution
	Role  phase.Role
	Code  string // of the caution
}

// First returns the remedy to name first, or the nearest, nil without either.
func (r *Remedies) First() *Proposal {
	if len(r.List) > 0 {
		return &r.List[0]
	}
	return r.Nearest
}

// All are the remedies and the nearest.
func (r *Remedies) All() (all []*Proposal) {
	for i := range r.List {
		all = append(all, &r.List[i])
	}
	if r.Nearest != nil {
		all = append(all, r.Nearest)
	}
	return all
}

// Mend looks for remedies of d, whose evaluation is r: none of a design that is
// good or has an empty phase. A cancelled context ends it early with what was
// found.
func Mend(ctx context.Context, m *model.Model, d design.Design, r *model.Result, locks Locks) Remedies {
	if r.Verdict.Good || r.Verdict.Empty {
		return Remedies{}
	}
	found := Remedies{}
	for _, wide := range [...]bool{false, true} {
		p := mending(m, d, locks, wide)
		if p == nil {
			return found
		}
		n := mender{problem: p, own: d.Own, first: make([]bool, len(p.levers))}
		for i := range p.levers {
			n.first[i] = answers(&p.levers[i], r)
		}
		n.look(ctx)
		if wide && len(n.found.List) == 0 || ctx.Err() != nil && len(found.Unmet) > 0 {
			break // the nearest of the kitchen's own is as good
		}
		if found = n.found; len(found.List) > 0 {
			break
		}
	}
	return found
}
