package model

import (
	"math"
	"slices"

	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Strain is a figure beside the step at which it is a caution, whether it is
// past it or not, so that a search knows how far it has to go.
type Strain struct {
	Code      string // of the warning
	Where     string
	Value, At float64 // in the warning's unit
	Below     bool    // at fault below At; false: above it
}

// Past returns by what share of its step the figure is past it, negative within.
func (s Strain) Past() float64 {
	by := (s.Value - s.At) / math.Max(math.Abs(s.At), 1e-9)
	if s.Below {
		return -by
	}
	return by
}

func (r *Result) strain(code, where string, value, at float64, below bool) {
	if r.sketch {
		r.strains = append(r.strains, Strain{code, where, value, at, below})
	}
}

// Sketch is of a design what a search compares, by the stages of Evaluate.
type Sketch struct {
	r Result
	d design.Design
	m *Model
}

// Sketch returns what a search needs of d, in a tenth of the time of Evaluate:
// the nominal reading alone, without bands, scoop ranges, slopes, label and
// verdict. d is taken to be valid; the error is that of Evaluate.
func (m *Model) Sketch(d design.Design) (Sketch, error) {
	s, err := m.Sketcher().Sketch(d)
	if err != nil {
		return Sketch{}, err
	}
	return *s, nil
}

// Phase returns the body and state of a phase, with what goes into the tubs; its
// tally is left out.
func (s *Sketch) Phase(r phase.Role) *Phase {
	if r == phase.Dense {
		return &s.r.Dense
	}
	return &s.r.Foam
}

// Absent reports whether the tubs hold the other phase alone.
func (s *Sketch) Absent(role phase.Role) bool { return s.r.Absent(s.Phase(role)) }

// Tub returns what is filled.
func (s *Sketch) Tub() *Blend { return &s.r.Blend }

// Eggs returns the ledger.
func (s *Sketch) Eggs() *Eggs { return &s.r.Eggs }

// Lines returns the lines as made.
func (s *Sketch) Lines() []BatchLine { return s.r.Lines }

// Syrup returns the boiled syrup.
func (s *Sketch) Syrup() *Syrup { return &s.r.Syrup }

// Verdict is Evaluate's.
func (s *Sketch) Verdict() Verdict { return s.r.Verdict }

// Warnings are Evaluate's, but for those of what a composition leaves open.
func (s *Sketch) Warnings() []Warning { return s.r.Warnings }

// Strains returns the figures that have a step, of what is in the tub.
func (s *Sketch) Strains() []Strain { return s.r.strains }

// Cost returns what the batch costs.
func (s *Sketch) Cost() Cost {
	r := s.r
	r.Lines = slices.Clone(r.Lines)
	return costOf(s.d, &r, s.m.prices)
}

// Nutrition returns the label's amounts, at some cost.
func (s *Sketch) Nutrition() Nutrition {
	r := s.r
	for i := range r.Lines {
		l := &r.Lines[i]
		p := r.phaseOf(l.Part)
		p.Tally = p.Tally.Add(l.Finished, l.WrittenG*l.KeepsFraction)
	}
	return nutrition(s.d, &r)
}

// Food returns what a label needs to know of what goes into the tubs, at some cost.
func (s *Sketch) Food() label.Food { return s.r.Food(s.d) }

// HardnessAtKPa returns the yield stress of a phase at c °C, kPa.
func (s *Sketch) HardnessAtKPa(r phase.Role, c float64) float64 {
	p := s.Phase(r)
	if c == p.State.AtC {
		return p.State.YieldKPa
	}
	st := p.Body.At(c)
	return st.YieldKPa
}
