package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"ripplewright/internal/atomicfile"
	"ripplewright/internal/label"
	"ripplewright/internal/report"
)

var labelCommand = &command{
	name:  "label",
	usage: "label FILE [--region us|eu] [--short] [--json] [-o label.txt]",
	short: "Computes the nutrition panel, the list of ingredients, names and claims",
	long: `
  --region  us (21 CFR 101.9, the usual) or eu (Regulation (EU) No 1169/2011,
            which the UK keeps)
  --short   leave out US lines that may go, and say so instead
  --json    JSON instead of text
  -o FILE   write to a file, by its ending

All of it is our reading of the sections named; local code and licensed practice
decide.
`,
	run: runLabel,
}

func runLabel(c *command, s *shell, args []string) error {
	flags := c.flags()
	asJSON := flags.Bool("json", false, "")
	short := flags.Bool("short", false, "")
	region := flags.String("region", string(label.US), "")
	to := flags.String("o", "", "")
	files, err := c.parse(flags, args, 1, 1)
	if err != nil {
		return err
	}
	rules := label.Region(strings.ToLower(*region))
	if rules != label.US && rules != label.EU {
		return c.misused("--region %q is not one of us, eu", *region)
	}
	if ext := strings.ToLower(filepath.Ext(*to)); *to != "" && ext != ".txt" {
		return c.misused("-o %s: a label is written as .txt", *to)
	}
	f, r, err := open(s, files[0])
	if err != nil {
		return err
	}
	l, err := label.For(r.Food(f.Design), rules, label.Options{OmitInsignificant: *short})
	if err != nil {
		return fmt.Errorf("%s: label: %w", f.Name, err)
	}
	if *to != "" {
		var text bytes.Buffer
		if err := (report.Label{Label: l}).WriteText(&text); err != nil {
			return &faultError{err}
		}
		if err := atomicfile.Write(*to, text.Bytes()); err != nil {
			return err
		}
		if !*asJSON {
			return nil
		}
	}
	return s.answer(report.Label{Label: l}, *asJSON)
}
