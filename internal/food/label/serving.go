package label

import (
	"fmt"

	"github.com/shopspring/decimal"

	"ripplewright/internal/form/flaw"
)

// cupML is a label's cup, 21 CFR 101.9(b)(5)(viii).
const cupML = 240

// serving is how a container divides, 21 CFR 101.9(b).
type serving struct {
	grams      float64 // of one serving
	measure    string  // with the metric quantity
	perTub     float64 // unrounded
	single     bool    // the container is one serving
	dual       bool    // a second column per container is demanded
	mayDual    bool    // one per reference amount is allowed
	reason     *flaw.Remark
	containerG float64
}

// divide returns the serving of a food in its tub.
func divide(f *Food) serving {
	reference := ReferenceML * f.DensityGPerML
	s := serving{containerG: f.tubG(), perTub: f.tubG() / reference}
	switch ratio := dec(s.perTub); {
	case ratio.LessThan(d2): // (b)(6)
		s.single, s.grams, s.perTub = true, s.containerG, 1
		s.measure = "1 container (" + metricQuantity(dec(s.grams)).text("g") + ")"
		s.reason = flaw.Say("the tub holds %.0f %% of the reference amount, under 200 %%: one serving, by our reading of 21 CFR 101.9(b)(6)", 100*ratio.InexactFloat64())
		if ratio.GreaterThan(d("1.5")) {
			s.mayDual = true
			s.reason = flaw.Say("%s; over 150 %%, a second column per 2/3 cup is allowed", s.reason)
		}
		return s
	case ratio.LessThanOrEqual(d("3")): // (b)(12)(i)
		s.dual = true
		s.reason = flaw.Say("the tub holds %.0f %% of the reference amount, 200 to 300 %%: a second column per container, by our reading of 21 CFR 101.9(b)(12)(i)", 100*ratio.InexactFloat64())
	default:
		s.reason = flaw.Say("the tub holds %.0f %% of the reference amount, over 300 %%: one column, by our reading of 21 CFR 101.9(b)(12)(i)", 100*ratio.InexactFloat64())
	}
	s.grams = reference
	s.measure = Cups(ReferenceML) + " (" + metricQuantity(dec(s.grams)).text("g") + ")"
	return s
}

// text returns "about 3.5 servings per container", or "" where the container
// is one serving, 21 CFR 101.9(d)(3)(i).
func (s *serving) text() (string, decimal.Decimal) {
	n := servings(dec(s.perTub))
	if s.single {
		return "", n.value
	}
	return n.text(" servings per container"), n.value
}

// Cups words a volume in mL as cups, in steps of 1/4 and 1/3 cup of 240 mL,
// ties up: 21 CFR 101.9(b)(5)(i), (viii), (ix). Under an eighth it is "1/4
// cup" all the same.
func Cups(ml float64) string {
	wholeCups, twelfths := 0, int64(0)
	v := dec(ml).Mul(decimal.NewFromInt(12)).Div(decimal.NewFromInt(cupML)) // in twelfths of a cup
	n := v.Div(decimal.NewFromInt(12)).Floor()
	wholeCups = int(n.IntPart())
	rest := v.Sub(n.Mul(decimal.NewFromInt(12)))
	steps := [...]struct {
		twelfths int64
		words    string
	}{{0, ""}, {3, "1/4"}, {4, "1/3"}, {6, "1/2"}, {8, "2/3"}, {9, "3/4"}, {12, ""}}
	words, best := "", decimal.NewFromInt(99)
	for _, s := range steps {
		if off := rest.Sub(decimal.NewFromInt(s.twelfths)).Abs(); off.LessThanOrEqual(best) {
			best, words, twelfths = off, s.words, s.twelfths
		}
	}
	if twelfths == 12 {
		wholeCups++
	}
	switch {
	case wholeCups == 0 && words == "":
		return "1/4 cup"
	case wholeCups == 0:
		return words + " cup"
	case words == "" && wholeCups == 1:
		return "1 cup"
	case words == "":
		return fmt.Sprintf("%d cups", wholeCups)
	}
	return fmt.Sprintf("%d %s cups", wholeCups, words)
}
