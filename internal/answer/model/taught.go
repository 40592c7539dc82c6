package model

import "ripplewright/internal/matter/phase"

// Taught is what a maker's batches have shown of the custard's hardness, beside the law,
// whose constants stay. The zero Taught is nothing.
//
// What they show of losses, air and syrup is not here: a result is of the recipe as it is
// written, whose weights and label must not move by themselves.
type Taught struct {
	Readings      int     // that tell of it
	HarderFactor  float64 // over the law's; 0: not learnt
	ScatterFactor float64 // by which a batch may still be harder or softer, as phase.Scatter
}

// Known reports whether batches have shown anything.
func (t Taught) Known() bool { return t.HarderFactor > 0 }

// scatter is by which factor a batch of a phase may be harder or softer.
func (t Taught) scatter() float64 {
	if t.Known() {
		return t.ScatterFactor
	}
	return phase.Scatter
}

// of returns what is known of a phase: of the foam's hardness batches tell nothing.
func (t Taught) of(r phase.Role) Taught {
	if r != phase.Dense {
		return Taught{}
	}
	return t
}

// Taught returns a model that computes as batches have shown.
func (m *Model) Taught(t Taught) *Model {
	n := *m
	n.taught = t
	return &n
}

// Lessons returns what m was taught.
func (m *Model) Lessons() Taught { return m.taught }

// Published returns m as nobody has taught it: what batches are compared with.
func (m *Model) Published() *Model {
	if !m.taught.Known() {
		return m
	}
	return m.Taught(Taught{})
}
