package main

import "ripplewright/internal/work/designfile"

var schemaCommand = &command{
	name:  "schema",
	usage: "schema",
	short: "Writes the JSON Schema of the design file, by which an editor checks and completes designs",
	long: `
Draft 2020-12, made from the table that "ripplecalc help format" tells in words.
An editor takes it from a file: ripplecalc schema > design.schema.json
`,
	run: runSchema,
}

func runSchema(c *command, s *shell, args []string) error {
	if _, err := c.parse(c.flags(), args, 0, 0); err != nil {
		return err
	}
	_, err := s.out.Write(designfile.Schema())
	return err
}
