package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/yamltext"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/designfile"
)

var balanceCommand = &command{
	name:  "balance",
	usage: "balance FILE [--wishes WISHES] [-o OUT] [--json], or balance --report [--cases N] [--seed N] [--json]",
	short: "Finds what to weigh: remedies, or the design that meets wishes",
	long: `
Without wishes it looks for changes after which both phases eat well and nothing
is amiss, each a whole design that has been evaluated.

  --wishes WISHES  a file of wishes (see "ripplecalc help wishes")
  -o OUT           writes the first design found; comments and order of FILE stay
  --json           JSON instead of text: met, remedies with changes and figures,
                   conflicts, nearest
  --report         how well the search does: round trips, in which a design's own
                   figures are asked for, and remedies of bad designs
  --cases N        of a report, how many, 1 to 100000: 500 round trips, 200 bad designs
  --seed N         of a report, which designs (1)

The exit code is 0 whether or not everything is met.
`,
	most:  1,
	flags: balanceFlags,
}

func balanceFlags(c *command, flags *pflag.FlagSet) action {
	asJSON := flags.Bool("json", false, "")
	wishes := flags.String("wishes", "", "")
	to := flags.StringP("output", "o", "", "")
	report := flags.Bool("report", false, "")
	cases := flags.Int("cases", 0, "")
	seed := flags.Int64("seed", 1, "")
	return func(s *shell, files []string) error {
		switch {
		case *report && (len(files) > 0 || *wishes != "" || *to != ""):
			return c.misused("--report takes no file")
		case *report:
			return c.report(s, *cases, *seed, *asJSON)
		case len(files) == 0:
			return c.misused("no file given")
		}
		return c.balance(s, files[0], *wishes, *to, *asJSON)
	}
}

// report says how well the search does on designs of a seed.
func (c *command) report(s *shell, cases int, seed int64, asJSON bool) error {
	trips, bad := 500, 200
	if cases != 0 {
		trips, bad = cases, cases
	}
	if trips < 1 || trips > 100000 {
		return c.misused("--cases %d is outside 1 to 100000", cases)
	}
	b, err := openBench()
	if err != nil {
		return err
	}
	r := report.Trials{Seed: seed}
	if r.RoundTrips, err = balance.RoundTrips(context.Background(), b.Model, trips, seed); err != nil {
		return fault(err)
	}
	if r.Remedies, err = balance.MendBad(context.Background(), b.Model, bad, seed); err != nil {
		return fault(err)
	}
	return s.answer(r, asJSON)
}

func (c *command) balance(s *shell, name, wishes, to string, asJSON bool) error {
	if err := c.mayWrite(to, name, wishes); err != nil {
		return err
	}
	b, f, r, err := openWith(s, name)
	if err != nil {
		return err
	}
	kitchen, err := kitchenOf(f, name, "")
	if err != nil {
		return err
	}
	answer := report.Balance{File: f.Name, Before: r}
	if wishes == "" {
		found := balance.Mend(context.Background(), b.Model, f.Design, r, balance.Locks{})
		_ = found.TimeOut(context.Background(), kitchen) // else there are no minutes
		answer.Found = &found
	} else {
		ask, err := b.wishes(wishes, f, kitchen)
		if err != nil {
			return err
		}
		found, err := balance.Balance(context.Background(), b.Model, f.Design, ask)
		if err != nil {
			return fault(err)
		}
		answer.Answer = &found
	}
	all := answer.All()
	beside, err := balance.Compare(context.Background(), f.Design, r, kitchen, all)
	if err != nil {
		return fault(err)
	}
	balance.Told(all, beside)
	if to != "" {
		p := answer.Nearest()
		if p == nil {
			return flaw.New("%s: there is nothing to change, so %s is not written", f.Name, to)
		}
		if _, err := designfile.Save(to, f, p.Design, designfile.SaveOptions{Schemas: s.schemas}); err != nil {
			return err
		}
	}
	return s.answer(answer, asJSON)
}

// wishes reads a file of wishes for the design of f and the kitchen in which it is made.
func (b *bench) wishes(path string, f *designfile.File, kitchen cold.Profile) (balance.Ask, error) {
	file, err := os.Open(path)
	if err != nil {
		return balance.Ask{}, err
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, yamltext.MaxSize+1))
	if err != nil {
		return balance.Ask{}, err
	}
	return balance.DecodeAsk(path, data, f.Design, b.Library(), kitchen)
}

// helpWishes tells the form of a file of wishes, from the table that checks it.
func helpWishes() string {
	var b strings.Builder
	b.WriteString(say.T(`A file of wishes says what a tub should be. Every wish is optional; each band has
from, to or both, or is; weight says how much it counts beside the others:

version: 1
custard:
  texture: scoopable
  sweetness_percent: {from: 15, to: 17}
foam:
  keeps_ice: true
eggs:
  whole: true
  crack: {is: 6}
levers:
  keep: [salt, ratio]
  between: [milk_whole 300 to 500]

`))
	width := 0
	keys := balance.WishKeys()
	for _, k := range keys {
		width = max(width, len(k.Path))
	}
	for _, k := range keys {
		about := say.Said(k.About)
		if what := say.Said(k.Allowed); what != "" {
			about += "; " + what
		}
		fmt.Fprintf(&b, "  %-*s  %s\n", width, k.Path, about)
	}
	b.WriteString(say.T(`
A wish counts as met to half a per cent, or a tenth of a kelvin. Reading is
strict: an error names the file, the line and the key.
`))
	return b.String()
}
