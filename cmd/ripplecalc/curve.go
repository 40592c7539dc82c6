package main

import (
	"github.com/spf13/pflag"

	"ripplewright/internal/show/report"
)

var curveCommand = &command{
	name:  "curve",
	usage: "curve FILE [--from -30] [--to 0] [--step 0.5] [--json]",
	short: "Tabulates water frozen, ice and hardness of both phases over temperature",
	long: `
The columns are separated by tabs: temperature in °C, then for custard and foam the
percent of the water that is frozen, the percent of ice by volume without air,
and the hardness in kPa.

  --from C  the first row, −60 to 30 °C
  --to C    the last row, where the steps meet it
  --step C  from row to row
  --json    JSON instead of text
`,
	least: 1,
	most:  1,
	flags: curveFlags,
}

func curveFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	from := flags.Float64("from", -30, "")
	to := flags.Float64("to", 0, "")
	step := flags.Float64("step", 0.5, "")
	return func(s *shell, files []string) error {
		ts, err := report.Temperatures(*from, *to, *step)
		if err != nil {
			return c.misused("%v", err)
		}
		f, r, err := open(s, files[0])
		if err != nil {
			return err
		}
		return s.answer(report.CurveOf(files[0], f.Design.Name, r, ts), *asJSON)
	}
}
