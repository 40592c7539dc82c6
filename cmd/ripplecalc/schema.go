package main

import "ripplewright/internal/work/designfile"

var schemaCommand = &command{
	name:  "schema",
	usage: "schema",
	short: "Writes the JSON Schema of the design file, for editors that check and complete it",
	long: `
Draft 2020-12, made from the table behind "ripplecalc help format".
Save it to a file for your editor: ripplecalc schema > design.schema.json
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
