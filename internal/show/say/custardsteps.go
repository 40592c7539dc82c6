package say

import (
	"math"
	"strings"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/work/design"
)

func (w *stepWords) crack() string {
	e, s := w.m.Process.Eggs, w.s
	text := ""
	if c, ok := w.m.Process.CautionOf(process.WhitesStayCool); ok {
		text = Caution(s, w.m, c) + " "
	}
	text += cracked(s, e)
	if parts(e) && e.Whole-wholeOnes(e) > 0.05 {
		text += " " + T("Make the whole egg up to its weight with two parts of white to one of yolk.")
	}
	if e.WhitesUsed > e.Whole {
		text += " " + T("No yolk may get into the whites.")
	}
	return text + EggsLeft(w.s, e)
}

// parts reports whether any egg is parted, and wholeOnes is how many stay whole.
func parts(e process.Eggs) bool { return e.YolksUsed > e.Whole || e.WhitesUsed > e.Whole }

func wholeOnes(e process.Eggs) float64 { return math.Floor(e.Whole + 0.05) }

// cracked says what is cracked and what becomes of it.
func cracked(s Style, e process.Eggs) string {
	eggs, size, n := s.Count(e.Crack, "egg", "eggs"), Of(e.Size), float64(e.Crack)
	switch whole := wholeOnes(e); {
	case !parts(e):
		return T("Crack %s (%s %s); then weigh.", eggs, e.System, size)
	case whole > 0:
		return T(either(n-whole, "Crack %s (%s %s); keep %s whole, part the other; then weigh.", "Crack %s (%s %s); keep %s whole, part the others; then weigh."), eggs, e.System, size, s.Short(whole, 0))
	case e.YolksUsed > 0 && e.WhitesUsed > 0 || e.Whole > 0:
		return T(either(n, "Crack %s (%s %s) and part it; then weigh.", "Crack %s (%s %s) and part them; then weigh."), eggs, e.System, size)
	case e.YolksUsed > 0:
		return T(either(n, "Crack %s (%s %s) for its yolk; then weigh.", "Crack %s (%s %s) for their yolks; then weigh."), eggs, e.System, size)
	}
	return T(either(n, "Crack %s (%s %s) for its white; then weigh.", "Crack %s (%s %s) for their whites; then weigh."), eggs, e.System, size)
}

func (w *stepWords) bloom() string {
	text := T("Soak %s in leaves in plenty of cold water for 10 minutes, then squeeze it out; powder in a little of the cold liquid of the recipe.", w.things(anything))
	if w.raw() {
		text += " " + T("Raw pineapple and kiwi keep it from setting: heat them through first.")
	}
	return text
}

// raw reports whether a fruit is in the design whose enzyme dissolves gelatine
// (McGee 2004, On Food and Cooking, gelatine).
func (w *stepWords) raw() bool {
	for _, l := range w.m.Result.Lines {
		if id := l.Ingredient.ID; l.Grams > 0 && (id == "pineapple" || id == "kiwifruit") {
			return true
		}
	}
	return false
}

func (w *stepWords) yolks() string {
	text := T("Whisk %s smooth.", w.things(anything))
	if w.has(kind.Sugar) {
		text = T("Whisk %s smooth at once: yolk left standing on sugar forms crusts.", w.things(anything))
	}
	if w.has(kind.Starch) {
		text += " " + T("The starch must lie free of lumps.")
	}
	return text
}

func (w *stepWords) heat() string {
	p, s := w.m.Process, w.s
	c := &p.Custard
	text := T("In the pan whisk %s.", w.things(anything)) + w.overfull()
	dry := w.dry()
	text += w.fruit()
	if w.has(kind.Gum) {
		if dry {
			text += " " + T("Mix the gum with the dry sugar first, or it lumps.")
		} else {
			text += " " + T("Sprinkle the gum in while you blend, or it lumps.")
		}
	}
	if w.has(kind.Cocoa) {
		if dry {
			text += " " + T("Rub the cocoa smooth with the sugar and a little of the liquid first.")
		} else {
			text += " " + T("Rub the cocoa smooth with a little of the liquid first.")
		}
	}
	if w.has(kind.Starch) {
		text += " " + T("Stir the starch smooth in a little of it cold.")
	}
	if c.Starch() && !c.Yolk {
		return text
	}
	switch gum, hot := w.gum(); {
	case hot >= 100:
		text += " " + T("Bring it to the boil and boil for a minute: %s dissolves only then (from memory).", gum)
	case hot > 0 && !p.Has(process.Cook):
		text += " " + T("Heat it to %s: %s dissolves only from there (from memory).", s.Temperature(hot), gum)
	default:
		text += " " + T("Heat until it steams, about %s.", s.Temperature(process.SteamsC))
	}
	if !p.Has(process.Cook) {
		text += w.blend() + w.weigh()
		if w.strained() {
			text += " " + T("Strain.")
		}
	}
	return text
}

