package main

import (
	"github.com/spf13/pflag"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/work/designfile"
)

var schemaCommand = &command{
	name:  "schema",
	usage: "schema [wishes]",
	short: "Writes the JSON Schema of the design file or of a file of wishes, for editors that check and complete it",
	long: `
Draft 2020-12, made from the table behind "ripplecalc help format", or with the word
wishes from that behind "ripplecalc help wishes".
Save it to a file for your editor: ripplecalc schema > design.schema.json
`,
	flags: schemaFlags,
	words: map[string]func() []string{"": one("wishes")},
	most:  1,
}

func schemaFlags(c *command, _ *pflag.FlagSet) action {
	return func(s *shell, words []string) error {
		schema := designfile.Schema
		switch {
		case len(words) == 0:
		case words[0] == "wishes":
			schema = balance.WishSchema
		default:
			return c.misused("%s is no file that has a schema", echo.Quoted(words[0]))
		}
		_, err := s.out.Write(schema())
		return err
	}
}
