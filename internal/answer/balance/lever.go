package balance

import (
	"math"
	"slices"

	"ripplewright/internal/work/design"
)

// LeverKind is what a lever moves.
type LeverKind uint8

// The kinds of lever.
const (
	Grams   LeverKind = iota // the grams of a line
	Count                    // the pieces of a line of eggs, always whole
	Swap                     // grams of a line for as many of another ingredient
	Setting                  // a setting of the design
	Batch                    // all lines together, by a factor
)

// Lever is one thing that a search may move, and how far.
type Lever struct {
	Kind LeverKind
	Part design.Part // of a line
	Line int         // its place; −1 for a line of With, which is added if there is none
	With string      // the ingredient that takes the place of the line's, or is added
	Path string      // of a Setting

	Low, High float64
	Unit      float64 // the change that weighs as much as one of any other lever
	Whole     float64 // values are whole multiples of it; 0: any value
	Price     float64 // of a unit, beside that of a gram of sugar, which is 1
}

// value returns where the lever stands in d.
func (l *Lever) value(d *design.Design) float64 {
	switch l.Kind {
	case Swap:
		return 0
	case Batch:
		return 1
	case Setting:
		f, _ := design.FieldAt(l.Path)
		switch x := f.At(d).(type) {
		case *float64:
			return *x
		case *int:
			return float64(*x)
		}
		panic("balance: " + l.Path + " is no number")
	}
	lines := d.Lines(l.Part)
	i := l.Line
	if i < 0 {
		i = lineOf(lines, l.With)
	}
	switch {
	case i < 0:
		return 0
	case l.Kind == Count:
		return lines[i].Count
	}
	return lines[i].Grams
}

// lineOf returns the first line of id that is weighed, −1 without one.
func lineOf(lines []design.Line, id string) int {
	return slices.IndexFunc(lines, func(l design.Line) bool { return l.Ingredient == id && l.Count == 0 })
}

// setting moves the lever's setting of d.
func (l *Lever) set(d *design.Design, v float64) {
	f, _ := design.FieldAt(l.Path)
	switch x := f.At(d).(type) {
	case *float64:
		*x = v
	case *int:
		*x = int(math.Round(v))
	}
}

// scratch holds the lines of a design that is looked at once.
type scratch [3][]design.Line

// apply returns d, in which the levers stand at at, with each at its value of x: lines
// first, then what is swapped of them, then settings. Lines keep their places; new ones
// stand at the end. What changes of them is written into over, which is then d's; nil:
// into new ones.
func apply(d design.Design, levers []Lever, at, x []float64, over *scratch) design.Design {
	var own [3]bool
	lines := [3]*[]design.Line{&d.Dense.Lines, &d.Foam.Lines, &d.Foam.Syrup.Lines}
	if over == nil {
		over = &scratch{}
	}
	part := func(p design.Part) *[]design.Line {
		if !own[p] {
			own[p] = true
			if over[p] == nil {
				over[p] = make([]design.Line, 0, len(*lines[p])+8)
			}
			over[p] = append(over[p][:0], *lines[p]...)
			*lines[p] = over[p]
		}
		return lines[p]
	}
	place := func(p design.Part, id string) int {
		list := part(p)
		i := lineOf(*list, id)
		if i < 0 {
			i = len(*list)
			*list = append(*list, design.Line{Ingredient: id})
		}
		return i
	}
	for i := range levers {
		l := &levers[i]
		if x[i] == at[i] {
			continue
		}
		switch l.Kind {
		case Grams:
			n := l.Line
			if n < 0 {
				n = place(l.Part, l.With)
			}
			(*part(l.Part))[n].Grams = x[i]
		case Count:
			(*part(l.Part))[l.Line].Count = math.Max(x[i], 0)
		}
	}
	for i := range levers {
		l := &levers[i]
		switch {
		case l.Kind == Batch && x[i] != 1:
			for p := range lines {
				for k := range *part(design.Part(p)) {
					line := &(*lines[p])[k]
					line.Grams *= x[i]
					line.Count *= x[i]
				}
			}
		case l.Kind == Swap && x[i] > 0:
			from := &(*part(l.Part))[l.Line]
			g := math.Min(x[i], from.Grams)
			from.Grams -= g
			(*part(l.Part))[place(l.Part, l.With)].Grams += g
		case l.Kind == Setting && x[i] != at[i]:
			l.set(&d, x[i])
		}
	}
	return d
}

// tidied returns d without the lines that have come to nothing.
func tidied(d design.Design) design.Design {
	for _, p := range design.Parts {
		nothing := func(l design.Line) bool { return l.Grams == 0 && l.Count == 0 }
		if slices.ContainsFunc(d.Lines(p), nothing) {
			d = d.WithLines(p, slices.DeleteFunc(slices.Clone(d.Lines(p)), nothing))
		}
	}
	return d
}