// gum names the gum of the step that wants the most heat to dissolve, and from
// where it does, °C; 0 of gums that dissolve cold. From memory: locust bean gum
// from about 80, agar at the boil.
func (w *stepWords) gum() (name string, fromC float64) {
	for _, u := range w.step.Lines {
		in, c := w.line(u).Ingredient, 0.0
		switch {
		case strings.HasPrefix(in.ID, "agar"):
			c = 100
		case in.ID == "locust_bean_gum", in.ID == "seed_gums":
			c = 82
		}
		if c > fromC {
			name, fromC = Kitchen(in), c
		}
	}
	return name, fromC
}

// fruit says that fruit that is no juice is puréed before it goes in.
func (w *stepWords) fruit() string {
	whole := w.listed(func(in *ingredient.Ingredient) bool {
		return in.Group == "fruit" && kind.Of(in) == kind.Sour && !strings.HasSuffix(in.ID, "_juice")
	})
	if whole == "" {
		return ""
	}
	return " " + T("Purée the fruit first.")
}

// dry reports whether a dry sugar goes in at the step.
func (w *stepWords) dry() bool {
	for _, u := range w.step.Lines {
		if in := w.line(u).Ingredient; kind.Of(in) == kind.Sugar && in.Cell(ingredient.Water).Or(0) < 10 {
			return true
		}
	}
	return false
}

// strained reports whether what is steeped has to come out again.
func (w *stepWords) strained() bool {
	for _, step := range w.m.Process.Steps {
		for _, u := range step.Lines {
			if in := w.line(u).Ingredient; step.Code == process.HeatMilk && kind.Of(in) == kind.Infusion && in.Cell(ingredient.Water).Or(0) < 95 &&
				(strings.HasSuffix(in.ID, "_peel") || strings.HasPrefix(in.ID, "tea") || in.ID == "mint_peppermint" || in.ID == "ginger_fresh") {
				return true
			}
		}
	}
	return false
}

// blend is what a base without milk protein wants, at the last of the hot steps.
func (w *stepWords) blend() string {
	last := w.m.Process.WeighAt()
	if w.m.Process.Has(process.OffHeat) {
		last = process.OffHeat
	}
	if w.step.Code != last || w.m.Process.Custard.Milk || !(w.m.Process.Custard.FatPercent > blendFat) {
		return ""
	}
	return " " + T("No milk protein holds its fat: blend it a minute while it is hot.")
}

// blendFat is the fat, %, from which a base without milk is blended: an
// estimate, no source.
const blendFat = 2

func (w *stepWords) cook() string {
	c, s := &w.m.Process.Custard, w.s
	text := ""
	if c.Yolk {
		text = T("Pour half of the hot liquid onto the egg in a thin stream, whisking, then everything back into the pan.") + " "
	}
	if c.Starch() {
		text += w.boilStarch()
	} else {
		if span := s.TemperatureSpan(c.FromC, c.ToC); c.YolkGPerKG >= process.LeastYolkGPerKG {
			text += T("Stir over low heat, scraping the bottom, until a thermometer shows %s and it coats the spoon.", span)
		} else {
			text += T("Stir over low heat, scraping the bottom, until a thermometer shows %s; with so little yolk it does not coat the spoon.", span)
		}
		text += " " + T("It curdles from about %s: if it turns grainy, take it off and blend it over ice. Below %s it stays thin.", s.Temperature(c.CurdlesC), s.Temperature(c.FromC))
		if c.YolkGPerKG > process.MostYolkGPerKG {
			text += " " + T("So much yolk sets sooner: watch it from %s.", s.Temperature(c.FromC-4))
		}
	}
	if c.Yolk && !c.Starch() && !w.m.Brief {
		text += " " + T("(Egg dishes: %s throughout, US consumer advice. %s seconds at %s count as %s at %s; for sugared yolk 9 CFR 590.570 asked %s until 2020.)", s.Temperature(process.EggFigureC), s.Number(process.HoldSeconds, 0), s.Temperature(c.FromC), s.Duration(c.HoldMinutes), s.TemperatureTo(process.PlantYolkC, 1), s.with(s.Number(process.PlantYolkM, 1), "min"))
	}
	return text + w.blend() + w.weigh() + " " + T("Strain.")
}

