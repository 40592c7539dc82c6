package main

import (
	"github.com/spf13/cobra"

	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
)

// unitsFlag is a flag of every command: how quantities read in texts, on cards and
// in the sentences of JSON. Files and the figures of JSON stay metric.
const unitsFlag = "units"

// units is its value.
type units string

func (u *units) String() string { return string(*u) }
func (u *units) Type() string   { return "system" }

// Set has everything that is told from now on read so.
func (u *units) Set(name string) error {
	reads, err := say.SystemOf(name)
	if err == nil {
		*u = units(name)
		report.Reads = reads
	}
	return err
}

// takesUnits gives every command of a tree the flag. Nothing chosen is metric.
func takesUnits(root *cobra.Command) {
	report.Reads = say.Usual
	u := units(say.Systems[0])
	root.PersistentFlags().Var(&u, unitsFlag, "metric or us: how quantities read; files and the figures of JSON stay metric")
	_ = root.RegisterFlagCompletionFunc(unitsFlag, func(_ *cobra.Command, _ []string, typed string) ([]string, cobra.ShellCompDirective) {
		return beginning(say.Systems, typed), cobra.ShellCompDirectiveNoFileComp
	})
}
