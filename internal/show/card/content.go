package card

import (
	"fmt"
	"math"
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// content is what a card says, in words, before anything is drawn.
type content struct {
	name  string
	strap string   // one line on what it is
	notes []string // paragraphs
	makes string
	serve string // the temperature
	verdict,
	advice string
	good bool

	parts    []part
	checks   []titled // what the scale should show on the way
	steps    []titled
	figures  []figure
	rests    []string // the figures that the verdict rests on
	warnings []string

	label     *label.Label
	labelNote string // why there is no label
	allergens string // in one line
	cautions  []titled
}

// part is one list of lines.
type part struct {
	title string
	note  string
	total string
	rows  []row
}

// row is one line of the recipe.
type row struct {
	grams, unit         string // the weight
	name, measure, note string
}

// titled is a step or a caution.
type titled struct{ title, text string }

// figure is a row of the table of figures, for the custard, the foam and the
// tub.
type figure struct{ name, dense, foam, tub string }

// printed is how a card reads.
var printed say.Style

// contentOf gathers what the card of an evaluated design says.
func contentOf(d design.Design, r *model.Result, o Options) content {
	c := content{
		name:    plain(d.Name),
		notes:   paragraphs(d.Notes),
		serve:   printed.Temperature(d.Serving.TemperatureC),
		verdict: plain(say.Verdict(printed, r.Verdict)),
		advice:  plain(say.Advice(printed, r.Verdict)),
		good:    r.Verdict.Good,
	}
	if c.name == "" {
		c.name = "Untitled"
	}
	c.strap = strap(r)
	c.makes = fmt.Sprintf("%s of %s mL, filled to %.0f %%", counted(d.Tubs.Count, "tub"), grouped(d.Tubs.VolumeML), d.Tubs.FillPercent)
	c.parts = partsOf(d, r, o.Region)
	c.checks = checksOf(d, r)
	c.steps = stepsOf(d, r, o.Cold)
	c.figures = figuresOf(d, r)
	c.rests = restsOf(d, r)
	if o.Cold != nil {
		c.rests = append(c.rests, kitchenNote(o.Cold))
	}
	for _, w := range r.Warnings {
		if w.Severity > model.Note {
			c.warnings = append(c.warnings, plain(say.Warning(printed, w)))
		}
	}
	l, err := label.For(r.Food(d), o.Region, label.Options{})
	if err != nil {
		c.labelNote = "No panel: " + strings.TrimPrefix(err.Error(), "label: ") + "."
	} else {
		c.label = l
	}
	c.allergens = allergensOf(r, o.Region)
	c.cautions = cautionsOf(d, r, c.allergens)
	return c
}

// strap says what the tub is.
func strap(r *model.Result) string {
	dense, foam := r.Dense.Portion.MassG > 0, r.Foam.Portion.MassG > 0
	switch {
	case dense && foam:
		return fmt.Sprintf("%.0f %% %s through %s, by volume", 100*r.Blend.FoamVolume, foamName(r), denseName(r))
	case dense:
		return "a tub of " + denseName(r) + " alone"
	case foam:
		return "a tub of " + foamName(r) + " alone"
	}
	return "an empty tub"
}

func denseName(r *model.Result) string {
	if uses(r, design.DensePart, isYolky) {
		return "cooked egg-yolk custard"
	}
	return "cooked base"
}

func foamName(r *model.Result) string {
	white := uses(r, design.FoamPart, func(in *ingredient.Ingredient) bool { return strings.HasPrefix(in.ID, "egg_white") })
	switch {
	case white && r.Syrup.Present:
		return "cooked-sugar egg-white foam"
	case white:
		return "egg-white foam"
	}
	return "foam"
}

func isYolky(in *ingredient.Ingredient) bool {
	return strings.HasPrefix(in.ID, "egg_yolk") || strings.HasPrefix(in.ID, "egg_whole")
}

// uses reports whether a line of the part that weighs something is such an
// ingredient.
func uses(r *model.Result, p design.Part, such func(*ingredient.Ingredient) bool) bool {
	return first(r, such, p) != nil
}

// first returns the first such ingredient of the given parts, nil if none.
func first(r *model.Result, such func(*ingredient.Ingredient) bool, parts ...design.Part) *ingredient.Ingredient {
	for _, l := range r.Lines {
		for _, p := range parts {
			if l.Part == p && l.Grams > 0 && such(l.Ingredient) {
				return l.Ingredient
			}
		}
	}
	return nil
}

var allParts = []design.Part{design.DensePart, design.FoamPart, design.SyrupPart}

// partsOf lists the lines, in grams for the batch and in household measures.
func partsOf(d design.Design, r *model.Result, region label.Region) []part {
	size, sizeErr := egg.Find(d.Eggs.System, d.Eggs.Size)
	var out []part
	for _, p := range allParts {
		list := part{title: [...]string{"Custard", "Foam: into the bowl", "Foam: syrup"}[p]}
		if p == design.DensePart && denseName(r) == "cooked base" {
			list.title = "Base"
		}
		sum := 0.0
		for _, l := range r.Lines {
			if l.Part != p || !(l.Grams > 0) {
				continue
			}
			sum += l.Grams
			written := d.Lines(p)[l.Index]
			entry := row{name: plain(l.Ingredient.Name), note: plain(written.Note)}
			entry.grams, entry.unit = weight(l.Grams)
			if sizeErr == nil {
				entry.measure = eggsIn(l.Ingredient.ID, l.Grams, size)
			}
			if entry.measure == "" {
				entry.measure = household(l.Ingredient, l.Grams, region)
			}
			list.rows = append(list.rows, entry)
		}
		if len(list.rows) == 0 {
			continue
		}
		list.total = gramsUnit(sum)
		switch p {
		case design.DensePart:
			if off := r.Dense.WaterOff * r.Dense.Portion.Factor; off > 0.5 {
				list.note = fmt.Sprintf("cooked down to %s", gramsUnit(r.Dense.Portion.MadeG))
			}
		case design.SyrupPart:
			list.note = "boiled to " + printed.Temperature(d.Foam.Syrup.CookTemperatureC)
		}
		out = append(out, list)
	}
	return out
}

// figuresOf tabulates the figures of phases and tub.
func figuresOf(d design.Design, r *model.Result) []figure {
	dense, foam := r.Dense.Portion.MassG > 0, r.Foam.Portion.MassG > 0
	var out []figure
	add := func(name string, of func(*model.Phase) string, tub string) {
		f := figure{name: name, dense: "–", foam: "–", tub: tub}
		if !dense && !foam && tub != "" {
			f.tub = "–" // of nothing there is no figure, not even nought
		}
		if dense {
			f.dense = of(&r.Dense)
		}
		if foam {
			f.foam = of(&r.Foam)
		}
		out = append(out, f)
	}
	percent := func(v float64) string { return number(v, 1) + " %" }
	amount := func(c ingredient.Column) (func(*model.Phase) string, string) {
		word := func(a ingredient.Amount) string {
			switch {
			case a.Nothing():
				return "–"
			case !a.Complete():
				return "≥ " + percent(a.Known)
			}
			return percent(a.Known)
		}
		return func(p *model.Phase) string { return word(p.PartPercent(c)) }, word(r.Nutrition.Per100G[c])
	}
	at := "at " + printed.Temperature(d.Serving.TemperatureC)
	add("Weight made", func(p *model.Phase) string { return gramsUnit(p.Portion.MassG) }, gramsUnit(r.Blend.MassG))
	add("Volume filled", func(p *model.Phase) string { return volume(p.Portion.VolumeML) }, volume(r.Blend.VolumeML))
	add("Overrun", func(p *model.Phase) string { return number(100*p.Body.Overrun, 0) + " %" }, "")
	add("Density", func(p *model.Phase) string { return number(p.Body.Density(), 2) + " g/mL" }, number(r.Blend.DensityGPerML, 2)+" g/mL")
	add("Total solids", func(p *model.Phase) string { return percent(p.Body.Mix.Solids()) }, percent(r.TubMean(func(p *model.Phase) float64 { return p.Body.Mix.Solids() })))
	f, tub := amount(ingredient.Fat)
	add("Fat", f, tub)
	f, tub = amount(ingredient.MSNF)
	add("Milk solids-not-fat", f, tub)
	f, tub = amount(ingredient.TotalSugars)
	add("Sugars", f, tub)
	add("Sweetness, as sucrose", func(p *model.Phase) string { return percent(p.SweetnessPercent) }, percent(r.Blend.SweetnessPercent))
	add("Starts to freeze", func(p *model.Phase) string { return celsius1(p.FreezingPoint.Value) }, "")
	add("Water frozen "+at, func(p *model.Phase) string {
		return number(100*p.WaterFrozen.Value, 0) + " %"
	}, number(100*r.Blend.WaterFrozen, 0)+" %")
	add("Ice by volume", func(p *model.Phase) string { return number(100*p.State.IceVolume, 0) + " %" }, number(100*r.Blend.IceVolume, 0)+" %")
	add("Hardness "+at, func(p *model.Phase) string { return kPa(p.Yield.Value) }, "")
	add("Hardness band, kPa", func(p *model.Phase) string { return fmt.Sprintf("%s–%s", sig(p.Yield.Low), sig(p.Yield.High)) }, "")
	add("On the spoon", func(p *model.Phase) string { return p.Word.Name }, "")
	both := "never together"
	if r.Blend.Both.OK {
		both = bare(scoop(r.Blend.Both))
	}
	if !dense || !foam {
		both = ""
	}
	add("Eats well, °C", func(p *model.Phase) string { return bare(scoop(p.Scoop)) }, both)
	return out
}

// restsOf says what the verdict rests on and how sure it is.
func restsOf(d design.Design, r *model.Result) []string {
	var out []string
	for _, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		if p.Portion.MassG == 0 {
			continue
		}
		band := p.Body.Role.Band()
		s := fmt.Sprintf("The %s comes to %s (%s to %s) at %s and eats well from %s to %s", p.Body.Role,
			kPa(p.Yield.Value), sig(p.Yield.Low), sig(p.Yield.High), printed.Temperature(d.Serving.TemperatureC), sig(band.Soft), kPa(band.Firm))
		if p.Scoop.OK {
			s += ": " + scoop(p.Scoop)
		}
		out = append(out, s+".")
	}
	for _, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		if f := p.FreezingPoint; p.Portion.MassG > 0 && !math.IsNaN(f.Value) {
			out = append(out, fmt.Sprintf("The %s starts to freeze at %s (%s to %s); %.0f %% of its water is ice when served.",
				p.Body.Role, celsius1(f.Value), celsius1(f.Low), celsius1(f.High), 100*p.WaterFrozen.Value))
		}
	}
	return append(out, fmt.Sprintf("Hardness is a scale in kPa anchored on commercial ice creams (Briggs, Steffe and Ustunol 1996, J. Dairy Sci. 79:527); "+
		"batches scatter by a factor of about %d either way: read it as a word.", phase.Scatter))
}

