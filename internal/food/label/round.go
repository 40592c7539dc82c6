package label

import (
	"strings"

	"ripplewright/internal/form/flaw"

	"github.com/shopspring/decimal"
)

// dec turns a computed amount into a decimal. Nine places drop the noise of
// binary sums, so that 0.1 + 0.2 meets a boundary at 0.3.
func dec(v float64) decimal.Decimal { return decimal.NewFromFloat(v).Round(9) }

// d is a decimal constant.
func d(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// Steps and limits of the rules below.
var (
	d0, d001, d01, d05, d1, d2, d5, d10, d50, d140 = d("0"), d("0.01"), d("0.1"), d("0.5"), d("1"), d("2"), d("5"), d("10"), d("50"), d("140")
	d00125                                         = d("0.0125")
)

// nearest rounds v ≥ 0 to a multiple of step, halves up.
func nearest(v, step decimal.Decimal) decimal.Decimal {
	return v.Div(step).Add(d05).Floor().Mul(step)
}

// rounded is an amount as declared: the number, and the words where the rule
// has some in its place.
type rounded struct {
	value decimal.Decimal
	words string // "less than 1" or ""
}

func (r rounded) text(unit string) string {
	if r.words != "" {
		return r.words + unit
	}
	return r.value.String() + unit
}

// A rounding is a rule of rounding, from the unrounded amount.
type rounding func(decimal.Decimal) rounded

func plainly(v decimal.Decimal) rounded { return rounded{value: v} }

// calories: 21 CFR 101.9(c)(1). Under 5 may be zero; to 50 by 5; above by 10.
func calories(v decimal.Decimal) rounded {
	switch {
	case v.LessThan(d5):
		return plainly(d0)
	case v.LessThanOrEqual(d50):
		return plainly(nearest(v, d5))
	}
	return plainly(nearest(v, d10))
}

// fats: 21 CFR 101.9(c)(2)(i)–(iv). Under 0.5 g is zero; under 5 g by 0.5 g;
// then by 1 g.
func fats(v decimal.Decimal) rounded {
	switch {
	case v.LessThan(d05):
		return plainly(d0)
	case v.LessThan(d5):
		return plainly(nearest(v, d05))
	}
	return plainly(nearest(v, d1))
}

// cholesterol: 21 CFR 101.9(c)(3). Under 2 mg may be zero, 2 to 5 mg "less
// than 5", then by 5 mg.
func cholesterol(v decimal.Decimal) rounded {
	switch {
	case v.LessThan(d2):
		return plainly(d0)
	case v.LessThan(d5):
		return rounded{d2, "less than 5"}
	}
	return plainly(nearest(v, d5))
}

// sodium: 21 CFR 101.9(c)(4). Under 5 mg is zero; to 140 mg by 5; above by 10.
func sodium(v decimal.Decimal) rounded {
	switch {
	case v.LessThan(d5):
		return plainly(d0)
	case v.LessThanOrEqual(d140):
		return plainly(nearest(v, d5))
	}
	return plainly(nearest(v, d10))
}

// grams: 21 CFR 101.9(c)(6)–(7). Under 0.5 g may be zero; under 1 g may be
// "less than 1"; then by 1 g.
func grams(v decimal.Decimal) rounded {
	switch {
	case v.LessThan(d05):
		return plainly(d0)
	case v.LessThan(d1):
		return rounded{d05, "less than 1"}
	}
	return plainly(nearest(v, d1))
}

// whole: 21 CFR 101.9(c)(8)(iii)–(iv), the unit of the RDI table.
func whole(v decimal.Decimal) rounded { return plainly(nearest(v, d1)) }

// tenths is for an RDI below 25: by 0.1, the increment of FDA's labelling
// guide (read in an excerpt); under 2 % of the RDI it may be zero,
// 21 CFR 101.9(c)(8)(iii).
func tenths(rdi string) rounding {
	floor := d(rdi).Div(d50)
	return func(v decimal.Decimal) rounded {
		if v.LessThan(floor) {
			return plainly(d0)
		}
		return plainly(nearest(v, d01))
	}
}

// vitaminPercent: 21 CFR 101.9(c)(8)(iii). To 10 % by 2, to 50 % by 5, above
// by 10.
func vitaminPercent(v decimal.Decimal) rounded {
	switch {
	case v.LessThanOrEqual(d10):
		return plainly(nearest(v, d2))
	case v.LessThanOrEqual(d50):
		return plainly(nearest(v, d5))
	}
	return plainly(nearest(v, d10))
}

// percent: 21 CFR 101.9(d)(7)(ii), by 1 %.
func percent(v decimal.Decimal) rounded { return whole(v) }

// servings: 21 CFR 101.9(b)(8)(i). By 1; between 2 and 5 by 0.5; "about" when
// that changed the number.
func servings(v decimal.Decimal) rounded {
	step := d1
	if v.GreaterThan(d2) && v.LessThan(d5) {
		step = d05
	}
	n := nearest(v, step)
	if n.Equal(v) {
		return plainly(n)
	}
	return rounded{n, "about " + n.String()}
}

// metricQuantity: 21 CFR 101.9(b)(7)(ii), g or mL of a serving. From 5 by 1,
// from 2 by 0.5, below by 0.1.
func metricQuantity(v decimal.Decimal) rounded {
	switch {
	case v.GreaterThanOrEqual(d5):
		return plainly(nearest(v, d1))
	case v.GreaterThanOrEqual(d2):
		return plainly(nearest(v, d05))
	}
	return plainly(nearest(v, d01))
}

// euRounding is a row of the European Commission's guidance on tolerances,
// December 2012, rounding table (read through a secondary page): by fine below
// limit, by coarse from there up. Amounts to negligible may be "0 g" or less
// than small; we keep the zero for what has none at all.
type euRounding struct{ negligible, small, fine, limit, coarse decimal.Decimal }

var (
	euGrams     = euRounding{d05, d05, d01, d10, d1} // fat, carbohydrate, sugars, protein, fibre, polyols, starch
	euSaturates = euRounding{d01, d01, d01, d10, d1} // and mono- and polyunsaturates
	euSalt      = euRounding{d00125, d001, d001, d1, d01}
)

func (e euRounding) round(v decimal.Decimal) rounded {
	switch {
	case v.IsZero():
		return plainly(d0)
	case v.LessThanOrEqual(e.negligible):
		return rounded{e.small, "<" + e.small.String()}
	case v.LessThan(e.limit):
		return withPlaces(nearest(v, e.fine), e.fine)
	}
	return withPlaces(nearest(v, e.coarse), e.coarse)
}

// withPlaces keeps the trailing zeros of the step.
func withPlaces(v, step decimal.Decimal) rounded {
	return rounded{v, v.StringFixed(max(0, -step.Exponent()))}
}

// Declare returns the text that a label shows for an unrounded amount, in the
// unit of its rule. Nutrient is a line's key; "percent_dv_" before a key
// gives the percent Daily Value of an amount, percent_dv_vitamin_mineral
// rounds a percentage; servings_per_container, serving_metric_quantity, and
// eu_energy, eu_fat, eu_saturates, eu_carbohydrate_sugars_protein_fibre and
// eu_salt are the other rules. The amount must not be negative.
func Declare(nutrient string, amount float64) (string, error) {
	if !(amount >= 0) {
		return "", flaw.New("label: %v of %s cannot be declared", amount, nutrient)
	}
	v := dec(amount)
	switch nutrient {
	case "percent_dv_vitamin_mineral":
		return vitaminPercent(v).text("%"), nil
	case "servings_per_container":
		return servings(v).text(""), nil
	case "serving_metric_quantity":
		return metricQuantity(v).text("g"), nil
	case "eu_energy":
		return whole(v).text(""), nil
	case "eu_fat", "eu_carbohydrate_sugars_protein_fibre":
		return euGrams.round(v).text(" g"), nil
	case "eu_saturates":
		return euSaturates.round(v).text(" g"), nil
	case "eu_salt":
		return euSalt.round(v).text(" g"), nil
	}
	key, asPercent := strings.CutPrefix(nutrient, "percent_dv_")
	l := usLineFor(key)
	switch {
	case l == nil || asPercent && l.dv.IsZero():
		return "", flaw.New("label: no rounding rule is known for %q", nutrient)
	case asPercent:
		return l.percentOf(v).text("%"), nil
	}
	return l.text(v), nil
}
