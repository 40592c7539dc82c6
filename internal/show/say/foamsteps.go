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
		return T("the foam base")
	}
	return T("the %s", beaten(w.m))
}

// beaten is what the foam is beaten from.
func beaten(m Making) string {
	if m.Process.Foam.Whites == process.FreshYolk {
		return T("yolks")
	}
	return T("whites")
}

func (w *stepWords) whites() string {
	f, s := &w.m.Process.Foam, w.s
	if f.Cream {
		return T("Measure %s into the mixing bowl.", w.things(anything))
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
		text += T("Measure %s into the mixing bowl.", sugar)
	case f.Hot && f.Whites == process.FreshYolk:
		text += T("Beat %s until pale and thick, to be ready when the syrup is.", w.things(anything))
	case f.Hot:
		text += T("Beat %s to soft peaks", rest)
		if sugar != "" {
			text += T(", then beat in %s", sugar)
		}
		text += T(", to be ready when the syrup is.")
	case f.Whites == process.FreshWhite || f.Whites == process.FreshYolk:
		text += T("Stir %s together in the mixing bowl.", w.things(anything))
	case sugar == "":
		text += T("Beat %s until foamy.", rest)
	default:
		text += T("Beat %s until foamy, then %s by the spoonful.", rest, sugar)
	}
	switch {
	case f.Whites == process.CartonWhite:
		text += " " + T("Pasteurised whites take up to four times as long")
		if !f.Acid {
			text += T(", and want acid: about 1 g cream of tartar to 30 g")
		}
		text += "."
	case f.Whites == process.FreshWhite && !f.Acid && f.Hot:
		text += " " + T("The bowl must be free of fat.")
	}
	return text + w.caution(process.FewWhites) + w.caution(process.ManyWhites)
}

// dried says how dried white is made up and beaten.
func (w *stepWords) dried() string {
	f := &w.m.Process.Foam
	wet := func(k kind.Kind) bool { return k == kind.Liquid }
	text := T("Let %s swell", w.things(only(kind.WhiteDry)))
	if water := w.things(wet); water != "" {
		text = T("Stir %s into %s and let it swell", w.things(only(kind.WhiteDry)), water)
	}
	text += " " + T("for 20 minutes.")
	beside := w.things(func(k kind.Kind) bool { return k != kind.WhiteDry && !wet(k) && k != kind.Sugar })
	if beside != "" {
		beside = " " + T("with %s", beside)
	}
	sugar := w.things(only(kind.Sugar))
	if f.Hot {
		text += " " + T("Then beat it%s to soft peaks", beside)
		if sugar != "" {
			text += T(", then beat in %s", sugar)
		}
		return text + T(", to be ready when the syrup is.")
	}
	text += " " + T("Then beat it%s until foamy", beside)
	if sugar != "" {
		text += T(", then %s by the spoonful", sugar)
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
		return T("less than one tenfold reduction")
	}
	return T("%s to %s tenfold reductions", s.Number(low, 1), s.Number(high, 1))
}

func (w *stepWords) hold() string {
	return T("Stand the bowl over hot water and whisk to %s; hold it there for 2 minutes.", w.s.Temperature(process.HoldFirstC)) + w.caution(process.WhitesStayRaw)
}

