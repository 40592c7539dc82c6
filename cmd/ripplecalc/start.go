package main

import (
	"math"

	"github.com/spf13/pflag"

	"ripplewright/assets"
	"ripplewright/internal/answer/start"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

var startCommand = &command{
	name:  "start",
	usage: "start BASE [--foam FOAM] [--tubs N] [--volume ML] [-o NEW.yaml]",
	short: "Writes a bare design to begin with, weighed out for the tubs at hand",
	long: `
BASE is milk-and-yolk, rich or dairy-free, or a design file to scale. It is weighed out
for the tubs, in whole grams from 10 g on.

  --foam F     plain, honey or brown-sugar, instead of the base's own
  --tubs N     so many tubs, 1 to 500; the base's if not given
  --volume ML  what a tub holds; the base's if not given
  -o NEW.yaml  writes the file, which must not be there yet; else to standard output
`,
	least: 1,
	most:  1,
	first: "base",
	flags: startFlags,
	words: map[string]func() []string{"": startKeys(false), "foam": startKeys(true)},
}

func startKeys(foams bool) func() []string {
	return func() []string {
		shelf, err := start.Open(assets.Bases)
		if err != nil {
			return nil
		}
		if foams {
			return start.Keys(shelf.Foams)
		}
		return start.Keys(shelf.Bases)
	}
}

// within refuses a value outside the range of the setting at path.
func (c *command) within(flag, path string, v float64) error {
	f, _ := design.FieldAt(path)
	if v < f.Min || v > f.Max || math.IsNaN(v) {
		return c.misused("--%s %g is outside %g to %g", flag, v, f.Min, f.Max)
	}
	return nil
}

func startFlags(c *command, flags *pflag.FlagSet) action {
	foam, out := flags.String("foam", "", ""), flags.StringP("output", "o", "", "")
	tubs, volume := flags.Int("tubs", 0, ""), flags.Float64("volume", 0, "")
	return func(s *shell, args []string) error {
		if flags.Changed("tubs") {
			if err := c.within("tubs", "tubs.count", float64(*tubs)); err != nil {
				return err
			}
		}
		if flags.Changed("volume") {
			if err := c.within("volume", "tubs.volume_ml", *volume); err != nil {
				return err
			}
		}
		if *out != "" && !hasEnding(*out, ".yaml", ".yml") {
			return c.misused("-o %s: a design is written as .yaml", echo.Plain(*out))
		}
		b, err := openBench()
		if err != nil {
			return err
		}
		d, err := c.begin(s, b, args[0], *foam)
		if err != nil {
			return err
		}
		if !flags.Changed("tubs") {
			*tubs = d.Tubs.Count
		}
		if !flags.Changed("volume") {
			*volume = d.Tubs.VolumeML
		}
		if d, err = start.Scaled(b.Model, d, *tubs, *volume); err != nil {
			return fault(err)
		}
		if *out != "" {
			_, err = designfile.Save(*out, nil, d, designfile.SaveOptions{Schemas: s.schemas})
			return err
		}
		text, err := (&designfile.File{}).Encode(d)
		if err == nil {
			_, err = s.out.Write(text)
		}
		return err
	}
}

// begin is the base of a key, or the design in a file.
func (c *command) begin(s *shell, b *bench, name, foam string) (design.Design, error) {
	shelf, err := start.Open(assets.Bases)
	if err != nil {
		return design.Design{}, &faultError{err}
	}
	if name == "-" || hasEnding(name, ".yaml", ".yml") {
		f, err := b.load(s, name)
		if err != nil {
			return design.Design{}, err
		}
		if foam != "" {
			return design.Design{}, c.misused("--foam goes with a base")
		}
		return f.Design, nil
	}
	d, err := shelf.Design(name, foam)
	if err != nil {
		return d, c.misused("%v", err)
	}
	return d, nil
}
