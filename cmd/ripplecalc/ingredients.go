package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/spf13/pflag"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
)

var ingredientsCommand = &command{
	name:  "ingredients",
	usage: "ingredients [--unknown N] [WORD...]",
	short: "Lists the ingredients that lines may name",
	long: `
Each line has the id, the name, the group and the source. With words, those that
have all of them in id, name or group. With --unknown, the N of them with the
most unknown figures: which they are, the most there can be, what the
model then assumes, and what a label leaves open.
`,
	most:  -1,
	flags: ingredientsFlags,
	words: map[string]func() []string{"": ids},
}

// ids are those of all ingredients; none where the shelf cannot be read.
func ids() []string {
	b, err := openBench()
	if err != nil {
		return nil
	}
	return idsOf(b.Library())
}

func idsOf(lib *ingredient.Library) []string {
	var all []string
	for _, in := range lib.All() {
		all = append(all, in.ID)
	}
	return all
}

func ingredientsFlags(c *command, f *pflag.FlagSet) action {
	most := f.Int("unknown", 0, "")
	return func(s *shell, words []string) error {
		if *most < 0 {
			return c.misused("--unknown %d: at least 1 is wanted", *most)
		}
		b, err := openBench()
		if err != nil {
			return err
		}
		var found []*ingredient.Ingredient
		for _, in := range b.Library().All() {
			if hasAll(strings.ToLower(in.ID+" "+in.Name+" "+in.Group), words) {
				found = append(found, in)
			}
		}
		switch {
		case len(found) == 0 && len(words) == 1 && like(words[0], idsOf(b.Library())) != "":
			return flaw.New("no ingredient has %s; did you mean %s?", echo.Quoted(words[0]), like(words[0], idsOf(b.Library())))
		case len(found) == 0:
			return flaw.New("no ingredient has %s", echo.Quoted(strings.Join(words, " ")))
		case *most > 0:
			return writeUnknown(s.out, found, *most)
		}
		t := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
		for _, in := range found {
			fmt.Fprintf(t, "%s\t%s\t%s\t%s\n", in.ID, in.Name, in.Group, strings.TrimSpace(in.Source+" "+in.SourceID))
		}
		return t.Flush()
	}
}

// writeUnknown writes the n of list with the most unknown figures.
func writeUnknown(w io.Writer, list []*ingredient.Ingredient, n int) error {
	slices.SortStableFunc(list, func(a, b *ingredient.Ingredient) int { return len(b.Unknown()) - len(a.Unknown()) })
	for _, in := range list[:min(n, len(list))] {
		unknown := in.Unknown()
		var names []string
		for _, c := range unknown {
			name := c.Words()
			if most := in.Most(c); most <= 1e9 {
				name += fmt.Sprintf(" (at most %.4g %s)", most, c.Unit())
			}
			names = append(names, name)
		}
		fmt.Fprintf(w, "%s (%s): %d unknown\n", in.ID, in.Source, len(unknown))
		if len(names) > 0 {
			fmt.Fprintf(w, "  %s\n", strings.Join(names, ", "))
		}
		for _, a := range say.Assumptions(report.Reads, in.Resolve().Assumed) {
			fmt.Fprintf(w, "  assumed: %s\n", a)
		}
		open, err := incompleteAlone(in)
		if err != nil {
			return flaw.New("%s: %v", in.ID, err)
		}
		if len(open) > 0 {
			fmt.Fprintf(w, "  a label of it alone marks as incomplete: %s\n", strings.Join(open, ", "))
		}
	}
	return nil
}

// incompleteAlone returns the lines that a US label of nothing else leaves
// open.
func incompleteAlone(in *ingredient.Ingredient) ([]string, error) {
	food := label.Food{Name: in.Name, Lines: []label.Used{{Ingredient: in, Grams: 100}}, DensityGPerML: 1, TubML: 1000}
	l, err := label.For(food, label.US, label.Options{})
	if err != nil {
		return nil, err
	}
	var open []string
	for _, line := range l.Lines {
		if line.Incomplete {
			open = append(open, strings.TrimSpace(line.Name))
		}
	}
	return open, nil
}

func hasAll(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, strings.ToLower(w)) {
			return false
		}
	}
	return true
}
