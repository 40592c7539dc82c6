package report

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/show/say"
)

// WriteText writes the evaluation as a page for a terminal.
func (e Evaluation) WriteText(w io.Writer) error {
	p := &page{w: w}
	p.line("%s (%s), served at %s", e.Name, e.File, plain.Temperature(float64(e.Serving)))
	p.line("%s", e.Verdict.Sentence)
	if e.Verdict.Advice != "" {
		p.line("%s", e.Verdict.Advice)
	}
	p.line("")
	p.phases(&e.Dense, &e.Foam.Phase)
	if s := e.Foam.Syrup; s != nil {
		p.line("")
		p.line("Syrup: %s g at %s %% solids (%s to %s), boiling at %s °C; %s g of water boiled off.",
			s.MassG.text(1), s.SolidsPercent.text(1), s.SolidsBand.Low.text(1), s.SolidsBand.High.text(1),
			s.BoilingPointC.text(1), s.WaterOffG.text(1))
	}
	p.line("")
	p.tub(&e.Blend)
	p.line("")
	p.nutrition(&e.Nutrition)
	p.line("")
	p.line("Allergens (US): %s", orNone(say.Allergens(e.Allergens)))
	p.line("Allergens (EU, UK): %s", orNone(say.Allergens(e.AllergensEU)))
	if len(e.Unstated) > 0 {
		p.line("Allergens not stated, which is not the same as none: %s", strings.Join(e.Unstated, ", "))
	}
	if e.Cost.Batch.known() {
		p.line("")
		p.line("Ingredients cost %s, %s a tub, in your own money.", e.Cost.Batch.text(2), e.Cost.PerTub.text(2))
		if len(e.Cost.Missing) > 0 {
			p.line("That is without a price for %s.", strings.Join(e.Cost.Missing, "; "))
		}
	}
	p.line("")
	p.lines(e.Lines)
	if len(e.Warnings) > 0 {
		p.line("")
		for _, x := range e.Warnings {
			p.line("%s: %s [%s, %s]", x.Severity, x.Message, x.Code, x.Where)
		}
	}
	return p.err
}

func orNone(words []string) string {
	if len(words) == 0 {
		return "none known"
	}
	return strings.Join(words, ", ")
}

// page writes until the first error.
type page struct {
	w   io.Writer
	err error
}

func (p *page) line(format string, args ...any) {
	if p.err == nil {
		_, p.err = fmt.Fprintf(p.w, format+"\n", args...)
	}
}

// table writes rows whose cells are parted by tabs, numbers to the right.
func (p *page) table(rows []string) {
	if p.err != nil {
		return
	}
	t := tabwriter.NewWriter(p.w, 0, 0, 2, ' ', tabwriter.AlignRight)
	for _, r := range rows {
		fmt.Fprintln(t, r+"\t")
	}
	p.err = t.Flush()
}

// left pads a word on the right, so that a column of words aligns left in a
// table that aligns right.
func left(s string, width int) string {
	if n := len([]rune(s)); n < width {
		return s + strings.Repeat(" ", width-n)
	}
	return s
}

