package say

import (
	"strings"

	"ripplewright/internal/answer/process"
)

// BlankLine is where a cook writes on paper what was read.
const BlankLine = "______"

// Blanks asks on paper for what can be read at a step, "" for nothing: "Right after
// the pour the foam reads ______ °C."
func Blanks(s Style, all []process.Reading) string {
	var b strings.Builder
	for _, of := range all {
		ask := AskReading(of)
		if first := ask[0]; b.Len() > 0 && first >= 'A' && first <= 'Z' { // a sentence of its own
			b.WriteString(".")
		}
		b.WriteString(" " + ask + " " + BlankLine + " " + ReadingUnit(s, of))
	}
	if b.Len() == 0 {
		return ""
	}
	return strings.TrimSpace(b.String()) + "."
}

// ReadingUnit is the unit in which a reading is written down: the scale's, the
// scale's of grams, or minutes.
func ReadingUnit(s Style, of process.Reading) string {
	switch of {
	case process.SyrupC, process.FoamC:
		return s.Degree()
	case process.SyrupMin:
		return "min"
	}
	return "g"
}
