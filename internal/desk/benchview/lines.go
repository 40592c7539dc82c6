package benchview

import (
	"math"
	"strings"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// EggParts are what eggs are counted as.
var EggParts = [...]design.EggPart{design.WholeEggs, design.Yolks, design.Whites}

// PartOf is the part of an egg that a line's ingredient is, "" for others.
func PartOf(x design.Line) design.EggPart {
	for _, p := range EggParts {
		if x.Ingredient == p.IngredientID() {
			return p
		}
	}
	return ""
}

// GramsOfOne is what one egg, yolk or white of the design's size weighs; NaN where the
// size is not known.
func GramsOfOne(d design.Design, p design.EggPart) float64 {
	g, err := egg.Grams(d.Eggs.System, d.Eggs.Size, string(p), 1)
	if err != nil {
		return math.NaN()
	}
	return g
}

// Shape is what of a line decides how its row looks: all but its amount.
func Shape(l design.Line) design.Line {
	l.Grams, l.Count = 0, 0
	return l
}

// Amount is a line's count, or its grams.
func Amount(l design.Line) float64 {
	if l.Count > 0 {
		return l.Count
	}
	return l.Grams
}

// WithAmount is x with another amount, in what it is counted; a count of nothing
// becomes 0 g.
func WithAmount(x design.Line, v float64) design.Line {
	switch {
	case x.Count > 0 && v > 0:
		x.Count = v
	case x.Count > 0:
		return Weighed(x, 0)
	default:
		x.Grams = v
	}
	return x
}

// Weighed is a line in grams, whatever it was.
func Weighed(x design.Line, grams float64) design.Line {
	x.Count, x.CountOf, x.Grams = 0, "", grams
	return x
}

// Counted is a line of n eggs, yolks or whites, whatever it was.
func Counted(x design.Line, p design.EggPart, n float64) design.Line {
	x.Ingredient, x.CountOf, x.Count, x.Grams = p.IngredientID(), p, n, 0
	return x
}

// ToGrams weighs a counted line, to a tenth of a gram; ok is false where the size of
// egg is not known.
func ToGrams(d design.Design, x design.Line) (line design.Line, ok bool) {
	g := GramsOfOne(d, x.CountOf)
	return Weighed(x, math.Round(10*x.Count*g)/10), !math.IsNaN(g)
}

// ToCount counts a weighed line in whole eggs or parts, one at least.
func ToCount(d design.Design, x design.Line, p design.EggPart) (line design.Line, ok bool) {
	g := GramsOfOne(d, p)
	return Counted(x, p, max(1, math.Round(x.Grams/g))), !math.IsNaN(g)
}

// usualGrams are what a new line begins with.
const usualGrams = 50

// Put is x with another ingredient: an id of the library, or a part of an egg, which
// is counted. The price was the other's.
func Put(d design.Design, x design.Line, id string) design.Line {
	was := x.Ingredient
	grams := x.Grams
	if grams == 0 {
		grams = usualGrams
	}
	x = Weighed(x, grams)
	x.Ingredient = id
	for _, p := range EggParts {
		if id == string(p) {
			x = Counted(x, p, max(1, math.Round(grams/GramsOfOne(d, p))))
		}
	}
	if x.Ingredient != was {
		x.Price = ingredient.Cell{}
	}
	return x
}

// Name is what a line's ingredient is called.
func Name(lib *ingredient.Library, x design.Line) string {
	if in, ok := lib.Find(x.Ingredient); ok {
		return say.Kitchen(in)
	}
	return x.Ingredient
}

// Brief is a name short enough for a menu.
func Brief(name string) string {
	const most = 30
	if r := []rune(name); len(r) > most {
		return strings.TrimRight(string(r[:most]), " ,(") + "…"
	}
	return name
}
