package main

import (
	"context"
	"fmt"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
)

var sureCommand = &command{
	name:  "sure",
	usage: "sure FILE [--kitchens N] [--seed N] [--json]",
	short: "Says how sure the figures are in kitchens that are not exact",
	long: `
Makes the design many times over, each time a little differently: slips of the scale,
eggs, air, the boiled syrup, the freezer, the hardness model itself.

  --kitchens N  how many, 10 to 100000 (1000)
  --seed N      which kitchens; the same seed is the same answer (0)
  --json        JSON instead of text: chance_scoops, spread, by_cause
`,
	least: 1,
	most:  1,
	flags: sureFlags,
}

func sureFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	kitchens := flags.Int("kitchens", 1000, "")
	seed := flags.Int64("seed", 0, "")
	return func(s *shell, files []string) error {
		if *kitchens < 10 || *kitchens > 100000 {
			return c.misused("--kitchens %d is outside 10 to 100000", *kitchens)
		}
		b, f, r, err := openWith(s, files[0])
		if err != nil {
			return err
		}
		o := sure.Options{Kitchens: *kitchens, Seed: *seed}
		_, taught, err := notebookOf(f, files[0])
		if err != nil {
			return err
		}
		o.Learnt = taught.Kitchens()
		kitchen, err := publishedKitchen(f, "") // what is learnt comes with o.Learnt
		if err != nil {
			return err
		}
		if plan, err := cold.Plan(context.Background(), f.Design, r, kitchen, cold.Options{NoPictures: true}); err == nil {
			o.Cold = &plan
		} else {
			fmt.Fprintf(s.err, "%s: %s\n", f.Name, say.T("no minutes: %s", say.Flaw(err)))
		}
		a, err := sure.Sample(context.Background(), b.Model, f.Design, o)
		if err != nil {
			return fault(err)
		}
		return s.answer(report.Sure{File: f.Name, Answer: a}, *asJSON)
	}
}
