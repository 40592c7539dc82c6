package main

import (
	"context"

	"github.com/spf13/pflag"

	"ripplewright/assets"
	"ripplewright/internal/answer/selling"
	"ripplewright/internal/food/label"
	"ripplewright/internal/food/onpack"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/card"
	"ripplewright/internal/show/report"
)

var labelCommand = &command{
	name:  "label",
	usage: "label FILE [--place us|eu|de|ie|it|uk --sale shop|stall|scooped --lang en,de] [--region us|eu] [--short] [--all] [--reference FILE] [--json] [-o label.pdf|label.png|label.svg|label.txt] [--form vertical|tabular|dual]",
	short: "Computes the nutrition panel, the list of ingredients, names and claims; and the whole label of a tub",
	long: `
With --place it is the whole label of a tub: every element that the rules of the
place ask for, filled in, to be added by you, or not needed and why; laid out on
the faces of the tub with -o (.pdf, .svg or .png). A label that lacks what is due
is not written.

  --place   where it is sold: us, eu, de, ie, it or uk
  --sale    shop (the usual; wholesale too), stall (packed before the order and
            sold by you) or scooped (to order)
  --lang    one to three languages, as en,de; names and ingredients beside
            English are the design's label.de.name and label.de.ingredients
  --made 2026-07-14, --keeps 90d or 6m, --date day, month or year
            the day it was made and for how long it keeps, as you have found out
  --batch NAME or last
            day, lot and how long it keeps from the notebook beside the design,
            where they are not given
  --maker "Name, street, town"   --lot WORDS   --storage WORDS   --brand WORDS
  --exempt  no panel: you sell so little that the rules ask for none
  --contact "TELEPHONE or address"
            where to ask for the nutrition of a package too small for a panel, in
            the US; the maker, if not given
  --net ML  the quantity declared, if not all that the tub holds, frozen;
            --grams puts the grams beside it
  --tub NAME or --tub-mm 97,80,83 (top, bottom, height) or box:120,80,60
            the tub's outside, if not the design's own
  --lid     a round label for the lid too, with the name and the date
  --article 13 digits
            the bars of your own article number; none is made up
  --front-of-pack
            the UK's voluntary colours
  --sheet a4, a5, letter or 210x297, --margin, --gap (mm), --first 3, --copies 12
            labels on a sheet, from a free place on; with copies their lots are
            numbered

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
	least: 1,
	most:  1,
	flags: labelFlags,
	words: map[string]func() []string{"place": one("us", "eu", "de", "ie", "it", "uk"), "sale": one("shop", "stall", "scooped"), "region": one("us", "eu"), "form": one("vertical", "tabular", "dual"), "date": one("day", "month", "year")},
}

func labelFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	short := flags.Bool("short", false, "")
	every := flags.Bool("all", false, "")
	region := flags.String("region", string(label.US), "")
	reference := flags.String("reference", "", "")
	to := flags.StringP("output", "o", "", "")
	form := flags.String("form", "", "")
	var tub tubFlags
	tub.on(flags)
	return func(s *shell, files []string) error {
		place, whole, err := tub.where(c, flags, region)
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
			return flaw.New("%s: label: %v", f.Name, err)
		}
		answer := report.Label{Label: l, Every: *every}
		words, err := onpack.OpenWords(assets.LabelWords)
		if err != nil {
			return err
		}
		tub.Place = string(place)
		if err := tub.ofBatch(c, files[0]); err != nil {
			return err
		}
		p, err := tub.Pack(f.Design, words)
		if err != nil {
			return misread(c, err)
		}
		if _, err := tub.Print(); err != nil {
			return misread(c, err)
		}
		content, food := tub.Of(f.Design, r, l, p, words)
		if whole {
			if *to != "" {
				if err := tub.write(c, *to, content, food, p, words, l.ProposedName); err != nil {
					return flaw.New("%s: %v", f.Name, err)
				}
				if !*asJSON {
					return nil
				}
			}
			out := tub.answer(answer, content, p, food)
			if asksDate(content.Elements) {
				stored, err := selling.Stored(context.Background(), f.Design, r)
				if err != nil {
					return flaw.New("%s: %v", f.Name, err)
				}
				out.BesideDate = report.NewBesideDate(&stored)
			}
			return s.answer(out, *asJSON)
		}
		if *to != "" {
			if err := card.WriteLabel(*to, l, card.Form(*form)); err != nil {
				return err
			}
			if marked(s, f, *to, card.LackingOnLabel(f.Design, r, l)); !*asJSON {
				return nil
			}
		}
		if *asJSON {
			return s.answer(tub.answer(answer, content, p, food), true)
		}
		return s.answer(answer, false)
	}
}
