package balance

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/phase"
)

// Named is the wish that a phase, nil the whole tub, keeps the limits of a name.
func Named(s label.Standard, of *phase.Role) Wish {
	q := &Quantity{Key: "tub.name", About: "name of the tub", Unit: "% of a limit", Standard: s, Named: of, step: nameStep, of: lacks}
	if of != nil {
		q.Key, q.About = "custard.name", "name of the custard"
	}
	return Wish{Of: q, Low: math.Inf(-1), High: -nameAim, Weight: 1, AtC: math.NaN()}
}

// Of names of food, in per cent of a limit: what a search keeps clear of it, what
// it notices, and what a limit counts that no weighing meets.
const (
	nameClear = 0.5
	nameStep  = 2
	nameNever = 40
	nameAim   = 0.2 // what it aims at, so that it does not stop on the limit itself
)

// lacks is by how many per cent of their bounds the limits of a name are missed
// together, with so much to spare as rounding takes; 0 or less where they are kept.
func lacks(s *model.Sketch, w *Wish) float64 {
	n := tested(s, w.Of)
	sum := 0.0
	for _, l := range n.Limits {
		share, figure := l.ShortFraction()
		switch by := 100*share + nameClear; {
		case l.Judge || l.Met && !figure:
		case !figure:
			sum += nameNever * nameNever
		case by > 0:
			sum += by * by
		}
	}
	by := math.Sqrt(sum) - nameClear
	if n.Met {
		return math.Min(by, 0)
	}
	return math.Max(by, math.SmallestNonzeroFloat64)
}

func tested(s *model.Sketch, q *Quantity) label.Name {
	f := s.Food()
	if q.Named != nil && *q.Named == phase.Dense {
		f = *f.Dense
	}
	if f.MassG() <= 0 {
		return label.Name{}
	}
	return q.Standard.Of(&f)
}

// missing lists the limits of the name w that s does not keep.
func missing(s *model.Sketch, w *Wish) []label.Limit {
	if w.Of.Standard.ID == "" {
		return nil
	}
	var out []label.Limit
	for _, l := range tested(s, w.Of).Limits {
		if !l.Met && !l.Judge {
			out = append(out, l)
		}
	}
	return out
}
