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
		if sugar == "" {
			text += T("Beat %s to soft peaks, to be ready when the syrup is.", rest)
		} else {
			text += T("Beat %s to soft peaks, then beat in %s, to be ready when the syrup is.", rest, sugar)
		}
	case f.Whites == process.FreshWhite || f.Whites == process.FreshYolk:
		text += T("Stir %s together in the mixing bowl.", w.things(anything))
	case sugar == "":
		text += T("Beat %s until foamy.", rest)
	default:
		text += T("Beat %s until foamy, then %s by the spoonful.", rest, sugar)
	}
	switch {
	case f.Whites == process.CartonWhite:
		if f.Acid {
			text += " " + T("Pasteurised whites take up to four times as long.")
		} else {
			text += " " + T("Pasteurised whites take up to four times as long, and want acid: about 1 g cream of tartar to 30 g.")
		}
	case f.Whites == process.FreshWhite && !f.Acid && f.Hot:
		text += " " + T("The bowl must be free of fat.")
	}
	return text + w.caution(process.FewWhites) + w.caution(process.ManyWhites)
}

// dried says how dried white is made up and beaten.
func (w *stepWords) dried() string {
	f := &w.m.Process.Foam
	wet := func(k kind.Kind) bool { return k == kind.Liquid }
	text := T("Let %s swell for 20 minutes.", w.things(only(kind.WhiteDry)))
	if water := w.things(wet); water != "" {
		text = T("Stir %s into %s and let it swell for 20 minutes.", w.things(only(kind.WhiteDry)), water)
	}
	beside := w.things(func(k kind.Kind) bool { return k != kind.WhiteDry && !wet(k) && k != kind.Sugar })
	sugar := w.things(only(kind.Sugar))
	switch {
	case f.Hot && beside == "" && sugar == "":
		text += " " + T("Then beat it to soft peaks, to be ready when the syrup is.")
	case f.Hot && beside == "":
		text += " " + T("Then beat it to soft peaks, then beat in %s, to be ready when the syrup is.", sugar)
	case f.Hot && sugar == "":
		text += " " + T("Then beat it with %s to soft peaks, to be ready when the syrup is.", beside)
	case f.Hot:
		text += " " + T("Then beat it with %s to soft peaks, then beat in %s, to be ready when the syrup is.", beside, sugar)
	case beside == "" && sugar == "":
		text += " " + T("Then beat it until foamy.")
	case beside == "":
		text += " " + T("Then beat it until foamy, then %s by the spoonful.", sugar)
	case sugar == "":
		text += " " + T("Then beat it with %s until foamy.", beside)
	default:
		text += " " + T("Then beat it with %s until foamy, then %s by the spoonful.", beside, sugar)
	}
	return text
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
	text := w.boilUntil()
	if !y.Weighed && y.Reached {
		text += " " + T("It then weighs %s: the scale is surer than the thermometer. Too far: stir in a spoon of water and boil up again.", s.Mass(y.MassG))
	}
	if y.ProbeOffsetK != 0 {
		if off := s.TemperatureStep(math.Abs(y.ProbeOffsetK)); y.ProbeOffsetK > 0 {
			text += " " + T("(Your probe shows %s too much; that is in it.)", off)
		} else {
			text += " " + T("(Your probe shows %s too little; that is in it.)", off)
		}
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
		one, larger, names := len(n) == 1, y.DepthMM >= shallowMM, Capital(List(n))
		switch {
		case one && larger:
			text += " " + T("%s foams up and catches: keep the heat low and take a larger pan.", names)
		case one:
			text += " " + T("%s foams up and catches: keep the heat low.", names)
		case larger:
			text += " " + T("%s foam up and catch: keep the heat low and take a larger pan.", names)
		default:
			text += " " + T("%s foam up and catch: keep the heat low.", names)
		}
	}
	switch {
	case y.Overfull:
		text += " " + T("A pan %s wide would be more than a third full, and it boils up: take a wider one.", s.Length(w.m.Process.Kitchen.PanMM))
	case y.DepthMM < shallowMM && !y.Weighed && y.Reached:
		text += " " + T("It stands only %s deep in the pan: tilt it, or go by weight.", s.Length(math.Max(1, y.DepthMM)))
	}
	return text
}

