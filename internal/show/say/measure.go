package say

import (
	"math"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/customary"
)

// A US cup is 16 tablespoons or 48 teaspoons (NIST Handbook 44, Appendix C). A metric
// teaspoon and tablespoon are 5 and 15 mL (common practice).
const (
	tspPerCup  = 48
	metricTsp  = 5
	metricTbsp = 15
)

// Pieces counts a line of shell eggs or their parts in pieces, to a half; ""
// for anything else.
func Pieces(s Style, id string, g float64, size egg.Size) string {
	each, one, many := 0.0, Message(""), Message("")
	switch id {
	case "egg_yolk":
		each, one, many = size.YolkG, "yolk", "yolks"
	case "egg_white":
		each, one, many = size.WhiteG, "white", "whites"
	case "egg_whole":
		each, one, many = size.EdibleG, "egg", "eggs"
	default:
		return ""
	}
	n := math.Max(0.5, math.Round(2*g/each)/2)
	if n >= 20 {
		n = math.Round(n)
	}
	name := many.String()
	if n == 1 || n == 0.5 {
		name = one.String()
	}
	text := T("%s %s %s¦eggs of a size", s.mixed(n), Of(size.Name), name)
	if size.System == "EU" {
		text = T("%s %s, size %s", s.mixed(n), name, size.Name)
	}
	if math.Abs(n*each-g) > 0.005*g {
		return T("about %s", text)
	}
	return text
}

// Household words a weight in measures of volume, "" where the library knows
// neither what a cup of it weighs nor its density. US cups and spoons for who
// reads volumes in those; else millilitres for liquids and metric spoons for a
// little.
//
// The result is within 6 % of the weight from a teaspoon up: measures are for
// the shopping and the eye, the scale decides.
func Household(s Style, in *ingredient.Ingredient, g float64) string {
	cup := cupOf(in, g)
	if !(cup > 0) {
		return ""
	}
	if s.inches() {
		return s.usMeasure(g / cup)
	}
	ml := g / cup * customary.CupML
	switch {
	case ml < 4*metricTbsp && (in.DensityKind != "liquid" || ml < 2*metricTbsp):
		return s.spoons(ml/metricTsp, metricTbsp/metricTsp)
	case in.DensityKind == "liquid" && ml < 100:
		return s.Volume(ml)
	case in.DensityKind == "liquid":
		return s.Volume(5 * math.Round(ml/5))
	}
	return ""
}

// cupOf returns the g of a US cup, from the measure nearest to the weight that
// the record has, or 0.
func cupOf(in *ingredient.Ingredient, g float64) float64 {
	spoon, tsp := in.GramsPerTbsp.Or(0), in.GramsPerTsp.Or(0)
	switch cup := in.GramsPerCup.Or(0); {
	case tsp > 0 && g < 3*tsp:
		return tspPerCup * tsp
	case spoon > 0 && g < 4*spoon:
		return 16 * spoon
	case cup > 0:
		return cup
	case spoon > 0:
		return 16 * spoon
	case tsp > 0:
		return tspPerCup * tsp
	}
	return in.Density.Or(0) * customary.CupML
}

// mostCups is where counting cups ends and the scale alone is left.
const mostCups = 16

// cupSteps are the cups of an ordinary set.
var cupSteps = []float64{0, 1. / 4, 1. / 3, 1. / 2, 2. / 3, 3. / 4, 1}

// usMeasure words a number of cups.
func (s Style) usMeasure(cups float64) string {
	if cups < 0.24 {
		return s.spoons(cups*tspPerCup, 3)
	}
	if cups > mostCups {
		return ""
	}
	whole := math.Floor(cups)
	below := whole
	for _, f := range cupSteps {
		step := whole + f
		if math.Abs(step-cups) <= 0.03*cups {
			return s.cups(step)
		}
		if step <= cups {
			below = step
		}
	}
	step := 1.0
	if cups < 1 {
		step = 0.5
	}
	tbsp := step * math.Round((cups-below)*16/step)
	if tbsp == 0 {
		return s.cups(below)
	}
	if below == 0 {
		return s.spoons(cups*tspPerCup, 3)
	}
	return T("%s + %s tbsp", s.cups(below), s.mixed(tbsp))
}

func (s Style) cups(n float64) string {
	if n > 1 {
		return T("%s cups", s.mixed(n))
	}
	return T("%s cup", s.mixed(n))
}

// spoons words a number of teaspoons, tbsp of which make a tablespoon.
func (s Style) spoons(tsp, tbsp float64) string {
	if tsp < 0.1 {
		return T("a pinch")
	}
	if tsp < 0.9*tbsp {
		best := 1. / 8
		for _, n := range [...]float64{1. / 4, 1. / 2, 3. / 4, 1, 5. / 4, 3. / 2, 7. / 4, 2, 9. / 4, 5. / 2} {
			if math.Abs(n-tsp) < math.Abs(best-tsp) {
				best = n
			}
		}
		return T("%s tsp", s.mixed(best))
	}
	half := math.Round(2*tsp) / 2
	n := math.Floor(half / tbsp)
	switch rest := half - n*tbsp; {
	case n == 0:
		return T("%s tsp", s.mixed(half))
	case rest == 0:
		return T("%s tbsp", s.mixed(n))
	case rest == tbsp/2:
		return T("%s tbsp", s.mixed(n+0.5))
	default:
		return T("%s tbsp + %s tsp", s.mixed(n), s.mixed(rest))
	}
}

// mixed prints a number with one of the fractions of kitchen measures.
func (s Style) mixed(v float64) string {
	whole := math.Floor(v + 1e-9)
	for _, f := range [...]struct {
		v float64
		s string
	}{{0, ""}, {1. / 8, "⅛"}, {1. / 4, "¼"}, {1. / 3, "⅓"}, {1. / 2, "½"}, {2. / 3, "⅔"}, {3. / 4, "¾"}} {
		if math.Abs(v-whole-f.v) > 1e-6 {
			continue
		}
		if whole == 0 && f.s != "" {
			return f.s
		}
		return s.Number(whole, 0) + f.s
	}
	return s.Number(v, 1)
}
