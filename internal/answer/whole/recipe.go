package whole

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/num"
	"ripplewright/internal/work/design"
)

// byRecipe sets the egg lines to n eggs and scales each phase's other lines until
// the phase fills what it fills now.
func (s *search) byRecipe(n int) (Way, Why, error) {
	yolk, white, egg, n, ok := s.shares(n)
	if !ok {
		return Way{}, NotPaired, nil
	}
	eggScale := func(l *model.BatchLine) (float64, bool) {
		switch part, _ := partOf(l.Ingredient.ID, s.size); part {
		case design.Yolks:
			return yolk, true
		case design.Whites:
			return white, true
		case design.WholeEggs:
			return egg, true
		}
		return 1, false
	}
	rest := [2]float64{1, 1} // on the other lines of custard and foam
	build := func() design.Design {
		return s.written(func(l *model.BatchLine) float64 {
			if k, ok := eggScale(l); ok {
				return k
			}
			return rest[phaseOf(l.Part)]
		}, rest[1])
	}
	var refused error
	for phase, want := range [2]float64{s.r.Dense.Portion.VolumeML, s.r.Foam.Portion.VolumeML} {
		if want == 0 {
			continue
		}
		over := func(k float64) float64 { // mL too many
			rest[phase] = k
			r, err := s.m.Evaluate(build())
			if err != nil {
				refused = err
				return math.NaN()
			}
			return [2]float64{r.Dense.Portion.MadeML, r.Foam.Portion.MadeML}[phase] - want
		}
		k, err := num.Root(over, least, most, 1e-9)
		switch {
		case refused != nil:
			return Way{}, Refused, refused
		case err != nil:
			return Way{}, EggsAlone, nil
		}
		rest[phase] = k
	}
	d := build()
	r, err := s.m.Evaluate(d)
	if err != nil {
		return Way{}, Refused, err
	}
	return Way{Eggs: n, Design: d, After: r}, Fits, nil
}

// least and most bound the factor on what is no egg: beyond it the dessert is
// another.
const least, most = 0.1, 5

func phaseOf(p design.Part) int {
	if p == design.DensePart {
		return 0
	}
	return 1
}

// shares returns the factors on lines of yolk, of white and of whole egg for n
// eggs in all, for 0 of as many as change the two least, and that n.
func (s *search) shares(n int) (yolk, white, egg float64, eggs int, ok bool) {
	var have model.EggParts // in lines of yolk and of white
	whole := 0.0
	for _, l := range s.r.Lines {
		if part, each := partOf(l.Ingredient.ID, s.size); part == design.WholeEggs {
			whole += l.Grams / each
		} else {
			x := model.EggsIn(l.Ingredient.ID, l.Grams, s.size)
			have.Yolks, have.Whites = have.Yolks+x.Yolks, have.Whites+x.Whites
		}
	}
	if n == 0 {
		n = max(1, int(math.Round(math.Sqrt((have.Yolks+whole)*(have.Whites+whole)))))
	}
	apart := have.Yolks > 0 && have.Whites > 0 // else what one side lacks stays over
	kept := 0.0                                // of the whole eggs
	switch {
	case whole > 0 && apart:
		kept = math.Min(math.Max(1, math.Round(whole)), float64(n-1))
	case whole > 0 && have == model.EggParts{}:
		kept = float64(n)
	case !apart:
		return 0, 0, 0, n, false
	}
	if whole > 0 && kept == 0 {
		return 0, 0, 0, n, false
	}
	factor := func(want, have float64) float64 {
		if have == 0 {
			return 1
		}
		return want / have
	}
	open := float64(n) - kept
	return factor(open, have.Yolks), factor(open, have.Whites), factor(kept, whole), n, true
}
