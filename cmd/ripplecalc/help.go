package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/spf13/pflag"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/designfile"
)

// helpCommand gets its run from init: it lists the commands, and so itself.
var helpCommand = &command{
	name:  "help",
	usage: "help [COMMAND|format|json|prices|wishes|batches]",
	short: "Describes a command, the design file or the JSON",
	most:  1,
}

func init() {
	helpCommand.flags = helpFlags
	helpCommand.words = map[string]func() []string{"": helped}
}

// topics are what help explains beside the commands.
var topics = map[string]func() string{
	"format": func() string { return designfile.Format(say.Said) },
	"json":   helpJSON,
	"prices": helpPrices,
	"wishes": helpWishes,

	"batches": helpBatches,
}

func helpFlags(c *command, _ *pflag.FlagSet) action {
	return func(s *shell, words []string) error {
		if len(words) == 0 {
			_, err := io.WriteString(s.out, overview())
			return err
		}
		if topic, ok := topics[words[0]]; ok {
			_, err := fmt.Fprintln(s.out, strings.TrimRight(topic(), "\n"))
			return err
		}
		if about, ok := find(words[0]); ok {
			_, err := io.WriteString(s.out, about.help())
			return err
		}
		if near := like(words[0], helped()); near != "" {
			return c.misused("there is no help on %s; did you mean %s?", echo.Quoted(words[0]), near)
		}
		return c.misused("there is no help on %s", echo.Quoted(words[0]))
	}
}

// helped are the words that help knows.
func helped() []string {
	var words []string
	for topic := range topics {
		words = append(words, topic)
	}
	for _, c := range commands() {
		words = append(words, c.name)
	}
	return words
}

func overview() string {
	var b strings.Builder
	b.WriteString(say.T("ripplecalc computes designs of two-phase, rippled frozen desserts.") + "\n\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "  %-12s %s\n", c.name, c.short)
	}
	b.WriteString(say.T(`
  ripplecalc help COMMAND   how to use it
  ripplecalc help format    the design file
  ripplecalc help json      the keys of evaluate --json, with their units
  ripplecalc help prices    the file of what your packs cost
  ripplecalc help wishes    the file of wishes for balance
  ripplecalc help batches   the file of a design's batches
  ripplecalc --version
  --units us                of any command: °F, ounces beside grams, US volumes; files
                            and the figures of JSON stay metric
  --decimals comma          of any command: 2,5 for 2.5 in texts and on cards
  --language de             of any command: help, texts, errors and cards in our own German,
                            which a German system has without; JSON stays English
  --currency €              of any command: before money where the prices name none

Exit codes: 0 fine; 1 the input is at fault, or the answer could not be written;
2 wrong usage; 3 our fault.
Figures are computed against published tables and have the bands that those
leave; local code and licensed practice decide what may be made and sold.
`))
	return b.String()
}

// column is a word with blanks after it, so wide.
func column(word string, width int) string {
	return word + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(word)))
}
