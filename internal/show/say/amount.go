package say

import (
	"math"
	"strings"

	"ripplewright/internal/form/customary"
)

// ouncesPound is how many ounces make a pound.
const ouncesPound = 16

// Mass is a weight in grams as a scale shows it: "4.5 g", "750 g", "12.35 kg";
// with ounces "750 g (26.5 oz)".
func (s Style) Mass(g float64) string { n, unit := s.MassParts(g); return s.with(n, unit) }

// MassParts is Mass in two, for columns that align the numbers. Where ounces
// stand beside the grams, all is number.
func (s Style) MassParts(g float64) (number, unit string) {
	number, unit = s.grams(g)
	if s.Weights == WithOunces && number != Unknown {
		return s.beside(s.with(number, unit), g), ""
	}
	return number, unit
}

// Weighing is Mass in three, for lists of what is weighed: the number and unit of
// the scale, and the ounces where the maker reads them and it comes to any.
func (s Style) Weighing(g float64) (number, unit, ounces string) {
	number, unit = s.grams(g)
	if s.Weights == WithOunces && number != Unknown {
		if ounces = s.Ounces(g); ounces == "0 oz" {
			ounces = ""
		}
	}
	return number, unit, ounces
}

func (s Style) grams(g float64) (number, unit string) {
	switch {
	case g < 9.95:
		return s.Number(g, 1), "g"
	case g < 9999.5 || !known(g):
		return s.Number(g, 0), "g"
	case g < 99995:
		return s.Number(g/1000, 2), "kg"
	}
	return s.Grouped(g / 1000), "kg"
}

// beside adds a weight's ounces, if it comes to any.
func (s Style) beside(grams string, g float64) string {
	if oz := s.Ounces(g); oz != "0 oz" {
		return grams + " (" + oz + ")"
	}
	return grams
}

// Ounces is a weight in grams told in ounces: "0.16 oz", "26.5 oz", "2 lb 3.3 oz",
// "26.5 lb".
func (s Style) Ounces(g float64) string {
	oz := g / customary.OunceG
	size := math.Abs(oz)
	switch {
	case !known(oz):
		return Unknown
	case size < 0.995:
		return s.with(s.Short(oz, 2), "oz")
	case size < 2*ouncesPound-0.05:
		return s.with(s.Number(oz, 1), "oz")
	case size < 20*ouncesPound && oz > 0:
		tenths := math.Round(10 * oz)
		return s.with(s.Number(math.Floor(tenths/(10*ouncesPound)), 0), "lb") + " " +
			s.with(s.Short(math.Mod(tenths, 10*ouncesPound)/10, 1), "oz")
	}
	return s.with(s.Number(oz/ouncesPound, 1), "lb")
}

// MassWithin is Mass for inside brackets: "12 g, 0.41 oz".
func (s Style) MassWithin(g float64) string {
	number, unit, ounces := s.Weighing(g)
	text := s.with(number, unit)
	if ounces != "" {
		text += ", " + ounces
	}
	return text
}

// MassTo is a weight in grams with so many decimals, as a record has it.
func (s Style) MassTo(g float64, places int) string {
	text := s.with(s.Number(g, places), "g")
	if s.Weights == WithOunces && known(g) {
		return s.beside(text, g)
	}
	return text
}

// MassAsWritten is a weight in grams as somebody wrote it, to four decimals.
func (s Style) MassAsWritten(g float64) string {
	text := s.with(s.Short(g, 4), "g")
	if s.Weights == WithOunces && known(g) {
		return s.beside(text, g)
	}
	return text
}

// volume is a measure of volume: what one holds, its names, and how finely it is
// told.
type volume struct {
	ml        float64
	one, many string
	places    int
}

// volumes are the measures of the US, each with the one taken from a gallon on.
var volumes = map[Volumes]volume{
	FluidOunces: {customary.FluidOunceML, "fl oz", "fl oz", 1},
	Cups:        {8 * customary.FluidOunceML, "cup", "cups", 2},
	Pints:       {16 * customary.FluidOunceML, "pint", "pints", 2},
}

var gallons = volume{customary.GallonML, "gal", "gal", 2}

// Volume is a volume in mL: "750 mL", "12.4 L"; "25.4 fl oz", "3.17 cups".
func (s Style) Volume(ml float64) string { n, unit := s.VolumeParts(ml); return s.with(n, unit) }

