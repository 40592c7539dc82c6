package written

import (
	"math"
	"strings"
)

// "1,250 g" may be a thousand and a quarter or one and a quarter. What else a text writes may tell:
// its decimals have the other sign, or its total is met by thousands alone.

var (
	decimals = find(`(?:^|[\s(|;:])\d{1,4}([.,])\d{1,2} ?(?:k?g|m?l|cl|dl|oz|lbs?|%)(?:[^\pL]|$)`)
	threes   = find(`(^|[\s(|;:])([1-9]\d{0,2})([.,])(\d{3})( ?(?:g|gr|grams?|ml)\b)`)
	massOf   = find(`(?:^|[\s(|;:])(\d[\d.,]*) ?(k?g|gr|grams?)\b`)
)

// thousand returns the sign that parts thousands in a text, "" where nothing proves one.
func (r *Reader) thousand(text string) string {
	signs := map[string]bool{}
	for _, m := range threes().FindAllStringSubmatch(text, -1) {
		signs[m[3]] = true
	}
	if len(signs) != 1 {
		return ""
	}
	sign, other := ",", "."
	if signs["."] {
		sign, other = ".", ","
	}
	used := map[string]bool{}
	for _, m := range decimals().FindAllStringSubmatch(text, -1) {
		used[m[1]] = true
	}
	if used[other] && !used[sign] || !used[sign] && totals(text, sign) {
		return sign
	}
	return ""
}

// totals reports whether the weights of a text come to its total where a sign parts thousands, and
// not where it is a decimal one.
func totals(text, sign string) bool {
	whole, parted := 0.0, 0.0
	for _, line := range strings.Split(text, "\n") {
		all := massOf().FindAllStringSubmatch(line, -1)
		if len(all) == 0 {
			continue
		}
		n, kg := all[0][1], 1.0
		if all[0][2] == "kg" {
			kg = 1000
		}
		asDecimal := kg * value(n)
		asWhole := asDecimal
		if grouped.in(n) && kg == 1 {
			asWhole = value(strings.Replace(n, sign, "", 1))
		}
		if summed.in(strings.TrimSpace(box.swap(line, ""))) {
			return whole > 0 && math.Abs(whole-asWhole) <= roundTotal*whole && math.Abs(parted-asDecimal) > roundTotal*parted
		}
		if len(all) > 1 {
			return false
		}
		whole, parted = whole+asWhole, parted+asDecimal
	}
	return false
}

// roundTotal is how far a total may be from its parts by rounding, of one. common practice, no
// source.
const roundTotal = 0.005

// ungrouped takes the sign that parts thousands from the weights of a line.
func ungrouped(line, sign string) string {
	return threes().ReplaceAllStringFunc(line, func(s string) string {
		m := threes.parts(s)
		if m[3] != sign {
			return s
		}
		return m[1] + m[2] + m[4] + m[5]
	})
}
