// Package typed reads what people type into fields.
package typed

import (
	"math"
	"strconv"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/show/say"
)

// A NumberError says why a typed text is not an acceptable number.
type NumberError struct {
	Text     string
	Min, Max float64
	Decimals int
	Gauge    say.Gauge
	Outside  bool // a number, but not within Min..Max; otherwise not a number
}

func (e *NumberError) Error() string {
	if !e.Outside {
		return say.T("%s is not a number", echo.Quoted(e.Text))
	}
	s := say.T("must be %s to %s", e.Gauge.Plain(e.Min, e.Decimals), e.Gauge.Plain(e.Max, e.Decimals))
	if e.Gauge.Unit != "" {
		s += " " + e.Gauge.Unit
	}
	return s
}

// Plain writes v to be edited, in the unit of the field and with at most so many
// decimals. What is typed may have a comma.
func Plain(v float64, decimals int) string { return say.Usual.Short(v, decimals) }

// Within reads a number between min and max as people type it, in the unit that
// a gauge shows or with another that says the same: "8 oz" in a field of grams,
// "65 °C" in one of degrees Fahrenheit. The error is a *NumberError.
func Within(text string, g say.Gauge, min, max float64, decimals int) (float64, error) {
	v, err := Number(text, g.Unit)
	if err == nil {
		v = g.Kept(v)
	} else if number, unit, ok := parted(text); ok {
		if other, known := g.Take(number, unit); known {
			v, err = other, nil
		}
	}
	if err != nil {
		return 0, err
	}
	// A limit that is shown rounded may be typed as it is shown.
	slack := math.Abs(g.Kept(math.Pow10(-g.Places(decimals))/2) - g.Kept(0))
	if g.Kept(1) == 1 {
		slack = 0
	}
	if v < min-slack || v > max+slack {
		return 0, &NumberError{Text: text, Min: min, Max: max, Decimals: decimals, Gauge: g, Outside: true}
	}
	return math.Max(min, math.Min(max, v)), nil
}

// parted is a typed number and the unit after it.
func parted(text string) (number float64, unit string, ok bool) {
	end := strings.LastIndexAny(text, "0123456789.,") + 1
	number, err := Number(text[:end], "")
	return number, text[end:], err == nil && end < len(text)
}

// Number reads a number as people type it: a point or a comma before the
// decimals, a hyphen or a true minus before a negative, spaces around it or
// between thousands, and unit after it or not. Anything else, an empty text,
// and a number that is not finite is a *NumberError.
func Number(text, unit string) (float64, error) {
	s := strings.TrimSpace(text)
	if unit != "" {
		s = strings.TrimSpace(strings.TrimSuffix(s, unit))
	}
	s = strings.NewReplacer("−", "-", "–", "-", ",", ".", " ", "", "\u00a0", "", "\u202f", "").Replace(s)
	v, err := strconv.ParseFloat(s, 64)
	// ParseFloat takes spellings that nobody means at a kitchen table.
	if err != nil || strings.ContainsAny(s, "xXpPeE_iInN") || math.IsInf(v, 0) {
		return 0, &NumberError{Text: text}
	}
	return v, nil
}
