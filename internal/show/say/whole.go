package say

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/whole"
	"ripplewright/internal/work/design"
)

// WholeName is what gives for whole eggs, in a few words.
func WholeName(k whole.Kind) string {
	if k == whole.ByRatio {
		return T("Move the ratio")
	}
	return T("Move the recipes")
}

// WholeStep is the name of the step that takes a way.
const WholeStep Message = "use of whole eggs"

// Whole says what a way to whole eggs does to d.
func Whole(s Style, d design.Design, w *whole.Way) string {
	eggs := s.Count(w.Eggs, "egg", "eggs")
	kept := " " + T("The grams are then kept as written.")
	if w.Kind == whole.ByRatio {
		return T("Both recipes stay. Custard and foam are weighed out for %s, and the foam goes from %s to %s of the volume: %s.", eggs, s.Percent(d.Blend.FoamVolumePercent, 0), s.Percent(w.Design.Blend.FoamVolumePercent, 0), TubsFilledTo(s, w.Design.Tubs)) + kept
	}
	return T("Tubs and ratio stay. Each phase is made around %s, with more or less of all else, so both recipes change.", eggs) + kept
}

// TubsFilledTo is "4 tubs, each filled to 92 %".
func TubsFilledTo(s Style, t design.Tubs) string {
	return T(either(float64(t.Count), "%s filled to %s", "%s, each filled to %s"), s.Count(t.Count, "tub", "tubs"), s.Percent(t.FillPercent, 0))
}

// WholeUnable says why whole eggs cannot be had that way. known tells the error
// of a design that would be none.
func WholeUnable(s Style, e model.Eggs, u whole.Unable) string {
	switch u.Why {
	case whole.NoEggs:
		return T("No line has eggs out of their shell.")
	case whole.AlreadyFits:
		return T("It takes %s as it is: nothing is over.", s.Count(int(e.Crack), "whole egg", "whole eggs"))
	case whole.OneSided:
		side, other := T("yolks"), T("whites")
		if e.Yolks == 0 {
			side, other = other, side
		}
		return T("Only %s are used, so the %s are over whatever the amounts.", side, other)
	case whole.NotPaired:
		return T("No amounts of custard and foam use as many yolks as whites.")
	case whole.EggsAlone:
		return T("So many eggs leave no room in the tubs for the rest of a phase.")
	case whole.HalfMade:
		return T("At this ratio one of the phases is not made at all.")
	case whole.Refused:
		return T("That design could not be made: %s.", u.Err.Error())
	}
	return ""
}