// allergensOf names the allergens in one line.
func allergensOf(r *model.Result, region label.Region) string {
	of := r.Allergens.US
	if region == label.EU {
		of = r.Allergens.EU
	}
	var words []string
	for _, a := range of {
		class, kind, _ := strings.Cut(strings.ReplaceAll(a, "_", " "), ":")
		if kind != "" {
			class = kind
		}
		words = append(words, class)
	}
	return strings.Join(words, ", ")
}

// share returns the percent of species s in the finished tub.
func share(r *model.Result, s mix.Species) float64 {
	return r.TubMean(func(p *model.Phase) float64 { return p.Percent(s) })
}

// Numbers as the card prints them.

func number(v float64, places int) string { return chart.Number(v, places) }

// weight prints a weight as a scale shows it, with its unit.
func weight(g float64) (figure, unit string) {
	switch {
	case g < 9.95:
		return number(g, 1), "g"
	case g < 99999.5:
		return grouped(g), "g"
	case g < 999950:
		return number(g/1000, 1), "kg"
	}
	return grouped(g / 1000), "kg"
}

func gramsUnit(g float64) string {
	n, unit := weight(g)
	return n + " " + unit
}

// volume prints mL, and L from a hundred.
func volume(ml float64) string {
	if ml < 99999.5 {
		return grouped(ml) + " mL"
	}
	return grouped(ml/1000) + " L"
}

