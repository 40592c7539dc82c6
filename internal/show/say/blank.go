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
		ask := AskReading(s, of)
		if first := ask[0]; b.Len() > 0 && first >= 'A' && first <= 'Z' { // a sentence of its own
			b.WriteString(".")
		}
		b.WriteString(" " + ask + " " + BlankLine + " " + readingUnit(s, of))
	}
	if b.Len() == 0 {
		return ""
	}
	return strings.TrimSpace(b.String()) + "."
}

// readingUnit is the maker's unit in which a reading is written down.
func readingUnit(s Style, of process.Reading) string {
	unit := "g"
	switch of {
	case process.SyrupC, process.FoamC:
		unit = "°C"
	case process.SyrupMin:
		unit = "min"
	}
	return ReadingGauge(s, of, unit).Unit
}
