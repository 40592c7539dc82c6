package main

import (
	"cmp"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
)

// action does what a command does with the arguments that are no flags.
type action func(s *shell, files []string) error

// command is one thing that ripplecalc does.
type command struct {
	name  string
	usage string      // without the program's name, as it is typed
	short say.Message // one line for the list
	long  say.Message // what help adds; each flag stands there once, with what it means
	first string      // what the first argument is called; "" is a file
	least int         // arguments that are no flags
	most  int         // below 0 there is no bound
	flags func(c *command, flags *pflag.FlagSet) action
	// words are what may be typed, for the completion of shells: by flag, and
	// under "" for the arguments where these are no files of designs.
	words map[string]func() []string
	// after are the endings of the files that may follow the design, for the completion.
	after []string
}

// commands returns them in the order of the list.
func commands() []*command {
	return []*command{
		startCommand, evaluateCommand, balanceCommand, curveCommand, checkCommand, diffCommand, compareCommand, versionCommand, cardCommand,
		labelCommand, processCommand, planCommand, eggsCommand, shopCommand, coldCommand, iceCommand, rippleCommand, photoCommand, sureCommand, batchCommand, validateCommand,
		ingredientsCommand, linesCommand, schemaCommand, completionCommand, manCommand, helpCommand,
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
	root := tree(s)
	root.SetArgs(append([]string{}, args...)) // never nil, which stands for those of the process
	return root.Execute()
}

// tree returns the program as a tree of commands that work on s.
func tree(s *shell) *cobra.Command {
	root := &cobra.Command{
		Use: "ripplecalc", Short: say.T("computes designs of two-phase, rippled frozen desserts"), Long: overview(), Version: version(),
		Args: cobra.ArbitraryArgs, SilenceErrors: true, SilenceUsage: true, SuggestionsMinimumDistance: 2,
		CompletionOptions: cobra.CompletionOptions{DisableDefaultCmd: true},
		RunE: func(root *cobra.Command, args []string) error {
			if len(args) == 0 {
				return &usageError{"", flaw.New("no command given")}
			}
			return &usageError{"", unknown(args[0], root.SuggestionsFor(args[0]))}
		},
	}
	reads := takesUnits(root, s.locale)
	root.PersistentPreRun = func(c *cobra.Command, _ []string) {
		s.language = reads.language
		if f := c.Flags().Lookup("json"); c.Name() == "lines" || f != nil && f.Value.String() == "true" {
			reads.language = tongue.English // what programs read
			reads.use()
		}
	}
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.err)
	root.SetVersionTemplate("ripplecalc {{.Version}}\n")
	root.SetFlagErrorFunc(func(on *cobra.Command, err error) error { return &usageError{"", badFlag(on, err)} })
	root.SetHelpFunc(func(on *cobra.Command, _ []string) { // in the language that a flag chose since
		if c, ok := find(on.Name()); ok {
			fmt.Fprint(s.out, c.help())
			return
		}
		fmt.Fprint(s.out, overview())
	})
	for _, c := range commands() {
		if built := c.on(s); c == helpCommand {
			root.SetHelpCommand(built)
		} else {
			root.AddCommand(built)
		}
	}
	return root
}

// unknown says that there is no such command, and which are like it.
func unknown(name string, like []string) error {
	switch len(like) {
	case 0:
		return flaw.New("there is no command %s", echo.Quoted(name))
	case 1:
		return flaw.New("there is no command %s; did you mean %s?", echo.Quoted(name), like[0])
	}
	last := len(like) - 1
	return flaw.New("there is no command %s; did you mean %s or %s?", echo.Quoted(name), strings.Join(like[:last], ", "), like[last])
}

