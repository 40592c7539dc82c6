package say

import (
	"strings"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/tongue"
)

// Plural is one or many after n, without it.
func Plural(n float64, one, many Message) string { return tongue.Plural(n, one, many) }

// Count is a whole number of things: "1 tub", "12 tubs".
func (s Style) Count(n int, one, many Message) string {
	return s.Grouped(float64(n)) + " " + Plural(float64(n), one, many)
}

// few is a number of things that may be no whole one, "1 yolk", "2.5 yolks".
func (s Style) few(n float64, one, many Message) string {
	return T("%s %s", s.Short(n, 1), Plural(n, one, many))
}

// either is one of two messages, by how many there are.
func either(n float64, one, many Message) Message {
	if n == 1 {
		return one
	}
	return many
}

// Capital is text with its first letter a capital.
func Capital(text string) string { return flaw.Capital(text) }

// OneOf joins what may be one or another: "a, b or c".
func OneOf(items []string) string {
	last := len(items) - 1
	if last < 1 {
		return strings.Join(items, "")
	}
	return T("%s or %s", strings.Join(items[:last], ", "), items[last])
}

// List joins what is said of several things: "a, b and c".
func List(items []string) string {
	if len(items) == 0 {
		return ""
	}
	last := len(items) - 1
	if last == 0 {
		return items[0]
	}
	return T("%s and %s", strings.Join(items[:last], ", "), items[last])
}
