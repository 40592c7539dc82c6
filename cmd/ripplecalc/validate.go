package main

import (
	"fmt"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/show/report"
	"ripplewright/testdata"
)

var validateCommand = &command{
	name:  "validate",
	usage: "validate [--json]",
	short: "Runs the models against the published tables that the program carries",
	long: `
For each table: its source, the number of points, the largest and the
root-mean-square error, our stated limit (bar), and whether the largest error keeps it.
The code is the one that computes designs. --json prints a list of objects with table,
source, points, unit, max_abs_error, rms_error, bar, pass, kind and note. A row
that misses its bar is our fault: the exit code is then 3.
`,
	run: runValidate,
}

func runValidate(c *command, s *shell, args []string) error {
	flags := c.flags()
	asJSON := flags.Bool("json", false, "")
	if _, err := c.parse(flags, args, 0, 0); err != nil {
		return err
	}
	b, err := openBench()
	if err != nil {
		return err
	}
	rows, err := validate.Run(testdata.Tables, b.Library())
	if err != nil {
		return fault(err)
	}
	v := report.Validation(rows)
	if err := s.answer(v, *asJSON); err != nil {
		return err
	}
	if n := v.Missed(); n > 0 {
		return fault(fmt.Errorf("%d of %d rows miss their bar", n, len(v)))
	}
	return nil
}
