package say

import (
	"strings"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/form/customary"
)

// readings has one entry for each reading: what it is called where it was kept,
// and the words before its field.
var readings = map[process.Reading]struct{ name, ask Message }{
	process.SyrupC:      {"syrup's temperature", "The syrup reached"},
	process.SyrupG:      {"syrup weighed", "It weighs without the pan"},
	process.SyrupMin:    {"flame timed", "It took"},
	process.FoamC:       {"foam's temperature", "Right after the pour the foam reads"},
	process.FoamCupG:    {"foam weighed", "A level {cup} of foam weighs"},
	process.CustardG:    {"custard weighed", "The custard weighs without the pan"},
	process.CustardCupG: {"custard's air weighed", "A level {cup} of custard weighs"},
}

// Reading is what a reading is called: "syrup weighed".
func Reading(of process.Reading) string { return readings[of].name.String() }

// AskReading are the words before the field of a reading.
func AskReading(s Style, of process.Reading) string {
	cup, _ := s.levelCup()
	return strings.Replace(readings[of].ask.String(), anyCup, cup, 1)
}

// anyCup stands for the cup that a foam or a custard is weighed in, which a file
// takes to be of process.CupML.
const anyCup = "{cup}"

// levelCup is that cup in the maker's kitchen, and what it holds, mL: US cups are
// smaller, and ReadingGauge makes of their weight what the file's would hold.
func (s Style) levelCup() (name string, ml float64) {
	if s.inches() {
		return T("cup"), customary.CupML
	}
	return T("%s cup¦of that volume", s.Volume(process.CupML)), process.CupML
}

// ReadingGauge is how a reading of a unit of the files is shown and typed.
func ReadingGauge(s Style, of process.Reading, unit string) Gauge {
	g := s.Gauge(unit)
	if _, ml := s.levelCup(); strings.Contains(string(readings[of].ask), anyCup) {
		g.per = ml / process.CupML
	}
	return g
}

// Doubt is why a reading cannot be.
type Doubt uint8

// The doubts.
const (
	Believed Doubt = iota
	TooMuch
	TooLittle
)

// NotBelieved says why a reading cannot be.
func NotBelieved(s Style, of process.Reading, why Doubt) string {
	switch {
	case of == process.SyrupMin:
		return T("No kitchen flame boils that so fast.")
	case of == process.FoamC:
		return T("The foam cannot be hotter than the syrup.")
	case of == process.CustardG && why == TooLittle:
		return T("That is less than the custard without any water: was all of it weighed?")
	case of == process.CustardG:
		return T("That is more than what went into the pan: take the pan off.")
	}
	return T("That is more than the cup holds without any air: take the cup off, and level it.")
}

// KeepsGrams says what keeping a reading does to a batch that was scaled to its
// tubs.
const KeepsGrams Message = "Kept, the grams stay as weighed out, and the tubs filled follow."

// FlameMeasured says what boil a kitchen's flame was found by.
func FlameMeasured(g, minutes float64) string {
	s := Style{}
	return T("%s of syrup boiled in %s", s.Mass(g), s.with(s.Number(minutes, 1), "min"))
}

// BowlRead says what published data say of whites that came to what was read.
func BowlRead(s Style, f *process.Foam) string {
	text := T("By published data for solutions as sugary as it (Mattick et al. 2001) that is %s of Salmonella; the published figure for egg dishes is %s.", tenfold(s, f.LogLow, f.LogHigh), s.Temperature(f.ReachesC))
	if !f.Reaches {
		text += " " + T("It does not reach it.")
	}
	return text
}
