package onpack

import (
	"fmt"
	"math"
	"strings"
)

// US customary measures, mL, as 16 CFR 500.19 prints them.
const (
	FluidOunceML = 29.5735
	PintML       = 473.177
	QuartML      = 946.353
)

const (
	ouncesPerPint   = 16
	ouncesPerQuart  = 32
	ouncesPerGallon = 128
)

// customaryWithin is how near to a half pint, or another four ounces, a tub
// must be in mL to count as that customary size. Decided here.
const customaryWithin = 0.5

// slip forgives the last bits of a division: 236.588 mL is 8 fl oz.
const slip = 1e-4

// NetQuantity words the volume of the frozen food in a tub, mL, 1 to 100 000,
// for a place: in the US the largest whole customary unit with the metric one
// beside it (21 CFR 101.7 by the uniform rule that states print; the metric by
// NIST's reading of the Fair Packaging and Labeling Act), elsewhere millilitres
// or, from one, litres, with the decimal sign given (Regulation (EU) No
// 1169/2011, Article 23). What is not the filled measure is rounded down, so
// that neither overstates.
func NetQuantity(p Place, ml float64, decimalSign string) string {
	if p != US {
		return metric(ml, decimalSign, "ml", "l")
	}
	ounces := ml / FluidOunceML
	fourOunces := math.Round(ml / (4 * FluidOunceML))
	if size := fourOunces * 4 * FluidOunceML; fourOunces > 0 && math.Abs(size-ml) <= customaryWithin {
		ounces, ml = 4*fourOunces, size
	}
	return customary(ounces) + " (" + metric(ml, ".", "mL", "L") + ")"
}

// customary words ounces in the largest whole unit, the rest in the next
// smaller ones, ounces to one decimal, down.
func customary(ounces float64) string {
	tenths := int(math.Floor(10*ounces + slip))
	var parts []string
	unit := func(tenthsEach int, one, many string) {
		n := tenths / tenthsEach
		tenths -= n * tenthsEach
		switch {
		case n == 1:
			parts = append(parts, "1 "+one)
		case n > 1:
			parts = append(parts, fmt.Sprintf("%d %s", n, many))
		}
	}
	unit(10*ouncesPerGallon, "GALLON", "GALLONS")
	unit(10*ouncesPerQuart, "QUART", "QUARTS")
	unit(10*ouncesPerPint, "PINT", "PINTS")
	switch {
	case tenths == 0 && len(parts) > 0:
	case tenths%10 == 0:
		parts = append(parts, fmt.Sprintf("%d FL OZ", tenths/10))
	default:
		parts = append(parts, fmt.Sprintf("%d.%d FL OZ", tenths/10, tenths%10))
	}
	return strings.Join(parts, " ")
}

// metric words a volume in three digits, two below 100 mL, down, without a
// final zero after the point (16 CFR 500.19).
func metric(ml float64, decimalSign, small, large string) string {
	whole := math.Floor(ml + slip)
	if whole < 1000 {
		return fmt.Sprintf("%.0f %s", whole, small)
	}
	hundredths := math.Floor(whole / 10)
	if whole >= 10000 {
		hundredths = 10 * math.Floor(whole/100)
	}
	s := strings.TrimRight(fmt.Sprintf("%.2f", hundredths/100), "0")
	return strings.Replace(strings.TrimSuffix(s, "."), ".", decimalSign, 1) + " " + large
}

// FigureMM is the least height in mm of the figures of a net quantity of ml
// outside the US: Directive 76/211/EEC, Annex I, as FPackV § 38(2) has it.
func FigureMM(ml float64) float64 {
	switch {
	case ml <= 50:
		return 2
	case ml <= 200:
		return 3
	case ml <= 1000:
		return 4
	}
	return 6
}

// TolerableErrorML is by how much a tub may hold less than the nominal ml, 5 to
// 10 000, and by how much no tub may: Directive 76/211/EEC, Annex I, as FPackV
// § 9(3), (4) has it. At most 2 % of the tubs may miss by more than the first;
// their average must reach the nominal.
func TolerableErrorML(ml float64) (tolerable, never float64) {
	e := 0.0
	switch {
	case ml <= 50:
		e = 0.09 * ml
	case ml <= 100:
		e = 4.5
	case ml <= 200:
		e = 0.045 * ml
	case ml <= 300:
		e = 9
	case ml <= 500:
		e = 0.03 * ml
	case ml <= 1000:
		e = 15
	default:
		e = 0.015 * ml
	}
	up := func(v float64) float64 { return math.Ceil(10*v-1e-9) / 10 }
	return up(e), up(2 * e)
}

// Fill is what a tub holds beside what is declared on it, mL.
type Fill struct {
	HoldsML    float64 `json:"holds_ml"` // frozen, by the model
	DeclaredML float64 `json:"declared_ml"`
	// SpareFraction is by how much of what it holds it may shrink in store before the
	// average falls short of what is declared; under 0 it falls short as it is.
	SpareFraction float64 `json:"spare_fraction"`
	// TolerableML and NeverML are TolerableErrorML of what is declared; of no meaning
	// in the US.
	TolerableML float64 `json:"tolerable_error_ml"`
	NeverML     float64 `json:"never_more_ml"`

	TubML float64 `json:"tub_outside_ml"` // the chosen tub by its outside, which it cannot hold more than
}

// FillOf holds what is declared against what the tub holds.
func FillOf(f Food, p Pack) Fill {
	out := Fill{HoldsML: f.HoldsML, DeclaredML: p.NominalML}
	if out.DeclaredML == 0 {
		out.DeclaredML = math.Floor(f.HoldsML + slip)
	}
	out.SpareFraction = 1 - out.DeclaredML/out.HoldsML
	out.TolerableML, out.NeverML = TolerableErrorML(out.DeclaredML)
	out.TubML = p.Tub.OutsideML()
	return out
}

const (
	mmPerInch  = 25.4
	mm2PerInch = mmPerInch * mmPerInch
)

// usHeights are the least heights of a US net quantity by the area of the principal display
// panel: 21 CFR 101.7(i), from memory, the same bands as 16 CFR 500.21(b).
var usHeights = [...]struct{ upToIn2, inches float64 }{{5, 1. / 16}, {25, 1. / 8}, {100, 3. / 16}, {400, 1. / 4}, {math.Inf(1), 1. / 2}}

// USFigureMM is the least height in mm of a US net quantity on a principal
// display panel of so many square inches: of its capitals, or of the lower-case
// o in mixed case.
func USFigureMM(panelIn2 float64) float64 {
	for _, b := range usHeights {
		if panelIn2 <= b.upToIn2 {
			return b.inches * mmPerInch
		}
	}
	return math.NaN()
}
