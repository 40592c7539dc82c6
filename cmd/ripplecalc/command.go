package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"regexp"

	"ripplewright/internal/form/echo"
)

// command is one thing that ripplecalc does.
type command struct {
	name  string
	usage string // without the program's name
	short string // one line for the list
	long  string // what help adds
	run   func(c *command, s *shell, args []string) error
}

// commands returns them in the order of the list.
func commands() []*command {
	return []*command{
		evaluateCommand, balanceCommand, curveCommand, checkCommand, diffCommand, cardCommand,
		labelCommand, processCommand, planCommand, eggsCommand, shopCommand, coldCommand, iceCommand, rippleCommand, sureCommand, validateCommand,
		ingredientsCommand, linesCommand, schemaCommand, helpCommand,
	}
}

func find(name string) (*command, bool) {
	for _, c := range commands() {
		if c.name == name {
			return c, true
		}
	}
	return nil, false
}

// dispatch runs the command that args name.
func dispatch(s *shell, args []string) error {
	if len(args) == 0 {
		return &usageError{"", "no command given"}
	}
	name, rest := args[0], args[1:]
	switch name {
	case "--version", "-version", "version":
		_, err := fmt.Fprintln(s.out, "ripplecalc", version())
		return err
	case "--help", "-help", "-h":
		name = helpCommand.name
	}
	c, ok := find(name)
	if !ok {
		return &usageError{"", "there is no command " + echo.Quoted(name)}
	}
	err := c.run(c, s, rest)
	if errors.Is(err, flag.ErrHelp) {
		return c.writeHelp(s.out)
	}
	return err
}

// flags returns an empty set of flags for c.
func (c *command) flags() *flag.FlagSet {
	f := flag.NewFlagSet(c.name, flag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Usage = func() {}
	return f
}

// parse reads flags that stand before, between and after the other arguments,
// and returns these; "--" ends the flags. least and most bound how many there
// may be; most below 0 is no bound.
func (c *command) parse(f *flag.FlagSet, args []string, least, most int) ([]string, error) {
	var others []string
	for {
		if err := f.Parse(args); errors.Is(err, flag.ErrHelp) {
			return nil, err
		} else if err != nil {
			return nil, c.misused("%s", short(err.Error()))
		}
		rest := f.Args()
		if n := len(args) - len(rest); n > 0 && args[n-1] == "--" {
			others = append(others, rest...)
			break
		}
		if len(rest) == 0 {
			break
		}
		others, args = append(others, rest[0]), rest[1:]
	}
	switch {
	case len(others) < least:
		return nil, c.misused("no file given")
	case most >= 0 && len(others) > most:
		return nil, c.misused("%s is one argument too many", echo.Quoted(others[most]))
	}
	return others, nil
}

func (c *command) misused(format string, args ...any) error {
	return &usageError{c.usage, fmt.Sprintf(format, args...)}
}

func (c *command) writeHelp(w io.Writer) error {
	_, err := fmt.Fprintf(w, "usage: ripplecalc %s\n\n%s.\n%s", c.usage, c.short, c.long)
	return err
}

// short is a message of package flag with no more of what was typed than a
// message repeats: it stands in quotes, or is one word.
func short(message string) string {
	message = typed.ReplaceAllStringFunc(message, func(quoted string) string {
		return `"` + echo.Short(quoted[1:len(quoted)-1]) + `"`
	})
	return word.ReplaceAllStringFunc(message, echo.Short)
}

var (
	typed = regexp.MustCompile(`"(?:[^"\\]|\\.)*"`)
	word  = regexp.MustCompile(`[^\s"]+`)
)
