package written

import (
	"math"
	"slices"
	"strings"

	"ripplewright/internal/form/customary"
)

var (
	cellEnd   = find(`\s*(?:\t|\||;)\s*`)
	share     = find(`^[\d.,]+ ?%$`)
	price     = find(`^(?:[$£€¥] ?[\d.,]+|[\d.,]+ ?[$£€¥])(?: ?/ ?\pL+)?$`)
	code      = find(`^\p{Lu}{1,4}[-#]?\d+$`)
	csv       = find(`^[\d./]+,\s*\pL*\s*,\s*\pL[^,]*$`)
	shared    = find(`(?m)^\s*\pL[^%\n]*?\s[\d.,]+ ?%\s+(?:[\d.,]+ ?(?:k?g|lb|oz)\b)`)
	sharing   = find(`\s[\d.,]+ ?%(\s+[\d.,]+ ?(?:k?g|lb|oz)\b)`)
	numbered  = find(`^(\pL+) \d( \([^()]*\) \d)`)
	kindFirst = find(`^\d{1,2}(?:[.,]\d)? ?% ?\pL`) // "70 % dark chocolate"
	byWeight  = find(`(?i)\s*\(?\b(?:(?:by|net) (?:weight|wt\.?)|wt\.?$)\)?`)
)

// lastCell finds a row of a table that ends in a bare number: a name, a weight, a number.
var lastCell = find(`(?m)^([^\t\n]*\pL[^\t\n]*\t\s*([\d.,]+) ?(?:k?g)\s*)\t\s*([\d.,]+)\s*$`)

// inStep reports whether the bare numbers that end the rows of a table are to its weights
// all in one relation: they are shares of the whole.
func inStep(text string) bool {
	least, most := math.Inf(1), 0.0
	rows := lastCell().FindAllStringSubmatch(text, -1)
	for _, m := range rows {
		weight, number := value(m[2]), value(m[3])
		least, most = min(least, weight/number), max(most, weight/number)
	}
	return len(rows) > 2 && most <= least*(1+apartShare)
}

// apartShare is how far shares may be from the weights by their rounding, of one. common
// practice, no source.
const apartShare = 0.06

// shares reports whether a text gives each line's share of the whole before its weight, as
// formulas of bakeries do: most of its lines have one, and they are no fat of milk.
func shares(text string) bool {
	lines := shared().FindAllString(text, -1)
	others := slices.ContainsFunc(lines, func(line string) bool { return !own.in(line) })
	return len(lines) > 1 && others
}

// own finds the foods whose own percentage may stand before their weight.

var own = find(`(?i)milk|cream|chocolate|couverture|cocoa|rum|whisk|vodka|vol\b|solids|butter|yogh?urt`)

// unrow returns a row of a table, a name with its amounts behind it in cells or one after
// the other, as a line is written: the first amount, the others that say the same, the
// name. A text that is no such row is returned as it is.
func unrow(s string) string {
	s = numbered.swap(s, "$1$2") // "Sugar 1 (with whites) 80 g"
	if csv.in(s) {
		s = strings.ReplaceAll(s, ",", "\t")
	}
	cells := cellEnd().Split(s, -1)
	if len(cells) < 2 {
		return behind(s)
	}
	var amounts, names []string
	for i := 0; i < len(cells); i++ {
		c := strings.TrimSpace(cells[i])
		next := ""
		if i+1 < len(cells) {
			next = strings.TrimSpace(cells[i+1])
		}
		_, rest, _, bare := number(c)
		switch {
		case c == "" || share.in(c) && len(names) > 0 || price.in(c) || code.in(c):
		case bare && strings.TrimSpace(rest) == "" && next != "" && isUnit(next):
			amounts = append(amounts, c+" "+next)
			i++
		case isAmounts(c):
			amounts = append(amounts, strings.Split(c, " / ")...)
		case bare && strings.TrimSpace(rest) == "" && len(names) > 0:
			return s // a number of nobody knows what
		default:
			names = append(names, c)
		}
	}
	if len(names) == 1 && len(amounts) == 0 {
		return behind(names[0]) // the other cells are a code or a price
	}
	if len(names) == 0 || len(amounts) == 0 || strings.ContainsAny(names[0][:1], "0123456789(") && !kindFirst.in(names[0]) {
		return behind(s)
	}
	return strings.Join(amounts, " / ") + " " + strings.Join(names, ", ")
}

func isUnit(s string) bool {
	_, name, rest := unit(s)
	return name != "" && strings.TrimSpace(rest) == ""
}

// isAmounts reports whether s is nothing but amounts, each in its measure.
func isAmounts(s string) bool { _, n := amountsOf(s); return n > 0 }

// amountsOf returns the amounts that make up the whole of s, as a line is written, and how
// many they are, 0 for a text that has anything else.
func amountsOf(s string) (string, int) {
	a, rest, ok := read(s)
	if !ok || a.word == "" || a.in.kind == vague && !strings.ContainsAny(s[:1], "0123456789") {
		return "", 0
	}
	first := strings.TrimSpace(strings.TrimSuffix(s, rest))
	rest = strings.TrimSpace(rest)
	if rest == "" {
		return first, 1
	}
	if m := joined.of(rest); m != "" {
		others, n := amountsOf(rest[len(m):])
		return first + " + " + others, 2 * n // "250 g + 50 g"
	}
	next := strings.TrimSpace(strings.TrimLeft(rest, "/|=,"))
	if next == "" || !strings.ContainsAny(next[:1], "0123456789.") {
		return "", 0
	}
	others, n := amountsOf(next)
	if b, _, _ := read(next); n > 0 && a.in.size == customary.PoundG && b.in.kind == ounce && next == rest {
		return first + " " + others, n + 1 // "4 lb 8 oz"
	}
	return first + " / " + others, n + 1
}

// behind turns a line round that ends in several amounts: "sugar 170 g / 6 oz".
func behind(s string) string {
	if s == "" || strings.ContainsAny(s[:1], "0123456789.") {
		return s
	}
	for _, at := range gap().FindAllStringIndex(s, -1) {
		end := strings.TrimSpace(s[at[1]:])
		if end == "" || !strings.ContainsAny(end[:1], "0123456789.") {
			continue
		}
		if amounts, n := amountsOf(end); n > 1 {
			return amounts + " " + strings.TrimRight(s[:at[0]], " ,:=-")
		}
	}
	return s
}