// grouped prints a whole number, from 10 000 up with a thin gap at the
// thousands.
func grouped(v float64) string {
	s := number(v, 0)
	if v < 9999.5 {
		return s
	}
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "\u2009" + s[i:]
	}
	return s
}

// celsius prints a temperature someone chose, celsius1 one that was computed.
func celsius1(t float64) string {
	if math.IsNaN(t) {
		return "not at all"
	}
	return number(t, 1) + " °C"
}

// sig prints a hardness to two figures.
func sig(v float64) string {
	switch {
	case v < 0.995:
		return number(v, 2)
	case v < 9.95:
		return number(v, 1)
	}
	return number(v, 0)
}

func kPa(v float64) string { return sig(v) + " kPa" }

// scoop prints a range of temperatures, cold end first.
func scoop(s model.ScoopRange) string {
	switch {
	case !s.OK:
		return "never"
	case s.From <= model.RailLow && s.To >= model.RailHigh:
		return fmt.Sprintf("%s to %s", number(model.RailLow, 0), printed.Temperature(model.RailHigh))
	}
	return fmt.Sprintf("%s to %s", number(s.From, 0), printed.Temperature(math.Round(s.To)))
}

// bare takes the unit off a temperature whose column names it.
func bare(s string) string { return strings.TrimSuffix(s, " °C") }

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
