package main

import (
	"fmt"

	"github.com/spf13/pflag"

	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
)

var checkCommand = &command{
	name:  "check",
	usage: "check FILE...",
	short: "Lists the errors and warnings of design files",
	long: `
Errors go to standard error, each with file, line and key; warnings go to
standard output. The exit code is 0 only if no file has an error. Warnings are
those of evaluate: as the batches beside each file have taught.
`,
	least: 1,
	most:  -1,
	flags: checkFlags,
}

func checkFlags(c *command, _ *pflag.FlagSet) action {
	return func(s *shell, files []string) error {
		b, err := openBench()
		if err != nil {
			return err
		}
		var worst error
		for _, name := range files {
			if err := guard(func() error { return check(s, b, name) }); err != nil {
				worst = worse(worst, s.report(err))
			}
		}
		return worst
	}
}

// check writes the warnings of one file and returns its errors.
func check(s *shell, b *bench, name string) error {
	f, r, err := b.read(s, name)
	if err != nil {
		return err
	}
	for _, w := range r.Warnings {
		fmt.Fprintf(s.out, "%s%s: %s: %s [%s]\n", place(f, w.Where), w.Where, say.Of(w.Severity.String()), say.Harmless(say.Warning(report.Reads, w), say.Terminal), w.Code)
	}
	_, err = fmt.Fprintf(s.out, "%s: %s\n", f.Name, noErrors(len(r.Warnings)))
	return err
}

// noErrors tells how many warnings a file without an error has.
func noErrors(warnings int) string {
	switch warnings {
	case 0:
		return say.T("no errors, no warnings")
	case 1:
		return say.T("no errors, 1 warning")
	}
	return say.T("no errors, %d warnings", warnings)
}
