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
	Unit     string
	Outside  bool // a number, but not within Min..Max; otherwise not a number
}

func (e *NumberError) Error() string {
	if !e.Outside {
		return echo.Quoted(e.Text) + " is not a number"
	}
	s := "must be " + Plain(e.Min, e.Decimals) + " to " + Plain(e.Max, e.Decimals)
	if e.Unit != "" {
		s += " " + e.Unit
	}
	return s
}

// Plain writes v to be edited, in the unit of the field and with at most so many
// decimals. What is typed may have a comma.
func Plain(v float64, decimals int) string { return say.Usual.Short(v, decimals) }

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
