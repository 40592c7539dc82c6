package main

import (
	"fmt"
	"io"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/work/designfile"
)

// helpCommand gets its run from init: it lists the commands, and so itself.
var helpCommand = &command{
	name:  "help",
	usage: "help [COMMAND|format|json|prices|wishes]",
	short: "Describes a command, the design file or the JSON",
}

func init() { helpCommand.run = runHelp }

// topics are what help explains beside the commands.
var topics = map[string]func() string{
	"format": designfile.Format,
	"json":   helpJSON,
	"prices": helpPrices,
	"wishes": helpWishes,
}

func runHelp(c *command, s *shell, args []string) error {
	words, err := c.parse(c.flags(), args, 0, 1)
	if err != nil {
		return err
	}
	if len(words) == 0 {
		return overview(s.out)
	}
	if topic, ok := topics[words[0]]; ok {
		_, err := fmt.Fprintln(s.out, strings.TrimRight(topic(), "\n"))
		return err
	}
	if about, ok := find(words[0]); ok {
		return about.writeHelp(s.out)
	}
	return c.misused("there is no help on %s", echo.Quoted(words[0]))
}

func overview(w io.Writer) error {
	var b strings.Builder
	b.WriteString("ripplecalc computes designs of two-phase, rippled frozen desserts.\n\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "  %-12s %s\n", c.name, c.short)
	}
	b.WriteString(`
  ripplecalc help COMMAND   how to use it
  ripplecalc help format    the design file
  ripplecalc help json      the keys of evaluate --json, with their units
  ripplecalc help prices    the file of what your packs cost
  ripplecalc help wishes    the file of wishes for balance
  ripplecalc --version

Exit codes: 0 fine; 1 the input is at fault, or the answer could not be written;
2 wrong usage; 3 our fault.
Figures are computed against published tables and have the bands that those
leave; local code and licensed practice decide what may be made and sold.
`)
	_, err := io.WriteString(w, b.String())
	return err
}
