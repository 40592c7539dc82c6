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
	text += "Crack " + s.Count(e.Crack, "egg", "") + " (" + e.System + " " + e.Size + ")"
	parted := e.YolksUsed > e.Whole || e.WhitesUsed > e.Whole
	whole := math.Floor(e.Whole + 0.05)
	if parted && e.Whole > 0 {
		if whole > 0 {
			text += "; keep " + s.Short(whole, 0) + " whole, part " + map[bool]string{true: "the other", false: "the others"}[float64(e.Crack)-whole == 1]
		} else {
			text += "; part " + Plural(float64(e.Crack), "it", "them")
		}
		if e.Whole-whole > 0.05 {
			text += ", and make the whole egg up to its weight with two parts of white to one of yolk"
		}
		return text + w.cracked()
	}
	switch {
	case e.YolksUsed > 0 && e.WhitesUsed > 0 && parted:
		text += " and part " + Plural(float64(e.Crack), "it", "them")
	case e.YolksUsed > 0 && parted:
		text += " for " + Plural(float64(e.Crack), "its yolk", "their yolks")
	case parted:
		text += " for " + Plural(float64(e.Crack), "its white", "their whites")
	}
	return text + w.cracked()
}

// cracked ends the step: what not to spoil, what is over.
func (w *stepWords) cracked() string {
	e := w.m.Process.Eggs
	text := "; then weigh."
	if e.WhitesUsed > e.Whole {
		text += " No yolk may get into the whites."
	}
	return text + EggsLeft(w.s, e)
}

