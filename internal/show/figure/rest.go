package figure

import "ripplewright/internal/answer/model"

// Syrup holds the figures of the boiled syrup; its one column is none where
// there is no syrup.
var Syrup = Table{Key: "foam.syrup", Columns: []string{"syrup"}, Rows: []Row{
	{Key: "solids_percent", Name: "Syrup solids", Short: "solids", Unit: Percent, Step: 0.1, WithBand: true,
		Help: "of the syrup as it is poured", Origin: boil, from: syrup(func(s *model.Syrup) Value {
			return banded(s.SolidsPercent, s.SolidsBandPercent[0], s.SolidsBandPercent[1])
		})},
	{Key: "mass_g", Name: "Syrup", Short: "syrup", Unit: Mass, Step: 1,
		Help: "of the batch as made", Origin: boil, from: syrup(func(s *model.Syrup) Value { return exact(s.MassG) })},
	{Key: "water_boiled_off_g", Name: "Water boiled off", Short: "boiled off", Unit: Mass, Step: 1,
		Help: "likewise", Origin: boil, from: syrup(func(s *model.Syrup) Value { return exact(s.WaterOffG) })},
	{Key: "boiling_point_c", Name: "Syrup boils at", Short: "boils", Unit: Celsius, Step: 1,
		Help: "of the syrup as it is poured; null where it lies beyond the model", Origin: boil, from: syrup(func(s *model.Syrup) Value { return exact(s.BoilingPointC) })},
}}

func syrup(of func(*model.Syrup) Value) from {
	return from{forecast: true, of: func(r *model.Result, _ int) Value {
		if !r.Syrup.Present || r.Absent(&r.Foam) {
			return none
		}
		return of(&r.Syrup)
	}}
}

// Lines holds the weights of each line; its columns are the lines.
var Lines = Table{Key: "lines", Rows: []Row{
	{Key: "written_g", Name: "Written", Short: "written", Unit: Mass, Step: 1, Help: "as the design has it", Origin: weighing,
		from: line(func(l *model.BatchLine) float64 { return l.WrittenG })},
	{Key: "grams", Name: "In the batch", Short: "grams", Unit: Mass, Step: 1, Help: "in the batch as made", Origin: weighing,
		from: line(func(l *model.BatchLine) float64 { return l.Grams })},
}}

var weighing = Origin{
	Inputs:   "the line as written, or its count of eggs; tubs, fill and share of foam",
	Equation: "grams × factor of the phase",
	Source:   "your weighing; eggs: US Standards, Grades, and Weight Classes for Shell Eggs, AMS 56; Commission Regulation (EC) No 589/2008, Article 4; USDA SR28 NDB 01123 to 01125",
	Band:     "as exact as the scale",
}

// PerGram holds what a gram more of a line, as written, changes in its phase;
// its columns are the lines.
var PerGram = Table{Key: "per_gram", Rows: []Row{
	{Key: "initial_freezing_point_c", Name: "Initial freezing point", Short: "freezes", Unit: Kelvin, Step: 0.0001,
		Origin: slopes, from: line(func(l *model.BatchLine) float64 { return l.Slopes.FreezingPointC })},
	{Key: "water_frozen_percent", Name: "Water frozen", Short: "frozen", Unit: Points, Step: 0.001, Help: "percentage points",
		Origin: slopes, from: line(func(l *model.BatchLine) float64 { return 100 * l.Slopes.FrozenFraction })},
	{Key: "hardness_percent", Name: "Hardness", Short: "hardness", Unit: Percent, Step: 0.01, Help: "relative",
		Origin: slopes, from: line(func(l *model.BatchLine) float64 { return 100 * l.Slopes.LnYield })},
	{Key: "sweetness_sucrose_percent", Name: "Sweetness, as sucrose", Short: "sweetness", Unit: Points, Step: 0.001, Help: "percentage points",
		Origin: slopes, from: line(func(l *model.BatchLine) float64 { return l.Slopes.SweetnessPercent })},
	{Key: "tub_sweetness_sucrose_percent", Name: "Sweetness of the tub", Short: "tub's sweetness", Unit: Points, Step: 0.001, Help: "likewise, of the tub",
		Origin: slopes, from: line(func(l *model.BatchLine) float64 { return l.TubSweetPercentPerG })},
	{Key: "density_g_per_ml", Name: "Density", Short: "density", Unit: GramsPerML, Step: 0.00001,
		Origin: slopes, from: line(func(l *model.BatchLine) float64 { return l.Slopes.GPerML })},
}}

func line(of func(*model.BatchLine) float64) from {
	return from{of: func(r *model.Result, column int) Value { return exact(of(&r.Lines[column])) }}
}

