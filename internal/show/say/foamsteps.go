package say

import (
	"math"
	"strings"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/work/design"
)

func (w *stepWords) base() string {
	if w.m.Process.Foam.Cream {
		return "the foam base"
	}
	return "the " + beaten(w.m)
}

// beaten is what the foam is beaten from.
func beaten(m Making) string {
	if m.Process.Foam.Whites == process.FreshYolk {
		return "yolks"
	}
	return "whites"
}

func (w *stepWords) whites() string {
	f, s := &w.m.Process.Foam, w.s
	if f.Cream {
		return "Measure " + w.things(anything) + " into the mixing bowl."
	}
	text := ""
	if c, ok := w.m.Process.CautionOf(process.WhitesStayCool); ok && !w.m.Process.Has(process.Crack) {
		text += Caution(s, w.m, c) + " "
	}
	if f.Whites == process.DriedWhite {
		text += "Stir the dried white into its water and let it swell for 20 minutes. "
	}
	sugar := w.things(only(kind.Sugar))
	rest := w.things(except(kind.Sugar))
	switch {
	case f.Hot && rest == "":
		text += "Measure " + sugar + " into the mixing bowl."
	case f.Hot && f.Whites == process.FreshYolk:
		text += "While the syrup boils, beat " + w.things(anything) + " until pale and thick."
	case f.Hot:
		text += "While the syrup boils, beat " + rest + " to soft peaks"
		if sugar != "" {
			text += ", then beat in " + sugar
		}
		text += "."
	case f.Whites == process.FreshWhite || f.Whites == process.FreshYolk:
		text += "Stir " + w.things(anything) + " together in the mixing bowl."
	case sugar == "":
		text += "Beat " + rest + " until foamy."
	default:
		text += "Beat " + rest + " until foamy, then " + sugar + " by the spoonful."
	}
	switch {
	case f.Whites == process.CartonWhite:
		text += " Pasteurised whites take up to four times as long"
		if !f.Acid {
			text += ", and want acid: about 1 g cream of tartar to 30 g"
		}
		text += "."
	case f.Whites == process.FreshWhite && !f.Acid && f.Hot:
		text += " The bowl must be free of fat."
	}
	return text + w.caution(process.FewWhites) + w.caution(process.ManyWhites)
}

// caution is a caution of the process with a space before it, "" where there is
// none.
func (w *stepWords) caution(code process.CautionCode) string {
	if c, ok := w.m.Process.CautionOf(code); ok {
		return " " + Caution(w.s, w.m, c)
	}
	return ""
}

// tenfold words reductions by powers of ten.
func tenfold(s Style, low, high float64) string {
	if high < 1 {
		return "less than one tenfold reduction"
	}
	return s.Number(low, 1) + " to " + s.Number(high, 1) + " tenfold reductions"
}

func (w *stepWords) hold() string {
	return "Stand the bowl over hot water and whisk to " + w.s.Temperature(process.HoldFirstC) + "; hold it there for 2 minutes." + w.caution(process.WhitesStayRaw)
}

func (w *stepWords) boil() string {
	y, s := &w.m.Process.Syrup, w.s
	text := "Stir " + w.things(anything) + " over low heat until the sugar has dissolved, then boil without stirring"
	switch {
	case y.Weighed:
		text += " until the syrup weighs " + s.Mass(y.MassG) + ", without the pan. Heavier: boil on; lighter: add hot water."
	case !y.Reached:
		return text + ": it is thicker than " + s.Temperature(y.TrueC) + " from the start. Add water to dissolve the sugar."
	default:
		text += " to " + s.TemperatureTo(y.ReadingC, readingPlaces(y)) + stageWords(s, y.Stage, y.SeaC) + ", about " + s.DurationSpan(y.Minutes.Low, y.Minutes.High) + "."
		text += " It then weighs " + s.Mass(y.MassG) + ": the scale is surer than the thermometer. Too far: stir in a spoon of water and boil up again."
	}
	if y.ProbeOffsetK != 0 {
		text += " (Your probe shows " + s.TemperatureStep(math.Abs(y.ProbeOffsetK)) + " too " + map[bool]string{true: "much", false: "little"}[y.ProbeOffsetK > 0] + "; that is in it.)"
	}
	if !y.Weighed {
		text += altitudeStep(s, w.m.Design.Kitchen.AltitudeM, y)
	}
	if y.AlcoholOffG > 0.05 {
		text += " Its alcohol boils away: for the taste of a spirit, stir one into the cold custard instead."
	}
	if w.has(kind.Acid, kind.Sour) {
		text += " Its acid splits part of the sugar: the design reckons with " + s.Percent(y.InvertedPercent, 0) + "; 5 % is usual in a short boil (from memory)."
	}
	if w.foams() {
		text += " Honey and brown sugar foam up and catch: use a larger pan and low heat."
	}
	if y.DepthMM < shallowMM && !y.Weighed {
		text += " It stands only " + s.Length(y.DepthMM) + " deep in the pan: tilt it, or go by weight."
	}
	return text
}

// shallowMM is what a digital tip needs, see limits.SyrupDepth.
const shallowMM = 12

func readingPlaces(y *process.Syrup) int {
	if y.ReadingC == math.Round(y.ReadingC) {
		return 0
	}
	return 1
}

