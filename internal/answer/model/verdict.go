package model

import (
	"math"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Verdict is how a design eats at its serving temperature, and the one change
// most worth making. Package say puts it into words.
type Verdict struct {
	Good    bool
	Empty   bool // a phase has no lines, so nothing can be said of how they eat together
	AtC     float64
	Dense   Eating
	Foam    Eating
	Because *Warning // what spoils the tub, where that is no matter of hardness; nil: nothing does
	Remedy  Remedy   // of a tub whose phases do not both eat well
}

// Eating is what a spoon meets in a phase.
type Eating struct {
	How Feel
	KPa float64
}

// Feel is where a phase stands in, below or above the band in which it eats well.
type Feel uint8

// The feels.
const (
	EatsWell   Feel = iota
	TooSoft         // below its band
	NeedsForce      // above it
	TooHard         // at more than twice its firm end
	NotThere        // the tub holds none of it
	NotKnown        // the hardness law does not reach so far
)

// RemedyKind is what a remedy changes.
type RemedyKind uint8

// The remedies.
const (
	NoRemedy    RemedyKind = iota
	ServeAt                // another serving temperature
	ChangeGrams            // more or less of one line
	Soften                 // the custard or foam, by no single line
	Stiffen                // the custard, likewise
	WhipFoam               // the foam, which slumps
)

// Remedy is a change that brings both phases into their bands, or one of them
// nearer. Of its values each kind has its own.
type Remedy struct {
	Kind RemedyKind

	AtC, NowC float64    // of ServeAt; of the others NowC alone
	Both      ScoopRange // of ServeAt: where every phase in the tub eats well

	Role       phase.Role // the phase that changes
	Ingredient *ingredient.Ingredient
	Grams      float64 // more of the line as written; less where negative
	ThenKPa    float64 // what the phase comes to, by evaluation
}

// verdict judges the evaluated design r of d and looks for a remedy.
func (m *Model) verdict(d design.Design, r *Result) Verdict {
	if r.Dense.WrittenG == 0 || r.Foam.WrittenG == 0 || r.Blend.MassG <= 0 {
		return Verdict{Empty: true, AtC: d.Serving.TemperatureC}
	}
	v := Verdict{AtC: d.Serving.TemperatureC, Dense: r.Dense.eating(), Foam: r.Foam.eating()}
	v.Good = v.Dense.good() && v.Foam.good()
	if !v.Good {
		v.Remedy = m.remedy(d, r)
		if w := r.warning("foam_draws_water"); w != nil && v.Remedy.Kind == ServeAt && v.Remedy.AtC > v.Remedy.NowC {
			// Its foam has no ice in the freezer: to serve it warmer mends nothing.
			v.Because, v.Remedy = w, Remedy{}
		}
		return v
	}
	if v.Because = r.worst(); v.Because != nil {
		v.Good = false
	}
	return v
}

// worst returns the gravest warning above a note that no step deals with, nil
// if there is none; of equals, the first, but before all that nobody knows how
// a phase eats.
func (r *Result) worst() *Warning {
	var w *Warning
	for i := range r.Warnings {
		x := &r.Warnings[i]
		if x.Severity == Note || x.Handled {
			continue
		}
		if w == nil || x.Severity > w.Severity || x.Severity == w.Severity && x.Code == outsideLaw && w.Code != outsideLaw {
			w = x
		}
	}
	return w
}

// warning returns the first warning of that code, nil if there is none.
func (r *Result) warning(code string) *Warning {
	for i := range r.Warnings {
		if r.Warnings[i].Code == code {
			return &r.Warnings[i]
		}
	}
	return nil
}

// good reports whether nothing is wrong with the phase: one that is not there
// cannot be too hard.
func (e Eating) good() bool { return e.How == EatsWell || e.How == NotThere || e.How == NotKnown }

func (p *Phase) eating() Eating {
	if !p.InTub() {
		return Eating{How: NotThere, KPa: math.NaN()}
	}
	if !p.Felt() {
		return Eating{How: NotKnown, KPa: math.NaN()}
	}
	e := Eating{KPa: p.State.YieldKPa}
	switch kPa, band := p.State.YieldKPa, p.Body.Role.Band(); {
	case kPa < band.Soft:
		e.How = TooSoft
	case kPa > 2*band.Firm:
		e.How = TooHard
	case kPa > band.Firm:
		e.How = NeedsForce
	}
	return e
}

// remedy returns the smallest change that brings both phases into their bands:
// a few degrees at serving first, then sugar, then air.
func (m *Model) remedy(d design.Design, r *Result) Remedy {
	t := d.Serving.TemperatureC
	if b := r.eatsWell(); b.OK {
		if to := b.nearest(t); math.Abs(to-t) <= 6 {
			return Remedy{Kind: ServeAt, AtC: to, NowC: t, Both: b}
		}
	}
	for _, p := range [...]design.Part{design.DensePart, design.FoamPart} {
		ph := r.phaseOf(p)
		if !ph.InTub() || !ph.Felt() {
			continue
		}
		band := ph.Body.Role.Band()
		switch kPa := ph.State.YieldKPa; {
		case kPa > band.Firm:
			if x, ok := m.adjust(d, r, p, 0.9*band.Firm); ok {
				return x
			}
			return Remedy{Kind: Soften, NowC: t, Role: ph.Body.Role}
		case kPa < band.Soft && p == design.DensePart:
			if x, ok := m.adjust(d, r, p, 1.2*band.Soft); ok {
				return x
			}
			return Remedy{Kind: Stiffen, NowC: t, Role: ph.Body.Role}
		}
	}
	return Remedy{Kind: WhipFoam, NowC: t, Role: phase.Foam}
}

// nearest returns the half degree of the range that is nearest to t, and the
// middle of a range too narrow to hold one, °C: advice to serve at a
// temperature never lies outside the range named beside it.
func (b ScoopRange) nearest(t float64) float64 {
	from, to := math.Ceil(2*b.From)/2, math.Floor(2*b.To)/2
	if from > to {
		return (b.From + b.To) / 2
	}
	return math.Round(2*math.Min(math.Max(t, from), to)) / 2
}

// adjust finds how many grams of one sweet line of part p bring its phase to
// the yield stress want, kPa, and returns them once a second evaluation has
// confirmed them; ok is false where no line can do it within half of its grams.
func (m *Model) adjust(d design.Design, r *Result, p design.Part, want float64) (x Remedy, ok bool) {
	best, bestLine := math.Inf(1), -1
	need := math.Log(want / r.phaseOf(p).State.YieldKPa)
	for i, l := range r.Lines {
		if l.Part != p || l.Written <= 0 || l.Slopes.LnYield == 0 || l.Ingredient.Cell(ingredient.TotalSugars).Or(0) < 40 {
			continue
		}
		if g := need / l.Slopes.LnYield; math.Abs(g) < math.Abs(best) && math.Abs(g) <= 0.6*l.Written {
			best, bestLine = g, i
		}
	}
	if bestLine < 0 {
		return Remedy{}, false
	}
	// The slope is a tangent; two secant steps land within a gram.
	l := r.Lines[bestLine]
	g := best
	for range 3 {
		x, err := m.evaluate(d.WithGrams(p, l.Index, l.Written+g))
		if err != nil {
			return Remedy{}, false
		}
		miss := math.Log(want / x.phaseOf(p).State.YieldKPa)
		if math.Abs(miss) < 0.02 {
			break
		}
		g *= need / (need - miss)
		if math.Abs(g) > l.Written || math.IsNaN(g) {
			return Remedy{}, false
		}
	}
	return Remedy{Kind: ChangeGrams, NowC: d.Serving.TemperatureC, Role: r.phaseOf(p).Body.Role, Ingredient: l.Ingredient, Grams: g, ThenKPa: want}, true
}

// eatsWell returns where every phase in the tub eats well.
func (r *Result) eatsWell() ScoopRange {
	switch {
	case !r.Foam.InTub():
		return r.Dense.Scoop
	case !r.Dense.InTub():
		return r.Foam.Scoop
	}
	return r.Blend.Both
}
