package main

import (
	"context"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

var processCommand = &command{
	name:  "process",
	usage: "process FILE [--profile NAME] [--json]",
	short: "Writes the steps of the making, from the stove to the bowl, and what was computed for them",
	long: `
  --profile NAME  the kitchen, instead of the file's
  --json          JSON instead of text:

syrup      reading_c, boiling_point_c, water_boils_c, sea_level_c, solids_percent,
           solids_low_percent, solids_high_percent, mass_g, water_left_g,
           water_boiled_off_g, alcohol_boiled_off_g, minutes, minutes_low,
           minutes_high; null without a syrup
foam_mix   adiabatic_c, with_bowl_c, peak_c, peak_low_c, peak_high_c,
           minutes_above_60_c, log_reduction_low, log_reduction_high (tenfold
           reductions of Salmonella by data of sugar solutions), whisk_minutes,
           minutes_above (by °C), course_c (minute by minute from the pour on),
           air (asked_percent, expected_low_percent, expected_high_percent,
           causes, level_250_ml_cup_g, shrinks_to_percent, sugar_per_white)
custard    from_c, to_c, curdles_c, starch_needs_c, water_driven_off_g,
           driving_off_minutes (in an open pan that does not boil),
           yolk_g_per_kg, acid_g_per_kg_milk, weighs_g (before what goes in
           later), log_reduction (of Salmonella in 10 s at from_c, by data of
           sugared yolk), hold_counts_as (minutes at 63.33 °C, where 9 CFR
           590.570 asked 3.5 until 2020), cool_minutes (ice bath, to 5 °C),
           refrigerator_hours, refrigerator_keeps_food_code
eggs       system, size, crack, yolks_used, whites_used, yolks_left, whites_left,
           yolks_left_g, whites_left_g; dense and foam: yolks, whites each uses;
           keep_days (in the refrigerator), whites_frozen_months, by published advice
dishes     how many dishes the custard takes to freeze still
freezer    load_kj, load_of_rating, chill_foam_to_c,
           ice_melted_by_warm_foam_g_per_tub
steps      code, title, text, minutes, hands_on_minutes, uses, after,
           ingredients (id, grams, measure)
cautions   code, title, text
cost       as in evaluate --json
`,
	least: 1,
	most:  1,
	flags: processFlags,
}

func processFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	profile := flags.String("profile", "", "")
	return func(s *shell, files []string) error {
		file, m, err := makingOf(s, files[0], *profile)
		if err != nil {
			return err
		}
		return s.answer(report.ProcessOf(file, m), *asJSON)
	}
}

// makingOf reads a design and computes how it is made.
func makingOf(s *shell, name, profile string) (file string, m say.Making, err error) {
	f, r, err := open(s, name)
	if err != nil {
		return "", say.Making{}, err
	}
	kitchen, err := kitchenOf(f, name, profile)
	if err != nil {
		return "", say.Making{}, err
	}
	m, err = making(f.Design, r, kitchen)
	if err != nil {
		return "", say.Making{}, flaw.New("%s: %v", f.Name, err)
	}
	return f.Name, m, nil
}

func making(d design.Design, r *model.Result, kitchen cold.Profile) (say.Making, error) {
	times, err := cold.Plan(context.Background(), d, r, kitchen, cold.Options{NoPictures: true})
	if err != nil {
		return say.Making{}, err
	}
	p := process.Of(d, r, process.KitchenOf(kitchen), kitchen.Freezer.AirC, &times)
	return say.Making{Design: d, Result: r, Process: &p, Cold: &times}, nil
}
