package main

import (
	"slices"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/schemafile"
	"ripplewright/internal/form/echo"
)

var schemaCommand = &command{
	name:  "schema",
	usage: "schema [design | batches | kitchens | prices | ingredients | wishes]",
	short: "Writes the JSON Schema of a kind of file, of the design file if none is named, for editors that check and complete it",
	long: `
Draft 2020-12, made from the tables behind "ripplecalc help format" and the readers of
the other files: NAME.batches.yaml beside a design, in which each entry is a document of
its own, the kitchens, prices and own ingredients of your configuration folder, and a
file of wishes for balance.
Files that are written here name their schema in their first line, as
# yaml-language-server: $schema=ADDRESS, by which editors find it. For other files of
yours save it: ripplecalc schema > design.schema.json
`,
	flags: schemaFlags,
	words: map[string]func() []string{"": schemaKinds},
	most:  1,
}

func schemaKinds() []string {
	var kinds []string
	for _, s := range schemafile.All() {
		kinds = append(kinds, string(s.Kind))
	}
	return kinds
}

func schemaFlags(c *command, _ *pflag.FlagSet) action {
	return func(s *shell, words []string) error {
		at := 0
		if len(words) > 0 {
			if at = slices.Index(schemaKinds(), words[0]); at < 0 {
				if near := like(words[0], schemaKinds()); near != "" {
					return c.misused("%s is no file that has a schema; did you mean %s?", echo.Quoted(words[0]), near)
				}
				return c.misused("%s is no file that has a schema", echo.Quoted(words[0]))
			}
		}
		_, err := s.out.Write(schemafile.All()[at].Text())
		return err
	}
}
