package say

import (
	"math"
	"strings"

	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/ripple"
)

// RibbonWords says which thickness each word for a ribbon stands for.
func RibbonWords(s Style) string {
	var parts []string
	for _, w := range ripple.Words() {
		switch {
		case w.FromMM == 0:
			parts = append(parts, w.Word.String()+" under "+s.Length(w.ToMM))
		case math.IsInf(w.ToMM, 1):
			parts = append(parts, w.Word.String()+" over "+s.Length(w.FromMM))
		default:
			parts = append(parts, w.Word.String()+" "+s.LengthSpan(w.FromMM, w.ToMM))
		}
	}
	return "On the spoon: " + strings.Join(parts, ", ") + " (" + ripple.WordsBasis + "; so are the limits for firm and hard ribbons)."
}

// RibbonAdvice says what a phase's hardness asks of the thickness of its
// ribbons, kPa being that hardness.
func RibbonAdvice(s Style, a ripple.Advice, kPa float64) string {
	name := strings.ToUpper(a.Phase[:1]) + a.Phase[1:]
	if a.Phase == "dense" {
		name = "Custard"
	}
	if a.Firmness == ripple.FirmnessUnknown {
		return name + ": its hardness is not known."
	}
	text := name + ": " + phase.WordFor(kPa).Name + ", about " + s.Hardness(kPa) + "; "
	switch {
	case a.Exceeded:
		return text + "keep its ribbons under " + s.Length(a.LimitMM) + " (the thickest tenth has " + s.Length(a.ThickestMM) + ") or serve it warmer."
	case a.Firmness == ripple.Soft:
		return text + "ribbons of any thickness bite easily."
	}
	return text + "its ribbons are thin enough, under " + s.Length(a.LimitMM) + "."
}

// Spoonfuls says how spoonfuls of a cut differ, from their shares of foam and
// their sweetness in % sucrose.
func Spoonfuls(s Style, foam, sweet ripple.Spoonful) string {
	switch {
	case foam.Samples == 0:
		return "This cut is smaller than a spoonful."
	case foam.P90-foam.P10 < 0.02:
		return "Every spoonful is alike: there is no contrast from bite to bite."
	}
	text := "Eight spoonfuls in ten hold " + s.PercentSpan(100*foam.P10, 100*foam.P90, 0) + " foam"
	if known(sweet.P10) {
		text += " and are as sweet as " + s.PercentSpan(sweet.P10, sweet.P90, 1) + " sugar"
	}
	return text + "."
}

// Chords explains the thickness of ribbons, and tells how much of each phase is
// in chords longer than overMM.
func Chords(s Style, m *ripple.Measure, overMM, denseShare, foamShare float64) string {
	text := ""
	if m.InterfaceMM > 0 {
		text = "Mean thickness is twice a phase's area over the line between the phases, here " + s.Length(m.InterfaceMM) + " long. "
	}
	text += "Chords are the lengths that level and upright lines have within a phase; most cross a ribbon at a slant."
	if denseShare+foamShare > 0.005 {
		text += " Not in the plot: chords over " + s.Length(overMM) + ", " + s.Percent(100*denseShare, 0) + " of the custard and " + s.Percent(100*foamShare, 0) + " of the foam."
	}
	return text
}

// AsWrittenFoam says why a picture does not follow the foam share asked for.
func AsWrittenFoam(s Style, percent float64) string {
	return "The grams stay as written and make " + s.Percent(percent, 0) + " foam: that is what is drawn."
}

// NoCut says why the filling of a tub cannot be drawn.
func NoCut(s Style, t ripple.Tub) string {
	return "the filling of one tub is " + s.Size(t.LengthMM, t.BreadthMM, t.HeightMM) + "; a cut is drawn of one " + s.LengthSpan(ripple.MinSizeMM, ripple.MaxSizeMM) +
		" wide and at least " + s.Length(ripple.MinFillMM) + " high"
}

// Ribbons are the figures of one phase's ribbons, mm.
type Ribbons struct {
	Name                        string // "Foam"
	MeanMM, P90MM, ThickTenthMM float64
	Word                        string // "" where there is none
}

// RibbonLine tells the thickness of a phase's ribbons.
func RibbonLine(s Style, r Ribbons) string {
	word := r.Word
	if word == "" {
		word = Unknown
	}
	return r.Name + " ribbons: mean " + s.Thickness(r.MeanMM) + " (" + word + "), nine chords in ten under " + s.Thickness(r.P90MM) +
		", thickest tenth " + s.Thickness(r.ThickTenthMM) + "."
}

// OnePhase says that a cut has no ribbons, "" if it has.
func OnePhase(foamPercent float64) string {
	switch foamPercent {
	case 0:
		return "all custard, so there are no ribbons."
	case 100:
		return "all foam, so there are no ribbons."
	}
	return ""
}

// CutLine tells what a cut shows.
func CutLine(s Style, view string, foamPercent, interfaceMM float64) string {
	return view + " cut: " + s.Percent(foamPercent, 1) + " of the area is foam; the line between the phases is " + s.Length(interfaceMM) + " long."
}
