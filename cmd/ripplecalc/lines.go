package main

import (
	"cmp"
	"io"
	"os"

	"github.com/spf13/pflag"

	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/written"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/design"
)

var linesCommand = &command{
	name:  "lines",
	usage: "lines FILE|- [--system US|EU] [--size SIZE]",
	short: "Reads a recipe as people write it, line by line",
	long: `
One JSON object a line: text, ingredient (an id, null where nothing was
understood), grams (null where they stay open), how (what the grams were made
of), doubt (null where the line says one thing). Headings, empty lines and
sentences that weigh nothing are passed over. A line with a doubt shows what it
most likely means, for you to decide; it is not what the line says. A slip in
the name of a food, two letters swapped or one wrongly doubled or single, is put
right, and how says so; any other is a doubt.

Volumes become grams by the ingredient's own density. A cup holds 236.6 mL, a
tablespoon 14.8, a teaspoon 4.9, a fluid ounce 29.6 (NIST SP 811, Appendix B.8).

With --language de, or on a German system, the lines are German; how and doubt stay
English.

  --system S   of egg sizes, US or EU; US if not given
  --size SIZE  of eggs that are counted without one; large, or M
`,
	least: 1,
	most:  1,
	flags: linesFlags,
	words: map[string]func() []string{"system": one("US", "EU")},
}

// mostText is the longest text that is read, bytes.
const mostText = 1 << 20

func linesFlags(c *command, flags *pflag.FlagSet) action {
	usual := design.New().Eggs
	system, size := flags.String("system", usual.System, ""), flags.String("size", "", "")
	return func(s *shell, files []string) error {
		if *size == "" {
			*size = usual.Size
			if *system == "EU" {
				*size = "M"
			}
		}
		class, err := egg.Find(*system, *size)
		if err != nil {
			return c.misused("%v", err)
		}
		b, err := openBench()
		if err != nil {
			return err
		}
		text, err := readText(s, files[0])
		if err != nil {
			return err
		}
		for _, l := range read(s.language, b.Library(), written.Eggs{System: class.System, Size: class.Name}, text) {
			if err := report.WriteJSON(s.out, report.WrittenLine(b.Library(), &l), false); err != nil {
				return fault(err)
			}
		}
		return nil
	}
}

// read reads a recipe in a language of the catalogue.
func read(language string, lib *ingredient.Library, eggs written.Eggs, text string) []written.Said {
	if language != "de" {
		return written.New(lib, eggs).Read(text)
	}
	texts, _ := tongue.Texts(language) // compiled in
	return written.NewGerman(lib, eggs, func(in *ingredient.Ingredient) string {
		return cmp.Or(texts[tongue.Message(in.Kitchen())], in.Kitchen())
	}).Read(text)
}

// readText reads the file named, "-" being standard input.
func readText(s *shell, name string) (string, error) {
	in := s.in
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return "", err
		}
		defer f.Close()
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, mostText+1))
	switch {
	case err != nil:
		return "", flaw.New("%s: %v", echo.Plain(name), err)
	case len(data) > mostText:
		return "", flaw.New("%s: a recipe has no more than %d bytes", echo.Plain(name), mostText)
	}
	return string(data), nil
}
