package main

import (
	"context"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
)

var coldCommand = &command{
	name:  "cold",
	usage: "cold FILE [--profile NAME] [--json]",
	short: "Says when to stir, how long to harden and how long to leave the tub out",
	long: `
  --profile NAME  the kitchen, instead of the file's: one of the built-in ones or
                  of profiles.yaml in the user's configuration folder
  --json          JSON instead of text: harden, still_freeze, serving_window,
                  storage and more

How fast air takes heat away is known to about a third, so answers are ranges.
`,
	least: 1,
	most:  1,
	flags: coldFlags,
}

func coldFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	name := flags.String("profile", "", "")
	return func(s *shell, files []string) error {
		f, r, err := open(s, files[0])
		if err != nil {
			return err
		}
		kitchen, err := kitchenOf(f, files[0], *name)
		if err != nil {
			return err
		}
		plan, err := cold.Plan(context.Background(), f.Design, r, kitchen, cold.Options{NoPictures: true})
		if err != nil {
			return flaw.New("%s: %v", f.Name, err)
		}
		return s.answer(report.Cold{Answer: plan}, *asJSON)
	}
}
