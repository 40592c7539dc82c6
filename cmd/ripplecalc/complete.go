package main

import "github.com/spf13/pflag"

// completionCommand and manCommand get their flags from init: they look at the
// list of commands, and so at themselves.
var completionCommand = &command{
	name:  "completion",
	usage: "completion bash|zsh|fish",
	short: "Writes what lets a shell complete commands, flags and files",
	long: `
bash:  ripplecalc completion bash > ~/.local/share/bash-completion/completions/ripplecalc
zsh:   ripplecalc completion zsh > "${fpath[1]}/_ripplecalc"
fish:  ripplecalc completion fish > ~/.config/fish/completions/ripplecalc.fish
`,
	first: "shell",
	least: 1,
	most:  1,
	words: map[string]func() []string{"": one("bash", "zsh", "fish")},
}

func init() { completionCommand.flags = completionFlags }

func completionFlags(c *command, _ *pflag.FlagSet) action {
	return func(s *shell, shells []string) error {
		root := tree(s)
		switch shells[0] {
		case "bash":
			return root.GenBashCompletionV2(s.out, true)
		case "zsh":
			return root.GenZshCompletion(s.out)
		case "fish":
			return root.GenFishCompletion(s.out, true)
		}
		return c.misused("known shells are bash, zsh and fish")
	}
}
