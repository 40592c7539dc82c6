package say

import (
	"math"

	"ripplewright/internal/answer/sure"
	"ripplewright/internal/matter/phase"
)

// Chance is a share of kitchens as one says it: "8 in 10", "nearly always".
func Chance(share float64) string {
	switch n := math.Round(10 * share); {
	case !known(share):
		return Unknown
	case share >= 0.975:
		return "nearly always"
	case share < 0.025:
		return "hardly ever"
	case n == 0:
		return "less than 1 in 10"
	case n == 10:
		return "more than 9 in 10"
	default:
		return Usual.Number(n, 0) + " in 10"
	}
}

// HowOften says how often the tub eats well when the kitchen is not exact.
func HowOften(a *sure.Answer) string {
	if !known(a.BothFraction) {
		return "Its hardness is not known, so neither is how often it scoops."
	}
	eats := func(how string) string {
		switch {
		case a.Absent[0]:
			return "the foam " + how + "eats well"
		case a.Absent[1]:
			return "the custard " + how + "eats well"
		}
		return "both phases " + how + "eat well"
	}
	switch c := Chance(a.BothFraction); {
	case a.BothFraction >= 0.975 || a.BothFraction < 0.025:
		return "In kitchens as they are, " + eats(c+" ") + "."
	default:
		return "In kitchens as they are, " + eats("") + " " + c + " times."
	}
}

// SureFigure names what was sampled, and SureSpread says where 8 in 10 kitchens
// lie, with no more digits than that allows.
func SureFigure(f sure.Outcome) string {
	return [...]string{"hardness of the custard", "hardness of the foam", "sweetness of the tub", "minutes from the freezer to the spoon"}[f]
}

// SureSpread is a spread of a figure.
func SureSpread(s Style, f sure.Outcome, x sure.Spread) string {
	if !known(x.Middle) {
		return Unknown
	}
	switch f {
	case sure.CustardKPa, sure.FoamKPa:
		low, high := phase.WordFor(x.Low).Name, phase.WordFor(x.High).Name
		text := s.HardnessSpan(x.Low, x.High) + ", " + low
		if low != high {
			text += " to " + high
		}
		return text
	case sure.Sweetness:
		return s.PercentSpan(x.Low, x.High, 0)
	}
	return s.span(s.Number(x.Low, 0), s.Number(x.High, 0), "min")
}

// SureCause names a cause, with how far it goes.
func SureCause(s Style, c sure.Cause) string {
	switch c {
	case sure.Weighing:
		return "a slip of " + s.Percent(sure.WeighingPercent, 0) + " in weighing"
	case sure.EggSize:
		return "eggs larger or smaller than their size"
	case sure.Air:
		return s.Percent(sure.AirPercent, 0) + " more or less air"
	case sure.Syrup:
		return "how thick the boiled syrup is"
	case sure.Freezer:
		return s.TemperatureStep(sure.FreezerK) + " warmer or colder"
	case sure.Thaw:
		return "how fast the room warms a tub"
	}
	return "the hardness model itself"
}

// SureHow says what the figures rest on.
func SureHow(s Style, a *sure.Answer) string {
	return "The design made " + s.Grouped(float64(a.Kitchens)) + " times over, each time a little differently. The spread holds 8 in 10 of them. How far each cause goes is practice and memory, but for the syrup and the hardness, which rest on published scatter."
}

// The words around the bars of what moves a tub.
const (
	SureShows   = "Show"
	SureAll     = "all together"
	SureUnknown = "Nobody knows this figure of this tub."
)

// SureFigures names the figures that have bars, in their order.
func SureFigures() []string {
	names := make([]string, sure.NumFigures)
	for f := range sure.NumFigures {
		names[f] = Capital(SureFigure(f))
	}
	return names
}

// SureAxis is the axis of a figure's bars.
func SureAxis(f sure.Outcome) string {
	return SureFigure(f) + [...]string{", kPa", ", kPa", ", % as sucrose", ""}[f]
}

// SureBar names a cause beside its bar.
func SureBar(c sure.Cause) string {
	return [...]string{"weighing", "size of the eggs", "air", "boiled syrup", "freezer", "hardness model", "warm room"}[c]
}