// boilStarch says how starch is cooked: with yolk to a full boil, or the yolk's
// enzyme thins it again; alone until it has swelled.
func (w *stepWords) boilStarch() string {
	c, s := &w.m.Process.Custard, w.s
	text := T("Stir over medium heat to a full boil and boil for 1 minute, stirring, until it is thick.")
	if c.Yolk {
		text = T("Stir over medium heat to a full boil, %s at least, and boil for 2 minutes, stirring: below %s the yolk thins the starch again.", s.Temperature(c.FromC), s.Text("{88 to 90 °C}"))
		if !math.IsNaN(c.CurdlesC) {
			text += " " + T("With so little starch the egg may curdle on the way: whisk without a stop, and blend it smooth if it does.")
		}
		if caution, ok := w.m.Process.CautionOf(process.EnzymeLives); ok {
			text += " " + Caution(s, w.m, caution)
		}
	}
	for _, x := range c.Starches {
		if !math.IsNaN(x.FromC) && !w.m.Brief {
			text += " " + T("%s swells from %s, with sugar later.", Capital(Kitchen(x.Ingredient)), s.TemperatureSpan(x.FromC, x.ToC))
		}
	}
	if sour := w.m.Process.Custard.SourG; sour > 0 && w.m.Process.Has(process.ColdIn) {
		text += " " + T("Boiled with acid it would thin: that goes in cold.")
	}
	return text
}

// weigh tells what the scale shows at the end of the step.
func (w *stepWords) weigh() string {
	p := w.m.Process
	if p.Custard.WaterOffG <= 0.5 || p.WeighAt() != w.step.Code {
		return ""
	}
	text := " " + T("Without the pan it weighs %s. Heavier: cook on; lighter: stir in hot water.", w.s.Mass(p.Custard.WeighedG))
	if m := p.Custard.OffMinutes; !w.m.Brief && !math.IsNaN(m) && !p.Custard.Starch() {
		off, takes, pan := w.s.Mass(p.Custard.WaterOffG), w.s.Duration(math.Max(1, m)), w.s.Length(p.Kitchen.PanMM)
		if p.Custard.Parts > 1 {
			text += " " + T("The %s of water take about %s a part to steam off a pan %s wide.", off, takes, pan)
		} else {
			text += " " + T("The %s of water take about %s to steam off a pan %s wide.", off, takes, pan)
		}
	}
	return text
}

// overfull says that the custard does not go into the pan at once.
func (w *stepWords) overfull() string {
	p := w.m.Process
	if p.Custard.Parts < 2 {
		return ""
	}
	return " " + T("A pan %s wide does not hold it: take a wider one, or cook it in %s.", w.s.Length(p.Kitchen.PanMM), w.s.Count(p.Custard.Parts, "part", "parts"))
}

func (w *stepWords) offHeat() string {
	what := T("hot %s", w.denseName())
	text := ""
	if in := w.things(only(kind.Chocolate)); in != "" {
		text += " " + T("Melt %s in the %s.", in, what)
	}
	if in := w.things(except(kind.Chocolate)); in != "" {
		if text == "" {
			text = " " + T("Whisk %s into the %s.", in, what)
		} else {
			text += " " + T("Whisk in %s.", in)
		}
	}
	if w.gelatine(design.DensePart) {
		text += " " + T("Dissolve the soaked gelatine in the %s, no hotter than it is: boiled, it no longer sets.", what)
	}
	return text + w.blend()
}

// gelatine reports whether some was soaked for the custard, or for the foam.
func (w *stepWords) gelatine(part design.Part) bool {
	for _, step := range w.m.Process.Steps {
		for _, u := range step.Lines {
			if step.Code == process.Bloom && (w.line(u).Part == design.DensePart) == (part == design.DensePart) {
				return true
			}
		}
	}
	return false
}