func stageWords(s Style, stage process.Stage, sea float64) string {
	words := map[process.Stage]string{process.Thread: "thread", process.SoftBall: "soft ball", process.SoftToFirm: "between soft and firm ball", process.FirmBall: "firm ball", process.HardBall: "hard ball", process.HardCrack: "crack"}
	if words[stage] == "" {
		return ""
	}
	_, from, to := process.StageAt(sea)
	return " (" + words[stage] + ", " + s.TemperatureSpan(from, to) + " at sea level)"
}

// altitudeStep says what the boil's temperature means up here.
func altitudeStep(s Style, m float64, y *process.Syrup) string {
	if m < limits.AltitudeFromM || math.IsNaN(y.SeaC) {
		return ""
	}
	text := " At " + s.Altitude(m) + " that is the syrup of " + s.TemperatureTo(y.SeaC, 0) + " at sea level."
	if !math.IsNaN(y.HereC) {
		text += " Where a recipe from sea level says " + s.Temperature(y.TrueC) + ", cook to " + s.TemperatureTo(y.HereC, 0) + " here."
	}
	return text
}

// foams reports whether honey or a brown sugar boils.
func (w *stepWords) foams() bool {
	for _, u := range w.step.Lines {
		if in := w.line(u).Ingredient; isHoney(in) || strings.HasPrefix(in.ID, "sugar_brown") || strings.Contains(in.ID, "molasses") || strings.Contains(in.ID, "treacle") {
			return true
		}
	}
	return false
}

func (w *stepWords) pour() string {
	f, s := &w.m.Process.Foam, w.s
	text := ""
	if f.Cream {
		return "Stir the hot syrup into the foam base, stand it in ice water until it is at " + s.Temperature(process.ColdC) + " or colder, then beat until it stands: warm, it takes no air." + w.jelly() + w.cup()
	}
	how := " between whisk and wall in a thin stream. "
	if w.m.Process.Kitchen.Pour == process.AtOnce {
		how = " between whisk and wall, all at once. "
	}
	text += "Beating on, pour the boiling syrup" + how
	if f.Read {
		text += "A thermometer showed " + s.TemperatureTo(f.PeakC, 0) + ". "
		if f.Whites == process.FreshWhite || f.Whites == process.FreshYolk {
			text += BowlRead(s, f) + " "
		}
	} else {
		text += "The foam comes to about " + s.TemperatureTo(f.PeakC, 0) + " (" + s.TemperatureBand(f.PeakLowC, f.PeakHighC, 0) + "). "
	}
	text += "Beat on"
	most := f.StopMinutes
	if !(most < process.WhiskLongest) {
		most = process.WhiskLongest
	}
	if most > quickestMin {
		text += " for " + s.DurationSpan(quickestMin, most)
	}
	text += " until it is below " + s.Temperature(process.WhiskUntilC) + " and stands"
	if !(f.StopMinutes < process.WhiskLongest) {
		text += ", at the end in a bowl of cold water"
	}
	text += "." + w.jelly()
	if w.m.Brief {
		return text + w.cup()
	}
	text += " From there to " + s.Temperature(process.ShrinkToC) + " it may shrink to " +
		s.Percent(100*f.ColdShrinkRatio, 0) + " of its volume; left warmer, to less."
	return text + w.cup()
}

// jelly says when gelatine goes into the foam.
func (w *stepWords) jelly() string {
	if !w.gelatine(design.FoamPart) {
		return ""
	}
	return " Melt the soaked gelatine over warm water and beat it in."
}

// quickestMin is how soon a hand mixer brings a foam down in a cool room, where
// the air takes more than is computed: common practice, no source.
const quickestMin = 10

// cup tells when to stop, at the last step that changes the foam's air.
func (w *stepWords) cup() string {
	p, s := w.m.Process, w.s
	r := w.m.Result.Foam.Body
	if !(r.OverrunFraction > 0) || w.step.Code != process.FoldIn && p.Has(process.FoldIn) {
		return ""
	}
	text := " Stop when a level " + s.Volume(process.CupML) + " cup weighs " + s.Mass(process.CupML*r.GPerML()) + ": " + s.Percent(100*r.OverrunFraction, 0) + " air"
	if a := p.Foam.Air; !math.IsNaN(a.HighPercent) && !w.m.Brief {
		text += ", where such foams come to " + s.span(s.Number(a.LowPercent, 0), s.Number(a.HighPercent, 0), "%") + " (from memory)"
	}
	return text + "."
}

func (w *stepWords) whip() string {
	text := "Beat " + w.base()
	if w.m.Process.Foam.Cream {
		text += ", cold,"
	}
	text += " until the foam stands."
	return text + w.jelly() + w.cup()
}

func (w *stepWords) foldIn() string {
	text := "Last, fold in " + w.things(anything) + " by hand."
	if w.has(kind.Cocoa) {
		text += " Sift the cocoa in."
	}
	switch {
	case w.has(kind.Fat, kind.Paste, kind.Chocolate, kind.Cocoa):
		text += " Fat makes the foam fall: work quickly."
	case w.has(kind.Spirit):
		text += " Alcohol keeps whites from rising: it goes in once they stand."
	}
	return text + w.cup()
}

func (w *stepWords) chillFoam() string {
	f, s := &w.m.Process.Freezing, w.s
	text := "Set the foam in the freezer, without beating"
	if math.IsNaN(f.ChillTheC) {
		return text + "."
	}
	return text + ", until it is at " + s.TemperatureTo(math.Floor(f.ChillTheC), 0) + " or colder. At room temperature it would melt " +
		s.Mass(f.IceLostG) + " of the " + s.Mass(f.IceInTubG) + " ice in each tub's " + w.denseName() + "."
}
