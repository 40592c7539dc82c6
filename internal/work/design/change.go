package design

import (
	"slices"

	"ripplewright/internal/food/ingredient"
)

// Lines returns the lines of part p. The caller must not change them.
func (d *Design) Lines(p Part) []Line {
	switch p {
	case DensePart:
		return d.Dense.Lines
	case FoamPart:
		return d.Foam.Lines
	}
	return d.Foam.Syrup.Lines
}

// WithLines returns d with the lines of part p replaced by a copy of lines.
func (d Design) WithLines(p Part, lines []Line) Design {
	lines = slices.Clone(lines)
	switch p {
	case DensePart:
		d.Dense.Lines = lines
	case FoamPart:
		d.Foam.Lines = lines
	case SyrupPart:
		d.Foam.Syrup.Lines = lines
	}
	return d
}

// WithLine returns d with line i of part p replaced.
func (d Design) WithLine(p Part, i int, l Line) Design {
	lines := slices.Clone(d.Lines(p))
	lines[i] = l
	return d.WithLines(p, lines)
}

// WithGrams returns d with line i of part p weighing g grams, no longer
// counted.
func (d Design) WithGrams(p Part, i int, g float64) Design {
	l := d.Lines(p)[i]
	l.Grams, l.Count, l.CountOf = g, 0, ""
	return d.WithLine(p, i, l)
}

// WithLineAdded returns d with l at the end of part p.
func (d Design) WithLineAdded(p Part, l Line) Design {
	return d.WithLines(p, append(slices.Clone(d.Lines(p)), l))
}

// WithLineRemoved returns d without line i of part p.
func (d Design) WithLineRemoved(p Part, i int) Design {
	return d.WithLines(p, slices.Delete(slices.Clone(d.Lines(p)), i, i+1))
}

// WithLineMoved returns d with line i of part p moved to place j.
func (d Design) WithLineMoved(p Part, i, j int) Design {
	lines := slices.Clone(d.Lines(p))
	l := lines[i]
	lines = slices.Delete(lines, i, i+1)
	return d.WithLines(p, slices.Insert(lines, j, l))
}

// Parts are the lists of lines, in the order of the file.
var Parts = [...]Part{DensePart, FoamPart, SyrupPart}

// WithLineCarried returns d with line i of part from taken out and put at place j of
// part to; j counts as the lines stand before.
func (d Design) WithLineCarried(from Part, i int, to Part, j int) Design {
	if from == to {
		return d.WithLineMoved(from, i, min(j, len(d.Lines(from))-1))
	}
	l := d.Lines(from)[i]
	d = d.WithLineRemoved(from, i)
	return d.WithLines(to, slices.Insert(slices.Clone(d.Lines(to)), min(j, len(d.Lines(to))), l))
}

// WithLineCopied returns d with line i of part p twice, one under the other.
func (d Design) WithLineCopied(p Part, i int) Design {
	return d.WithLines(p, slices.Insert(slices.Clone(d.Lines(p)), i+1, d.Lines(p)[i]))
}

// Equal reports whether d and o are the same design.
func (d Design) Equal(o Design) bool {
	return d.Name == o.Name && d.Notes == o.Notes && d.Serving == o.Serving && d.Tubs == o.Tubs &&
		d.Blend == o.Blend && d.Batch == o.Batch && d.Eggs == o.Eggs && d.Kitchen == o.Kitchen &&
		d.Model == o.Model && d.Label == o.Label &&
		slices.Equal(d.Dense.Lines, o.Dense.Lines) &&
		d.Dense.StoveLossPercent == o.Dense.StoveLossPercent && d.Dense.OverrunPercent == o.Dense.OverrunPercent &&
		slices.Equal(d.Foam.Lines, o.Foam.Lines) && d.Foam.OverrunPercent == o.Foam.OverrunPercent &&
		slices.Equal(d.Foam.Syrup.Lines, o.Foam.Syrup.Lines) &&
		d.Foam.Syrup.CookTemperatureC == o.Foam.Syrup.CookTemperatureC &&
		d.Foam.Syrup.WeighedG == o.Foam.Syrup.WeighedG &&
		d.Foam.Syrup.InvertedPercent == o.Foam.Syrup.InvertedPercent &&
		slices.EqualFunc(d.Own, o.Own, func(a, b *ingredient.Ingredient) bool { return a == b || a.Equal(b) })
}