func (w *stepWords) bloom() string {
	text := "Soak " + w.things(anything) + " in leaves in plenty of cold water for 10 minutes, then squeeze it out; powder in a little of the cold liquid of the recipe."
	if w.raw() {
		text += " Raw pineapple and kiwi keep it from setting: heat them through first."
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
	text := "Whisk " + w.things(anything) + " smooth"
	if w.has(kind.Sugar) {
		text += " at once: yolk left standing on sugar forms crusts"
	}
	text += "."
	if w.has(kind.Starch) {
		text += " The starch must lie free of lumps."
	}
	return text
}

func (w *stepWords) heat() string {
	p, s := w.m.Process, w.s
	c := &p.Custard
	text := "In the pan whisk " + w.things(anything) + "." + w.overfull()
	dry := w.dry()
	text += w.fruit()
	if w.has(kind.Gum) {
		if dry {
			text += " Mix the gum with the dry sugar first, or it lumps."
		} else {
			text += " Sprinkle the gum in while you blend, or it lumps."
		}
	}
	if w.has(kind.Cocoa) {
		with := "a little of the liquid"
		if dry {
			with = "the sugar and " + with
		}
		text += " Rub the cocoa smooth with " + with + " first."
	}
	if w.has(kind.Starch) {
		text += " Stir the starch smooth in a little of it cold."
	}
	if c.Starch() && !c.Yolk {
		return text
	}
	switch gum, hot := w.gum(); {
	case hot >= 100:
		text += " Bring it to the boil and boil for a minute: " + gum + " dissolves only then (from memory)."
	case hot > 0 && !p.Has(process.Cook):
		text += " Heat it to " + s.Temperature(hot) + ": " + gum + " dissolves only from there (from memory)."
	default:
		text += " Heat until it steams, about " + s.Temperature(process.SteamsC) + "."
	}
	if !p.Has(process.Cook) {
		text += w.blend() + w.weigh()
		if w.strained() {
			text += " Strain."
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
	return " Purée the fruit first."
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
	return " No milk protein holds its fat: blend it a minute while it is hot."
}

// blendFat is the fat, %, from which a base without milk is blended: an
// estimate, no source.
const blendFat = 2

func (w *stepWords) cook() string {
	c, s := &w.m.Process.Custard, w.s
	text := ""
	if c.Yolk {
		text = "Pour half of the hot liquid onto the egg in a thin stream, whisking, then everything back into the pan. "
	}
	if c.Starch() {
		text += w.boilStarch()
	} else {
		text += "Stir over low heat, scraping the bottom, until a thermometer shows " + s.TemperatureSpan(c.FromC, c.ToC)
		if c.YolkGPerKG >= process.LeastYolkGPerKG {
			text += " and it coats the spoon"
		} else {
			text += "; with so little yolk it does not coat the spoon"
		}
		text += ". It curdles from about " + s.Temperature(c.CurdlesC) + ": if it turns grainy, take it off and blend it over ice. Below " + s.Temperature(c.FromC) + " it stays thin."
		if c.YolkGPerKG > process.MostYolkGPerKG {
			text += " So much yolk sets sooner: watch it from " + s.Temperature(c.FromC-4) + "."
		}
	}
	if c.Yolk && !c.Starch() && !w.m.Brief {
		text += " (Egg dishes: " + s.Temperature(process.EggFigureC) + " throughout, US consumer advice. " + s.Number(process.HoldSeconds, 0) + " seconds at " + s.Temperature(c.FromC) +
			" count as " + s.Duration(c.HoldMinutes) + " at " + s.TemperatureTo(process.PlantYolkC, 1) + "; for sugared yolk 9 CFR 590.570 asked " + s.with(s.Number(process.PlantYolkM, 1), "min") + " until 2020.)"
	}
	return text + w.blend() + w.weigh() + " Strain."
}

// boilStarch says how starch is cooked: with yolk to a full boil, or the yolk's
// enzyme thins it again; alone until it has swelled.
func (w *stepWords) boilStarch() string {
	c, s := &w.m.Process.Custard, w.s
	text := "Stir over medium heat to a full boil"
	if c.Yolk {
		text += ", " + s.Temperature(c.FromC) + " at least, and boil for 2 minutes, stirring: below " + s.Text("{88 to 90 °C}") + " the yolk thins the starch again."
		if !math.IsNaN(c.CurdlesC) {
			text += " With so little starch the egg may curdle on the way: whisk without a stop, and blend it smooth if it does."
		}
		if caution, ok := w.m.Process.CautionOf(process.EnzymeLives); ok {
			text += " " + Caution(s, w.m, caution)
		}
	} else {
		text += " and boil for 1 minute, stirring, until it is thick."
	}
	for _, x := range c.Starches {
		if !math.IsNaN(x.FromC) && !w.m.Brief {
			text += " " + sentenceCase(Kitchen(x.Ingredient)) + " swells from " + s.TemperatureSpan(x.FromC, x.ToC) + ", with sugar later."
		}
	}
	if sour := w.m.Process.Custard.SourG; sour > 0 && w.m.Process.Has(process.ColdIn) {
		text += " Boiled with acid it would thin: that goes in cold."
	}
	return text
}

func sentenceCase(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// weigh tells what the scale shows at the end of the step.
func (w *stepWords) weigh() string {
	p := w.m.Process
	if p.Custard.WaterOffG <= 0.5 || p.WeighAt() != w.step.Code {
		return ""
	}
	text := " Without the pan it weighs " + w.s.Mass(p.Custard.WeighedG) + ". Heavier: cook on; lighter: stir in hot water."
	if m := p.Custard.OffMinutes; !w.m.Brief && !math.IsNaN(m) && !p.Custard.Starch() {
		text += " The " + w.s.Mass(p.Custard.WaterOffG) + " of water take about " + w.s.Duration(math.Max(1, m))
		if p.Custard.Parts > 1 {
			text += " a part"
		}
		text += " to steam off a pan " + w.s.Length(p.Kitchen.PanMM) + " wide."
	}
	return text
}

// overfull says that the custard does not go into the pan at once.
func (w *stepWords) overfull() string {
	p := w.m.Process
	if p.Custard.Parts < 2 {
		return ""
	}
	return " A pan " + w.s.Length(p.Kitchen.PanMM) + " wide does not hold it: take a wider one, or cook it in " + w.s.Count(p.Custard.Parts, "part", "") + "."
}

func (w *stepWords) offHeat() string {
	what := "hot " + w.denseName()
	text := ""
	if in := w.things(only(kind.Chocolate)); in != "" {
		text += " Melt " + in + " in the " + what + "."
	}
	if in := w.things(except(kind.Chocolate)); in != "" {
		if text == "" {
			text = " Whisk " + in + " into the " + what + "."
		} else {
			text += " Whisk in " + in + "."
		}
	}
	if w.gelatine(design.DensePart) {
		text += " Dissolve the soaked gelatine in the " + what + ", no hotter than it is: boiled, it no longer sets."
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
	text := "Stand it in ice water (about " + s.Mass(1000*c.Cool.IceKG) + " ice) and stir"
	if c.Parts > 1 {
		text = "Stand each part, as it comes off the stove, in ice water of its own (about " + s.Mass(1000*c.Cool.IceKG) + " ice) and stir"
	}
	if !math.IsNaN(c.Cool.BathMinutes) {
		text += ", about " + s.Duration(c.Cool.BathMinutes) + " to " + s.Temperature(process.ColdC)
	}
	text += ". The limit is " + s.Temperature(process.CoolFromC) + " to " + s.Temperature(process.CoolByC) + " within 2 hours, to " +
		s.Temperature(process.ColdC) + " within 4 more (FDA Food Code 3-501.14)"
	switch {
	case c.Cool.FridgeMeets:
	case w.m.Brief:
		text += "; the refrigerator alone is too slow"
	default:
		text += "; in the refrigerator alone this pot does not meet it"
	}
	text += "."
	if caution, ok := w.m.Process.CautionOf(process.BathTooSlow); ok {
		text += " " + Caution(s, w.m, caution)
	}
	return text
}

func (w *stepWords) coldIn() string {
	c, s := &w.m.Process.Custard, w.s
	if !w.m.Process.Has(process.CoolDown) {
		text := "Whisk " + w.things(anything) + " together until no sugar grates." + w.fruit()
		if w.gelatine(design.DensePart) {
			text += " Melt the soaked gelatine over warm water, stir a few spoonfuls of the " + w.denseName() + " into it, then that into the rest."
		}
		return text
	}
	what := "cold " + w.denseName()
	text := "Below " + s.Temperature(10) + ", whisk " + w.things(anything) + " into the " + what + "." + w.fruit()
	if w.has(kind.Sour, kind.Cultured, kind.Acid) && c.Milk {
		if c.AcidPerKG > limits.AcidHot.Steps[0].At && !w.own() {
			text += " That is " + s.Number(c.AcidPerKG, 1) + " g acid to a kilogram of milk: hot milk curdles from about " + s.Number(limits.AcidHot.Steps[0].At, 1) + " to " +
				s.Number(limits.AcidHot.Steps[1].At, 0) + " g (kitchen pages on fresh cheese), cold milk from about " + s.Number(limits.AcidCold.Steps[1].At, 0) + " g (common practice)."
		} else {
			text += " In hot milk the acid would curdle it."
		}
	} else if w.has(kind.Sour, kind.Acid) && c.Yolk {
		text += " Cooked with it, egg sets early and then thins (American Woman's Cook Book)."
	}
	if w.spirits() {
		text += " In a hot pan about half of the alcohol would be lost."
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
	text := "Freeze the churn's empty bowl for 24 hours, at " + w.s.Temperature(-18) + " or colder."
	if n := w.m.Process.Freezing.ChurnRuns; n > 1 {
		text += " It takes one run a day: this batch needs " + w.s.Count(n, "bowl", "") + ", or as many days."
	}
	return text
}

func (w *stepWords) freezeSoft() string {
	p, s := w.m.Process, w.s
	f, k := &p.Freezing, p.Kitchen
	if k.Churns() {
		text := "Churn "
		if f.ChurnRuns > 1 {
			text += "in " + s.Count(f.ChurnRuns, "run", "") + ", of " + s.Volume(k.ChurnBowlML) + " at most, "
		}
		return text + "until it holds a swirl, about 30 min" + map[bool]string{true: " each", false: ""}[f.ChurnRuns > 1] + "."
	}
	text := freezeSoft(s, w.m.Cold, k.Churn == process.Tray)
	if f.Dishes > 1 {
		text += " It takes " + s.Count(f.Dishes, "dish", "dishes") + " of that depth."
	}
	if !f.Fits {
		text += " They do not fit on the freezer's shelf side by side: freeze in turns."
	}
	return text
}