// on returns c as a command of the tree that works on s.
func (c *command) on(s *shell) *cobra.Command {
	built := &cobra.Command{
		Use: c.usage, Short: c.short.String(), Long: c.help(), DisableFlagsInUseLine: true,
		Args: func(_ *cobra.Command, files []string) error {
			switch {
			case len(files) < c.least && len(files) > 0:
				return c.misused("%s alone is not enough: %d are needed", echo.Quoted(files[0]), c.least)
			case len(files) < c.least:
				return c.misused("no %s given", flaw.Word(cmp.Or(c.first, "file")))
			case c.most >= 0 && len(files) > c.most:
				return c.misused("%s is one argument too many", echo.Quoted(files[c.most]))
			}
			return nil
		},
		ValidArgsFunction: func(_ *cobra.Command, before []string, typed string) ([]string, cobra.ShellCompDirective) {
			if words, ok := c.words[""]; ok {
				return beginning(words(), typed), cobra.ShellCompDirectiveNoFileComp
			}
			if len(before) > 0 && c.after != nil {
				return c.after, cobra.ShellCompDirectiveFilterFileExt
			}
			return []string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
		},
	}
	act := c.flags(c, built.Flags())
	built.Flags().BoolP("help", "h", false, "")
	built.Flags().VisitAll(func(f *pflag.Flag) {
		f.Usage = c.tells(f.Name)
		if f.Name == "help" {
			f.Usage = say.T("this help")
		}
		if words, ok := c.words[f.Name]; ok {
			_ = built.RegisterFlagCompletionFunc(f.Name, func(_ *cobra.Command, _ []string, typed string) ([]string, cobra.ShellCompDirective) {
				return beginning(words(), typed), cobra.ShellCompDirectiveNoFileComp
			})
		}
	})
	built.SetFlagErrorFunc(func(on *cobra.Command, err error) error { return &usageError{c.usage, badFlag(on, err)} })
	built.RunE = func(_ *cobra.Command, files []string) error { return act(s, files) }
	return built
}

// one is a list of words that stay.
func one(words ...string) func() []string { return func() []string { return words } }

func beginning(words []string, typed string) []string {
	var found []string
	for _, w := range words {
		if strings.HasPrefix(w, typed) {
			found = append(found, w)
		}
	}
	return found
}

// tells returns what the help of c says of a flag: on the line that it begins, else on
// the first that names it.
func (c *command) tells(flag string) string {
	if flag = "--" + flag; flag == "--output" {
		flag = "-o"
	}
	for _, heads := range []bool{true, false} {
		for _, line := range strings.Split(c.long.String(), "\n") {
			words := strings.Fields(line)
			for i, w := range words {
				if strings.TrimSuffix(w, ",") != flag || heads && i > 0 {
					continue
				}
				if i+1 < len(words) {
					return strings.Trim(strings.Join(words[i+1:], " "), ",:; ")
				}
				return c.short.String()
			}
		}
	}
	return ""
}

func (c *command) misused(format flaw.Message, args ...any) error {
	return &usageError{c.usage, flaw.New(format, args...)}
}

func (c *command) help() string {
	return say.T("usage: ripplecalc %s", c.usage) + "\n\n" + say.Sentence(c.short.String()) + "\n" + c.long.String()
}

// badFlag says why the flags could not be read, with no more of what was typed
// than a message repeats.
func badFlag(on *cobra.Command, err error) error {
	var none *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var bad *pflag.InvalidValueError
	switch {
	case errors.As(err, &none) && none.GetSpecifiedShortnames() != "":
		return flaw.New("there is no flag %s", echo.Plain("-"+none.GetSpecifiedName()))
	case errors.As(err, &none):
		if near := like(none.GetSpecifiedName(), flagsOf(on)); near != "" {
			return flaw.New("there is no flag %s; did you mean %s?", echo.Plain("--"+none.GetSpecifiedName()), "--"+near)
		}
		return flaw.New("there is no flag %s", echo.Plain("--"+none.GetSpecifiedName()))
	case errors.As(err, &bare):
		return flaw.New("%s needs a value", asTyped(bare.GetFlag()))
	case errors.As(err, &bad):
		return flaw.New(notWanted(bad.GetFlag()), asTyped(bad.GetFlag()), echo.Quoted(bad.GetValue()))
	}
	return flaw.New("%s", echo.Short(err.Error()))
}

// flagsOf returns the names of the flags of a command, its own and those of all.
func flagsOf(on *cobra.Command) []string {
	var names []string
	for _, flags := range []*pflag.FlagSet{on.Flags(), on.InheritedFlags()} {
		flags.VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	}
	return names
}

// like returns which of the names is most like what was typed, "" where none is.
func like(typed string, names []string) string {
	return ingredient.Nearest(typed, names, min(3, max(2, (len(typed)+1)/3)))
}

func asTyped(f *pflag.Flag) string {
	if f.Shorthand != "" {
		return "-" + f.Shorthand
	}
	return "--" + f.Name
}

// notWanted says that a value is none that a flag takes.
func notWanted(f *pflag.Flag) flaw.Message {
	switch f.Value.Type() {
	case "int", "int64":
		return "%s %s is no whole number"
	case "system":
		return "%s %s is no system of units: metric or us"
	case "language":
		return "%s %s is no language: en or de"
	case "sign":
		return "%s %s is no decimal sign: point or comma"
	case "currency":
		return "%s %s is no currency: one to eight plain characters"
	case "bool":
		return "%s %s is no yes or no: write true or false"
	}
	return "%s %s is no number"
}
