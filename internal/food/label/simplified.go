package label

import (
	"slices"
	"strings"
)

// simplePanel is the simplified panel of 21 CFR 101.9(f), from memory: for a food of
// which eight or more of its fifteen nutrients are insignificant.
type simplePanel struct {
	lines, second  []PanelLine
	notSignificant string
}

// leastInsignificant is how many must be, 21 CFR 101.9(f)(1).
const leastInsignificant = 8

// alwaysDeclared stay on a simplified panel: (f)(2)(i).
var alwaysDeclared = []string{"calories", "total_fat", "sodium", "total_carbohydrate", "protein"}

// underAGram are those that are insignificant below a gram; the others where they
// may be declared as zero: (f)(1).
var underAGram = []string{"total_carbohydrate", "dietary_fiber", "protein"}

// insignificant reports whether a declared line is. An incomplete figure is not.
func insignificant(l PanelLine) bool {
	if l.Incomplete || l.Key == "sugar_alcohol" { // which is none of the fifteen
		return false
	}
	text := l.AmountText()
	return strings.HasPrefix(text, "0") && !strings.HasPrefix(text, "0.") ||
		slices.Contains(underAGram, l.Key) && (strings.HasPrefix(text, "<") || strings.HasPrefix(text, "less than"))
}

// simplified returns the simplified form of a panel; nil where the rules do not
// allow it. What is left out is named under it.
func simplified(lines, second []PanelLine) *simplePanel {
	var s simplePanel
	var out []string
	n := 0
	for i, l := range lines {
		none := insignificant(l) && (len(second) == 0 || insignificant(second[i]))
		if none {
			n++
		}
		if none && !slices.Contains(alwaysDeclared, l.Key) {
			out = append(out, lowerFirstUnless(strings.TrimSuffix(l.Name, " "), "Vitamin D"))
			continue
		}
		s.lines = append(s.lines, l)
		if len(second) > 0 {
			s.second = append(s.second, second[i])
		}
	}
	if n < leastInsignificant {
		return nil
	}
	s.notSignificant = "Not a significant source of " + wordList(out, "or") + "."
	return &s
}

// Simple is the label with its simplified panel; nil where none is allowed.
func (l *Label) Simple() *Label {
	if l.simple == nil {
		return nil
	}
	out := *l
	out.Lines, out.Second, out.NotSignificant = l.simple.lines, l.simple.second, l.simple.notSignificant
	return &out
}
