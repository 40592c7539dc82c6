package main

import (
	"github.com/spf13/pflag"

	"ripplewright/internal/work/designfile"
)

var schemaCommand = &command{
	name:  "schema",
	usage: "schema",
	short: "Writes the JSON Schema of the design file, for editors that check and complete it",
	long: `
Draft 2020-12, made from the table behind "ripplecalc help format".
Save it to a file for your editor: ripplecalc schema > design.schema.json
`,
	flags: schemaFlags,
	words: map[string]func() []string{"": one()},
}

func schemaFlags(c *command, _ *pflag.FlagSet) action {
	return func(s *shell, _ []string) error {
		_, err := s.out.Write(designfile.Schema())
		return err
	}
}
