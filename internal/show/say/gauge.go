package say

import (
	"math"
	"strings"

	"ripplewright/internal/form/customary"
)

// A Gauge shows numbers that a file keeps in one unit in the unit that a maker
// reads, and takes what is typed back. What is kept is not touched by showing
// it, and what is typed comes back to the same digits.
type Gauge struct {
	Unit   string // as shown
	Reads  Style
	file   string // the unit of the file
	per    float64
	zero   float64
	places int // decimals more than the file's unit has
}

// gauges are the units of the US for those of the files, K being a
// difference. Exact by NIST Handbook 44 (2024), Appendix C; the thermal units by
// the Btu of the International Table, NIST SP 811 (2008), Appendix B.8.
var gauges = map[string]Gauge{
	"mm":        {Unit: "in", per: 1 / customary.InchMM, places: 2},
	"cm²":       {Unit: "in²", per: 100 / (customary.InchMM * customary.InchMM)},
	"m":         {Unit: "ft", per: 1 / customary.FootM},
	"L":         {Unit: "cu ft", per: 1e6 / (12 * customary.InchMM * 12 * customary.InchMM * 12 * customary.InchMM), places: 1},
	"kg":        {Unit: "lb", per: 1000 / customary.PoundG, places: 1},
	"g/mL":      {Unit: "lb/gal", per: customary.GallonML / customary.PoundG, places: -1},
	"W/(m² K)":  {Unit: "Btu/(h ft² °F)", per: 1 / 5.678263, places: 1},
	"m² K/W":    {Unit: "h ft² °F/Btu", per: 5.678263},
	"mm/h":      {Unit: "in/h", per: 1 / customary.InchMM, places: 2},
	"g/(m² h)":  {Unit: "oz/(ft² h)", per: 144 * customary.InchMM * customary.InchMM / 1e6 / customary.OunceG, places: 2},
	"kJ/(kg K)": {Unit: "Btu/(lb °F)", per: 1 / 4.1868},
	"W/(m K)":   {Unit: "Btu/(h ft °F)", per: 1 / 1.730735, places: 1},
}

// Gauge is how the maker reads numbers of a unit of the files.
func (s Style) Gauge(unit string) Gauge {
	g := Gauge{Unit: Of(unit), per: 1}
	switch {
	case unit == "K":
		g.Unit = "°C"
		if s.Scale == Fahrenheit {
			g = Gauge{Unit: "°F", per: 1.8}
		}
	case unit == "°C" && s.Scale == Fahrenheit:
		g = Gauge{Unit: "°F", per: 1.8, zero: 32}
	case unit == "mL" && s.Volumes != Millilitres:
		v := volumes[s.Volumes]
		g = Gauge{Unit: v.many, per: 1 / v.ml, places: v.places}
	case s.inches():
		if c, ok := gauges[unit]; ok {
			g = c
		}
	}
	g.file, g.Reads = unit, s
	return g
}

// Shown is what stands for v of the file's unit.
func (g Gauge) Shown(v float64) float64 {
	if g.same() {
		return v
	}
	return g.per*v + g.zero
}

// keptDigits are the digits that are kept of what was typed in another unit:
// more than any field shows.
const keptDigits = 8

// Kept is what a file keeps of a shown number.
func (g Gauge) Kept(shown float64) float64 {
	if g.same() || !known(shown) {
		return shown
	}
	return rounded((shown - g.zero) / g.per)
}

// rounded is v to keptDigits.
func rounded(v float64) float64 {
	if v == 0 {
		return 0
	}
	unit := math.Pow10(int(math.Floor(math.Log10(math.Abs(v)))) + 1 - keptDigits)
	if unit < 1 {
		return math.Round(v*math.Round(1/unit)) / math.Round(1/unit)
	}
	return math.Round(v/unit) * unit
}

func (g Gauge) same() bool { return g.per == 1 && g.zero == 0 || g.per == 0 }

// Places is how many decimals stand for some of the file's unit.
func (g Gauge) Places(of int) int { return max(0, of+g.places) }

// Step is the step of a hand that stands for one of the file's unit: 1, 2 or 5 of
// some decimal.
func (g Gauge) Step(of float64) float64 {
	if g.per == 1 || of <= 0 || g.per == 0 {
		return of
	}
	ten := math.Pow10(int(math.Floor(math.Log10(of * g.per))))
	best := ten
	for _, n := range [...]float64{2, 5, 10} {
		if math.Abs(math.Log(n*ten/(of*g.per))) < math.Abs(math.Log(best/(of*g.per))) {
			best = n * ten
		}
	}
	return best
}

// Plain is v, of the file's unit, to be edited, with at most so many decimals of
// that unit.
func (g Gauge) Plain(v float64, places int) string {
	return g.Reads.Short(g.Shown(v), g.Places(places))
}

// Text is v with its unit.
func (g Gauge) Text(v float64, places int) string { return g.Reads.with(g.Plain(v, places), g.Unit) }

// GramSign is the unit after a weight in a field of grams: "g", and where the
// maker reads ounces "g = 8.8 oz".
func (s Style) GramSign(g float64) string {
	if s.Weights != WithOunces || !known(g) || g == 0 {
		return "g"
	}
	return T("g = %s", s.Ounces(g))
}

// others are units that may be typed instead of a field's: how much one is of
// the file's.
var others = map[string]map[string]float64{
	"g":   {"g": 1, "kg": 1000, "oz": customary.OunceG, "lb": customary.PoundG},
	"kg":  {"kg": 1, "g": 1e-3, "lb": customary.PoundG / 1000},
	"mL":  {"ml": 1, "cl": 10, "l": 1000, "fl oz": customary.FluidOunceML, "cup": 8 * customary.FluidOunceML, "cups": 8 * customary.FluidOunceML, "pint": 16 * customary.FluidOunceML, "pints": 16 * customary.FluidOunceML},
	"mm":  {"mm": 1, "cm": 10, "in": customary.InchMM},
	"m":   {"m": 1, "ft": customary.FootM},
	"°C":  {"°c": 1, "c": 1},
	"L":   {"l": 1, "cu ft": 28.316846592},
	"cm²": {"cm²": 1, "in²": 6.4516},
}

// Take is what the file keeps of a number that was typed with a unit of its own,
// "" for the shown one. It is false for a unit that says nothing here.
func (g Gauge) Take(number float64, unit string) (kept float64, ok bool) {
	unit = strings.ToLower(strings.TrimSpace(unit))
	switch {
	case unit == "" || unit == strings.ToLower(g.Unit):
		return g.Kept(number), true
	case g.file == "°C" && (unit == "f" || unit == "°f"):
		return rounded((number - 32) / 1.8), true
	}
	per, ok := others[g.file][unit]
	if per == 1 {
		return number, ok
	}
	return rounded(number * per), ok
}
