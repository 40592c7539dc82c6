package say

import (
	"math"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

// Titled is a step, a caution or a check: a few words and what they stand for.
type Titled struct{ Title, Text string }

// Making is what the words of the steps need.
type Making struct {
	Design  design.Design
	Result  *model.Result
	Process *process.Process
	Cold    *cold.Answer // nil: no times in the freezer
	Ice     *icy.Answer  // nil: nothing of its crystals
}

// Steps says how the design is made, in order, each step of the process by its
// own words.
func Steps(s Style, m Making) []Titled {
	out := make([]Titled, len(m.Process.Steps))
	for i := range m.Process.Steps {
		out[i] = Step(s, m, &m.Process.Steps[i])
	}
	return out
}

// Step says one step.
func Step(s Style, m Making, step *process.Step) Titled {
	w := &stepWords{s, m, step}
	for _, x := range stepWording {
		if x.code == step.Code {
			return Titled{x.title, strings.TrimSpace(x.text(w))}
		}
	}
	return Titled{string(step.Code), ""}
}

// stepWording has one entry for each code of a step.
var stepWording = []struct {
	code  process.StepCode
	title string
	text  func(*stepWords) string
}{
	{process.Crack, "Eggs", (*stepWords).crack},
	{process.Bloom, "Gelatine", (*stepWords).bloom},
	{process.YolkSugar, "Yolks", (*stepWords).yolks},
	{process.HeatMilk, "Heat", (*stepWords).heat},
	{process.Cook, "Cook", (*stepWords).cook},
	{process.OffHeat, "Off the heat", (*stepWords).offHeat},
	{process.CoolDown, "Chill", (*stepWords).cool},
	{process.Rest, "Rest", func(w *stepWords) string {
		return "Cover and rest in the refrigerator: 4 hours at least, best overnight, one day at most."
	}},
	{process.ColdIn, "Stir in cold", (*stepWords).coldIn},
	{process.FreezeSoft, "Freeze soft", (*stepWords).freezeSoft},
	{process.BowlWhites, "Whites", (*stepWords).whites},
	{process.HoldWhites, "Heat the whites", (*stepWords).hold},
	{process.BoilSyrup, "Boil the syrup", (*stepWords).boil},
	{process.PourIn, "Pour and whip", (*stepWords).pour},
	{process.WhipCold, "Whip", func(w *stepWords) string { return "Beat " + w.base() + " until the foam stands." }},
	{process.FoldIn, "Fold in", (*stepWords).foldIn},
	{process.ChillFoam, "Chill the foam", (*stepWords).chillFoam},
	{process.Swirl, "Fill and swirl", (*stepWords).swirl},
	{process.Hardening, "Harden", func(w *stepWords) string { return hardenStep(w.s, w.m.Cold) + iceStep(w.s, w.m.Ice) }},
	{process.Serve, "Serve", func(w *stepWords) string { return serveStep(w.s, w.m.Design, w.m.Cold) }},
}

// stepWords is one step being worded.
type stepWords struct {
	s    Style
	m    Making
	step *process.Step
}

func (w *stepWords) line(u process.Used) *model.Line { return &w.m.Result.Lines[u.Line] }

// things lists what goes in at the step, of the kinds that such tells: "85 g egg
// yolks (5) and 47 g sugar".
func (w *stepWords) things(such func(kind.Kind) bool) string {
	var items []string
	for _, u := range w.step.Lines {
		if in := w.line(u).Ingredient; such(kind.Of(in)) {
			items = append(items, w.s.Mass(u.Grams)+" "+Kitchen(in)+w.pieces(in, u.Grams))
		}
	}
	return List(items)
}

func anything(kind.Kind) bool { return true }

func only(kinds ...kind.Kind) func(kind.Kind) bool {
	return func(k kind.Kind) bool {
		for _, x := range kinds {
			if x == k {
				return true
			}
		}
		return false
	}
}

func except(kinds ...kind.Kind) func(kind.Kind) bool {
	is := only(kinds...)
	return func(k kind.Kind) bool { return !is(k) }
}

// pieces counts fresh eggs, yolks and whites beside their weight.
func (w *stepWords) pieces(in *ingredient.Ingredient, g float64) string {
	size, err := egg.Find(w.m.Design.Eggs.System, w.m.Design.Eggs.Size)
	one := map[string]float64{"egg_yolk": size.Yolk, "egg_white": size.White, "egg_whole": size.Edible}[in.ID]
	if err != nil || one == 0 {
		return ""
	}
	return " (" + w.s.Short(g/one, 1) + ")"
}

// has reports whether a kind goes in at the step.
func (w *stepWords) has(k ...kind.Kind) bool { return w.things(only(k...)) != "" }

func (w *stepWords) crack() string {
	e := w.m.Process.Eggs
	text := "Crack " + w.s.Count(e.Crack, "egg", "") + " (" + e.System + " " + e.Size + ")"
	switch {
	case e.YolksUsed > 0 && e.WhitesUsed > 0:
		text += " and part them"
	case e.YolksUsed > 0:
		text += " for their yolks"
	case e.WhitesUsed > 0:
		text += " for their whites"
	}
	text += "; then weigh. No yolk may get into the whites."
	return text + EggsLeft(w.s, e)
}

func (w *stepWords) bloom() string {
	return "Soak " + w.things(anything) + " in cold water for 10 minutes, then squeeze it out."
}

func (w *stepWords) yolks() string {
	text := "Whisk " + w.things(anything) + " smooth at once: yolk left standing on sugar forms crusts."
	if w.has(kind.Starch) {
		text += " The starch must lie free of lumps."
	}
	return text
}

func (w *stepWords) heat() string {
	first := "In the pan whisk " + w.things(anything) + "."
	if w.has(kind.Gum) {
		first += " Mix the gum with the dry sugar first, or it lumps."
	}
	if w.has(kind.Cocoa) {
		first += " Rub the cocoa smooth with the sugar and a little of the milk first."
	}
	if w.has(kind.Starch) {
		first += " Stir the starch smooth in a little of it cold."
	}
	if !w.m.Process.Custard.Milk {
		first += " There is no milk in it: stir well, it has no milk protein to hold the fat."
	}
	if w.m.Process.Custard.Starch() && !w.m.Process.Custard.Yolk {
		return first
	}
	return first + " Heat until it steams, about " + w.s.Temperature(steamingC) + "."
}

// steamingC is where milk steams: common practice, no source.
const steamingC = 70

func (w *stepWords) cook() string {
	c, s := &w.m.Process.Custard, w.s
	text := ""
	if c.Yolk {
		text = "Pour half of the hot liquid onto the yolks in a thin stream, whisking, then everything back into the pan. "
	}
	switch {
	case c.Starch():
		text += "Stir over medium heat to a full boil, " + s.Temperature(c.FromC) + " at least, and boil for 2 minutes, stirring"
		if c.Yolk {
			text += ": with less heat the yolk thins the starch again"
			if !math.IsNaN(c.CurdlesC) {
				text += ". With so little starch the egg may curdle on the way: whisk without a stop, and blend it smooth if it does"
			}
		}
		text += "."
	default:
		text += "Stir over low heat, scraping the bottom, until a thermometer shows " + s.TemperatureSpan(c.FromC, c.ToC) +
			" and the custard coats the spoon. It curdles from about " + s.Temperature(c.CurdlesC) +
			": if it turns grainy, take it off and blend it over ice. Below " + s.Temperature(c.FromC) + " it stays thin: cook on."
	}
	if c.Yolk {
		text += " The published figure for egg dishes is " + s.Temperature(process.EggFigureC) + " throughout."
	}
	return text + " Strain."
}

func (w *stepWords) offHeat() string {
	text := ""
	if in := w.things(only(kind.Chocolate)); in != "" {
		text += "Melt " + in + " in the hot custard. "
	}
	if in := w.things(except(kind.Chocolate)); in != "" {
		text += "Whisk in " + in + ". "
	}
	if w.m.Process.Has(process.Bloom) {
		text += "Dissolve the squeezed gelatine in it."
	}
	return text
}

func (w *stepWords) cool() string {
	c, s := &w.m.Process.Custard, w.s
	text := ""
	if c.WaterOffG > 0.5 {
		text = "Weigh the custard without the pan: " + s.Mass(c.WeighedG) + " is right. Heavier: cook on; lighter: stir in hot water. "
	}
	text += "Stand it in ice water (about " + s.Mass(1000*c.Cool.IceKG) + " ice) and stir"
	if !math.IsNaN(c.Cool.BathMinutes) {
		text += ", about " + s.Duration(c.Cool.BathMinutes) + " to " + s.Temperature(process.ColdC)
	}
	text += ". The limit is " + s.Temperature(process.CoolFromC) + " to " + s.Temperature(process.CoolByC) + " within 2 hours, to " +
		s.Temperature(process.ColdC) + " within 4 more (FDA Food Code)"
	if !c.Cool.FridgeMeets {
		text += "; in the refrigerator alone this pot does not meet it"
	}
	return text + "."
}

func (w *stepWords) coldIn() string {
	text := "Below " + w.s.Temperature(10) + ", whisk " + w.things(anything) + " into the cold custard."
	if w.has(kind.Sour, kind.Cultured, kind.Acid) && w.m.Process.Custard.Milk {
		text += " In hot milk the acid would curdle it."
	}
	if w.spirits() {
		text += " In a hot pan about half of the alcohol would be lost."
	}
	return text
}

func (w *stepWords) spirits() bool {
	for _, u := range w.step.Lines {
		if w.line(u).Ingredient.Cell(ingredient.Alcohol).Or(0) > 1 {
			return true
		}
	}
	return false
}

func (w *stepWords) freezeSoft() string {
	f, s := &w.m.Process.Freezing, w.s
	text := freezeSoft(s, w.m.Cold)
	if f.Dishes > 1 {
		text += " It takes " + s.Count(f.Dishes, "dish", "dishes") + " of that depth."
	}
	if !f.Fits {
		text += " They do not fit on the freezer's shelf side by side: freeze in turns."
	}
	return text
}

func (w *stepWords) base() string {
	if w.m.Process.Foam.Whites == process.NoWhite {
		return "the foam base"
	}
	return "the whites"
}

func (w *stepWords) whites() string {
	f, s := &w.m.Process.Foam, w.s
	text := ""
	if f.Whites == process.FreshWhite && f.Hot && !f.Reaches {
		text = "Know before you start: this syrup warms the whites only to about " + s.TemperatureBand(f.PeakLow, f.PeakHi, 0) + "."
		text += " By published data for whites as sugary as these (Mattick et al. 2001) that is " + tenfold(s, f.LogLow, f.LogHigh) +
			" of Salmonella; the published figure for egg dishes is " + s.Temperature(f.ReachesC) +
			". Take pasteurised whites, or first hold whites and a third of the sugar over hot water at " + s.Temperature(process.HoldFirstC) + " for 2 minutes, stirring. "
	}
	if f.Whites == process.DriedWhite {
		text += "Stir the dried white into its water and let it swell for 20 minutes. "
	}
	text += "Beat " + w.things(anything)
	if f.Hot {
		text += " to soft peaks while the syrup boils."
	} else {
		text += " until foamy."
	}
	switch {
	case f.Whites == process.CartonWhite:
		text += " Pasteurised whites take up to four times as long, and want acid: about 1 g cream of tartar to 30 g."
	case f.Whites == process.FreshWhite && !w.has(kind.Acid, kind.Sour):
		text += " The bowl must be free of fat."
	}
	return text
}

// tenfold words reductions by powers of ten.
func tenfold(s Style, low, high float64) string {
	if high < 1 {
		return "less than one tenfold reduction"
	}
	return s.Number(low, 1) + " to " + s.Number(high, 1) + " tenfold reductions"
}

func (w *stepWords) hold() string {
	return "Stand the bowl over hot water and whisk to " + w.s.Temperature(process.HoldFirstC) + "; hold it there for 2 minutes. Without a hot syrup the whites stay raw: " +
		"the published figure for egg dishes is " + w.s.Temperature(process.EggFigureC) + ". Or take pasteurised whites."
}

func (w *stepWords) boil() string {
	y, s := &w.m.Process.Syrup, w.s
	text := "Stir " + w.things(anything) + " over low heat until clear, then boil without stirring"
	switch {
	case y.Weighed:
		text += " until the syrup weighs " + s.Mass(y.MassG) + ", without the pan."
	case !y.Reached:
		return text + ": it is thicker than " + s.Temperature(y.TrueC) + " from the start. Add water to dissolve the sugar."
	default:
		text += " to " + s.TemperatureTo(y.ReadingC, readingPlaces(y)) + stageWords(y.Stage) + ", about " + s.DurationSpan(y.Minutes.Low, y.Minutes.High) + "."
		text += " It then weighs " + s.Mass(y.MassG) + ": the scale is surer than the thermometer."
	}
	if y.ProbeOffset != 0 {
		text += " (Your probe shows " + s.TemperatureStep(math.Abs(y.ProbeOffset)) + " too " + map[bool]string{true: "much", false: "little"}[y.ProbeOffset > 0] + "; that is in it.)"
	}
	if !y.Weighed {
		text += altitudeStep(s, w.m.Design.Kitchen.AltitudeM, y)
	}
	if y.AlcoholOffG > 0.05 {
		text += " Its alcohol boils away: for the taste of a spirit, stir one into the cold custard instead."
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

func stageWords(stage process.Stage) string {
	words := map[process.Stage]string{process.Thread: "thread", process.SoftBall: "soft ball", process.FirmBall: "firm ball", process.HardBall: "hard ball", process.HardCrack: "crack"}
	if words[stage] == "" {
		return ""
	}
	return " (" + words[stage] + ")"
}

// altitudeStep says what the boil's temperature means up here.
func altitudeStep(s Style, m float64, y *process.Syrup) string {
	if m < altitudeM || math.IsNaN(y.SeaC) {
		return ""
	}
	return " At " + s.Altitude(m) + " that is the syrup of " + s.TemperatureTo(y.SeaC, 0) + " at sea level."
}

// altitudeM is the height above the sea from which the steps tell it, m: see
// limits.Altitude.
const altitudeM = 300

// foams reports whether honey or a brown sugar boils.
func (w *stepWords) foams() bool {
	for _, u := range w.step.Lines {
		if id := w.line(u).Ingredient.ID; strings.Contains(id, "honey") || strings.HasPrefix(id, "sugar_brown") || strings.Contains(id, "molasses") {
			return true
		}
	}
	return false
}

func (w *stepWords) pour() string {
	f, s := &w.m.Process.Foam, w.s
	text := "Beating on, pour the boiling syrup between whisk and wall in a thin stream. "
	if f.Read {
		text += "A thermometer showed " + s.TemperatureTo(f.PeakC, 0) + ". "
		if f.Whites == process.FreshWhite {
			text += BowlRead(s, f) + " "
		}
	} else {
		text += "The foam comes to about " + s.TemperatureTo(f.PeakC, 0) + " (" + s.TemperatureBand(f.PeakLow, f.PeakHi, 0) + "). "
	}
	text += "Beat on"
	if f.StopMinutes > quickestMin {
		text += " for " + s.DurationSpan(quickestMin, f.StopMinutes)
	}
	text += " until it is below " + s.Temperature(process.WhiskUntilC) + " and stands: left warmer, it loses air as it cools."
	if o := w.m.Result.Foam.Body.Overrun; o > 0 {
		text += " A level " + s.Volume(process.CupML) + " cup then weighs " + s.Mass(process.CupML*w.m.Result.Foam.Body.Density()) + "."
	}
	return text
}

// quickestMin is how soon a hand mixer brings a foam down in a cool room, where
// the air takes more than is computed: common practice, no source.
const quickestMin = 10

func (w *stepWords) foldIn() string {
	text := "Last, fold in " + w.things(anything) + " by hand."
	if w.has(kind.Fat, kind.Paste, kind.Chocolate, kind.Cocoa) {
		text += " Fat makes the foam fall: work quickly."
	}
	return text
}

func (w *stepWords) chillFoam() string {
	f, s := &w.m.Process.Freezing, w.s
	text := "Set the foam in the freezer, without beating"
	if math.IsNaN(f.ChillTheC) {
		return text + "."
	}
	return text + ", until it is at " + s.TemperatureTo(math.Floor(f.ChillTheC), 0) + " or colder. At room temperature it would melt " +
		s.Mass(f.IceLostG) + " of the " + s.Mass(f.IceInTubG) + " ice in each tub's custard."
}

func (w *stepWords) swirl() string {
	dense, foam := w.m.Result.Dense.InTub(), w.m.Result.Foam.InTub()
	text := ""
	switch {
	case dense && foam:
		text = filled(w.m.Design.Blend.Layout) + " " + swirled(w.s, w.m.Design.Blend)
	case dense:
		text = "Fill the tubs with the custard."
	default:
		text = "Fill the tubs with the foam."
	}
	if in := w.things(anything); in != "" {
		text += " Strew in " + in + " as you fill."
	}
	return text
}

// filled says how the phases go into the tub.
func filled(layout string) string {
	switch layout {
	case ripple.Layers.String():
		return "Fill them in turn, in layers, denting each with the spoon."
	case ripple.Halves.String():
		return "Fill them side by side, one half each."
	case ripple.Spiral.String():
		return "Pipe the foam as a coil into the custard."
	}
	return "Set the foam into the custard in spoonfuls."
}

// swirled says how to stir.
func swirled(s Style, b design.Blend) string {
	if b.Strokes == 0 {
		return "Leave it as it is: no stroke."
	}
	how := "going round plunge, drag, plunge and fold"
	switch b.Motion {
	case ripple.Plunge.String():
		how = "each straight down and up"
	case ripple.Fold.String():
		how = "each turning the bottom over the top"
	case ripple.FigureEight.String():
		how = "each a figure of eight"
	case ripple.Drag.String():
		how = "each a straight pull"
	}
	wide, deep := "", "down to the bottom"
	if b.HandleMM != design.Default().Blend.HandleMM {
		wide = " " + s.Length(b.HandleMM) + " wide"
	}
	if b.DepthPercent < 100 {
		deep = "down to " + s.Percent(b.DepthPercent, 0) + " of the depth"
	}
	return "With a spoon's handle" + wide + " " + deep + ", " + s.Count(b.Strokes, "stroke", "") + ", " + how + ". Then stop: more would blend them."
}
