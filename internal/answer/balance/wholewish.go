package balance

import (
	"math"
	"slices"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// Of pieces that should be whole: the difference that a maker notices, and what counts
// as whole.
const (
	pieceStep = 0.25
	pieceMost = 0.03
)

// WholeEggs is the wish that yolks and whites of the batch as made are whole, weighed
// beside others.
func WholeEggs(weight float64) Wish {
	q := &Quantity{Key: "eggs.whole", About: "yolks and whites off whole ones", Max: 1, step: pieceStep, eggs: true,
		of: func(s *model.Sketch, _ *Wish) float64 {
			e := s.Eggs()
			return math.Max(offWhole(e.Yolks), offWhole(e.Whites))
		}}
	return Wish{Of: q, Low: math.Inf(-1), High: pieceMost, Weight: weight, AtC: math.NaN()}
}

// WholePacks is the wish that all of the ingredient in the batch as made comes in whole
// packs of so many g, weighed beside others.
func WholePacks(in *ingredient.Ingredient, grams, weight float64) Wish {
	q := &Quantity{Key: "packs." + in.ID, About: "packs of " + in.Kitchen() + " off whole ones", Max: 1, step: pieceStep, pack: in,
		of: func(s *model.Sketch, _ *Wish) float64 {
			sum := 0.0
			for _, l := range s.Lines() {
				if l.Ingredient.ID == in.ID {
					sum += l.Grams
				}
			}
			return offWhole(sum / grams)
		}}
	return Wish{Of: q, Low: math.Inf(-1), High: pieceMost, Weight: weight, AtC: math.NaN()}
}

// Pieces reports whether the figure is how far pieces are off whole ones: yolks and
// whites, then in is nil, or packs of the ingredient in.
func (q *Quantity) Pieces() (in *ingredient.Ingredient, ok bool) {
	return q.pack, q.eggs || q.pack != nil
}

// offWhole is how far a number of pieces is off a whole one.
func offWhole(n float64) float64 { return math.Abs(n - math.Round(n)) }

// relaxed is a problem in which some of what is weighed needs not be whole, and what that
// costs: of each thing as much as a wish of its weight that is missed by a step, however
// far off it is, since half an egg is no better than a third.
type relaxed struct {
	*balancer
	costs float64
}

// relaxed returns the problems in which all that is weighed needs not be whole, then each
// thing alone.
func (b *balancer) relaxed() (out []relaxed) {
	var weighed []int
	for i := range b.wishes {
		if _, ok := b.wishes[i].Of.Pieces(); ok {
			weighed = append(weighed, i)
		}
	}
	if len(weighed) > 0 {
		out = append(out, b.relax(weighed))
	}
	if len(weighed) > 1 {
		for _, i := range weighed {
			out = append(out, b.relax([]int{i}))
		}
	}
	return out
}

// relax gives up the wishes of those places.
func (b *balancer) relax(wishes []int) relaxed {
	c, q := *b, *b.problem
	q.levers, q.wishes = slices.Clone(b.levers), slices.Clone(b.wishes)
	r := relaxed{balancer: &c}
	for _, i := range wishes {
		r.costs += q.wishes[i].Weight
		q.wishes[i].Weight = 0
		for k := range q.levers {
			if l := &q.levers[k]; b.wishes[i].Of.keeps(l, b.d) {
				l.Whole = 0
			}
		}
	}
	c.problem = &q
	return r
}

// keeps reports whether the figure is what keeps a lever of d whole.
func (q *Quantity) keeps(l *Lever, d design.Design) bool {
	return q.eggs && l.Kind == Count || q.pack != nil && l.Kind == Grams && l.Line >= 0 && d.Lines(l.Part)[l.Line].Ingredient == q.pack.ID
}
