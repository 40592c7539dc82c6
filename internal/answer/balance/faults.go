package balance

import (
	"math/rand"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/work/design"
)

// fault spoils a design in its own way and by no sensible measure.
type fault struct {
	name  string
	spoil func(s *spoiler, d design.Design) design.Design
}

// spoiler draws how badly a design is spoilt, and knows what its lines are.
type spoiler struct {
	*rand.Rand
	lib *ingredient.Library
}

func (s *spoiler) between(low, high float64) float64 { return low + (high-low)*s.Float64() }

// heaviest returns the place of the heaviest line of p that such holds of, −1 without.
func (s *spoiler) heaviest(d *design.Design, p design.Part, such func(in *ingredient.Ingredient) bool) int {
	best, g := -1, 0.0
	lib := s.lib.With(d.Own)
	for i, l := range d.Lines(p) {
		if in, ok := lib.Find(l.Ingredient); ok && l.Count == 0 && l.Grams > g && such(in) {
			best, g = i, l.Grams
		}
	}
	return best
}

// weighed sets the grams of the heaviest line of p that such holds of.
func (s *spoiler) weighed(d design.Design, p design.Part, such func(in *ingredient.Ingredient) bool, grams float64) design.Design {
	if i := s.heaviest(&d, p, such); i >= 0 {
		return d.WithGrams(p, i, grams)
	}
	return d
}

// gramsOf is the sum of the grams of a part, as weighed.
func gramsOf(d *design.Design, p design.Part) (g float64) {
	for _, l := range d.Lines(p) {
		g += l.Grams
	}
	return g
}

func aSugar(in *ingredient.Ingredient) bool { return kind.Of(in) == kind.Sugar }
func aYolk(in *ingredient.Ingredient) bool  { return kind.Of(in) == kind.Yolk }
func rich(in *ingredient.Ingredient) bool {
	return kind.Of(in) == kind.Liquid && in.Cell(ingredient.Fat).Or(0) > 10
}

// sweetened sets the sugar of the custard to a share of all its sugars, beside the rest.
func (s *spoiler) sweetened(d design.Design, low, high float64) design.Design {
	for i, l := range d.Dense.Lines {
		if in, ok := s.lib.Find(l.Ingredient); ok && aSugar(in) {
			d = d.WithGrams(design.DensePart, i, l.Grams*s.between(low, high))
		}
	}
	return d
}

// faults are what spoils designs.
var faults = [...]fault{
	{"too hard", func(s *spoiler, d design.Design) design.Design {
		d.Dense.OverrunPercent = 0
		return s.sweetened(d, 0.1, 0.55)
	}},
	{"too cold", func(s *spoiler, d design.Design) design.Design {
		d.Serving.TemperatureC = -19 - 5*s.Float64()
		return d
	}},
	{"too soft", func(s *spoiler, d design.Design) design.Design {
		d.Serving.TemperatureC = -8 - 3*s.Float64()
		return s.sweetened(d, 1.3, 2)
	}},
	{"too sweet", func(s *spoiler, d design.Design) design.Design { return s.sweetened(d, 1.8, 3) }},
	{"not sweet", func(s *spoiler, d design.Design) design.Design { return s.sweetened(d, 0, 0.4) }},
	{"salty", func(s *spoiler, d design.Design) design.Design {
		return d.WithLineAdded(design.DensePart, design.Line{Ingredient: "salt", Grams: s.between(9, 34)})
	}},
	{"airy", func(s *spoiler, d design.Design) design.Design {
		d.Dense.OverrunPercent = s.between(45, 135)
		return d
	}},
	{"airy foam", func(s *spoiler, d design.Design) design.Design {
		d.Foam.OverrunPercent = s.between(520, 820)
		return d
	}},
	{"over-filled", func(s *spoiler, d design.Design) design.Design {
		d.Tubs.FillPercent = s.between(98, 100)
		return d
	}},
	{"foam without ice", func(s *spoiler, d design.Design) design.Design {
		return s.weighed(d, design.SyrupPart, aSugar, s.between(260, 460))
	}},
	{"yolky", func(s *spoiler, d design.Design) design.Design {
		return s.weighed(d, design.DensePart, aYolk, s.between(0.3, 0.5)*gramsOf(&d, design.DensePart))
	}},
	{"fat", func(s *spoiler, d design.Design) design.Design {
		return s.weighed(d, design.DensePart, rich, s.between(500, 800))
	}},
	{"too much", func(s *spoiler, d design.Design) design.Design {
		d.Tubs.Count = 20 + s.Intn(60)
		return d
	}},
	{"yolk in the whites", func(s *spoiler, d design.Design) design.Design {
		return d.WithLineAdded(design.FoamPart, design.Line{Ingredient: "egg_yolk", Grams: s.between(2, 12)})
	}},
}
