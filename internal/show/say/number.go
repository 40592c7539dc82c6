package say

import (
	"math"
	"strconv"
	"strings"
)

func known(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Number is v with so many decimals: "−2.5".
func (s Style) Number(v float64, places int) string {
	if !known(v) {
		return Unknown
	}
	digits := strconv.FormatFloat(math.Abs(v), 'f', places, 64)
	negative := v < 0 && strings.Trim(digits, "0.") != ""
	if s.Comma {
		digits = strings.Replace(digits, ".", ",", 1)
	}
	if negative {
		return "−" + digits
	}
	return digits
}

// Signed is Number with a plus before what is more than nothing: "+0.4".
func (s Style) Signed(v float64, places int) string {
	text := s.Number(v, places)
	if v > 0 && known(v) && strings.Trim(text, "0.,") != "" {
		return "+" + text
	}
	return text
}

// Short is Number without noughts at its end: "2.5" and "3" to one place.
func (s Style) Short(v float64, places int) string {
	text := s.Number(v, places)
	if !strings.ContainsAny(text, ".,") {
		return text
	}
	text = strings.TrimRight(strings.TrimRight(text, "0"), ".,")
	if text == "−0" || text == "" {
		return "0"
	}
	return text
}

// Grouped is a whole number, from 10 000 on with thin gaps at the thousands.
func (s Style) Grouped(v float64) string {
	text := s.Number(v, 0)
	if !(math.Abs(v) >= 9999.5) || !known(v) {
		return text
	}
	sign := ""
	if rest, ok := strings.CutPrefix(text, "−"); ok {
		sign, text = "−", rest
	}
	for i := len(text) - 3; i > 0; i -= 3 {
		text = text[:i] + "\u2009" + text[i:]
	}
	return sign + text
}

// TwoFigures is v to two figures, and whole from ten on: "0.25", "2.5", "25".
func (s Style) TwoFigures(v float64) string { return s.Number(v, twoFigures(v)) }

func twoFigures(v float64) int {
	switch v = math.Abs(v); {
	case v < 0.995:
		return 2
	case v < 9.95:
		return 1
	}
	return 0
}

// Places returns how many decimals a figure is worth that is printed in steps of
// step, at the finest, and lies between low and high: fewer where these are wider
// apart than ten of the last digit. NaN for an end bounds nothing.
func Places(step, low, high float64) int {
	places := max(0, int(math.Round(-math.Log10(step))))
	for places > 0 && high-low > 10*math.Pow10(-places) {
		places--
	}
	return places
}

// Percent is p per cent: "12.4 %".
func (s Style) Percent(p float64, places int) string { return s.with(s.Number(p, places), "%") }

// PercentSpan is "5 to 10 %".
func (s Style) PercentSpan(low, high float64, places int) string {
	return s.span(s.Number(low, places), s.Number(high, places), "%")
}

// Points is a difference between percentages: "+0.4 points".
func (s Style) Points(p float64, places int) string {
	text := s.Signed(p, places)
	if strings.TrimLeft(text, "+−") == "1" {
		return s.with(text, T("point"))
	}
	return s.with(text, T("points"))
}

// with adds the unit, if there is one, of a known number.
func (s Style) with(number, unit string) string {
	if number == Unknown || unit == "" {
		return number
	}
	return number + " " + unit
}

// span joins two ends with their unit, and makes one of two that read alike.
func (s Style) span(low, high, unit string) string {
	switch {
	case low == Unknown && high == Unknown:
		return Unknown
	case high == Unknown:
		return T("%s %s or more", low, unit)
	case low == Unknown:
		return T("up to %s %s", high, unit)
	case low == high:
		return low + " " + unit
	}
	return T("%s to %s %s", low, high, unit)
}
