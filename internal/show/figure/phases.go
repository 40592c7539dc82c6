package figure

import (
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/show/say"
)

// The columns of Phases, Kinds and Batch.
const (
	Custard = iota
	Foam
	Tub
)

// Phases holds the figures of both phases and of the tub.
var Phases = Table{Key: "dense, foam, blend", Columns: []string{"custard", "foam", "tub"}, Rows: []Row{
	{Key: "mass_g", Name: "Mass in the tubs", Short: "mass", Unit: Mass, Step: 1,
		Help: "as filled, in all tubs together", Origin: filling, from: made(
			func(p *model.Phase) float64 { return p.Portion.MassG }, func(r *model.Result) float64 { return r.Blend.MassG })},
	{Key: "volume_ml", Name: "Volume in the tubs", Short: "volume", Unit: Volume, Step: 1,
		Help: "as filled, at {4 °C}, with the air", Origin: filling, from: made(
			func(p *model.Phase) float64 { return p.Portion.VolumeML }, func(r *model.Result) float64 { return r.Blend.VolumeML })},
	{Key: "density_g_per_ml", Name: "Density", Short: "density", Unit: GramsPerML, Step: 0.01,
		Help: "as filled, at {4 °C}, with the air", Origin: density, from: each(
			func(p *model.Phase) Value { return exact(p.Body.GPerML()) },
			func(r *model.Result) Value { return exact(r.Blend.DensityGPerML) })},
	{Key: "overrun_percent", Name: "Overrun", Short: "overrun", Unit: Percent, Step: 1,
		Help: "air, of the volume without it", Origin: Origin{
			Inputs: "the overrun that you set", Equation: "overrun = 100 × (mass of a cup of mix ÷ mass of a cup of product − 1)",
			Source: "H. D. Goff, University of Guelph, \"Figuring package overrun by weight, no particulates\"",
			Band:   "a fifth either way, common practice, no source; what your batches came to, where a cup was weighed"},
		from: phasesOnly(func(p *model.Phase) Value { return exact(p.OverrunPercent) })},
	{Key: "water_percent", Name: "Water", Short: "water", Unit: Percent, Step: 0.1, WithBand: true,
		Help: "water in the finished phase, frozen or not", Origin: balance, from: share(func(m *mix.Mix) float64 { return m.Grams[mix.Water] })},
	{Key: "total_solids_percent", Name: "Total solids", Short: "solids", Unit: Percent, Step: 0.1, WithBand: true,
		Help: "all but water and alcohol", Origin: balance, from: share(func(m *mix.Mix) float64 { return m.SolidsG() })},
	{Key: "fat_percent", Name: "Fat", Short: "fat", Unit: Percent, Step: 0.1,
		Help: "as the ingredients' records state it", Origin: records, from: part(ingredient.Fat)},
	{Key: "msnf_percent", Name: "Milk solids-not-fat", Short: "milk solids", Unit: Percent, Step: 0.1,
		Help: "msnf: milk solids-not-fat", Origin: records, from: part(ingredient.MSNF)},
	{Key: "sugars_percent", Name: "Sugars", Short: "sugars", Unit: Percent, Step: 0.1,
		Help: "as a label counts them: the ingredients' records, as weighed", Origin: records, from: part(ingredient.TotalSugars)},
	{Key: "mono_disaccharides_percent", Name: "Sugars in the syrup", Short: "dissolved sugars", Unit: Percent, Step: 0.1, WithBand: true,
		Help: "mono- and disaccharides as the freezing model has them: an unknown share read in the middle, sucrose split where it is inverted",
		Origin: Origin{
			Inputs: "grams of each line, its sugars by kind, the percent inverted", Equation: "100 × Σ mono- and disaccharides ÷ mass; 1 g sucrose inverted gives 1.053 g glucose and fructose",
			Source: "the records' own sources (USDA FoodData Central and those named in the library); molar masses, CRC Handbook of Chemistry and Physics, 102nd ed. 2021",
			Band:   "what the records leave open, and the syrup's boil"},
		from: share(func(m *mix.Mix) float64 { return m.SugarsG() })},
	{Key: "initial_freezing_point_c", Name: "Initial freezing point", Short: "freezes", Unit: Celsius, Step: say.FreezingStep, WithBand: true,
		Help: "null where nothing freezes", Origin: freezing, from: each(func(p *model.Phase) Value {
			v := spanned(p.FreezingPointC, 1)
			if !v.Known() {
				v.Word = "not at all"
			}
			return v
		}, nil)},
	{Key: "water_frozen_percent", Name: "Water frozen", Short: "frozen", Unit: Percent, Step: 1, WithBand: true,
		Help: "of all water, at the serving temperature", Origin: ice, from: each(
			func(p *model.Phase) Value { return spanned(p.FrozenFraction, 100) },
			func(r *model.Result) Value { return exact(100 * r.Blend.FrozenFraction) })},
	{Key: "ice_mass_percent", Name: "Ice by mass", Short: "ice", Unit: Percent, Step: 1, WithBand: true,
		Help: "of the phase", Origin: ice, from: each(
			func(p *model.Phase) Value {
				soft, firm := extremes(p)
				return banded(100*p.State.IceMassFraction, 100*soft.IceMassFraction, 100*firm.IceMassFraction)
			},
			func(r *model.Result) Value { return exact(100 * r.Blend.IceMassFraction) })},
	{Key: "ice_volume_percent", Name: "Ice by volume, without air", Short: "ice by volume", Unit: Percent, Step: 1, WithBand: true,
		Help: "of the phase's volume without its air", Origin: iceVolume, from: each(
			func(p *model.Phase) Value {
				soft, firm := extremes(p)
				return banded(100*p.State.IceVolumeFraction, 100*soft.IceVolumeFraction, 100*firm.IceVolumeFraction)
			},
			func(r *model.Result) Value { return exact(100 * r.Blend.IceVolumeFraction) })},
	{Key: "hardness", Name: "Hardness", Short: "hardness", Unit: Kilopascals, WithBand: true,
		Help: "yield stress in kPa; of the tub, the mean by volume of the logarithms", Origin: hardness, from: byTheLaw(each(
			func(p *model.Phase) Value { return felt(p) },
			together(func(r *model.Result) Value { return exact(r.Blend.YieldKPa) })))},
	{Key: "texture", Name: "On the spoon", Short: "spoon", Unit: Words,
		Help: "the word for that hardness", Origin: Origin{
			Inputs: "the hardness", Equation: "a word scale with limits at 0.1, 0.6, 2.5, 6, 12 and 25 kPa",
			Source: "limits set at states of the trade: McGee 2004, On Food and Cooking (drawing); Briggs, Steffe & Ustunol 1996, J. Dairy Sci. 79:527 (dipping)",
			Band:   "a batch may fall one word to either side"},
		from: byTheLaw(phasesOnly(func(p *model.Phase) Value {
			return Value{Value: nan, Low: nan, High: nan, Bound: Exact, Word: p.Word.Name}
		}))},
	{Key: "sweetness_sucrose_percent", Name: "Sweetness, as sucrose", Short: "sweetness", Unit: Percent, Step: 0.1,
		Help: "g of sucrose as sweet as 100 g of it", Origin: sweetness, from: each(
			func(p *model.Phase) Value { return exact(p.SweetnessPercent) },
			full(func(r *model.Result) Value { return exact(r.Blend.SweetnessPercent) }))},
	{Key: "sweetness_melted_percent", Name: "Sweetness melted, at room temperature", Short: "melted", Unit: Percent, Step: 0.1,
		Help: "likewise, of the melt at {20 °C}, where fructose is less sweet", Origin: Origin{
			Inputs: "sweetness, and the fructose", Equation: "sweetness + 100 × fructose × (its sweetness at {20 °C} − that in the cold)",
			Source: "testdata/tables/relative_sweetness.csv, rows of fructose by temperature; McGee 2004, On Food and Cooking, for glucose and sucrose",
			Band:   "tasters differ by about a tenth"},
		from: mean(func(p *model.Phase) float64 { return p.SweetnessMeltedPercent })},
	{Key: "sweetness_sucrose_g_per_spoon", Name: "Sweetness of a tablespoonful", Short: "per spoon", Unit: Grams, Step: 0.1,
		Help: "g of sucrose as sweet as 15 mL of it", Origin: Origin{
			Inputs: "sweetness and density", Equation: "sweetness ÷ 100 × density × 15 mL", Source: sweetness.Source, Band: sweetness.Band},
		from: each(
			func(p *model.Phase) Value { return exact(p.SweetnessGPerSpoon) },
			full(func(r *model.Result) Value { return exact(r.Blend.SweetnessGPerSpoon) }))},
	{Key: "scoop_from_c", Name: "Eats well from", Short: "from", Unit: Celsius, Step: 1,
		Help: "where it eats well; at {-24 °C} it may lie beyond, since nothing colder is tried", Origin: scooping, from: byTheLaw(each(
			func(p *model.Phase) Value { return scoopFrom(p.Scoop, never(p)) },
			together(func(r *model.Result) Value { return scoopFrom(r.Blend.Both, neverTogether(r)) })))},
	{Key: "scoop_to_c", Name: "Eats well up to", Short: "to", Unit: Celsius, Step: 1,
		Help: "likewise; at {-4 °C} it may lie beyond", Origin: scooping, from: byTheLaw(each(
			func(p *model.Phase) Value { return scoopTo(p.Scoop, never(p)) },
			together(func(r *model.Result) Value { return scoopTo(r.Blend.Both, neverTogether(r)) })))},
	{Key: "water_driven_off_g", Name: "Water driven off", Short: "off", Unit: Mass, Step: 1,
		Help: "on the stove, or from the syrup", Origin: Origin{
			Inputs: "the stove loss that you set; for the syrup, its boil", Equation: "stove: percent × mass of the lines; syrup: water before less water after",
			Source: "mass balance; for the boil see the syrup's solids", Band: "6 points of the stove loss either way, common practice, no source, or what your batches came to: weigh the pan"},
		from: made(func(p *model.Phase) float64 { return p.WaterOffG * p.Portion.Factor }, nil)},
	{Key: "left_over_g", Name: "Left over", Short: "over", Unit: Mass, Step: 1,
		Help: "with batch.basis as_written; in no tub", Origin: filling, from: made(func(p *model.Phase) float64 { return p.Portion.LeftG }, nil)},
	{Key: "left_over_ml", Name: "Left over, by volume", Short: "over", Unit: Volume, Step: 1,
		Help: "likewise", Origin: filling, from: made(func(p *model.Phase) float64 { return p.Portion.LeftML }, nil)},
	{Key: "swelling_percent", Name: "Swells on freezing", Short: "swells", Unit: Percent, Step: 0.1, WithBand: true,
		Help: "from as filled to the serving temperature, if the air shrinks with the cold", Origin: Origin{
			Inputs: "composition, ice, air and temperature", Equation: "volume at the serving temperature ÷ volume as filled − 1, air as an ideal gas",
			Source: "volumes add, 1/ρ = Σ x/ρ: ASHRAE Refrigeration Handbook 2006, ch. 9; ice: Choi & Okos 1986",
			Band:   "from air that shrinks with the cold to a film that keeps its volume"},
		from: phasesOnly(func(p *model.Phase) Value {
			return banded(100*(p.SwellingRatio-1), 100*(p.SwellingRatio-1), 100*(p.Body.SwellingRatio(p.State.AtC, 0)-1))
		})},

	{Key: "foam_volume_percent", Name: "Foam by volume", Short: "foam", Unit: Percent, Step: 0.1,
		Help: "of the filling", Origin: filling, from: tubOnly(full(func(r *model.Result) Value { return exact(100 * r.Blend.FoamVolumeFraction) }))},
	{Key: "foam_mass_percent", Name: "Foam by mass", Short: "foam", Unit: Percent, Step: 0.1,
		Help: "of the filling", Origin: filling, from: tubOnly(full(func(r *model.Result) Value { return exact(100 * r.Blend.FoamMassFraction) }))},
	{Key: "tubs_filled", Name: "Tubs filled", Short: "tubs", Step: 0.01,
		Help: "to the mark that you set", Origin: filling, from: tubOnly(func(r *model.Result) Value { return exact(r.Blend.TubsFilled) })},
	{Key: "hardness_contrast", Name: "Contrast of hardness", Short: "contrast", Unit: Times,
		Help: "hardness of the custard over that of the foam", Origin: Origin{
			Inputs: "both hardnesses", Equation: "hardness of the custard ÷ hardness of the foam", Source: hardness.Source,
			Band: "each hardness is good to a factor 2"},
		from: byTheLaw(tubOnly(comparing(func(r *model.Result) Value { return exact(r.Blend.Contrast.HardnessRatio) })))},
	{Key: "sweetness_contrast", Name: "Contrast of sweetness", Short: "sweeter", Unit: Points, Step: 0.1,
		Help: "foam minus custard, percentage points", Origin: Origin{
			Inputs: "both sweetnesses", Equation: "sweetness of the foam − sweetness of the custard", Source: sweetness.Source, Band: sweetness.Band},
		from: tubOnly(comparing(func(r *model.Result) Value { return exact(r.Blend.Contrast.SweetnessPercent) }))},
	{Key: "scoop_contrast_k", Name: "Custard scoops warmer than foam, by", Short: "scoops later", Unit: Kelvin, Step: 1,
		Help: "start of scooping, custard minus foam, K", Origin: Origin{
			Inputs: "where each phase starts to eat well", Equation: "start of the custard − start of the foam", Source: hardness.Source, Band: scooping.Band},
		from: byTheLaw(tubOnly(comparing(func(r *model.Result) Value {
			v := exact(r.Blend.ScoopsK)
			if v.Known() && r.Blend.ScoopsAtLeast {
				v.Bound = AtLeast
			}
			return v
		})))},
	{Key: "dense_left_over_ml", Name: "Custard left over", Short: "custard over", Unit: Volume, Step: 1,
		Help: "in no tub", Origin: filling, from: tubOnly(func(r *model.Result) Value { return exact(r.Blend.Dense.LeftML) })},
	{Key: "foam_left_over_ml", Name: "Foam left over", Short: "foam over", Unit: Volume, Step: 1,
		Help: "in no tub", Origin: filling, from: tubOnly(func(r *model.Result) Value { return exact(r.Blend.Foam.LeftML) })},
}}

