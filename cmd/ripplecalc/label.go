package main

import (
	"fmt"

	"ripplewright/internal/food/label"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/report"
)

var labelCommand = &command{
	name:  "label",
	usage: "label FILE [--region us|eu] [--short] [--all] [--reference FILE] [--json] [-o label.pdf|label.png|label.svg|label.txt] [--form vertical|tabular|dual]",
	short: "Computes the nutrition panel, the list of ingredients, names and claims",
	long: `
  --region  us (21 CFR 101.9, the usual) or eu (Regulation (EU) No 1169/2011,
            which the UK keeps)
  --short   leave out US lines that may go, and say so instead
  --all     every name and claim, not only those that are met or nearly met
  --reference FILE
            the design of a food to compare with, which "reduced" and "light"
            ask for
  --json    JSON instead of text
  -o FILE   draw it at true size, or write its text, by the ending
  --form    how the drawing is laid out: vertical, tabular for a package without
            three inches of height, or dual with a second column; if not given,
            what the container asks for. A form that the rules do not allow is
            refused

This is our reading of the sections named; local code and licensed practice
decide.
`,
	run: runLabel,
}

func runLabel(c *command, s *shell, args []string) error {
	flags := c.flags()
	asJSON := flags.Bool("json", false, "")
	short := flags.Bool("short", false, "")
	every := flags.Bool("all", false, "")
	region := flags.String("region", string(label.US), "")
	reference := flags.String("reference", "", "")
	to := flags.String("o", "", "")
	form := flags.String("form", "", "")
	files, err := c.parse(flags, args, 1, 1)
	if err != nil {
		return err
	}
	rules, err := c.rules(*region)
	if err != nil {
		return err
	}
	if *to != "" && !hasEnding(*to, ".pdf", ".png", ".svg", ".txt") {
		return c.misused("-o %s: a label is written as .pdf, .png, .svg or .txt", echo.Plain(*to))
	}
	switch card.Form(*form) {
	case "", card.Vertical, card.Tabular, card.Dual:
	default:
		return c.misused("--form %s is not one of vertical, tabular, dual", echo.Quoted(*form))
	}
	if *form != "" && *to == "" {
		return c.misused("--form is about a drawing: say with -o where it goes")
	}
	if err := c.mayWrite(*to, files[0], *reference); err != nil {
		return err
	}
	f, r, err := open(s, files[0])
	if err != nil {
		return err
	}
	options := label.Options{OmitInsignificant: *short, SecondColumn: card.Form(*form) == card.Dual && rules == label.US}
	if *reference != "" {
		other, of, err := open(s, *reference)
		if err != nil {
			return err
		}
		food := of.Food(other.Design)
		options.Reference = &food
	}
	l, err := label.For(r.Food(f.Design), rules, options)
	if err != nil {
		return fmt.Errorf("%s: label: %w", f.Name, err)
	}
	if *to != "" {
		if err := card.WriteLabel(*to, l, card.Form(*form)); err != nil {
			return err
		}
		if marked(s, f, *to, card.LackingOnLabel(f.Design, r, l)); !*asJSON {
			return nil
		}
	}
	return s.answer(report.Label{Label: l, Every: *every}, *asJSON)
}
