package written

import (
	"strconv"
	"strings"
	"unicode"

	"ripplewright/internal/form/customary"
)

// amount is so many of a measure.
type amount struct {
	n      float64
	in     measure
	word   string // the measure as it stands there
	doubts Doubt
}

var (
	mixed     = find(`^(\d+)(?:\s*[-+&]\s*|\s+and\s+|\s+)(\d+)\s*/\s*(\d+)`)
	quotien   = find(`^(\d+)\s*/\s*(\d+)`)
	spaced    = find(`^(\d{1,3}(?: \d{3})+) ?(?:g|ml|gram|grams)\b\s*(\pL*)`)
	grouping  = find(`^(?:(?:1|\d\d)(?: \d{3})+|\d(?: 000)+)$`)                        // "2 250 g" may be two of 250 g
	mingled   = find(`^(?:[1-9]\d{0,2}(?:\.\d{3})+,\d+|[1-9]\d{0,2}(?:,\d{3})+\.\d+)`) // two signs: the last is the decimal one
	continued = find(`^[.,]\d`)
	decimal   = find(`^(?:\d+(?:[.,]\d+)?|[.,]\d+)`)
	grouped   = find(`^[1-9]\d{0,2}[.,]\d{3}$`)
	further   = find(`(?i)^and (a half|half|a quarter|three quarters)(?: of an?)?(?:\s+|$)`)
	circa     = find(`^[cC]\.?\s*(\d)`)
	halfMore  = find(`(?i)^\s+and a half\b`)
	roughly   = find(`(?i)^(?:(?:an? )?(?:bit|little|touch) |just |slightly |somewhat )?(?:more than|less than|over|under)\s+`)
	to        = find(`^\s*(?:-|/|\||to\b|or\b)\s*`)
	spoken    = find(`^(?i)(three quarters of an?|three quarters|a quarter of an?|a quarter|quarter of an?|quarter|half an?|half of an?|a half|half|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)(?: (dozen))?(?:\s+|$)`)
)