func (w *stepWords) cool() string {
	c, s := &w.m.Process.Custard, w.s
	ice, known := s.Mass(1000*c.Cool.IceKG), !math.IsNaN(c.Cool.BathMinutes)
	in, cold := s.Duration(c.Cool.BathMinutes), s.Temperature(process.ColdC)
	var text string
	switch {
	case c.Parts > 1 && known:
		text = T("Stand each part, as it comes off the stove, in ice water of its own (about %s ice) and stir, about %s to %s.", ice, in, cold)
	case c.Parts > 1:
		text = T("Stand each part, as it comes off the stove, in ice water of its own (about %s ice) and stir.", ice)
	case known:
		text = T("Stand it in ice water (about %s ice) and stir, about %s to %s.", ice, in, cold)
	default:
		text = T("Stand it in ice water (about %s ice) and stir.", ice)
	}
	limit := Message("The limit is %s to %s within 2 hours, to %s within 4 more (FDA Food Code 3-501.14); in the refrigerator alone this pot does not meet it.")
	switch {
	case c.Cool.FridgeMeets:
		limit = "The limit is %s to %s within 2 hours, to %s within 4 more (FDA Food Code 3-501.14)."
	case w.m.Brief:
		limit = "The limit is %s to %s within 2 hours, to %s within 4 more (FDA Food Code 3-501.14); the refrigerator alone is too slow."
	}
	text += " " + T(limit, s.Temperature(process.CoolFromC), s.Temperature(process.CoolByC), cold)
	if caution, ok := w.m.Process.CautionOf(process.BathTooSlow); ok {
		text += " " + Caution(s, w.m, caution)
	}
	return text
}

func (w *stepWords) coldIn() string {
	c, s := &w.m.Process.Custard, w.s
	if !w.m.Process.Has(process.CoolDown) {
		text := T("Whisk %s together until no sugar grates.", w.things(anything)) + w.fruit()
		if w.gelatine(design.DensePart) {
			text += " " + T("Melt the soaked gelatine over warm water, stir a few spoonfuls of the %s into it, then that into the rest.", w.denseName())
		}
		return text
	}
	what := T("cold %s", w.denseName())
	text := T("Below %s, whisk %s into the %s.", s.Temperature(10), w.things(anything), what) + w.fruit()
	if w.has(kind.Sour, kind.Cultured, kind.Acid) && c.Milk {
		if c.AcidPerKG > limits.AcidHot.Steps[0].At && !w.own() {
			text += " " + T("That is %s g acid to a kilogram of milk: hot milk curdles from about %s to %s g (kitchen pages on fresh cheese), cold milk from about %s g (common practice).", s.Number(c.AcidPerKG, 1), s.Number(limits.AcidHot.Steps[0].At, 1), s.Number(limits.AcidHot.Steps[1].At, 0), s.Number(limits.AcidCold.Steps[1].At, 0))
		} else {
			text += " " + T("In hot milk the acid would curdle it.")
		}
	} else if w.has(kind.Sour, kind.Acid) && c.Yolk {
		text += " " + T("Cooked with it, egg sets early and then thins (American Woman's Cook Book).")
	}
	if w.spirits() {
		text += " " + T("In a hot pan about half of the alcohol would be lost.")
	}
	return text
}

// own reports whether a sour pack of the maker's own goes in, whose acid nobody
// knows.
func (w *stepWords) own() bool {
	for _, u := range w.step.Lines {
		if in := w.line(u).Ingredient; in.Own && kind.Of(in) == kind.Sour {
			return true
		}
	}
	return false
}

// spirits reports whether more than a flavouring's alcohol goes in.
func (w *stepWords) spirits() bool {
	for _, u := range w.step.Lines {
		if in := w.line(u).Ingredient; in.Group != "flavour" && in.Cell(ingredient.Alcohol).Or(0) > 1 {
			return true
		}
	}
	return false
}

func (w *stepWords) freezeBowl() string {
	text := T("Freeze the churn's empty bowl for 24 hours, at %s or colder.", w.s.Temperature(-18))
	if n := w.m.Process.Freezing.ChurnRuns; n > 1 {
		text += " " + T("It takes one run a day: this batch needs %s, or as many days.", w.s.Count(n, "bowl", "bowls"))
	}
	return text
}

func (w *stepWords) freezeSoft() string {
	p, s := w.m.Process, w.s
	f, k := &p.Freezing, p.Kitchen
	if k.Churns() {
		if f.ChurnRuns > 1 {
			return T("Churn in %s, of %s at most, until it holds a swirl, about 30 min each.", s.Count(f.ChurnRuns, "run", "runs"), s.Volume(k.ChurnBowlML))
		}
		return T("Churn until it holds a swirl, about 30 min.")
	}
	text := freezeSoft(s, w.m.Cold, k.Churn == process.Tray)
	if f.Dishes > 1 {
		text += " " + T("It takes %s of that depth.", s.Count(f.Dishes, "dish", "dishes"))
	}
	if !f.Fits {
		text += " " + T("They do not fit on the freezer's shelf side by side: freeze in turns.")
	}
	return text
}