func (p *page) phases(dense, foam *Phase) {
	const width = 30
	rows := []string{left("", width) + "\tcustard\tfoam"}
	add := func(name string, decimals int, figure func(*Phase) Number) {
		rows = append(rows, left(name, width)+"\t"+figure(dense).text(decimals)+"\t"+figure(foam).text(decimals))
	}
	words := func(name string, word func(*Phase) string) {
		rows = append(rows, left(name, width)+"\t"+word(dense)+"\t"+word(foam))
	}
	add("mass, g", 1, func(x *Phase) Number { return x.MassG })
	add("volume, mL", 0, func(x *Phase) Number { return x.VolumeML })
	add("density, g/mL", 3, func(x *Phase) Number { return x.DensityGPerML })
	add("overrun, %", 0, func(x *Phase) Number { return x.OverrunPercent })
	add("water, %", 1, func(x *Phase) Number { return x.WaterPercent })
	add("total solids, %", 1, func(x *Phase) Number { return x.TotalSolidsPercent })
	add("fat, %", 1, func(x *Phase) Number { return x.FatPercent })
	add("milk solids-not-fat, %", 1, func(x *Phase) Number { return x.MSNFPercent })
	add("sugars, %", 1, func(x *Phase) Number { return x.SugarsPercent })
	for _, kinds := range [...][]mix.Species{mix.Sugars[:], mix.Polyols[:]} {
		for _, k := range kinds {
			_, in := dense.Sugars[k.String()]
			if _, also := foam.Sugars[k.String()]; in || also {
				add("  "+k.String(), 1, func(x *Phase) Number { return x.Sugars[k.String()] })
			}
		}
	}
	add("initial freezing point, °C", 2, func(x *Phase) Number { return x.FreezingPointC })
	add("water frozen, %", 1, func(x *Phase) Number { return x.WaterFrozenPercent })
	words("  from … to", func(x *Phase) string {
		return x.Bands.WaterFrozenPercent.Low.text(1) + " … " + x.Bands.WaterFrozenPercent.High.text(1)
	})
	add("ice by volume without air, %", 1, func(x *Phase) Number { return x.IceVolumePercent })
	add("hardness, kPa", 2, func(x *Phase) Number { return x.Hardness })
	words("  from … to", func(x *Phase) string {
		return x.Bands.Hardness.Low.text(2) + " … " + x.Bands.Hardness.High.text(2)
	})
	words("for the spoon", func(x *Phase) string {
		if x.Texture == nil {
			return "–"
		}
		return *x.Texture
	})
	words("eats well", func(x *Phase) string { return x.Range.words() })
	add("sweetness, % sucrose", 1, func(x *Phase) Number { return x.SweetnessPercent })
	add("  g sucrose per 15 mL spoon", 2, func(x *Phase) Number { return x.SweetnessPerSpoon })
	add("left over, g", 1, func(x *Phase) Number { return x.LeftOverG })
	p.table(rows)
}

func (p *page) tub(b *Blend) {
	p.line("Tub: %s g in %s mL, %s tubs filled; foam %s %% by volume, %s %% by mass.",
		b.MassG.text(1), b.VolumeML.text(0), b.TubsFilled.text(2), b.FoamVolumePercent.text(1), b.FoamMassPercent.text(1))
	p.line("Solids %s %%, fat %s %%, milk solids-not-fat %s %%, sugars %s %%; %s %% of the water frozen, %s %% ice by volume without air.",
		b.TotalSolidsPercent.text(1), b.FatPercent.text(1), b.MSNFPercent.text(1), b.SugarsPercent.text(1), b.WaterFrozenPercent.text(1), b.IceVolumePercent.text(1))
	p.line("Sweetness %s %% sucrose, %s g per 15 mL spoon; %s",
		b.SweetnessPercent.text(1), b.SweetnessPerSpoon.text(2), say.Sweeter(plain, float64(b.SweetnessContrast)))
	places := 1
	if b.HardnessContrast >= 10 { // each hardness is good to a factor 2
		places = 0
	}
	both := "at no temperature do both eat well"
	if b.Range.From.known() {
		both = "both eat well from " + b.Range.words()
	}
	if b.HardnessContrast.known() {
		p.line("The custard is %s times as hard as the foam; %s.", b.HardnessContrast.text(places), both)
	}
}

func (p *page) nutrition(n *Nutrition) {
	const width = 20
	rows := []string{left("", width) + "\tper 100 g\tper " + n.ServingG.text(0) + " g serving"}
	for i, k := range nutrients {
		mark := ""
		for _, g := range n.Incomplete {
			if g.Nutrient == k.key {
				mark = "≥ "
			}
		}
		decimals := 1
		if k.unit == "mg" || k.unit == "kcal" {
			decimals = 0
		}
		if k.key == "iron_mg" || k.key == "vitamin_d_ug" {
			decimals = 2
		}
		cell := func(v Number) string {
			if !v.known() {
				return v.text(0)
			}
			return mark + v.text(decimals)
		}
		rows = append(rows, left(k.name+", "+k.unit, width)+"\t"+cell(n.Per100G[i])+"\t"+cell(n.PerServing[i]))
	}
	p.table(rows)
	if len(n.Incomplete) > 0 {
		p.line("≥ marks what some ingredient leaves unknown; – that nothing is known.")
	}
}

func (p *page) lines(lines []Line) {
	width := 0
	for _, l := range lines {
		width = max(width, len([]rune(l.Part+": "+l.Name)))
	}
	rows := []string{left("", width) + "\tg\ta gram more: sweetness, points\thardness, %"}
	for _, l := range lines {
		rows = append(rows, left(l.Part+": "+l.Name, width)+"\t"+l.Grams.text(1)+"\t"+l.PerGram.SweetnessPercent.text(3)+"\t"+l.PerGram.HardnessPercent.text(2))
	}
	p.table(rows)
}
