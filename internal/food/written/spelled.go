package written

import (
	"strings"
)

var large = map[string]float64{"thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
	"twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90, "hundred": 100}

var nextWord = find(`^[ -]*([a-z]+)`)

// spelled reads a number above twelve that s spells out, "one hundred and fifty".
func spelled(s string) (v float64, rest string, ok bool) {
	low, at, end := strings.ToLower(s), 0, 0
	for {
		m := nextWord.parts(low[at:])
		if m == nil {
			break
		}
		n, isLarge := large[m[1]]
		small, isSmall := spokenNumbers[m[1]]
		switch {
		case m[1] == "hundred" && v >= 1 && v < 100:
			v *= n
		case m[1] == "hundred" && v == 0:
			v = n
		case isLarge && int(v)%100 == 0:
			v += n
		case isSmall && small >= 1 && (v == 0 || int(v)%10 == 0 && m[1] != "a" && m[1] != "an"):
			v += small
		case m[1] == "and" && v >= 100:
			at += len(m[0])
			continue
		default:
			return v, s[end:], ok
		}
		ok = ok || isLarge
		at += len(m[0])
		end = at
	}
	return v, s[end:], ok
}