var spokenNumbers = map[string]float64{"three quarters": 0.75, "a quarter": 0.25, "quarter": 0.25, "half": 0.5, "a half": 0.5, "a": 1, "an": 1,
	"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12}

// mostParts is the finest fraction of a measure: "11/2" is 1 1/2 with its space lost,
// or nobody knows, and "100/120" are two amounts. common practice, no source.
const mostParts = 32

// number reads a number that s begins with, and returns what follows. grouped
// tells that three digits after a point or comma may be thousands.
func number(s string) (v float64, rest string, thousands, ok bool) {
	atoi := func(t string) float64 {
		n, _ := strconv.ParseFloat(strings.ReplaceAll(strings.ReplaceAll(t, ",", "."), " ", ""), 64)
		return n
	}
	if m := spaced.parts(s); m != nil && measures[m[2]].kind != container { // "2 400 g tins" are two
		return atoi(m[1]), s[len(m[1]):], !grouping.in(m[1]), true
	}
	if m := mixed.parts(s); m != nil && atoi(m[3]) > atoi(m[2]) {
		return atoi(m[1]) + atoi(m[2])/atoi(m[3]), s[len(m[0]):], false, true
	}
	if m := quotien.parts(s); m != nil && atoi(m[2]) > atoi(m[1]) && atoi(m[2]) <= mostParts {
		return atoi(m[1]) / atoi(m[2]), s[len(m[0]):], false, true
	}
	if m := mingled.of(s); m != "" && !continued.in(s[len(m):]) {
		last := strings.LastIndexAny(m, ".,")
		return atoi(strings.NewReplacer(".", "", ",", "").Replace(m[:last]) + "." + m[last+1:]), s[len(m):], false, true
	}
	if m := decimal.of(s); m != "" {
		rest := s[len(m):]
		if rest != "" && (rest[0] == '.' || rest[0] == ',') && len(rest) > 1 && unicode.IsDigit(rune(rest[1])) {
			return 0, s, false, false // 1.250,5 and the like
		}
		return atoi(m), rest, grouped.in(m), true
	}
	if v, rest, ok := spelled(s); ok {
		return v, rest, false, true
	}
	if m := spoken.parts(s); m != nil && !strings.HasPrefix(strings.ToLower(s), "half and half") && !strings.HasPrefix(strings.ToLower(s), "half-") {
		word := strings.ToLower(m[1])
		v, known := spokenNumbers[word]
		for _, tail := range []string{" of an", " of a", " an", " a"} {
			if !known {
				v, known = spokenNumbers[strings.TrimSuffix(word, tail)]
			}
		}
		rest := s[len(m[0]):]
		if more := further.parts(rest); more != nil && m[2] == "" {
			v, rest = v+spokenNumbers[strings.ToLower(more[1])], rest[len(more[0]):]
		}
		if m[2] != "" {
			v *= 12
		}
		return v, rest, false, known
	}
	return 0, s, false, false
}

// word splits s after its first word, which may end in a point.
func word(s string) (w, rest string) {
	s = strings.TrimLeft(s, " -")
	i := strings.IndexFunc(s, func(r rune) bool { return !unicode.IsLetter(r) })
	if i < 0 {
		i = len(s)
	}
	return s[:i], strings.TrimPrefix(s[i:], ".")
}

// unit reads the measure that s begins with.
func unit(s string) (m measure, name, rest string) {
	w, rest := word(s)
	low := strings.ToLower(w)
	if low == "us" {
		next, after := word(rest)
		if u, ok := measures[strings.ToLower(next)]; ok && u.size > 0 {
			if u.kind == pint {
				u.kind = volume
			}
			return u, next, after
		}
	}
	if low == "fl" || low == "fluid" {
		if next, after := word(rest); measures[strings.ToLower(next)].kind == ounce {
			return measure{volume, customary.FluidOunceML}, "fl oz", after
		}
	}
	if u, ok := cased[w]; ok {
		return u, w, rest
	}
	if u, ok := measures[low]; ok {
		return u, w, rest
	}
	return measure{}, "", s
}

// skip drops words of set that s begins with, and reports whether there were any.
func skip(s string, set map[string]bool) (string, bool) {
	found := false
	for {
		w, rest := word(strings.TrimLeft(s, "~≈ "))
		if !set[strings.ToLower(w)] {
			return strings.TrimLeft(s, "~≈ "), found
		}
		s, found = rest, true
	}
}

// read reads an amount that s begins with, and returns what follows.
func read(s string) (a amount, rest string, ok bool) {
	s, _ = skip(circa.swap(s, "$1"), hedges)
	s, loose := skip(s, unsure)
	if m := roughly.of(s); m != "" {
		s, loose = s[len(m):], true // "a bit more than 1 cup"
	}
	s = strings.TrimPrefix(strings.TrimSpace(s), "to ")
	v, rest, thousands, ok := number(s)
	if !ok {
		u, name, after := unit(s)
		if u.kind == vague && name != "" {
			return amount{1, u, name, Vague}, after, true
		}
		return amount{}, s, false
	}
	if w, after := word(rest); strings.EqualFold(w, "dozen") || strings.EqualFold(w, "doz") {
		v, rest = 12*v, after
	}
	a.n = v
	if m := to.of(rest); m != "" {
		if high, after, _, ok := number(rest[len(m):]); ok {
			if !strings.HasPrefix(strings.TrimSpace(rest), "-") || high > v {
				a.doubts, rest = Range, after
			}
		}
	}
	after, hedge := skip(rest, unsure)
	if u, name, end := unit(after); name != "" {
		a.in, a.word, rest = u, name, end
		loose = loose || hedge
	} else if after, _ = skip(rest, hedges); after != rest {
		if u, name, end := unit(after); name != "" {
			a.in, a.word, rest = u, name, end
		}
	}
	if m := halfMore.of(rest); m != "" && a.word != "" {
		a.n, rest = a.n+0.5, rest[len(m):] // "a cup and a half"
	}
	switch {
	case a.doubts != 0:
	case a.in.kind == vague && a.word != "", loose:
		a.doubts = Vague
	case thousands && (a.in.size == 1 || a.in.size == 0):
		a.doubts = Thousands
	case !(a.n > 0):
		a.doubts = NoAmount
	}
	return a, rest, true
}
