package main

import (
	"strings"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/answer/whole"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

var eggsCommand = &command{
	name:  "eggs",
	usage: "eggs FILE [--eggs N] [--way ratio|recipe] [-o NEW.yaml] [--json]",
	short: "Counts the eggs, and finds designs that use whole ones with nothing over",
	long: `
Two things can give. By ratio both recipes stay: custard and foam are weighed out
for whole eggs, the share of foam moves to what that makes, and the tubs are as
many as it fills. By recipe tubs and ratio stay: each phase is made around whole
eggs, with more or less of all else. Grams are then kept as written. Figures are as
the batches beside the file have taught.

  --eggs N     so many eggs, instead of what comes nearest to the design
  --way W      ratio or recipe, instead of both
  -o NEW.yaml  writes the new design, the first that is found
  --json       JSON instead of text: ledger (as eggs of process --json); ways (way,
               eggs, sentence, before and after, lines: before_g, after_g); unable
               (way, sentence)
`,
	least: 1,
	most:  1,
	flags: eggsFlags,
	words: map[string]func() []string{"way": one("ratio", "recipe")},
}

func eggsFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	eggs := flags.Int("eggs", 0, "")
	way, out := flags.String("way", "", ""), flags.StringP("output", "o", "", "")
	return func(s *shell, files []string) error {
		if *eggs < 0 || *eggs > design.MaxCount {
			return c.misused("--eggs %d is outside 1 to %d", *eggs, int(design.MaxCount))
		}
		if *way != "" && *way != whole.ByRatio.String() && *way != whole.ByRecipe.String() {
			return c.misused("--way %s: known are ratio, recipe", echo.Quoted(*way))
		}
		if *out != "" && !hasEnding(*out, ".yaml", ".yml") {
			return c.misused("-o %s: a design is written as .yaml", echo.Plain(*out))
		}
		if err := c.mayWrite(*out, files[0]); err != nil {
			return err
		}
		b, err := openBench()
		if err != nil {
			return err
		}
		f, err := b.load(s, files[0])
		if err != nil {
			return err
		}
		if b, err = b.taughtBy(f, files[0]); err != nil {
			return err
		}
		if _, err := b.evaluate(f); err != nil { // names the line, which the search does not
			return err
		}
		ways, err := whole.Of(b.Model, f.Design, *eggs)
		if err != nil {
			return fault(err)
		}
		if *way != "" {
			ways = ways.Only(*way)
		}
		answer := report.WholeEggsOf(f.Name, f.Design, process.EggsOf(f.Design, &ways.Before), ways)
		if err := s.answer(answer, *asJSON); err != nil || *out == "" {
			return err
		}
		if len(ways.List) == 0 {
			return c.nothing(f, ways)
		}
		_, err = designfile.Save(*out, f, ways.List[0].Design, designfile.SaveOptions{Schemas: s.schemas})
		return err
	}
}

// nothing says why no design is written.
func (c *command) nothing(f *designfile.File, w whole.Ways) error {
	var why []string
	for _, u := range w.Unable {
		why = append(why, say.WholeUnable(report.Reads, w.Before.Eggs, u))
	}
	return &designfile.Error{Name: f.Name, Problems: []designfile.Problem{{Kind: designfile.Invalid, Path: "eggs", Err: flaw.New("no design is written. %s", strings.Join(why, " "))}}}
}
