package icy

import (
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/matter/ice"
)

// Options adjusts Tell. The zero Options looks at DefaultWeeks.
type Options struct {
	Weeks int // 1 to MostWeeks; 0 means DefaultWeeks
}

// The ranges of Options, and of what a kitchen has learnt of its ice. A factor beyond
// 1.5 either way is more than a kitchen's own ways explain (an estimate).
const (
	DefaultWeeks            = 12
	MostWeeks               = 52
	LeastFactor, MostFactor = 1 / 1.5, 1.5
)

// Answer is how icy both phases are.
type Answer struct {
	AtC, SwingK, Openings float64 // of the freezer
	Beating               cold.Beating
	Churned               bool // a churn beats it
	Weeks                 int  // looked at

	Custard, Foam Phase
	// Steps say where the custard's crystals come from, at its coarser place
	// after all weeks, in order.
	Steps []Share
	Keeps Keeps
	// PutBack is the custard taken to the counter once and frozen again.
	PutBack PutBack
	Gums    bool // a line of it slows the growth by ice.GumSlows
	// BeginsC is where the custard begins to freeze; well above ice.UntriedC the
	// law was not looked at. NaN where it never does.
	BeginsC float64

	// Learnt is what the kitchen's batches teach: every diameter is times its
	// IceFactor, and its band as much narrower.
	Learnt cold.Learnt
}

// soonWeeks is how soon a change of word is worth telling a maker who did not ask:
// about what a tub is kept at home (common practice, no source).
const soonWeeks = 8

// Matters reports whether the custard is coarse when hardened or leaves its word
// within eight weeks.
func (a *Answer) Matters() bool {
	return a.Custard.Frozen && (a.Custard.Hardened.Step >= Coarse || a.Custard.Melts || a.Keeps.Weeks < soonWeeks)
}

// Phase is the ice of one phase.
type Phase struct {
	Present bool
	Frozen  bool // it holds ice where it is stored; without, every size is NaN
	Little  bool // so little that there is no room to eat icy
	// Unbeaten is a phase that froze with nothing to part its crystals. With less
	// than Airy air they grow into plates.
	Unbeaten bool
	Melts    bool // at the warm end of a swing its wall has no ice left

	AfterFreezing ice.Size // as it goes into the tub
	Wall, Core    ice.Size // hardened: the side at half height, the coarsest cell
	Mean          ice.Size // over the tub's cells
	Weeks         []Week   // from the day it is hardened on

	Hardened Word // its coarser place when hardened
	Word     Word // after all weeks
}

// Week is the ice after so many weeks.
type Week struct {
	Week       float64
	Wall, Core ice.Size
}

// Coarser returns the coarser place.
func (w Week) Coarser() ice.Size {
	if w.Wall.ValueUM > w.Core.ValueUM {
		return w.Wall
	}
	return w.Core
}

// Word is a step of ice.Words with the steps that the band reaches.
type Word struct{ Step, Low, High int }

// Name returns the word.
func (w Word) Name() string { return ice.Words[w.Step].Name }

// Step is one step of the making that coarsens.
type Step string

// The steps in order.
const (
	Seed      Step = "seed"
	Mush      Step = "mush"      // below the freezing point until the last beat
	Unparted  Step = "unbeaten"  // after it, or for want of any
	Hardening Step = "hardening" // in the tub, until as cold as the freezer
	Storage   Step = "storage"   // as if it held its temperature
	Swing     Step = "swing"     // what its swing adds
	Openings  Step = "openings"  // what its door adds
)

// Share is how much of the crystals' volume a step brought, 0 to 1.
type Share struct {
	Step     Step
	Fraction float64
}

// Keeps is how long the custard keeps its word, were the freezer to go on as now.
type Keeps struct {
	Word   Word    // as hardened
	UpToUM float64 // µm, where the word ends; +Inf of the last
	// Weeks until the coarser place is there, and over and times ice.Uncertain;
	// +Inf if never.
	Weeks, LowWeeks, HighWeeks float64
}

// PutBack is one outing.
type PutBack struct {
	Minutes        float64 // on the counter; NaN where the tub never scoops there
	RingC, CoreC   float64 // then, of the outer 10 mm and the core
	Ring, Core     ice.Size
	Rim            bool // the wall melts and freezes back unbeaten: an icy rim
	RingFactor     float64
	HighRingFactor float64
}
