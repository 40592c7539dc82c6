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
	asks := make([]string, len(all))
	for i, of := range all {
		asks[i] = AskReading(s, of) + " " + BlankLine + " " + readingUnit(s, of) + "."
	}
	return strings.Join(asks, " ")
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
