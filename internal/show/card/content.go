package card

import (
	"strings"

	"ripplewright/internal/show/draw/typeset"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/label"
	"ripplewright/internal/show/figure"
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
	good  bool
	reads say.Style

	parts    []part
	checks   []say.Titled // what the scale should show on the way
	steps    []say.Titled
	blanks   []string     // of each step, what is read off there; "" for nothing
	day      []say.DayRow // by the clock; none where no day was found
	figures  []figureRow
	rests    []string // the figures that the verdict rests on
	warnings []string
	cost     string // "" where no ingredient has a price

	label     *label.Label
	labelNote string // why there is no label
	allergens string // in one line
	cautions  []say.Titled

	tubs                 string  // what it makes, in short
	spanMinutes, byHands float64 // from the first step to the last, and of work in it; 0: no day was found
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
	grams, unit, ounces string // the weight
	name, measure, note string
}

// weight is all of a row's weight: "543 g (19.1 oz)".
func (r row) weight() string {
	if r.ounces == "" {
		return r.grams + " " + r.unit
	}
	return r.grams + " " + r.unit + " (" + r.ounces + ")"
}

// figureRow is a row of the table of figures, for the custard, the foam and the
// tub.
type figureRow struct{ name, dense, foam, tub string }

// storeC is where the tubs are kept: in the kitchen's freezer, or an ordinary
// one.
func storeC(c *cold.Answer) float64 {
	if c == nil {
		return -18
	}
	return c.Profile.Freezer.AirC
}

func kitchenOf(c *cold.Answer) process.Kitchen {
	if c == nil {
		return process.Default()
	}
	return process.KitchenOf(c.Profile)
}

// iceOf is the ice of the same plan; nil without one.
func iceOf(r *model.Result, c *cold.Answer) *icy.Answer {
	if c == nil {
		return nil
	}
	told, err := icy.Tell(r, c, icy.Options{})
	if err != nil { // the zero Options has none
		return nil
	}
	return &told
}

// contentOf gathers what the card of an evaluated design says.
func contentOf(d design.Design, r *model.Result, o Options) content {
	c := content{
		reads:   o.Style,
		name:    typeset.Plain(d.Name),
		notes:   notesOf(d.Notes),
		serve:   o.Style.Temperature(d.Serving.TemperatureC),
		verdict: typeset.Plain(say.Verdict(o.Style, r.Verdict)),
		advice:  typeset.Plain(say.Advice(o.Style, r.Verdict, o.Remedies, o.Cold)),
		good:    r.Verdict.Good,
	}
	if c.name == "" {
		c.name = say.T("Untitled")
	}
	c.strap = say.Strap(o.Style, r)
	c.tubs = say.T("%s of %s", o.Style.Count(d.Tubs.Count, "tub", "tubs"), o.Style.Volume(d.Tubs.VolumeML))
	c.makes = say.T("%s, filled to %s", c.tubs, o.Style.Percent(d.Tubs.FillPercent, 0))
	c.parts = partsOf(d, r, o)
	making := process.Of(d, r, kitchenOf(o.Cold), storeC(o.Cold), o.Cold)
	ice := iceOf(r, o.Cold)
	how := say.Making{Design: d, Result: r, Process: &making, Cold: o.Cold, Ice: ice, Brief: true}
	c.checks = say.Checks(o.Style, how)
	c.steps = say.Steps(o.Style, how)
	for i := range making.Steps {
		c.blanks = append(c.blanks, say.Blanks(o.Style, making.Readings(making.Steps[i].Code)))
	}
	c.lay(&making)
	c.figures = figuresOf(o.Style, r)
	c.rests = say.Rests(o.Style, d, r)
	if o.Cold != nil {
		c.rests = append(c.rests, say.Kitchens(o.Style, o.Cold, ice))
	}
	for _, w := range r.Warnings {
		if w.Severity > model.Note && !w.Handled {
			c.warnings = append(c.warnings, typeset.Plain(say.Warning(o.Style, w)))
		}
	}
	if r.Cost.Priced {
		c.cost = typeset.Plain(say.Cost(o.Style, &r.Cost)) + " " + say.CostRests.String()
	}
	l, err := label.For(r.Food(d), o.Region, label.Options{})
	if err != nil {
		c.labelNote = say.T("No panel: %s.", strings.TrimPrefix(say.Flaw(err), "label: "))
	} else {
		c.label = l
	}
	c.allergens = allergensOf(r, o.Region)
	c.cautions = append(say.MakingCautions(o.Style, how, false), say.Cautions(o.Style, d, r, c.allergens)...)
	return c
}

// partsOf lists the lines, in grams for the batch and in household measures.
func partsOf(d design.Design, r *model.Result, o Options) []part {
	size, sizeErr := egg.Find(d.Eggs.System, d.Eggs.Size)
	var out []part
	for _, p := range design.Parts {
		list := part{title: [...]string{say.T("Custard"), say.T("Foam: into the bowl"), say.T("Foam: syrup")}[p]}
		if p == design.DensePart && !say.IsCustard(r) {
			list.title = say.T("Base")
		}
		sum := 0.0
		for _, l := range r.Lines {
			if l.Part != p || !(l.Grams > 0) {
				continue
			}
			sum += l.Grams
			written := d.Lines(p)[l.Index]
			entry := row{name: typeset.Plain(say.Kitchen(l.Ingredient)), note: cut(typeset.Plain(written.Note), mostLineNote)}
			entry.grams, entry.unit, entry.ounces = o.Style.Weighing(l.Grams)
			if sizeErr == nil {
				entry.measure = say.Pieces(o.Style, l.Ingredient.ID, l.Grams, size)
			}
			if entry.measure == "" {
				entry.measure = say.Household(o.Style, l.Ingredient, l.Grams)
			}
			list.rows = append(list.rows, entry)
		}
		if len(list.rows) == 0 {
			continue
		}
		list.total = o.Style.Mass(sum)
		switch p {
		case design.DensePart:
			if off := r.Dense.WaterOffG * r.Dense.Portion.Factor; off > 0.5 {
				list.note = say.T("cooked down to %s", o.Style.Mass(r.Dense.Portion.MadeG))
			}
		case design.SyrupPart:
			list.note = say.T("boiled to %s", o.Style.Temperature(d.Foam.Syrup.CookTemperatureC))
		}
		out = append(out, list)
	}
	return out
}

// cardFigures are the figures that the card has room for; the band of the
// hardness stands in what the verdict rests on.
var cardFigures = [...]string{
	"mass_g", "volume_ml", "overrun_percent", "density_g_per_ml", "total_solids_percent", "fat_percent", "msnf_percent", "sugars_percent",
	"sweetness_sucrose_percent", "initial_freezing_point_c", "water_frozen_percent", "ice_volume_percent", "hardness", "texture",
	"scoop_from_c", "scoop_to_c",
}

// figuresOf tabulates the figures of phases and tub. A phase that is in no tub
// has none.
func figuresOf(s say.Style, r *model.Result) []figureRow {
	var out []figureRow
	in := [...]bool{r.Dense.InTub(), r.Foam.InTub(), r.Dense.InTub() || r.Foam.InTub()}
	for _, key := range cardFigures {
		f := figure.Phases.Row(key)
		cells := [...]string{say.Unknown, say.Unknown, say.Unknown}
		for i := range cells {
			if !f.In(i) {
				cells[i] = ""
			} else if in[i] {
				cells[i] = f.Text(s, f.Of(r, i))
			}
		}
		out = append(out, figureRow{say.Of(f.Name), cells[figure.Custard], cells[figure.Foam], cells[figure.Tub]})
	}
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
