package main

import (
	"fmt"
	"strings"

	"ripplewright/internal/show/figure"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
)

// helpJSON tells the keys of evaluate --json; those of figures come from the
// table of figures.
func helpJSON() string {
	var b strings.Builder
	b.WriteString(say.T(`evaluate --json writes one object a design. A figure that is unknown, or of which
there is none, is null; numbers are numbers. Masses are g and volumes mL in
all tubs together, but for those of batch and of the lines, which are of the
whole batch as made; temperatures are °C, hardness kPa; percent is by mass
unless the key says volume.

file, name, serving_temperature_c
verdict            good, sentence, advice
`))
	section := func(heading say.Message, t *figure.Table, takes func(f *figure.Row) bool) {
		b.WriteString(heading.String() + "\n")
		for i := range t.Rows {
			f := &t.Rows[i]
			if !takes(f) {
				continue
			}
			about := say.Of(f.Name)
			if f.Help != "" {
				about += ": " + report.Reads.Text(say.Of(f.Help))
			}
			fmt.Fprintf(&b, "  %-33s%s\n", f.Key, about)
		}
	}
	all := func(*figure.Row) bool { return true }
	section("dense, foam        the two phases", &figure.Phases, func(f *figure.Row) bool { return f.In(figure.Custard) })
	b.WriteString(say.T(`  sugars_by_kind_percent           each sugar and sugar alcohol that is present, as the
                                   freezing model has it
  bands                            low and high of some of these figures, for what the
                                   composition leaves unknown and the model leaves open,
                                   and for what kitchens make of the recipe: boil, stove
                                   and air; for hardness, the scatter between batches
  bounds                           of each figure that is not exact: at_least and at_most;
                                   the figure itself is then only its known part, or the
                                   end beyond which nothing was tried. at_most is null
                                   where nothing bounds it
`))
	section("foam.syrup         null without a syrup", &figure.Syrup, all)
	b.WriteString(say.T(`  solids_percent_band              low and high: what published tables disagree by, or
                                   what batches came to
  cook_temperature_reached         false: it was thicker from the start
`))
	section("blend              the tub; also sugars_by_kind_percent, bands and bounds", &figure.Phases, func(f *figure.Row) bool { return f.In(figure.Tub) })
	b.WriteString(say.T(`  scoop_contrast_at_least          true: the foam is never too firm from −24 °C up,
                                   so that is a lower bound
`))
	section("batch              dense and foam, each with", &figure.Batch, all)
	section("nutrition          energy_method and", &figure.Servings, all)
	section("  per_100_g, per_serving: the known part, null where nothing is known", &figure.Nutrition, all)
	b.WriteString(say.T(`  incomplete                       nutrient, ingredients that leave it unknown,
                                   upper_per_100_g (null where nothing bounds it)
allergens, allergens_eu            as US and EU law group them, of every line
allergens_not_stated_for           ids of own ingredients of which nobody said what
                                   they carry, which is not the same as none
`))
	section("lines              part, index, ingredient, name and", &figure.Lines, all)
	section("  per_gram: what a gram more, as written, changes in its phase", &figure.PerGram, all)
	section("cost               null without any price; currency: as the price list has it;\n                   missing: names of those without a price", &figure.Cost, all)
	section("eggs", &figure.Eggs, all)
	b.WriteString(say.T(`warnings           code, message, where, severity (note, caution or serious)
learnt             of batches, about the custard's hardness: readings, hardness_factor over the
                   law's, scatter_factor either way; and recipe, by factor (syrup,
                   stove_loss, custard_air, foam_air): what it came to beyond what is
                   written, and where 19 in 20 batches lie; null where nothing is.
                   Bands are then of that
`))
	return b.String()
}
