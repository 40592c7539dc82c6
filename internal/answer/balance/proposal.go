package balance

import (
	"math"
	"slices"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// Proposal is a design that a search proposes, evaluated.
type Proposal struct {
	Design  design.Design
	Result  model.Result
	Changes []Change
	Beside  *Beside         // what it brings beside what it is for; nil until Compare
	Out     *cold.Softening // out of the freezer, of one that serves warmer; nil until TimeOut

	full design.Design // with the lines that have come to nothing
}

// Change is one thing that a proposal weighs or sets otherwise.
type Change struct {
	Part       design.Part
	Line       int                    // its place before; −1 of a line that is added
	Ingredient *ingredient.Ingredient // nil of a setting
	Path       string                 // of a setting
	Before     float64                // g as written, or in the setting's unit
	After      float64                // 0 of a line that goes
	Pieces     bool                   // before and after are pieces of egg
	CountOf    design.EggPart
}

// moves are the settings that a search moves.
var moves = [...]string{
	"serving.temperature_c", "tubs.count", "tubs.fill_percent", "blend.foam_volume_percent", "dense.stove_loss_percent", "dense.overrun_percent",
	"foam.syrup.cook_temperature_c", "foam.syrup.weighed_g", "foam.overrun_percent",
}

// changesOf compares two designs of which after has before's lines at their
// places, and more behind them.
func changesOf(lib *ingredient.Library, before, after design.Design) []Change {
	var out []Change
	for _, p := range design.Parts {
		was := slices.Clone(before.Lines(p))
		for i, l := range after.Lines(p) {
			c := Change{Part: p, Line: -1, After: l.Grams}
			if i < len(was) {
				c.Line, c.Before = i, was[i].Grams
			}
			if l.Count > 0 {
				if i < len(was) && was[i].Count == 0 { // it was weighed
					if each, err := egg.Grams(before.Eggs.System, before.Eggs.Size, string(l.CountOf), 1); err == nil {
						was[i].Count = was[i].Grams / each
					}
				}
				c.After, c.Pieces, c.CountOf = l.Count, true, l.CountOf
				if i < len(was) {
					c.Before = was[i].Count
				}
			}
			if c.Before == c.After {
				continue
			}
			c.Ingredient, _ = lib.Find(l.Ingredient)
			out = append(out, c)
		}
	}
	for _, path := range moves {
		l := Lever{Kind: Setting, Path: path}
		if b, a := l.value(&before), l.value(&after); a != b {
			out = append(out, Change{Path: path, Before: b, After: a, Line: -1})
		}
	}
	return out
}

// fineness is to what a proposal rounds what it moves: as a cook would, then as
// finely as it takes to keep what was found.
type fineness struct{ small, grams, setting, serving float64 }

var finenesses = [...]fineness{{0.5, 1, 1, 0.5}, {0.1, 0.5, 0.5, 0.5}, {0.1, 0.1, 0.1, 0.1}, {0.01, 0.01, 0.01, 0.01}}

// rounded returns x with what is moved rounded.
func (p *problem) rounded(x []float64, f fineness) []float64 {
	out := append([]float64(nil), x...)
	for i := range x {
		l := &p.levers[i]
		if x[i] == p.at[i] || l.Whole > 0 {
			continue
		}
		step := f.setting
		switch {
		case l.Path == "serving.temperature_c":
			step = f.serving
		case l.Kind != Setting && x[i] < 10:
			step = f.small
		case l.Kind != Setting:
			step = f.grams
		}
		v := math.Round(x[i]/step) / math.Round(1/step) // whole multiples print short
		if step >= 1 {
			v = step * math.Round(x[i]/step)
		}
		if v < l.Low || v > l.High {
			v = math.Min(math.Max(x[i], l.Low), l.High)
		}
		if math.Abs(x[i]-p.at[i]) < step/2 && l.Kind != Swap {
			v = p.at[i]
		}
		out[i] = v
	}
	return out
}

// propose returns the proposal of x, as coarsely rounded as good allows; ok is
// false where none of the roundings is.
func (p *problem) propose(x []float64, own []*ingredient.Ingredient, good func(*Proposal) bool) (best Proposal, ok bool) {
	for _, f := range finenesses {
		q := p.evaluate(p.rounded(x, f), own)
		if q == nil {
			continue
		}
		best = *q
		if good(q) {
			return best, true
		}
	}
	return best, false
}

// evaluate returns the proposal of x, nil where it is no design.
func (p *problem) evaluate(x []float64, own []*ingredient.Ingredient) *Proposal {
	before, after := p.d, p.design(x)
	q := &Proposal{Changes: changesOf(p.m.Library(), before, after), full: after}
	after.Own = own
	q.Design = tidied(after)
	r, err := p.m.Evaluate(q.Design)
	if err != nil {
		return nil
	}
	q.Result = r
	return q
}
