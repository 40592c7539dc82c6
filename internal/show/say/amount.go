package say

import "strings"

// What a unit of the other system holds: NIST Handbook 44 (2024), Appendix C,
// exact but for the last digits of the ounce and the gallon.
const (
	ounceG      = 28.349523125
	fluidML     = 29.5735295625
	inchMM      = 25.4
	footM       = 0.3048
	ouncesPound = 16
)

// Mass is a weight in grams as a scale shows it: "4.5 g", "750 g", "12.35 kg".
func (s Style) Mass(g float64) string { n, unit := s.MassParts(g); return s.with(n, unit) }

// MassParts is Mass in two, for columns that align the numbers.
func (s Style) MassParts(g float64) (number, unit string) {
	if s.Units == US {
		oz := g / ounceG
		if oz < ouncesPound-0.05 {
			return s.Number(oz, 1), "oz"
		}
		return s.Number(oz/ouncesPound, 2), "lb"
	}
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

// Volume is a volume in mL: "750 mL", "12.4 L".
func (s Style) Volume(ml float64) string { n, unit := s.VolumeParts(ml); return s.with(n, unit) }

// VolumeParts is Volume in two.
func (s Style) VolumeParts(ml float64) (number, unit string) {
	if s.Units == US {
		oz := ml / fluidML
		if oz < 127.95 {
			return s.Number(oz, 1), "fl oz"
		}
		return s.Number(oz/128, 2), "gal"
	}
	switch {
	case ml < 9999.5 || !known(ml):
		return s.Number(ml, 0), "mL"
	case ml < 99950:
		return s.Number(ml/1000, 1), "L"
	}
	return s.Grouped(ml / 1000), "L"
}

// MassTo is a weight in grams with so many decimals, as a record has it.
func (s Style) MassTo(g float64, places int) string {
	if s.Units == US {
		return s.with(s.Number(g/ounceG, places+1), "oz")
	}
	return s.with(s.Number(g, places), "g")
}

// DensityTo is Density with so many decimals.
func (s Style) DensityTo(gPerML float64, places int) string {
	return s.with(s.Number(gPerML, places), "g/mL")
}

// Density is a density in g/mL: "1.05 g/mL".
func (s Style) Density(gPerML float64) string { return s.with(s.Number(gPerML, 2), "g/mL") }

// Hardness is a yield stress in kPa, to two figures: "2.5 kPa".
func (s Style) Hardness(kPa float64) string { return s.with(s.TwoFigures(kPa), "kPa") }

// HardnessSpan is "1.2 to 4.8 kPa".
func (s Style) HardnessSpan(low, high float64) string {
	return s.span(s.TwoFigures(low), s.TwoFigures(high), "kPa")
}

// Length is a length in a kitchen, mm: "30 mm".
func (s Style) Length(mm float64) string {
	if s.Units == US {
		return s.with(s.Number(mm/inchMM, 1), "in")
	}
	return s.with(s.Number(mm, 0), "mm")
}

// LengthSpan is "3 to 10 mm".
func (s Style) LengthSpan(from, to float64) string {
	if s.Units == US {
		return s.span(s.Number(from/inchMM, 1), s.Number(to/inchMM, 1), "in")
	}
	return s.span(s.Number(from, 0), s.Number(to, 0), "mm")
}

// Size is lengths that belong together, mm: "92 × 80 mm".
func (s Style) Size(mm ...float64) string {
	each, places, unit := make([]string, len(mm)), 0, "mm"
	for i, v := range mm {
		if s.Units == US {
			v, places, unit = v/inchMM, 1, "in"
		}
		each[i] = s.Number(v, places)
	}
	return strings.Join(each, " × ") + " " + unit
}

// Thickness is a short length, mm, to two figures: "2.5 mm".
func (s Style) Thickness(mm float64) string {
	if s.Units == US {
		return s.with(s.Number(mm/inchMM, 2), "in")
	}
	return s.with(s.TwoFigures(mm), "mm")
}

// Altitude is a height above the sea, m: "1200 m".
func (s Style) Altitude(m float64) string {
	if s.Units == US {
		return s.with(s.Grouped(m/footM), "ft")
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
	return s.Currency + "\u00a0" + n
}
