package main

import (
	"github.com/spf13/pflag"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/work/compare"
)

var diffCommand = &command{
	name:  "diff",
	usage: "diff A B [--json]",
	short: "Says in what two designs differ: lines, settings and figures",
	long: `
A and B are design files; one of them may be -. The exit code is that of diff:
0 the same, 1 different, 2 trouble. Figures of both are as the batches beside A have
taught, as in the window those of the open design.

  --json  JSON instead of text: files, same; lines (part, ingredient, name, before
          and after: grams or count and of, note; null where there is no such
          line); reordered, the parts whose lines stand in another order; settings
          (path, unit, before, after); own (id, before, after); figures (key as in
          evaluate --json, name, before, after), all that are not the same number
`,
	least: 2,
	most:  2,
	flags: diffFlags,
}

// The exit codes of diff that are not those of other commands.
const (
	exitDiffer  = 1
	exitTrouble = 2
)

// codeError is an error with an exit code of its own. Without an error within
// there is nothing to report.
type codeError struct {
	code int
	error
}

func (e *codeError) Unwrap() error { return e.error }

// errDiffer is the answer that two designs differ.
var errDiffer = flaw.New("the designs differ")

func diffFlags(_ *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	return func(s *shell, files []string) error {
		same, err := diff(s, files, *asJSON)
		switch {
		case err != nil:
			return &codeError{exitTrouble, err}
		case !same:
			return &codeError{exitDiffer, errDiffer}
		}
		return nil
	}
}

func diff(s *shell, files []string, asJSON bool) (same bool, err error) {
	b, err := openBench()
	if err != nil {
		return false, err
	}
	read, results, err := b.readTogether(s, files)
	if err != nil {
		return false, err
	}
	f, g := read[0], read[1]
	d := report.Difference{Files: [2]string{f.Name, g.Name}, Before: &results[0], After: &results[1], Of: compare.Between(f.Design, g.Design)}
	return d.Same(), s.answer(d, asJSON)
}