// VolumeParts is Volume in two.
func (s Style) VolumeParts(ml float64) (number, unit string) {
	if s.Volumes != Millilitres {
		v := volumes[s.Volumes]
		if math.Abs(ml) >= 0.9995*customary.GallonML {
			v = gallons
		}
		number = s.Number(ml/v.ml, v.places)
		if v.places > 1 {
			number = s.Short(ml/v.ml, v.places)
		}
		if number == "1" {
			return number, v.one
		}
		return number, v.many
	}
	switch {
	case ml < 9999.5 || !known(ml):
		return s.Number(ml, 0), "mL"
	case ml < 99950:
		return s.Number(ml/1000, 1), "L"
	}
	return s.Grouped(ml / 1000), "L"
}

// VolumeTo is Volume with so many decimals of a millilitre, and of a fluid ounce
// one more.
func (s Style) VolumeTo(ml float64, places int) string {
	if s.Volumes != Millilitres {
		v := volumes[FluidOunces]
		return s.with(s.Number(ml/v.ml, places+1), v.many)
	}
	return s.with(s.Number(ml, places), "mL")
}

// DensityTo is Density with so many decimals, in the US one less of a pound to
// the gallon, as its trade weighs frozen desserts (21 CFR 135.110(a)(2)).
func (s Style) DensityTo(gPerML float64, places int) string {
	n, unit := s.DensityParts(gPerML, places)
	return s.with(n, unit)
}

// DensityParts is DensityTo in two.
func (s Style) DensityParts(gPerML float64, places int) (number, unit string) {
	if s.inches() {
		return s.Number(gPerML*customary.GallonML/customary.PoundG, max(0, places-1)), "lb/gal"
	}
	return s.Number(gPerML, places), "g/mL"
}

// Density is a density in g/mL: "1.05 g/mL".
func (s Style) Density(gPerML float64) string { return s.DensityTo(gPerML, 2) }

// Hardness is a yield stress in kPa, to two figures: "2.5 kPa".
func (s Style) Hardness(kPa float64) string { return s.with(s.TwoFigures(kPa), "kPa") }

// HardnessSpan is "1.2 to 4.8 kPa".
func (s Style) HardnessSpan(low, high float64) string {
	return s.span(s.TwoFigures(low), s.TwoFigures(high), "kPa")
}

// Length is a length in a kitchen, mm: "30 mm".
func (s Style) Length(mm float64) string {
	if s.inches() {
		return s.with(s.Number(mm/customary.InchMM, inchPlaces(mm)), "in")
	}
	return s.with(s.Number(mm, 0), "mm")
}

// inchPlaces are the decimals of inches that tell a length, mm, as well as whole
// millimetres do: of less than half an inch two, else one.
func inchPlaces(mm float64) int {
	if mm != 0 && mm < customary.InchMM/2 {
		return 2
	}
	return 1
}

// LengthSpan is "3 to 10 mm".
func (s Style) LengthSpan(from, to float64) string {
	if s.inches() {
		return s.span(s.Number(from/customary.InchMM, inchPlaces(from)), s.Number(to/customary.InchMM, inchPlaces(to)), "in")
	}
	return s.span(s.Number(from, 0), s.Number(to, 0), "mm")
}

// Size is lengths that belong together, mm: "92 × 80 mm".
func (s Style) Size(mm ...float64) string {
	each, places, unit := make([]string, len(mm)), 0, "mm"
	for i, v := range mm {
		if s.inches() {
			v, places, unit = v/customary.InchMM, 1, "in"
		}
		each[i] = s.Number(v, places)
	}
	return strings.Join(each, " × ") + " " + unit
}

// Thickness is a short length, mm, to two figures: "2.5 mm".
func (s Style) Thickness(mm float64) string {
	if s.inches() {
		return s.with(s.Number(mm/customary.InchMM, 2), "in")
	}
	return s.with(s.TwoFigures(mm), "mm")
}

// Altitude is a height above the sea, m: "1200 m".
func (s Style) Altitude(m float64) string {
	if s.inches() {
		return s.with(s.Grouped(m/customary.FootM), "ft")
	}
	return s.with(s.Grouped(m), "m")
}

// In is the Style for money of a currency, its own where that is "".
func (s Style) In(currency string) Style {
	if currency != "" {
		s.Currency = currency
	}
	return s
}

// Money is an amount in the maker's own money: "12.40".
func (s Style) Money(v float64) string {
	n := s.Number(v, 2)
	if n == Unknown || s.Currency == "" {
		return n
	}
	if WithComma() { // who writes so puts the sign behind
		return n + "\u00a0" + s.Currency
	}
	return s.Currency + "\u00a0" + n
}
