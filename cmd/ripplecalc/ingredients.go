package main

import (
	"fmt"
	"strings"
	"text/tabwriter"
)

var ingredientsCommand = &command{
	name:  "ingredients",
	usage: "ingredients [WORD...]",
	short: "Lists the ingredients that lines may name",
	long: `
Each line has the id, the name, the group and the source. With words, those that
have all of them in id, name or group.
`,
	run: runIngredients,
}

func runIngredients(c *command, s *shell, args []string) error {
	words, err := c.parse(c.flags(), args, 0, -1)
	if err != nil {
		return err
	}
	b, err := openBench()
	if err != nil {
		return err
	}
	t := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
	found := 0
	for _, in := range b.Library().All() {
		if !hasAll(strings.ToLower(in.ID+" "+in.Name+" "+in.Group), words) {
			continue
		}
		found++
		fmt.Fprintf(t, "%s\t%s\t%s\t%s\n", in.ID, in.Name, in.Group, strings.TrimSpace(in.Source+" "+in.SourceID))
	}
	if err := t.Flush(); err != nil {
		return err
	}
	if found == 0 {
		return fmt.Errorf("no ingredient has %q", strings.Join(words, " "))
	}
	return nil
}

func hasAll(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, strings.ToLower(w)) {
			return false
		}
	}
	return true
}
