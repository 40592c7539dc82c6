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
		return T("nearly always")
	case share < 0.025:
		return T("hardly ever")
	case n == 0:
		return T("less than 1 in 10")
	case n == 10:
		return T("more than 9 in 10")
	default:
		return T("%s in 10", Usual.Number(n, 0))
	}
}

// HowOften says how often the tub eats well when the kitchen is not exact.
func HowOften(a *sure.Answer) string {
	if !known(a.BothFraction) {
		return T("Its hardness is not known, so neither is how often it scoops.")
	}
	c, adverb := Chance(a.BothFraction), a.BothFraction >= 0.975 || a.BothFraction < 0.025
	switch {
	case a.Absent[0] && adverb:
		return T("In kitchens as they are, the foam %s eats well.", c)
	case a.Absent[0]:
		return T("In kitchens as they are, the foam eats well %s times.", c)
	case a.Absent[1] && adverb:
		return T("In kitchens as they are, the custard %s eats well.", c)
	case a.Absent[1]:
		return T("In kitchens as they are, the custard eats well %s times.", c)
	case adverb:
		return T("In kitchens as they are, both phases %s eat well.", c)
	}
	return T("In kitchens as they are, both phases eat well %s times.", c)
}

// SureFigure names what was sampled, and SureSpread says where 8 in 10 kitchens
// lie, with no more digits than that allows.
func SureFigure(f sure.Outcome) string {
	return [...]string{T("hardness of the custard"), T("hardness of the foam"), T("sweetness of the tub"), T("minutes from the freezer to the spoon")}[f]
}

// SureSpread is a spread of a figure.
func SureSpread(s Style, f sure.Outcome, x sure.Spread) string {
	if !known(x.Middle) {
		return Unknown
	}
	switch f {
	case sure.CustardKPa, sure.FoamKPa:
		words, high := Of(phase.WordFor(x.Low).Name), Of(phase.WordFor(x.High).Name)
		if words != high {
			words = T("%s to %s", words, high)
		}
		return s.HardnessSpan(x.Low, x.High) + ", " + words
	case sure.Sweetness:
		return s.PercentSpan(x.Low, x.High, 0)
	}
	return s.span(s.Number(x.Low, 0), s.Number(x.High, 0), "min")
}

// SureCause names a cause, with how far it goes.
func SureCause(s Style, c sure.Cause) string {
	switch c {
	case sure.Weighing:
		return T("a slip of %s in weighing", s.Percent(sure.WeighingPercent, 0))
	case sure.EggSize:
		return T("eggs larger or smaller than their size")
	case sure.Air:
		return T("%s more or less air", s.Percent(sure.AirPercent, 0))
	case sure.Syrup:
		return T("how thick the boiled syrup is")
	case sure.Freezer:
		return T("%s warmer or colder", s.TemperatureStep(sure.FreezerK))
	case sure.Thaw:
		return T("how fast the room warms a tub")
	}
	return T("the hardness model itself")
}

// SureHow says what the figures rest on.
func SureHow(s Style, a *sure.Answer) string {
	return T("The design made %s times over, each time a little differently. The spread holds 8 in 10 of them. How far each cause goes is practice and memory, but for the syrup and the hardness, which rest on published scatter.", s.Grouped(float64(a.Kitchens)))
}

// The words around the bars of what moves a tub.
const (
	SureShows   Message = "Show"
	SureAll     Message = "all together"
	SureUnknown Message = "Nobody knows this figure of this tub."
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
	return WithUnit(SureFigure(f), [...]string{"kPa", "kPa", T("% as sucrose"), ""}[f])
}

// SureBar names a cause beside its bar.
func SureBar(c sure.Cause) string {
	return [...]string{T("weighing"), T("size of the eggs"), T("air"), T("boiled syrup"), T("freezer"), T("hardness model"), T("warm room")}[c]
}