// boilUntil says how the syrup is dissolved and until when it boils.
func (w *stepWords) boilUntil() string {
	y, s := &w.m.Process.Syrup, w.s
	in, dry := w.things(anything), w.dry()
	switch {
	case y.Weighed && dry:
		return T("Stir %s over low heat until the sugar has dissolved, then boil without stirring until the syrup weighs %s, without the pan. Heavier: boil on; lighter: add hot water.", in, s.Mass(y.MassG))
	case y.Weighed:
		return T("Warm %s slowly, stirring, then boil without stirring until the syrup weighs %s, without the pan. Heavier: boil on; lighter: add hot water.", in, s.Mass(y.MassG))
	case !y.Reached:
		boils, makes := s.TemperatureTo(w.m.Result.Syrup.BoilingPointC, 0), s.Temperature(y.TrueC)
		if dry {
			return T("Stir %s over low heat until the sugar has dissolved, then boil without stirring: it boils only at %s, thicker than %s makes it. Give the design water, or pour it as soon as it boils.", in, boils, makes)
		}
		return T("Warm %s slowly, stirring, then boil without stirring: it boils only at %s, thicker than %s makes it. Give the design water, or pour it as soon as it boils.", in, boils, makes)
	}
	to, takes := withStage(s, s.TemperatureTo(y.ReadingC, readingPlaces(y)), y), s.DurationSpan(math.Max(1, y.Minutes.Low), math.Max(1, y.Minutes.High))
	if dry {
		return T("Stir %s over low heat until the sugar has dissolved, then boil without stirring to %s, about %s.", in, to, takes)
	}
	return T("Warm %s slowly, stirring, then boil without stirring to %s, about %s.", in, to, takes)
}

// shallowMM is what a digital tip needs, see limits.SyrupDepth.
const shallowMM = 12

func readingPlaces(y *process.Syrup) int {
	if y.ReadingC == math.Round(y.ReadingC) {
		return 0
	}
	return 1
}

// withStage is what a syrup's thermometer shows, with what cooks call it.
func withStage(s Style, reading string, y *process.Syrup) string {
	words := map[process.Stage]string{process.Thread: T("thread"), process.SoftBall: T("soft ball"), process.SoftToFirm: T("between soft and firm ball"), process.FirmBall: T("firm ball"), process.HardBall: T("hard ball"), process.HardCrack: T("crack")}
	if words[y.Stage] == "" {
		return reading
	}
	_, from, to := process.StageAt(y.SeaC)
	return T("%s (%s, %s at sea level)", reading, words[y.Stage], s.TemperatureSpan(from, to))
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
		return T("Stir the hot syrup into the foam base.") + w.jelly("Melt the soaked gelatine over warm water and beat it in while it is hot.") +
			" " + T("Stand it in ice water until it is at %s or colder, then beat until it stands: warm, it takes no air.", s.Temperature(process.ColdC)) + w.cup()
	}
	if w.m.Process.Kitchen.Pour == process.AtOnce {
		text += T("Beating on, pour the boiling syrup between whisk and wall, all at once.") + " "
	} else {
		text += T("Beating on, pour the boiling syrup between whisk and wall in a thin stream.") + " "
	}
	if f.Read {
		text += T("A thermometer showed %s.", s.TemperatureTo(f.PeakC, 0)) + " "
		if f.Whites == process.FreshWhite || f.Whites == process.FreshYolk {
			text += BowlRead(s, f) + " "
		}
	} else {
		peak := s.TemperatureTo(f.PeakC, 0)
		if band := s.TemperatureBand(f.PeakLowC, f.PeakHighC, 0); band != peak {
			text += T("The foam comes to about %s (%s).", peak, band) + " "
		} else {
			text += T("The foam comes to about %s.", peak) + " "
		}
	}
	text = strings.TrimSpace(text) + w.jelly(jellyWarm) + " " + w.beatOn()
	if w.m.Brief {
		return text + w.cup()
	}
	text += " " + T("From there to %s it may shrink to %s of its volume; left warmer, to less.", s.Temperature(process.ShrinkToC), s.Percent(100*f.ColdShrinkRatio, 0))
	return text + w.cup()
}

