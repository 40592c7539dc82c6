package model

import (
	"fmt"
	"math"
	"strings"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// verdict says how the design eats at its serving temperature and the one
// change most worth making, which it has tried.
func (m *Model) verdict(d design.Design, r *Result) Verdict {
	if r.Dense.WrittenG == 0 || r.Foam.WrittenG == 0 {
		return Verdict{Sentence: "Give both phases their lines to see how they eat together.", Advice: "Add ingredients to the empty phase."}
	}
	dense, foam := &r.Dense, &r.Foam
	v := Verdict{
		Good:     phase.Dense.Band().Holds(dense.State.YieldKPa) && phase.Foam.Band().Holds(foam.State.YieldKPa),
		Sentence: fmt.Sprintf("At %s the custard %s and the foam %s.", Celsius(d.Serving.TemperatureC), eats(dense), eats(foam)),
	}
	if s := r.worst(); v.Good && s != nil {
		v.Good = s.Severity < Caution
		v.Advice = s.Message
		return v
	}
	if !v.Good {
		v.Advice = m.advice(d, r)
	}
	return v
}

// worst returns the gravest warning above a note, if any.
func (r *Result) worst() *Warning {
	var w *Warning
	for i := range r.Warnings {
		if x := &r.Warnings[i]; x.Severity > Note && (w == nil || x.Severity > w.Severity) {
			w = x
		}
	}
	return w
}

// eats says what a spoon meets.
func eats(p *Phase) string {
	switch kPa, band := p.State.YieldKPa, p.Body.Role.Band(); {
	case kPa < band.Soft && p.Body.Role == phase.Foam:
		return "slumps"
	case kPa < band.Soft:
		return "is " + p.Word.Name
	case kPa > 2*band.Firm:
		return "is too hard (" + p.Word.Name + ")"
	case kPa > band.Firm:
		return "needs force (" + p.Word.Name + ")"
	case p.Body.Role == phase.Foam:
		return "yields (" + p.Word.Name + ")"
	default:
		return "scoops (" + p.Word.Name + ")"
	}
}

// advice returns the smallest change that brings both phases into their bands:
// a few degrees at serving first, then sugar, then air.
func (m *Model) advice(d design.Design, r *Result) string {
	t := d.Serving.TemperatureC
	if b := r.Blend.Both; b.OK {
		to := math.Min(math.Max(t, b.From), b.To)
		if change := to - t; math.Abs(change) <= 6 {
			word := "warmer"
			if change < 0 {
				word = "colder"
			}
			to = math.Round(2*to) / 2
			if to < b.From {
				to += 0.5
			}
			return fmt.Sprintf("Serve it %s, at %s: both phases eat well from %s to %s.", word, Celsius(to), Celsius(b.From), Celsius(b.To))
		}
	}
	for _, p := range [...]design.Part{design.DensePart, design.FoamPart} {
		ph := r.phaseOf(p)
		band := ph.Body.Role.Band()
		switch kPa := ph.State.YieldKPa; {
		case kPa > band.Firm:
			if s := m.adjust(d, r, p, 0.9*band.Firm); s != "" {
				return s
			}
			return fmt.Sprintf("The %s is too hard at %s: replace part of its sugar by dextrose, or whip in more air.", ph.Body.Role, Celsius(t))
		case kPa < band.Soft && p == design.DensePart:
			if s := m.adjust(d, r, p, 1.2*band.Soft); s != "" {
				return s
			}
			return fmt.Sprintf("The custard is too soft at %s: take out sugar or alcohol, or serve it colder.", Celsius(t))
		}
	}
	return "Whip the foam longer, or use more egg white: it slumps."
}

// adjust finds how many grams of one sweet line of part p bring its phase to
// the yield stress want, and says so once a second evaluation has confirmed
// it. It returns "" where no line can do it within half of its grams.
func (m *Model) adjust(d design.Design, r *Result, p design.Part, want float64) string {
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
		return ""
	}
	// The slope is a tangent; two secant steps land within a gram.
	l := r.Lines[bestLine]
	g := best
	for range 3 {
		x, err := m.evaluate(d.WithGrams(p, l.Index, l.Written+g))
		if err != nil {
			return ""
		}
		miss := math.Log(want / x.phaseOf(p).State.YieldKPa)
		if math.Abs(miss) < 0.02 {
			break
		}
		g *= need / (need - miss)
		if math.Abs(g) > l.Written || math.IsNaN(g) {
			return ""
		}
	}
	verb := "Add"
	if g < 0 {
		verb = "Take out"
	}
	return fmt.Sprintf("%s %.0f g %s (as written): the %s then comes to %.1f kPa, %s.", verb, math.Abs(g), l.Ingredient.Name,
		r.phaseOf(p).Body.Role, want, phase.WordFor(want).Name)
}

// Celsius words a temperature, to a tenth where it has one: "−18 °C".
func Celsius(t float64) string {
	s := strings.TrimSuffix(fmt.Sprintf("%.1f", math.Abs(t)), ".0")
	if t < 0 && s != "0" {
		s = "−" + s
	}
	return s + " °C"
}
