package main

import (
	"context"
	"math"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
)

var iceCommand = &command{
	name:  "ice",
	usage: "ice FILE [--weeks 12] [--swing K] [--profile NAME] [--json]",
	short: "Says how icy it eats: crystals from freezing, hardening and weeks of storage",
	long: `
  --weeks N       how long it is stored, 1 to 52
  --swing K       how far the freezer's air goes up and down, instead of the
                  kitchen's own
  --profile NAME  the kitchen, as of cold
  --json          JSON instead of text: custard and foam (after_freezing_um,
                  hardened_wall_um, hardened_core_um, weeks, word, low_um, high_um),
                  by_step, remedies, stays, put_back, learnt

Sizes are mean diameters in µm, known to a third at best: compare two ways with
one recipe. Breakage by the beaters and yolk's own effect are not in them. What
you said of how icy your batches ate (ripplecalc batch) is: learnt is its factor.
`,
	least: 1,
	most:  1,
	flags: iceFlags,
}

func iceFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	name := flags.String("profile", "", "")
	weeks := flags.Int("weeks", icy.DefaultWeeks, "")
	swing := flags.Float64("swing", math.NaN(), "")
	return func(s *shell, files []string) error {
		if *weeks < 1 || *weeks > icy.MostWeeks {
			return c.misused("--weeks %d is outside 1 to %d", *weeks, icy.MostWeeks)
		}
		f, r, err := open(s, files[0])
		if err != nil {
			return err
		}
		kitchen, err := kitchenOf(f, files[0], *name)
		if err != nil {
			return err
		}
		if !math.IsNaN(*swing) {
			kitchen.SwingK = *swing
			if err := kitchen.Validate(); err != nil {
				return c.misused("--swing: %v", err)
			}
		}
		ctx := context.Background()
		plan, err := cold.Plan(ctx, f.Design, r, kitchen, cold.Options{NoPictures: true})
		if err != nil {
			return flaw.New("%s: %v", f.Name, err)
		}
		told, err := icy.Tell(r, &plan, icy.Options{Weeks: *weeks})
		if err != nil {
			return flaw.New("%s: %v", f.Name, err)
		}
		remedies, err := icy.Remedies(ctx, f.Design, r, &plan, &told)
		if err != nil {
			return flaw.New("%s: %v", f.Name, err)
		}
		return s.answer(report.Ice{Answer: told, Kitchen: kitchen.Name, Remedies: remedies}, *asJSON)
	}
}
