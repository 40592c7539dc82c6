package say

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/whole"
	"ripplewright/internal/work/design"
)

// WholeName is what gives for whole eggs, in a few words.
func WholeName(k whole.Kind) string {
	if k == whole.ByRatio {
		return "Move the ratio"
	}
	return "Move the recipes"
}

// WholeStep is the name of the step that takes a way.
const WholeStep = "use of whole eggs"

// Whole says what a way to whole eggs does to d.
func Whole(s Style, d design.Design, w *whole.Way) string {
	eggs := s.Count(w.Eggs, "egg", "")
	const kept = " The grams are then kept as written."
	if w.Kind == whole.ByRatio {
		return "Both recipes stay. Custard and foam are weighed out for " + eggs + ", and the foam goes from " +
			s.Percent(d.Blend.FoamVolumePercent, 0) + " to " + s.Percent(w.Design.Blend.FoamVolumePercent, 0) + " of the volume: " + TubsFilledTo(s, w.Design.Tubs) + "." + kept
	}
	return "Tubs and ratio stay. Each phase is made around " + eggs + ", with more or less of all else, so both recipes change." + kept
}

// TubsFilledTo is "4 tubs, each filled to 92 %".
func TubsFilledTo(s Style, t design.Tubs) string {
	text := s.Count(t.Count, "tub", "")
	if t.Count != 1 {
		text += ", each"
	}
	return text + " filled to " + s.Percent(t.FillPercent, 0)
}

// WholeUnable says why whole eggs cannot be had that way. known tells the error
// of a design that would be none.
func WholeUnable(s Style, e model.Eggs, u whole.Unable) string {
	switch u.Why {
	case whole.NoEggs:
		return "No line has eggs out of their shell."
	case whole.AlreadyFits:
		return "It takes " + s.Count(int(e.Crack), "whole egg", "") + " as it is: nothing is over."
	case whole.OneSided:
		side, other := "yolks", "whites"
		if e.Yolks == 0 {
			side, other = other, side
		}
		return "Only " + side + " are used, so the " + other + " are over whatever the amounts."
	case whole.NotPaired:
		return "No amounts of custard and foam use as many yolks as whites."
	case whole.EggsAlone:
		return "So many eggs leave no room in the tubs for the rest of a phase."
	case whole.HalfMade:
		return "At this ratio one of the phases is not made at all."
	case whole.Refused:
		return "That design could not be made: " + u.Err.Error() + "."
	}
	return ""
}