func (w *stepWords) boil() string {
	y, s := &w.m.Process.Syrup, w.s
	text := T("Stir %s over low heat until the sugar has dissolved, then boil without stirring", w.things(anything))
	if !w.dry() {
		text = T("Warm %s slowly, stirring, then boil without stirring", w.things(anything))
	}
	switch {
	case y.Weighed:
		text += " " + T("until the syrup weighs %s, without the pan. Heavier: boil on; lighter: add hot water.", s.Mass(y.MassG))
	case !y.Reached:
		text += T(": it boils only at %s, thicker than %s makes it. Give the design water, or pour it as soon as it boils.", s.TemperatureTo(w.m.Result.Syrup.BoilingPointC, 0), s.Temperature(y.TrueC))
	default:
		text += " " + T("to %s%s, about %s.", s.TemperatureTo(y.ReadingC, readingPlaces(y)), stageWords(s, y.Stage, y.SeaC), s.DurationSpan(math.Max(1, y.Minutes.Low), math.Max(1, y.Minutes.High)))
		text += " " + T("It then weighs %s: the scale is surer than the thermometer. Too far: stir in a spoon of water and boil up again.", s.Mass(y.MassG))
	}
	if y.ProbeOffsetK != 0 {
		text += " " + T("(Your probe shows %s too %s; that is in it.)", s.TemperatureStep(math.Abs(y.ProbeOffsetK)), map[bool]string{true: T("much"), false: T("little")}[y.ProbeOffsetK > 0])
	}
	if !y.Weighed {
		text += altitudeStep(s, w.m.Design.Kitchen.AltitudeM, y)
	}
	if y.AlcoholOffG > 0.05 {
		text += " " + T("Its alcohol boils away: for the taste of a spirit, stir one into the cold custard instead.")
	}
	if w.has(kind.Acid, kind.Sour) {
		text += " " + T("Its acid splits part of the sugar: the design reckons with %s; 5 %% is usual in a short boil (from memory).", s.Percent(y.InvertedPercent, 0))
	}
	if n := w.foams(); len(n) > 0 {
		text += " " + T("%s%s up and catch%s: keep the heat low", sentenceCase(List(n)), Plural(float64(len(n)), " foams", " foam"), Plural(float64(len(n)), "es", ""))
		if y.DepthMM >= shallowMM {
			text += " " + T("and take a larger pan")
		}
		text += "."
	}
	switch {
	case y.Overfull:
		text += " " + T("A pan %s wide would be more than a third full, and it boils up: take a wider one.", s.Length(w.m.Process.Kitchen.PanMM))
	case y.DepthMM < shallowMM && !y.Weighed && y.Reached:
		text += " " + T("It stands only %s deep in the pan: tilt it, or go by weight.", s.Length(math.Max(1, y.DepthMM)))
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
	words := map[process.Stage]string{process.Thread: T("thread"), process.SoftBall: T("soft ball"), process.SoftToFirm: T("between soft and firm ball"), process.FirmBall: T("firm ball"), process.HardBall: T("hard ball"), process.HardCrack: T("crack")}
	if words[stage] == "" {
		return ""
	}
	_, from, to := process.StageAt(sea)
	return " " + T("(%s, %s at sea level)", words[stage], s.TemperatureSpan(from, to))
}

// altitudeStep says what the boil's temperature means up here.
func altitudeStep(s Style, m float64, y *process.Syrup) string {
	if m < limits.AltitudeFromM || math.IsNaN(y.SeaC) {
		return ""
	}
	text := " " + T("At %s that is the syrup of %s at sea level.", s.Altitude(m), s.TemperatureTo(y.SeaC, 0))
	if !math.IsNaN(y.HereC) {
		text += " " + T("Where a recipe from sea level says %s, cook to %s here.", s.Temperature(y.TrueC), s.TemperatureTo(y.HereC, 0))
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
		return T("Stir the hot syrup into the foam base.%s Stand it in ice water until it is at %s or colder, then beat until it stands: warm, it takes no air.", w.jelly(T("while it is hot")), s.Temperature(process.ColdC)) + w.cup()
	}
	how := " " + T("between whisk and wall in a thin stream.") + " "
	if w.m.Process.Kitchen.Pour == process.AtOnce {
		how = " " + T("between whisk and wall, all at once.") + " "
	}
	text += T("Beating on, pour the boiling syrup%s", how)
	if f.Read {
		text += T("A thermometer showed %s.", s.TemperatureTo(f.PeakC, 0)) + " "
		if f.Whites == process.FreshWhite || f.Whites == process.FreshYolk {
			text += BowlRead(s, f) + " "
		}
	} else {
		text += T("The foam comes to about %s", s.TemperatureTo(f.PeakC, 0))
		if band := s.TemperatureBand(f.PeakLowC, f.PeakHighC, 0); band != s.TemperatureTo(f.PeakC, 0) {
			text += " (" + band + ")"
		}
		text += ". "
	}
	text = T("%s Beat on", strings.TrimSpace(text+strings.TrimSpace(w.jelly(T("while the foam is warm")))))
	most := f.StopMinutes
	if !(most < process.WhiskLongest) {
		most = process.WhiskLongest
	}
	if most > quickestMin {
		text += " " + T("for %s", s.DurationSpan(quickestMin, most))
	}
	text += " " + T("until it") + " "
	if !(f.PeakHighC < process.WhiskUntilC) {
		text += T("is below %s and", s.Temperature(process.WhiskUntilC)) + " "
	}
	text += T("stands")
	if !(f.StopMinutes < process.WhiskLongest) {
		text += T(", at the end in a bowl of cold water")
	}
	text += "."
	if w.m.Brief {
		return text + w.cup()
	}
	text += " " + T("From there to %s it may shrink to %s of its volume; left warmer, to less.", s.Temperature(process.ShrinkToC), s.Percent(100*f.ColdShrinkRatio, 0))
	return text + w.cup()
}

// jelly says when gelatine goes into the foam: cold, it would set in threads.
func (w *stepWords) jelly(when string) string {
	if !w.gelatine(design.FoamPart) {
		return ""
	}
	return strings.TrimSuffix(" "+T("Melt the soaked gelatine over warm water and beat it in %s", when), " ") + "."
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
	text := " " + T("Stop when a level %s weighs", cup) + " "
	if w.step.Code == process.FoldIn { // which only takes air away
		text = " " + T("A level %s then weighs", cup) + " "
	}
	text += T("%s: %s air", s.Mass(ml*r.GPerML()), s.Percent(100*r.OverrunFraction, 0))
	if a := p.Foam.Air; !math.IsNaN(a.HighPercent) && !w.m.Brief {
		text += T(", where such foams come to %s (from memory)", s.span(s.Number(a.LowPercent, 0), s.Number(a.HighPercent, 0), "%"))
	}
	return text + "."
}

func (w *stepWords) whip() string {
	if w.m.Process.Has(process.HoldWhites) {
		return T("Take the bowl off the water and beat %s until the foam stands and is below %s.%s%s", w.base(), w.s.Temperature(process.WhiskUntilC), w.jelly(T("while the foam is warm")), w.cup())
	}
	text := T("Beat %s", w.base())
	if w.m.Process.Foam.Cream {
		text += T(", cold,")
	}
	text += " " + T("until the foam stands.")
	return text + w.jelly("") + w.cup()
}

func (w *stepWords) foldIn() string {
	text := T("Last, fold in %s by hand.", w.things(anything))
	if w.has(kind.Cocoa) {
		text += " " + T("Sift the cocoa in.")
	}
	if melted := w.listed(func(in *ingredient.Ingredient) bool {
		return kind.Of(in) == kind.Chocolate || kind.Of(in) == kind.Fat && !strings.HasPrefix(in.ID, "oil_")
	}); melted != "" {
		text += " " + T("What melts goes in melted, barely warm.")
	}
	text += w.fruit()
	switch {
	case w.has(kind.Fat, kind.Paste, kind.Chocolate, kind.Cocoa):
		text += " " + T("Fat makes the foam fall: work quickly.")
	case w.has(kind.Spirit):
		text += " " + T("Alcohol keeps whites from rising: it goes in once they stand.")
	}
	return text + w.cup()
}

func (w *stepWords) chillFoam() string {
	f, s := &w.m.Process.Freezing, w.s
	text := T("Set the foam in the freezer, without beating")
	if math.IsNaN(f.ChillTheC) {
		return text + "."
	}
	return text + T(", until it is at %s or colder. At room temperature it would melt %s of the %s ice in each tub's %s.", s.TemperatureTo(math.Floor(f.ChillTheC), 0), s.Mass(f.IceLostG), s.Mass(f.IceInTubG), w.denseName())
}
