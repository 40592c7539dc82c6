package card

import (
	"math"
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
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
	checks   []say.Titled // what the scale should show on the way
	steps    []say.Titled
	figures  []figure
	rests    []string // the figures that the verdict rests on
	warnings []string

	label     *label.Label
	labelNote string // why there is no label
	allergens string // in one line
	cautions  []say.Titled
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
	c.strap = say.Strap(printed, r)
	c.makes = printed.Count(d.Tubs.Count, "tub", "") + " of " + printed.Volume(d.Tubs.VolumeML) + ", filled to " + printed.Percent(d.Tubs.FillPercent, 0)
	c.parts = partsOf(d, r, o.Region)
	c.checks = say.Checks(printed, d, r)
	c.steps = say.Steps(printed, d, r, o.Cold)
	c.figures = figuresOf(d, r)
	c.rests = say.Rests(printed, d, r)
	if o.Cold != nil {
		c.rests = append(c.rests, say.Kitchens(printed, o.Cold))
	}
	for _, w := range r.Warnings {
		if w.Severity > model.Note && !w.Handled {
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
	c.cautions = say.Cautions(printed, d, r, c.allergens)
	return c
}

var allParts = []design.Part{design.DensePart, design.FoamPart, design.SyrupPart}

// partsOf lists the lines, in grams for the batch and in household measures.
func partsOf(d design.Design, r *model.Result, region label.Region) []part {
	size, sizeErr := egg.Find(d.Eggs.System, d.Eggs.Size)
	var out []part
	for _, p := range allParts {
		list := part{title: [...]string{"Custard", "Foam: into the bowl", "Foam: syrup"}[p]}
		if p == design.DensePart && !say.IsCustard(r) {
			list.title = "Base"
		}
		sum := 0.0
		for _, l := range r.Lines {
			if l.Part != p || !(l.Grams > 0) {
				continue
			}
			sum += l.Grams
			written := d.Lines(p)[l.Index]
			entry := row{name: plain(say.Kitchen(l.Ingredient)), note: plain(written.Note)}
			entry.grams, entry.unit = printed.MassParts(l.Grams)
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
		list.total = printed.Mass(sum)
		switch p {
		case design.DensePart:
			if off := r.Dense.WaterOff * r.Dense.Portion.Factor; off > 0.5 {
				list.note = "cooked down to " + printed.Mass(r.Dense.Portion.MadeG)
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
	percent := func(v float64) string { return printed.Percent(v, 1) }
	amount := func(c ingredient.Column) (func(*model.Phase) string, string) {
		word := func(a ingredient.Amount) string {
			switch {
			case a.Nothing():
				return "–"
			case !a.Complete():
				return say.AtLeast(percent(a.Known))
			}
			return percent(a.Known)
		}
		return func(p *model.Phase) string { return word(p.PartPercent(c)) }, word(r.Nutrition.Per100G[c])
	}
	at := "at " + printed.Temperature(d.Serving.TemperatureC)
	add("Weight made", func(p *model.Phase) string { return printed.Mass(p.Portion.MassG) }, printed.Mass(r.Blend.MassG))
	add("Volume filled", func(p *model.Phase) string { return printed.Volume(p.Portion.VolumeML) }, printed.Volume(r.Blend.VolumeML))
	add("Overrun", func(p *model.Phase) string { return printed.Percent(100*p.Body.Overrun, 0) }, "")
	add("Density", func(p *model.Phase) string { return printed.Density(p.Body.Density()) }, printed.Density(r.Blend.DensityGPerML))
	add("Total solids", func(p *model.Phase) string { return percent(p.Body.Mix.Solids()) }, percent(r.TubMean(func(p *model.Phase) float64 { return p.Body.Mix.Solids() })))
	f, tub := amount(ingredient.Fat)
	add("Fat", f, tub)
	f, tub = amount(ingredient.MSNF)
	add("Milk solids-not-fat", f, tub)
	f, tub = amount(ingredient.TotalSugars)
	add("Sugars", f, tub)
	add("Sweetness, as sucrose", func(p *model.Phase) string { return percent(p.SweetnessPercent) }, percent(r.Blend.SweetnessPercent))
	add("Starts to freeze", func(p *model.Phase) string { return freezing(p.FreezingPoint.Value) }, "")
	add("Water frozen "+at, func(p *model.Phase) string {
		return printed.Percent(100*p.WaterFrozen.Value, 0)
	}, printed.Percent(100*r.Blend.WaterFrozen, 0))
	add("Ice by volume", func(p *model.Phase) string { return printed.Percent(100*p.State.IceVolume, 0) }, printed.Percent(100*r.Blend.IceVolume, 0))
	add("Hardness "+at, func(p *model.Phase) string { return printed.Hardness(p.Yield.Value) }, "")
	add("Hardness between", func(p *model.Phase) string { return printed.HardnessSpan(p.Yield.Low, p.Yield.High) }, "")
	add("On the spoon", func(p *model.Phase) string { return p.Word.Name }, "")
	both := "never together"
	if r.Blend.Both.OK {
		both = say.Scoops(printed, r.Blend.Both)
	}
	if !dense || !foam {
		both = ""
	}
	add("Eats well", func(p *model.Phase) string { return say.Scoops(printed, p.Scoop) }, both)
	return out
}

// allergensOf names the allergens in one line.
func allergensOf(r *model.Result, region label.Region) string {
	of := r.Allergens.US
	if region == label.EU {
		of = r.Allergens.EU
	}
	return strings.Join(say.Allergens(of), ", ")
}

// freezing is where a phase starts to freeze.
func freezing(c float64) string {
	if math.IsNaN(c) {
		return "not at all"
	}
	return printed.TemperatureTo(c, 1)
}
