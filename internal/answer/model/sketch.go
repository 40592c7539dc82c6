package model

import (
	"math"
	"slices"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
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
func (m *Model) Sketch(d design.Design) (Sketch, error) { return m.SketchSyrup(d, 0) }

// SketchSyrup is Sketch with a syrup that keeps so many percentage points more
// solids than the thermometer says; nothing of one that the scale decides.
func (m *Model) SketchSyrup(d design.Design, solidsPercent float64) (Sketch, error) {
	w, problems := m.weigh(d)
	if len(problems) > 0 {
		return Sketch{}, &InputError{problems}
	}
	c := cookNominal(d, &w, solidsPercent)
	at := d.Serving.TemperatureC
	s := settled{
		dense: sketched(c.dense.mix[0], d.Dense.OverrunPercent, phase.Dense, c.bound, at),
		foam:  sketched(c.foam[0], d.Foam.OverrunPercent, phase.Foam, c.bound, at),
	}
	f := fill(d, &c, &s)
	r := Result{
		sketch: true, strains: make([]Strain, 0, 24),
		Dense: s.dense.with(f.tub.Dense, w.tally[design.DensePart], c.dense.off),
		Foam:  s.foam.with(f.tub.Foam, w.tally[design.FoamPart].Plus(w.tally[design.SyrupPart], 1), c.syrup.off),
		Syrup: c.syrup.result(f.tub.Foam.Factor),
		Blend: Blend{Tub: f.tub, TubsFilled: f.tub.FilledFraction * f.count},
		Lines: made(&w, &f),
	}
	b := &r.Blend
	b.SweetnessPercent = b.Mean(r.Dense.SweetnessPercent, r.Foam.SweetnessPercent)
	if b.VolumeML > 0 {
		b.DensityGPerML = b.MassG / b.VolumeML
	}
	r.Eggs = countEggs(d, r.Lines)
	r.warnCooking(d, &c)
	r.warnLimits(m, d, &w, &c)
	r.warnPhase(&r.Dense, "dense", at)
	r.warnPhase(&r.Foam, "foam", at)
	r.warnTub(d)
	r.warnStorage()
	r.Verdict = judged(d, &r)
	return Sketch{r, d, m}, nil
}

// sketched is phaseAt of the nominal reading.
func sketched(m mix.Mix, overrunPercent float64, role phase.Role, bound solution.Bound, t float64) Phase {
	p := Phase{WrittenG: m.TotalG(), OverrunPercent: overrunPercent}
	if p.WrittenG > 0 {
		m = m.Times(100 / p.WrittenG)
	}
	p.Body = phase.Prepare(m, overrunPercent/100, role, bound)
	p.State = p.Body.At(t)
	p.Word = p.Body.Word(&p.State)
	p.FreezingPointC = Span{p.Body.FreezingPointC, math.NaN(), math.NaN()}
	p.SweetnessPercent = phase.SweetnessPercent(p.Body.Mix)
	p.SwellingRatio = p.Body.SwellingRatio(t, 1)
	return p
}

// made returns the lines with what is made of them, without slopes.
func made(w *weighed, f *filled) []BatchLine {
	for i := range w.lines {
		l := &w.lines[i]
		portion := f.tub.Foam
		if l.Part == design.DensePart {
			portion = f.tub.Dense
		}
		l.Grams = l.WrittenG * portion.Factor
		l.InTubsG = l.Grams * portion.UsedFraction
	}
	return w.lines
}

// Phase returns the body and state of a phase, with what goes into the tubs.
func (s *Sketch) Phase(r phase.Role) *Phase {
	if r == phase.Dense {
		return &s.r.Dense
	}
	return &s.r.Foam
}

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
func (s *Sketch) Nutrition() Nutrition { return nutrition(s.d, &s.r) }

// HardnessAtKPa returns the yield stress of a phase at c °C, kPa.
func (s *Sketch) HardnessAtKPa(r phase.Role, c float64) float64 {
	p := s.Phase(r)
	if c == p.State.AtC {
		return p.State.YieldKPa
	}
	st := p.Body.At(c)
	return st.YieldKPa
}
