package main

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/food/label"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/designfile"
)

var cardCommand = &command{
	name:  "card",
	usage: "card FILE -o card.pdf|card.png|card.svg|card.md|card.html [--parts weights,steps] [--pages 1|2] [--big] [--region us|eu] [--paper a4|letter|a5] [--dpi N]",
	short: "Writes the card of a design: weights, steps, figures, panel and cautions",
	long: `
  -o FILE   the card, by its ending: .pdf, .png or .svg (the same pages), .md, or
            .html: one page for a phone at the stove, that needs nothing else, with
            the recipe in it as schema.org data
  --parts   what stands on it, some of weights, steps, notes, day, figures, plots,
            panel, cautions, cost; all, if not given
  --pages   1 or 2 at most: what has no room is left out, and the card names it
  --big     weights and steps in big type, for the kitchen
  --region  whose nutrition panel: us (the usual) or eu
  --paper   a4 (the usual), letter or a5
  --dpi     dots per inch of a picture, 30 to 600; if not given 150, or fewer for a
            long card: a picture has 10 million pixels at most
`,
	least: 1,
	most:  1,
	flags: cardFlags,
	words: map[string]func() []string{"region": one("us", "eu"), "paper": one("a4", "letter", "a5"), "pages": one("1", "2")},
}

func cardFlags(c *command, flags *pflag.FlagSet) action {
	to := flags.StringP("output", "o", "", "")
	region := flags.String("region", string(label.US), "")
	paper := flags.String("paper", string(card.A4), "")
	dpi := flags.Float64("dpi", 0, "")
	parts := flags.String("parts", "", "")
	pages := flags.Int("pages", 0, "")
	big := flags.Bool("big", false, "")
	return func(s *shell, files []string) error {
		o := card.Options{Paper: card.Paper(strings.ToLower(*paper)), DPI: *dpi, Pages: *pages, Big: *big, Style: report.Reads}
		var err error
		if o.Region, err = c.rules(*region); err != nil {
			return err
		}
		if *parts != "" {
			if o.Parts, err = card.ParseSections(*parts); err != nil {
				return c.misused("--parts %s: %v", echo.Quoted(*parts), err)
			}
		}
		switch {
		case *to == "":
			return c.misused("no -o given: where does the card go?")
		case !hasEnding(*to, ".pdf", ".png", ".svg", ".md", ".html"):
			return c.misused("-o %s: a card is written as .pdf, .png, .svg, .md or .html", echo.Plain(*to))
		case o.Paper != card.A4 && o.Paper != card.Letter && o.Paper != card.A5:
			return c.misused("--paper %s is not one of a4, letter, a5", echo.Quoted(*paper))
		case *pages != 0 && *pages != 1 && *pages != 2:
			return c.misused("--pages %d is neither 1 nor 2", *pages)
		case *dpi != 0 && !(*dpi >= 30 && *dpi <= 600):
			return c.misused("--dpi %g is outside 30 to 600", *dpi)
		}
		if err := c.mayWrite(*to, files[0]); err != nil {
			return err
		}
		b, f, r, err := openWith(s, files[0])
		if err != nil {
			return err
		}
		found := balance.Mend(context.Background(), b.Model, f.Design, r, balance.Locks{})
		o.Remedies = &found
		kitchen, err := kitchenOf(f, files[0], "")
		if err != nil {
			return err
		}
		if plan, err := cold.Plan(context.Background(), f.Design, r, kitchen, cold.Options{NoPictures: true}); err == nil {
			_ = found.TimeOut(context.Background(), kitchen)
			o.Cold = &plan
		} else {
			fmt.Fprintf(s.err, "%s: %s\n", f.Name, say.T("the card goes without times in the cold: %s", say.Flaw(err)))
		}
		if err := card.Write(*to, f.Design, r, o); err != nil {
			return err
		}
		marked(s, f, *to, card.Lacking(f.Design, r))
		return nil
	}
}

// marked names the texts of f with letters that the drawing at path lacks.
func marked(s *shell, f *designfile.File, path string, lacks []card.Lack) {
	if !hasEnding(path, ".pdf", ".png", ".svg") {
		return // text has them all
	}
	for _, l := range lacks {
		at := f.Name
		if line := f.Line(l.Path); line > 0 {
			at = fmt.Sprintf("%s:%d", at, line)
		}
		fmt.Fprintf(s.err, "%s: %s: %v\n", at, l.Path, l)
	}
}

// rules reads a region.
func (c *command) rules(region string) (label.Region, error) {
	r := label.Region(strings.ToLower(region))
	if r != label.US && r != label.EU {
		return "", c.misused("--region %s is not one of us, eu", echo.Quoted(region))
	}
	return r, nil
}

// hasEnding reports whether path ends in one of the extensions, letter case
// aside.
func hasEnding(path string, extensions ...string) bool {
	return slices.Contains(extensions, strings.ToLower(filepath.Ext(path)))
}