// beatOn says how long the foam is beaten after the pour.
func (w *stepWords) beatOn() string {
	f, s := &w.m.Process.Foam, w.s
	most, long := f.StopMinutes, !(f.StopMinutes < process.WhiskLongest)
	if long {
		most = process.WhiskLongest
	}
	timed, warm := most > quickestMin, !(f.PeakHighC < process.WhiskUntilC)
	span, below := s.DurationSpan(quickestMin, most), s.Temperature(process.WhiskUntilC)
	switch {
	case timed && warm && long:
		return T("Beat on for %s until it is below %s and stands, at the end in a bowl of cold water.", span, below)
	case timed && warm:
		return T("Beat on for %s until it is below %s and stands.", span, below)
	case timed && long:
		return T("Beat on for %s until it stands, at the end in a bowl of cold water.", span)
	case timed:
		return T("Beat on for %s until it stands.", span)
	case warm && long:
		return T("Beat on until it is below %s and stands, at the end in a bowl of cold water.", below)
	case warm:
		return T("Beat on until it is below %s and stands.", below)
	case long:
		return T("Beat on until it stands, at the end in a bowl of cold water.")
	}
	return T("Beat on until it stands.")
}

// jelly says when gelatine goes into the foam: cold, it would set in threads.
func (w *stepWords) jelly(how Message) string {
	if !w.gelatine(design.FoamPart) {
		return ""
	}
	return " " + how.String()
}

// jellyWarm is how it goes into a foam that a syrup or hot water has warmed.
const jellyWarm Message = "Melt the soaked gelatine over warm water and beat it in while the foam is warm."

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
	weighs, air := s.Mass(ml*r.GPerML()), s.Percent(100*r.OverrunFraction, 0)
	a := p.Foam.Air
	known, usual := !math.IsNaN(a.HighPercent) && !w.m.Brief, s.span(s.Number(a.LowPercent, 0), s.Number(a.HighPercent, 0), "%")
	folded := w.step.Code == process.FoldIn // which only takes air away
	switch {
	case folded && known:
		return " " + T("A level %s then weighs %s: %s air, where such foams come to %s (from memory).", cup, weighs, air, usual)
	case folded:
		return " " + T("A level %s then weighs %s: %s air.", cup, weighs, air)
	case known:
		return " " + T("Stop when a level %s weighs %s: %s air, where such foams come to %s (from memory).", cup, weighs, air, usual)
	}
	return " " + T("Stop when a level %s weighs %s: %s air.", cup, weighs, air)
}

func (w *stepWords) whip() string {
	if w.m.Process.Has(process.HoldWhites) {
		return T("Take the bowl off the water and beat %s until the foam stands and is below %s.", w.base(), w.s.Temperature(process.WhiskUntilC)) + w.jelly(jellyWarm) + w.cup()
	}
	text := T("Beat %s until the foam stands.", w.base())
	if w.m.Process.Foam.Cream {
		text = T("Beat %s, cold, until the foam stands.", w.base())
	}
	return text + w.jelly("Melt the soaked gelatine over warm water and beat it in.") + w.cup()
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
	if math.IsNaN(f.ChillTheC) {
		return T("Set the foam in the freezer, without beating.")
	}
	return T("Set the foam in the freezer, without beating, until it is at %s or colder. At room temperature it would melt %s of the %s ice in each tub's %s.", s.TemperatureTo(math.Floor(f.ChillTheC), 0), s.Mass(f.IceLostG), s.Mass(f.IceInTubG), w.denseName())
}