// Cost is what the ingredients cost, in the maker's own money.
var Cost = Table{Key: "cost", Columns: []string{"cost"}, Rows: []Row{
	{Key: "batch", Name: "The batch", Short: "batch", Unit: Money, Help: "of the ingredients that have a price, in your own money", Origin: pricing,
		from: priced(func(c *model.Cost) float64 { return c.Known })},
	{Key: "per_tub", Name: "A tub", Short: "a tub", Unit: Money, Help: "of a full tub", Origin: pricing,
		from: priced(func(c *model.Cost) float64 { return c.PerTub })},
	{Key: "per_100_g", Name: "100 g", Short: "100 g", Unit: Money, Help: "of what is in the tubs", Origin: pricing,
		from: priced(func(c *model.Cost) float64 { return c.Per100G })},
	{Key: "per_serving", Name: "A serving", Short: "a serving", Unit: Money, Help: "of the label's serving", Origin: pricing,
		from: priced(func(c *model.Cost) float64 { return c.PerServing })},
}}

var pricing = Origin{
	Inputs:   "grams of the batch as made; what your packs cost and hold, else a line's price_per_kg; density of what is bought by volume; size of egg",
	Equation: "Σ grams × price ÷ grams of the pack; ÷ tubs filled, mass in the tubs. Yolk and white of an egg cost what they weigh of it",
	Source:   "your own prices",
	Band:     "at least that, where a line has no price; without VAT, work, tubs and power",
}

func priced(of func(*model.Cost) float64) from {
	return from{of: func(r *model.Result, _ int) Value {
		if !r.Cost.Priced {
			return none
		}
		v := exact(of(&r.Cost))
		if v.Known() && len(r.Cost.Missing) > 0 {
			v.Bound = AtLeast
		}
		v.Currency = r.Cost.Currency
		return v
	}}
}

// Eggs is the ledger of eggs.
var Eggs = Table{Key: "eggs", Columns: []string{"eggs"}, Rows: []Row{
	{Key: "yolks", Name: "Yolks", Short: "yolks", Step: 0.1, Help: "that the batch takes, in eggs of the design's size", Origin: cracking,
		from: eggs(func(e *model.Eggs) float64 { return e.Yolks })},
	{Key: "whites", Name: "Whites", Short: "whites", Step: 0.1, Help: "likewise", Origin: cracking,
		from: eggs(func(e *model.Eggs) float64 { return e.Whites })},
	{Key: "dense_yolks", Name: "Yolks in the custard", Short: "in the custard", Step: 0.1, Help: "of these", Origin: cracking,
		from: eggs(func(e *model.Eggs) float64 { return e.Dense.Yolks })},
	{Key: "dense_whites", Name: "Whites in the custard", Short: "in the custard", Step: 0.1, Help: "likewise", Origin: cracking,
		from: eggs(func(e *model.Eggs) float64 { return e.Dense.Whites })},
	{Key: "foam_yolks", Name: "Yolks in the foam", Short: "in the foam", Step: 0.1, Help: "likewise", Origin: cracking,
		from: eggs(func(e *model.Eggs) float64 { return e.Foam.Yolks })},
	{Key: "foam_whites", Name: "Whites in the foam", Short: "in the foam", Step: 0.1, Help: "likewise", Origin: cracking,
		from: eggs(func(e *model.Eggs) float64 { return e.Foam.Whites })},
	{Key: "crack", Name: "Whole eggs to crack", Short: "crack", Step: 1, Help: "whole eggs to crack for as many of both", Origin: cracking,
		from: eggs(func(e *model.Eggs) float64 { return e.Crack })},
	{Key: "yolks_left", Name: "Yolks over", Short: "yolks over", Step: 0.1, Help: "once these are cracked", Origin: cracking,
		from: eggs(func(e *model.Eggs) float64 { return e.Left.Yolks })},
	{Key: "whites_left", Name: "Whites over", Short: "whites over", Step: 0.1, Help: "likewise", Origin: cracking,
		from: eggs(func(e *model.Eggs) float64 { return e.Left.Whites })},
}}

var cracking = Origin{
	Inputs:   "grams of yolk, white and whole egg in the batch as made; the size of egg",
	Equation: "grams ÷ grams of one; crack = the larger of yolks and whites, whole; over = crack − used, a little below 0 where larger eggs make it up",
	Source:   weighing.Source,
	Band:     "eggs of a size differ by a tenth",
}

func eggs(of func(*model.Eggs) float64) from {
	return from{of: func(r *model.Result, _ int) Value {
		if !r.Eggs.Known {
			return none
		}
		return exact(of(&r.Eggs))
	}}
}

// Tables lists every table.
var Tables = []*Table{&Phases, &Kinds, &Batch, &Syrup, &Nutrition, &Servings, &Lines, &PerGram, &Cost, &Eggs}
