package main

import (
	"ripplewright/internal/show/report"
)

var curveCommand = &command{
	name:  "curve",
	usage: "curve FILE [--from -30] [--to 0] [--step 0.5] [--json]",
	short: "Tabulates water frozen, ice and hardness of both phases over temperature",
	long: `
The columns are separated by tabs: temperature in °C, then for custard and foam the
percent of the water that is frozen, the percent of ice by volume without air,
and the hardness in kPa. Temperatures are from −60 to 30 °C. --to is the
last row where the steps meet it.
`,
	run: runCurve,
}

func runCurve(c *command, s *shell, args []string) error {
	flags := c.flags()
	asJSON := flags.Bool("json", false, "")
	from := flags.Float64("from", -30, "")
	to := flags.Float64("to", 0, "")
	step := flags.Float64("step", 0.5, "")
	files, err := c.parse(flags, args, 1, 1)
	if err != nil {
		return err
	}
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
