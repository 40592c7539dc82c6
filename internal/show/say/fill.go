package say

import (
	"regexp"
	"strconv"
	"strings"
)

// braced is a quantity in a fixed text: "{20 °C}", "{88 to 90 °C}".
var braced = regexp.MustCompile(`\{([−-]?[0-9.]+)(?: to ([−-]?[0-9.]+))? (°C|K|mL|L|mm|cm|m|kg|g/mL|g)\}`)

// Text is a fixed text in which quantities stand in braces, as metric kitchens
// read them, "below {88 to 90 °C} the yolk thins it": with each as the maker
// reads it. A metric one stands as it is written.
func (s Style) Text(fixed string) string {
	if !strings.Contains(fixed, "{") {
		return fixed
	}
	return braced.ReplaceAllStringFunc(fixed, func(found string) string {
		m := braced.FindStringSubmatch(found)
		unit, per := m[3], 1.0
		if unit == "cm" && s.inches() {
			unit, per = "mm", 10
		}
		g := s.Gauge(unit)
		text := s.written(g, m[1], per)
		if m[2] != "" {
			text = T("%s to %s", text, s.written(g, m[2], per))
		}
		if unit == "g" && s.Weights == WithOunces && m[2] == "" {
			return s.beside(text+" g", plainNumber(m[1]))
		}
		return text + " " + g.Unit
	})
}

// written is a number of a fixed text in the unit of a gauge.
func (s Style) written(g Gauge, number string, per float64) string {
	if g.same() && per == 1 {
		if s.Comma {
			return strings.Replace(number, ".", ",", 1)
		}
		return number
	}
	places := 0
	if _, after, ok := strings.Cut(number, "."); ok {
		places = len(after)
	}
	return s.Short(g.Shown(per*plainNumber(number)), g.Places(places))
}

func plainNumber(text string) float64 {
	v, _ := strconv.ParseFloat(strings.Replace(text, "−", "-", 1), 64) // the pattern lets nothing else through
	return v
}
