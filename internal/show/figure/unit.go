package figure

import (
	"math"

	"ripplewright/internal/show/say"
)

// Unit is what a figure is counted in.
type Unit uint8

// The units.
const (
	Number       Unit = iota
	Words             // no number but a word
	Mass              // g, on a kitchen scale
	Volume            // mL
	Grams             // g, of a nutrient or on a spoon
	Milligrams        // mg
	Micrograms        // µg
	Kilocalories      // kcal
	GramsPerML        // g/mL
	Percent           // %
	Points            // percentage points
	Celsius           // °C
	Kelvin            // a difference of temperatures
	Kilopascals       // kPa
	Times             // one over another
	Money             // the maker's own
)

// Sign returns the unit as the program's own files have it, "" for a bare
// number.
func (u Unit) Sign() string {
	return [...]string{"", "", "g", "mL", "g", "mg", "µg", "kcal", "g/mL", "%", "points", "°C", "K", "kPa", "×", ""}[u]
}

// Places returns how many decimals v is worth: no more than the row's step has,
// and fewer where its band is wider than ten of the last digit. A row without a
// step has two figures. What kitchens make of a recipe costs no digit: it moves the
// designs that are compared alike.
func (f *Row) Places(v Value) int {
	if v.Made {
		return v.places
	}
	if f.Step == 0 {
		switch x := math.Abs(v.Value); {
		case x < 0.995:
			return 2
		case x < 9.95:
			return 1
		}
		return 0
	}
	if v.Bound != Exact {
		return say.Places(f.Step, nan, nan)
	}
	return say.Places(f.Step, v.Low, v.High)
}

// Parts returns the figure as text in two, its number and its unit, which is
// "" where the figure is a word or unknown.
func (f *Row) Parts(s say.Style, v Value) (number, unit string) {
	if !v.Known() {
		if v.Word != "" {
			return say.Of(v.Word), ""
		}
		return say.Unknown, ""
	}
	number, unit = f.parts(s.In(v.Currency), v.Value, f.Places(v))
	switch v.Bound {
	case AtLeast:
		number = say.AtLeast(number)
	case AtMost:
		number = "≤ " + number
	}
	return number, unit
}

func (f *Row) parts(s say.Style, v float64, places int) (number, unit string) {
	if !known(v) {
		return say.Unknown, ""
	}
	switch f.Unit {
	case Mass:
		return s.MassParts(v)
	case Volume:
		return s.VolumeParts(v)
	case Celsius:
		return s.Number(s.Degrees(v), places), s.Degree()
	case Kelvin:
		if s.Scale == say.Fahrenheit {
			return s.Number(1.8*v, places), "°F"
		}
		return s.Number(v, places), "°C"
	case GramsPerML:
		return s.DensityParts(v, places)
	case Money:
		return s.Money(v), ""
	}
	return s.Number(v, places), say.Of(f.Unit.Sign())
}

// Text returns the figure with its unit: "≥ 17.1 %".
func (f *Row) Text(s say.Style, v Value) string { return joined(f.Parts(s, v)) }

// BandParts returns the figure's band in two: "2.3 to 15" and "kPa".
func (f *Row) BandParts(s say.Style, v Value) (span, unit string) {
	if !v.Banded() || v.Bound != Exact {
		return say.Unknown, ""
	}
	places := f.Places(v)
	end := func(x float64) string {
		if f.Step == 0 {
			places = f.Places(Value{Value: x})
		}
		n, u := f.parts(s, x, places)
		if u != "" {
			unit = u
		}
		return n
	}
	low, high := end(v.Low), end(v.High)
	if low == high {
		return low, unit
	}
	return say.T("%s to %s", low, high), unit
}

// BandText returns the figure's band with its unit.
func (f *Row) BandText(s say.Style, v Value) string { return joined(f.BandParts(s, v)) }

// band is BandText, "" where there is none.
func (f *Row) band(s say.Style, v Value) string {
	if !v.Banded() || v.Bound != Exact {
		return ""
	}
	return f.BandText(s, v)
}

// Bands are the texts of some values' bands, "" for one without; nil where none has one.
func (f *Row) Bands(s say.Style, values ...Value) []string {
	out, any := make([]string, len(values)), false
	for i, v := range values {
		out[i] = f.band(s, v)
		any = any || out[i] != ""
	}
	if !any {
		return nil
	}
	return out
}

func joined(number, unit string) string {
	if unit == "" {
		return number
	}
	return number + " " + unit
}

// Line lays the row out.
func (f *Row) Line(s say.Style, values ...Value) say.TableRow {
	return f.line(say.Of(f.Name), s, f.Parts, values)
}

// Band lays the row's bands out.
func (f *Row) Band(name string, s say.Style, values ...Value) say.TableRow {
	return f.line(name, s, f.BandParts, values)
}

func (f *Row) line(name string, s say.Style, parts func(say.Style, Value) (string, string), values []Value) say.TableRow {
	l := say.TableRow{Name: name, Cells: make([]string, len(values))}
	units := make([]string, len(values))
	for i, v := range values {
		l.Cells[i], units[i] = parts(s, v)
		switch {
		case units[i] == "" || units[i] == l.Unit:
		case l.Unit == "":
			l.Unit = units[i]
		default: // grams beside kilograms
			for k := range values {
				l.Cells[k] = joined(parts(s, values[k]))
			}
			return say.TableRow{Name: name, Cells: l.Cells}
		}
	}
	return l
}
