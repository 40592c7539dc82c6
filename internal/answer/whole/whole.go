// Package whole finds designs that use up whole eggs: no yolk and no white over.
//
// With the recipes of both phases and their ratio as they are, yolks and whites
// come at a fixed proportion, and nothing but chance makes them as many. So one
// of two things must give: the recipes (ByRecipe) or the ratio (ByRatio).
package whole

import (
	"math"
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/work/design"
)

// Kind is what gives.
type Kind uint8

// The kinds.
const (
	// ByRatio keeps the recipe of each phase: both are rescaled to the eggs, the
	// ratio moves to what they then make, and the tubs are as many as that fills.
	ByRatio Kind = iota
	// ByRecipe keeps tubs, fill and ratio: both phases are rescaled around the
	// whole eggs, each of its other lines by the factor that keeps its volume.
	ByRecipe
	numKinds
)

// String returns the kind as files and the command line have it.
func (k Kind) String() string { return [...]string{"ratio", "recipe"}[k] }

// Way is one design that uses whole eggs. Its grams are kept as written, since
// scaling would break the eggs again.
type Way struct {
	Kind   Kind
	Eggs   int
	Design design.Design
	After  model.Result
}

// Why says why there is no such way.
type Why uint8

// The reasons.
const (
	Fits        Why = iota // it is a way
	NoEggs                 // no shell eggs in any line
	AlreadyFits            // nothing is over as it is
	OneSided               // only yolks or only whites: the others are over, whatever the amounts
	NotPaired              // no amounts of the two phases use as many yolks as whites
	EggsAlone              // a phase has nothing but eggs, or they alone overfill it
	HalfMade               // at this ratio one of the phases is not made at all
	Refused                // the design that would come of it is none: its error says why
)

// Unable is a way that there is not.
type Unable struct {
	Kind Kind
	Why  Why
	Err  error // of Refused
}

// Ways is the answer for one design.
type Ways struct {
	Before model.Result
	List   []Way
	Unable []Unable
}

// Of returns the ways to make d of n eggs, for 0 of as many as come nearest to
// it. Without any the reasons are in Unable. The error is that of evaluating d.
func Of(m *model.Model, d design.Design, n int) (Ways, error) {
	before, err := m.Evaluate(d)
	if err != nil {
		return Ways{}, err
	}
	w := Ways{Before: before}
	for k := Kind(0); k < numKinds; k++ {
		if way, no := w.try(m, d, k, n); no.Why == Fits {
			w.List = append(w.List, way)
		} else {
			w.Unable = append(w.Unable, no)
		}
	}
	return w, nil
}

// Only returns the ways of one kind.
func (w Ways) Only(kind string) Ways {
	w.List = slices.DeleteFunc(slices.Clone(w.List), func(x Way) bool { return x.Kind.String() != kind })
	w.Unable = slices.DeleteFunc(slices.Clone(w.Unable), func(x Unable) bool { return x.Kind.String() != kind })
	return w
}

// same is within what sums of grams lose to rounding.
const same = 1e-9

// Fit reports whether a ledger uses whole eggs, with nothing over.
func Fit(e model.Eggs) bool {
	return e.Known && e.Crack > 0 && math.Abs(e.Left.Yolks) < same && math.Abs(e.Left.Whites) < same
}

func (w *Ways) try(m *model.Model, d design.Design, k Kind, n int) (Way, Unable) {
	e := w.Before.Eggs
	no := Unable{Kind: k}
	size, err := egg.Find(d.Eggs.System, d.Eggs.Size)
	switch {
	case err != nil || !e.Known || e.Yolks+e.Whites == 0:
		no.Why = NoEggs
	case Fit(e) && (n == 0 || n == int(e.Crack)):
		no.Why = AlreadyFits
	case e.Yolks == 0 || e.Whites == 0:
		no.Why = OneSided
	case w.Before.Dense.WrittenG > 0 && w.Before.Dense.Portion.Factor == 0, w.Before.Foam.WrittenG > 0 && w.Before.Foam.Portion.Factor == 0:
		no.Why = HalfMade
	}
	if no.Why != Fits {
		return Way{}, no
	}
	s := search{m, d, &w.Before, size}
	find := s.byRecipe
	if k == ByRatio {
		find = s.byRatio
	}
	way, why, err := find(n)
	if why != Fits {
		return Way{}, Unable{k, why, err}
	}
	way.Kind = k
	return way, no
}

// search is what both ways work on.
type search struct {
	m    *model.Model
	d    design.Design
	r    *model.Result
	size egg.Size
}

// written returns d with the grams that scale gives each line of the batch as
// made, kept as written. Egg lines keep theirs to the last digit, and are counted
// where the count is whole; others are rounded where no scale would tell.
func (s *search) written(scale func(l *model.BatchLine) float64, syrup float64) design.Design {
	d := s.d
	d.Batch.Basis = design.BasisAsWritten
	for i := range s.r.Lines {
		l := &s.r.Lines[i]
		x := d.Lines(l.Part)[l.Index]
		g := l.Grams * scale(l)
		x.Grams, x.Count, x.CountOf = g, 0, ""
		if part, each := partOf(l.Ingredient.ID, s.size); part == "" {
			x.Grams = rounded(g)
		} else if n := math.Round(2*g/each) / 2; math.Abs(g-n*each) < same*each {
			x.Grams, x.Count, x.CountOf = 0, n, part
		}
		d = d.WithLine(l.Part, l.Index, x)
	}
	d.Foam.Syrup.WeighedG = rounded(d.Foam.Syrup.WeighedG * s.r.Foam.Portion.Factor * syrup)
	return d
}

// partOf returns what of a shell egg an id is and the g of one.
func partOf(id string, size egg.Size) (design.EggPart, float64) {
	switch id {
	case design.Yolks.IngredientID():
		return design.Yolks, size.YolkG
	case design.Whites.IngredientID():
		return design.Whites, size.WhiteG
	case design.WholeEggs.IngredientID():
		return design.WholeEggs, size.EdibleG
	}
	return "", 0
}

// rounded is g to five figures, finer than any kitchen's scale.
func rounded(g float64) float64 {
	if g == 0 {
		return 0
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(g)))-4)
	if step < 1 {
		return math.Round(g/step) / math.Round(1/step) // divides by a whole number, so that few digits stay few
	}
	return math.Round(g/step) * step
}
