package main

import (
	"path/filepath"

	"github.com/spf13/pflag"

	"ripplewright/internal/show/beside"
	"ripplewright/internal/show/report"
)

var compareCommand = &command{
	name:  "compare",
	usage: "compare A B [C...] [--all] [--json]",
	short: "Lays designs or versions side by side, with what differs marked",
	long: `
Each is a design file, as the versions in NAME.versions are; one may be -. Grams are
those of the batch as made. A line, a setting or a figure that is not the same in all
has a sign before it. Figures are as the batches beside A have taught, for all.

  --all   also what is the same in all
  --json  JSON instead of text: files, same; lines (key, the part and the
          ingredient; values: g), settings (key, the place in the file; those that
          differ) and figures (key as in evaluate --json), each with name, unit,
          values in the order of the files and differs. All of it, whatever --all says
`,
	least: 2,
	most:  mostSides,
	flags: compareFlags,
}

// mostSides is how many designs are laid side by side.
const mostSides = 8

func compareFlags(_ *command, flags *pflag.FlagSet) action {
	all, asJSON := flags.Bool("all", false, ""), flags.Bool("json", false, "")
	return func(s *shell, files []string) error {
		b, err := openBench()
		if err != nil {
			return err
		}
		var sides []beside.Side
		var names []string
		read, results, err := b.readTogether(s, files)
		if err != nil {
			return err
		}
		for i, f := range read {
			names = append(names, f.Name)
			sides = append(sides, beside.Side{Name: filepath.Base(f.Name), Design: f.Design, Result: &results[i]})
		}
		return s.answer(report.SideBySide{Table: beside.Of(report.Reads, sides), Files: names, All: *all}, *asJSON)
	}
}