// Kinds holds the sugars and sugar alcohols by kind; its keys are their names.
var Kinds = func() Table {
	t := Table{Key: "sugars_by_kind_percent", Columns: Phases.Columns}
	for _, kinds := range [...][]mix.Species{mix.Sugars[:], mix.Polyols[:]} {
		for _, k := range kinds {
			t.Rows = append(t.Rows, Row{Key: k.String(), Name: k.String(), Short: k.String(), Unit: Percent, Step: 0.1,
				Help: "as the freezing model has it", Origin: Phases.Row("mono_disaccharides_percent").Origin,
				from: share(func(m *mix.Mix) float64 { return m.Grams[k] })})
		}
	}
	return t
}()

// Batch says of each phase what is made and what becomes of it.
var Batch = func() Table {
	t := Table{Key: "batch", Columns: Phases.Columns[:Tub]}
	for _, row := range [...]struct {
		key, name string
		unit      Unit
		of        func(p *model.Phase) float64
	}{
		{"made_g", "Made", Mass, func(p *model.Phase) float64 { return p.Portion.MadeG }},
		{"made_ml", "Made, by volume", Volume, func(p *model.Phase) float64 { return p.Portion.MadeML }},
		{"used_g", "Into the tubs", Mass, func(p *model.Phase) float64 { return p.Portion.MassG }},
		{"used_ml", "Into the tubs, by volume", Volume, func(p *model.Phase) float64 { return p.Portion.VolumeML }},
		{"left_g", "Left over", Mass, func(p *model.Phase) float64 { return p.Portion.LeftG }},
		{"left_ml", "Left over, by volume", Volume, func(p *model.Phase) float64 { return p.Portion.LeftML }},
	} {
		t.Rows = append(t.Rows, Row{Key: row.key, Name: row.name, Short: row.name, Unit: row.unit, Step: 1,
			Help: map[Unit]string{Mass: "in g", Volume: "in mL, as filled"}[row.unit], Origin: filling, from: made(row.of, nil)})
	}
	return t
}()

// Present returns the rows of t that print more than nought in some column.
func (t *Table) Present(r *model.Result) []*Row {
	var out []*Row
	for i := range t.Rows {
		f := &t.Rows[i]
		for c := range t.Columns {
			if f.Of(r, c).Value >= f.Step/2 {
				out = append(out, f)
				break
			}
		}
	}
	return out
}
