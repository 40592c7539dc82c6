package model

import (
	"math"
	"slices"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/work/design"
)

// Sketcher makes one sketch after the other, of designs that have most in common:
// a part or a phase that has not changed since the last is not worked out again.
// It is not for several goroutines at once.
type Sketcher struct {
	m      *Model
	size   [2]string // system and size of the eggs of parts
	parts  [3]part   // by design.Part
	boiled struct {
		syrup
		of boiling
	}
	phases [2]finished // by phase.Role
	w      weighed
	s      Sketch
}

// part is one part weighed out, its nominal reading alone.
type part struct {
	of         []design.Line // as the design has them
	known      bool
	lines      []BatchLine
	mix        mix.Mix
	cook       brought
	alcoholOff float64
}

// boiling is all that a boiled syrup depends on.
type boiling struct {
	mix                                        mix.Mix
	inverted, cookC, weighed, altitude, points float64
}

// finished is a phase, and what its body and its state are of.
type finished struct {
	Phase
	mix     mix.Mix
	overrun float64
	bound   solution.Bound
	at      float64
	known   bool
}

// Sketcher returns a sketcher that remembers nothing yet.
func (m *Model) Sketcher() *Sketcher { return &Sketcher{m: m} }

// Sketch is the Model's; what it returns stands until the next.
func (k *Sketcher) Sketch(d design.Design) (*Sketch, error) { return k.SketchSyrup(d, 0) }

// SketchSyrup is Sketch with a syrup that keeps so many percentage points more
// solids than the thermometer says; nothing of one that the scale decides.
func (k *Sketcher) SketchSyrup(d design.Design, solidsPercent float64) (*Sketch, error) {
	if problems := k.weigh(&d); len(problems) > 0 {
		return nil, &InputError{problems}
	}
	w := &k.w
	c := k.cook(&d, solidsPercent)
	at := d.Serving.TemperatureC
	dense := k.phases[phase.Dense].settle(c.dense.mix[0], d.Dense.OverrunPercent, phase.Dense, c.bound, at, k.m.taught)
	foam := k.phases[phase.Foam].settle(c.foam[0], d.Foam.OverrunPercent, phase.Foam, c.bound, at, k.m.taught)
	f := fillBodies(d, &c, dense.Body, foam.Body)
	r := &k.s.r
	*r = Result{sketch: true, strains: r.strains[:0], Warnings: r.Warnings[:0], Dense: *dense, Foam: *foam}
	r.Dense.Portion, r.Dense.WaterOffG = f.tub.Dense, c.dense.off
	r.Foam.Portion, r.Foam.WaterOffG = f.tub.Foam, c.syrup.off
	r.Syrup = c.syrup.result(f.tub.Foam.Factor, BoilingBand)
	r.Lines = made(w, &f)
	b := &r.Blend
	b.Tub, b.TubsFilled = f.tub, f.tub.FilledFraction*f.count
	b.SweetnessPercent = b.Mean(r.Dense.SweetnessPercent, r.Foam.SweetnessPercent)
	if b.VolumeML > 0 {
		b.DensityGPerML = b.MassG / b.VolumeML
	}
	r.Eggs = countEggs(d, r.Lines)
	r.warnCooking(d, &c)
	r.warnLimits(k.m, d, w, &c)
	r.warnPhase(&r.Dense, "dense", at)
	r.warnPhase(&r.Foam, "foam", at)
	r.warnTub(d)
	r.warnStorage()
	r.Verdict = judged(d, r)
	k.s.d, k.s.m = d, k.m
	return &k.s, nil
}

// weigh is the Model's, of the nominal reading alone and without the columns of
// a label.
func (k *Sketcher) weigh(d *design.Design) []design.Problem {
	var problems []design.Problem
	if size := [2]string{d.Eggs.System, d.Eggs.Size}; size != k.size || len(d.Own) > 0 {
		k.size = size
		for i := range k.parts {
			k.parts[i].known = false
		}
	}
	lib := k.m.lib.With(d.Own)
	w := &k.w
	w.lines, w.alcoholOff = w.lines[:0], 0
	for i := range k.parts {
		p, at := &k.parts[i], design.Part(i)
		if lines := d.Lines(at); !p.known || !slices.Equal(p.of, lines) {
			*p = part{of: append(p.of[:0], lines...), lines: p.lines[:0], known: true}
			for n := range lines {
				line, x, problem := k.m.weighLine(lib, d, at, n)
				if problem != nil {
					problems, p.known = append(problems, *problem), false
					continue
				}
				g := line.WrittenG
				p.mix = p.mix.PlusScaled(x.Nominal, g*line.KeepsFraction/100)
				p.cook.add(line.brings(x), g)
				p.alcoholOff += g * (1 - line.KeepsFraction)
				p.lines = append(p.lines, line)
			}
		}
		w.lines = append(w.lines, p.lines...)
		w.mixes[i][0], w.cook[i] = p.mix, p.cook
		w.alcoholOff += p.alcoholOff
	}
	return problems
}

// cook is the package's, its syrup so many points of solids thicker.
func (k *Sketcher) cook(d *design.Design, points float64) cooked {
	w := &k.w
	of := boiling{w.mixes[design.SyrupPart][0], d.Foam.Syrup.InvertedPercent, d.Foam.Syrup.CookTemperatureC, d.Foam.Syrup.WeighedG, d.Kitchen.AltitudeM, points}
	if s := &k.boiled.syrup; k.boiled.of != of || s.mix.TotalG() == 0 {
		k.boiled.of, *s = of, boilOne(of.mix, *d)
		if points != 0 && s.reached && !s.weighed {
			s.thicken(points)
		}
	}
	c := cooked{
		dense: stove(w.mixes[design.DensePart], d.Dense.StoveLossPercent),
		foam:  w.mixes[design.FoamPart],
		bound: solution.Bound{ProteinGPerG: d.Model.ProteinGPerG, FibreGPerG: d.Model.FibreGPerG},
		syrup: k.boiled.syrup,
	}
	c.foam[0] = c.foam[0].Plus(c.syrup.mix)
	c.syrup.alcoholOff = w.alcoholOff
	return c
}

// settle is phaseAt of the nominal reading m, as written.
func (p *finished) settle(m mix.Mix, overrunPercent float64, role phase.Role, bound solution.Bound, t float64, taught Taught) *Phase {
	body := p.known && p.mix == m && p.overrun == overrunPercent && p.bound == bound
	if body && p.at == t {
		return &p.Phase
	}
	if !body {
		p.mix, p.overrun, p.bound, p.known = m, overrunPercent, bound, true
		p.WrittenG, p.OverrunPercent = m.TotalG(), overrunPercent
		if p.WrittenG > 0 {
			m = m.Times(100 / p.WrittenG)
		}
		p.Body = phase.Prepare(m, overrunPercent/100, role, bound)
		p.Body.HarderFactor = taught.of(role).HarderFactor
		p.FreezingPointC = Span{p.Body.FreezingPointC, math.NaN(), math.NaN()}
		p.SweetnessPercent = phase.SweetnessPercent(p.Body.Mix)
	}
	p.at = t
	p.State = p.Body.At(t)
	p.Word = p.Body.Word(&p.State)
	p.SwellingRatio = p.Body.SwellingRatio(t, 1)
	return &p.Phase
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
