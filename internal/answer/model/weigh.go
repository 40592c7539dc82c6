package model

import (
	"fmt"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/work/design"
)

// readings are the three readings of a mix: nominal, soft, firm.
type readings [3]mix.Mix

func (r *readings) add(x *ingredient.Resolved, g float64) {
	for i, per100 := range [...]mix.Mix{x.Nominal, x.Soft, x.Firm} {
		r[i] = r[i].PlusScaled(per100, g/100)
	}
}

// weighed is the lines weighed out, as written, before anything is cooked but
// for the alcohol of the syrup, none of which outlasts the boil.
type weighed struct {
	lines      []BatchLine
	mixes      [3]readings         // by design.Part
	tally      [3]ingredient.Tally // by design.Part
	perG       []mix.Mix           // nominal mix of one gram of each line
	cook       [3]brought          // by design.Part
	alcoholOff float64             // g of alcohol of the syrup's lines

	replaced map[string]*ingredient.Ingredient // see replacedBy
}

// replacedBy finds, by id, the records that a design's own ingredients stand
// before and differ from.
func (m *Model) replacedBy(own []*ingredient.Ingredient) map[string]*ingredient.Ingredient {
	var whose map[string]*ingredient.Ingredient
	for _, in := range own {
		other, ok := m.lib.Find(in.ID)
		if !ok || other == in || other.Equal(in) {
			continue
		}
		if whose == nil {
			whose = map[string]*ingredient.Ingredient{}
		}
		whose[in.ID] = other
	}
	return whose
}

// weigh turns lines into grams of species. Problems name lines that no
// library knows.
func (m *Model) weigh(d design.Design) (weighed, []design.Problem) {
	var b weighed
	var problems []design.Problem
	lib := m.lib.With(d.Own)
	b.replaced = m.replacedBy(d.Own)
	n := len(d.Dense.Lines) + len(d.Foam.Lines) + len(d.Foam.Syrup.Lines)
	b.lines, b.perG = make([]BatchLine, 0, n), make([]mix.Mix, 0, n)
	for _, part := range design.Parts {
		for i := range d.Lines(part) {
			line, x, problem := m.weighLine(lib, &d, part, i)
			if problem != nil {
				problems = append(problems, *problem)
				continue
			}
			g := line.WrittenG
			b.mixes[part].add(&x.Resolved, g*line.KeepsFraction)
			b.tally[part] = b.tally[part].Add(line.Finished, g*line.KeepsFraction)
			b.perG = append(b.perG, x.Nominal.Times(0.01*line.KeepsFraction))
			b.alcoholOff += g * (1 - line.KeepsFraction)
			b.cook[part].add(line.brings(x), g)
			b.lines = append(b.lines, line)
		}
	}
	return b, problems
}

// weighLine weighs one line out. It returns what its ingredient, as cooked, is
// known to be.
func (m *Model) weighLine(lib *ingredient.Library, d *design.Design, part design.Part, i int) (BatchLine, *known, *design.Problem) {
	l := d.Lines(part)[i]
	in, ok := lib.Find(l.Ingredient)
	if !ok {
		return BatchLine{}, nil, &design.Problem{Path: fmt.Sprintf("%s.lines[%d].ingredient", part, i), Err: lib.Unknown(l.Ingredient)}
	}
	g := l.Grams
	if l.Count > 0 {
		var err error
		if g, err = egg.Grams(d.Eggs.System, d.Eggs.Size, string(l.CountOf), l.Count); err != nil {
			return BatchLine{}, nil, &design.Problem{Path: fmt.Sprintf("%s.lines[%d]", part, i), Err: err}
		}
	}
	line := BatchLine{Part: part, Index: i, Ingredient: in, Finished: in, KeepsFraction: 1, WrittenG: g}
	if part == design.SyrupPart {
		line.Finished, line.KeepsFraction = in.Boiled()
	}
	x := m.resolve(line.Finished)
	line.Assumed = x.Assumed
	return line, x, nil
}

// brings returns what a gram of the line brings, x being what its ingredient,
// as cooked, is known to be.
func (l *BatchLine) brings(x *known) *brought {
	if l.Finished == l.Ingredient {
		return &x.brings
	}
	own := broughtBy(l.Ingredient, &x.Resolved)
	return &own
}
