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
			parts = append(parts, T("%s under %s", Of(w.Word.String()), s.Length(w.ToMM)))
		case math.IsInf(w.ToMM, 1):
			parts = append(parts, T("%s over %s", Of(w.Word.String()), s.Length(w.FromMM)))
		default:
			parts = append(parts, Of(w.Word.String())+" "+s.LengthSpan(w.FromMM, w.ToMM))
		}
	}
	return T("On the spoon: %s (%s; so are the limits for firm and hard ribbons).", strings.Join(parts, ", "), Of(ripple.WordsBasis))
}

// RibbonAdvice says what a phase's hardness asks of the thickness of its
// ribbons, kPa being that hardness.
func RibbonAdvice(s Style, a ripple.Advice, kPa float64) string {
	name := T("Foam")
	if a.Phase == "dense" {
		name = T("Custard")
	}
	if a.Firmness == ripple.FirmnessUnknown {
		return T("%s: its hardness is not known.", name)
	}
	word, hard := Of(phase.WordFor(kPa).Name), s.Hardness(kPa)
	switch {
	case a.Exceeded:
		return T("%s: %s, about %s; keep its ribbons under %s (the thickest tenth has %s) or serve it warmer.", name, word, hard, s.Length(a.LimitMM), s.Length(a.ThickestMM))
	case a.Firmness == ripple.Soft:
		return T("%s: %s, about %s; ribbons of any thickness bite easily.", name, word, hard)
	}
	return T("%s: %s, about %s; its ribbons are thin enough, under %s.", name, word, hard, s.Length(a.LimitMM))
}

// Spoonfuls says how spoonfuls of a cut differ, from their shares of foam and
// their sweetness in % sucrose.
func Spoonfuls(s Style, foam, sweet ripple.Spoonful) string {
	switch {
	case foam.Samples == 0:
		return T("This cut is smaller than a spoonful.")
	case foam.P90-foam.P10 < 0.02:
		return T("Every spoonful is alike: there is no contrast from bite to bite.")
	}
	holds := s.PercentSpan(100*foam.P10, 100*foam.P90, 0)
	if known(sweet.P10) {
		return T("Eight spoonfuls in ten hold %s foam and are as sweet as %s sugar.", holds, s.PercentSpan(sweet.P10, sweet.P90, 1))
	}
	return T("Eight spoonfuls in ten hold %s foam.", holds)
}

// Chords explains the thickness of ribbons, and tells how much of each phase is
// in chords longer than overMM.
func Chords(s Style, m *ripple.Measure, overMM, denseShare, foamShare float64) string {
	text := ""
	if m.InterfaceMM > 0 {
		text = T("Mean thickness is twice a phase's area over the line between the phases, here %s long.", s.Length(m.InterfaceMM)) + " "
	}
	text += T("Chords are the lengths that level and upright lines have within a phase; most cross a ribbon at a slant.")
	if denseShare+foamShare > 0.005 {
		text += " " + T("Not in the plot: chords over %s, %s of the custard and %s of the foam.", s.Length(overMM), s.Percent(100*denseShare, 0), s.Percent(100*foamShare, 0))
	}
	return text
}

// AsWrittenFoam says why a picture does not follow the foam share asked for.
func AsWrittenFoam(s Style, percent float64) string {
	return T("The grams stay as written and make %s foam: that is what is drawn.", s.Percent(percent, 0))
}

// NoCut says why the filling of a tub cannot be drawn.
func NoCut(s Style, t ripple.Tub) string {
	return T("the filling of one tub is %s; a cut is drawn of one %s wide and at least %s high", s.Size(t.LengthMM, t.BreadthMM, t.HeightMM), s.LengthSpan(ripple.MinSizeMM, ripple.MaxSizeMM), s.Length(ripple.MinFillMM))
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
	return T("%s ribbons: mean %s (%s), nine chords in ten under %s, thickest tenth %s.", r.Name, s.Thickness(r.MeanMM), word, s.Thickness(r.P90MM), s.Thickness(r.ThickTenthMM))
}

// OnePhase says that a cut has no ribbons, "" if it has.
func OnePhase(foamPercent float64) string {
	switch foamPercent {
	case 0:
		return T("all custard, so there are no ribbons.")
	case 100:
		return T("all foam, so there are no ribbons.")
	}
	return ""
}

// CutLine tells what a cut shows.
func CutLine(s Style, view string, foamPercent, interfaceMM float64) string {
	return T("%s cut: %s of the area is foam; the line between the phases is %s long.", view, s.Percent(foamPercent, 1), s.Length(interfaceMM))
}

// CutView is a view of the tub by its name in files: "side".
func CutView(name string) string { return Of(name) }
