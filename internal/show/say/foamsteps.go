package say

import (
	"math"
	"slices"
	"strings"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/ingredient"
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
		return w.dried() + w.caution(process.FewWhites) + w.caution(process.ManyWhites) + w.caution(process.DriedDry)
	}
	sugar := w.things(only(kind.Sugar))
	rest := w.things(except(kind.Sugar))
	switch {
	case f.Hot && rest == "":
		text += "Measure " + sugar + " into the mixing bowl."
	case f.Hot && f.Whites == process.FreshYolk:
		text += "Beat " + w.things(anything) + " until pale and thick, to be ready when the syrup is."
	case f.Hot:
		text += "Beat " + rest + " to soft peaks"
		if sugar != "" {
			text += ", then beat in " + sugar
		}
		text += ", to be ready when the syrup is."
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

// dried says how dried white is made up and beaten.
func (w *stepWords) dried() string {
	f := &w.m.Process.Foam
	wet := func(k kind.Kind) bool { return k == kind.Liquid }
	text := "Let " + w.things(only(kind.WhiteDry)) + " swell"
	if water := w.things(wet); water != "" {
		text = "Stir " + w.things(only(kind.WhiteDry)) + " into " + water + " and let it swell"
	}
	text += " for 20 minutes."
	beside := w.things(func(k kind.Kind) bool { return k != kind.WhiteDry && !wet(k) && k != kind.Sugar })
	if beside != "" {
		beside = " with " + beside
	}
	sugar := w.things(only(kind.Sugar))
	if f.Hot {
		text += " Then beat it" + beside + " to soft peaks"
		if sugar != "" {
			text += ", then beat in " + sugar
		}
		return text + ", to be ready when the syrup is."
	}
	text += " Then beat it" + beside + " until foamy"
	if sugar != "" {
		text += ", then " + sugar + " by the spoonful"
	}
	return text + "."
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
	if !w.dry() {
		text = "Warm " + w.things(anything) + " slowly, stirring, then boil without stirring"
	}
	switch {
	case y.Weighed:
		text += " until the syrup weighs " + s.Mass(y.MassG) + ", without the pan. Heavier: boil on; lighter: add hot water."
	case !y.Reached:
		text += ": it boils only at " + s.TemperatureTo(w.m.Result.Syrup.BoilingPointC, 0) + ", thicker than " + s.Temperature(y.TrueC) + " makes it. Give the design water, or pour it as soon as it boils."
	default:
		text += " to " + s.TemperatureTo(y.ReadingC, readingPlaces(y)) + stageWords(s, y.Stage, y.SeaC) + ", about " + s.DurationSpan(math.Max(1, y.Minutes.Low), math.Max(1, y.Minutes.High)) + "."
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
	if n := w.foams(); len(n) > 0 {
		text += " " + sentenceCase(List(n)) + Plural(float64(len(n)), " foams", " foam") + " up and catch" + Plural(float64(len(n)), "es", "") + ": keep the heat low"
		if y.DepthMM >= shallowMM {
			text += " and take a larger pan"
		}
		text += "."
	}
	switch {
	case y.Overfull:
		text += " A pan " + s.Length(w.m.Process.Kitchen.PanMM) + " wide would be more than a third full, and it boils up: take a wider one."
	case y.DepthMM < shallowMM && !y.Weighed && y.Reached:
		text += " It stands only " + s.Length(math.Max(1, y.DepthMM)) + " deep in the pan: tilt it, or go by weight."
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

// foams names what boils up high and catches: honey, maple and brown sugars
// (common practice, no source).
func (w *stepWords) foams() []string {
	var out []string
	for _, u := range w.step.Lines {
		in := w.line(u).Ingredient
		dark := strings.HasPrefix(in.ID, "sugar_brown") || strings.Contains(in.ID, "maple") || strings.Contains(in.ID, "molasses") || strings.Contains(in.ID, "treacle")
		if name := Kitchen(in); (isHoney(in) || dark) && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	return out
}

func (w *stepWords) pour() string {
	f, s := &w.m.Process.Foam, w.s
	text := ""
	if f.Cream {
		return "Stir the hot syrup into the foam base." + w.jelly("while it is hot") + " Stand it in ice water until it is at " + s.Temperature(process.ColdC) + " or colder, then beat until it stands: warm, it takes no air." + w.cup()
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
		text += "The foam comes to about " + s.TemperatureTo(f.PeakC, 0)
		if band := s.TemperatureBand(f.PeakLowC, f.PeakHighC, 0); band != s.TemperatureTo(f.PeakC, 0) {
			text += " (" + band + ")"
		}
		text += ". "
	}
	text = strings.TrimSpace(text+strings.TrimSpace(w.jelly("while the foam is warm"))) + " Beat on"
	most := f.StopMinutes
	if !(most < process.WhiskLongest) {
		most = process.WhiskLongest
	}
	if most > quickestMin {
		text += " for " + s.DurationSpan(quickestMin, most)
	}
	text += " until it "
	if !(f.PeakHighC < process.WhiskUntilC) {
		text += "is below " + s.Temperature(process.WhiskUntilC) + " and "
	}
	text += "stands"
	if !(f.StopMinutes < process.WhiskLongest) {
		text += ", at the end in a bowl of cold water"
	}
	text += "."
	if w.m.Brief {
		return text + w.cup()
	}
	text += " From there to " + s.Temperature(process.ShrinkToC) + " it may shrink to " +
		s.Percent(100*f.ColdShrinkRatio, 0) + " of its volume; left warmer, to less."
	return text + w.cup()
}

// jelly says when gelatine goes into the foam: cold, it would set in threads.
func (w *stepWords) jelly(when string) string {
	if !w.gelatine(design.FoamPart) {
		return ""
	}
	return strings.TrimSuffix(" Melt the soaked gelatine over warm water and beat it in "+when, " ") + "."
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
	cup, ml := s.levelCup()
	text := " Stop when a level " + cup + " weighs "
	if w.step.Code == process.FoldIn { // which only takes air away
		text = " A level " + cup + " then weighs "
	}
	text += s.Mass(ml*r.GPerML()) + ": " + s.Percent(100*r.OverrunFraction, 0) + " air"
	if a := p.Foam.Air; !math.IsNaN(a.HighPercent) && !w.m.Brief {
		text += ", where such foams come to " + s.span(s.Number(a.LowPercent, 0), s.Number(a.HighPercent, 0), "%") + " (from memory)"
	}
	return text + "."
}

func (w *stepWords) whip() string {
	if w.m.Process.Has(process.HoldWhites) {
		return "Take the bowl off the water and beat " + w.base() + " until the foam stands and is below " + w.s.Temperature(process.WhiskUntilC) + "." + w.jelly("while the foam is warm") + w.cup()
	}
	text := "Beat " + w.base()
	if w.m.Process.Foam.Cream {
		text += ", cold,"
	}
	text += " until the foam stands."
	return text + w.jelly("") + w.cup()
}

func (w *stepWords) foldIn() string {
	text := "Last, fold in " + w.things(anything) + " by hand."
	if w.has(kind.Cocoa) {
		text += " Sift the cocoa in."
	}
	if melted := w.listed(func(in *ingredient.Ingredient) bool {
		return kind.Of(in) == kind.Chocolate || kind.Of(in) == kind.Fat && !strings.HasPrefix(in.ID, "oil_")
	}); melted != "" {
		text += " What melts goes in melted, barely warm."
	}
	text += w.fruit()
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
