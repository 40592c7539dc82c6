package main

import (
	"github.com/spf13/pflag"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/form/flaw"
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
	flags: validateFlags,
	words: map[string]func() []string{"": one()},
}

func validateFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	return func(s *shell, _ []string) error {
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
			return fault(flaw.New("%d of %d rows miss their bar", n, len(v)))
		}
		return nil
	}
}
