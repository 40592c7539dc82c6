package main

import (
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestHelpTellsEveryFlag(t *testing.T) {
	s := &shell{}
	for _, c := range commands() {
		c.on(s).Flags().VisitAll(func(f *pflag.Flag) {
			assert.NotEmpty(t, f.Usage, "%s: --%s", c.name, f.Name)
		})
	}
}

func TestAShellIsToldWhatMayBeTyped(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		typed string
		want  []string
	}{
		{"eva", []string{"evaluate"}},
		{"label quay.yaml --place d", []string{"de"}},
		{"label --sa", []string{"--sale"}},
		{"help pri", []string{"prices"}},
		{"completion ", []string{"bash", "zsh", "fish"}},
		{"ingredients hon", []string{"honey"}},
		{"evaluate q", []string{"yaml", "yml"}}, // the endings of files that the shell then offers
	} {
		words := strings.Split("__complete "+c.typed, " ")
		code, out, err := k.run("", words...)
		assert.Equal(t, exitFine, code, err)
		for _, w := range c.want {
			assert.Regexp(t, `(?m)^`+w+`(\t|$)`, out, c.typed)
		}
	}
	for _, shell := range completionCommand.words[""]() {
		code, out, err := k.run("", "completion", shell)
		assert.Equal(t, exitFine, code, err)
		assert.True(t, strings.Contains(out, "__complete"), shell) // a thousand lines, not to be printed
	}
	code, _, err := k.run("", "completion", "tcsh")
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, err, "bash, zsh and fish")
}

func TestASlipIsAnsweredWithWhatWasPerhapsMeant(t *testing.T) {
	k := newKitchen(t)
	for args, want := range map[string]string{
		"evalute quay.yaml":            "did you mean evaluate?",
		"evaluate quay.yaml --jsn":     "there is no flag --jsn; did you mean --json?",
		"evaluate quay.yaml --unit us": "did you mean --units?",
		"evaluate quay.yaml --zzz":     "there is no flag --zzz\n",
		"schema pries":                 "did you mean prices?",
		"help evalute":                 "did you mean evaluate?",
		"evaluate quay.yaml -q":        "there is no flag -q",
		"evaluate quay.yaml --at":      "--at needs a value",
		"evaluate quay.yaml --at hot":  `--at "hot" is no number`,
		"sure quay.yaml --seed 1.5":    `--seed "1.5" is no whole number`,
	} {
		code, _, err := k.run("", strings.Fields(args)...)
		assert.Equal(t, exitUsage, code, args)
		assert.Contains(t, err, want, args)
	}
	code, _, err := k.run("", "ingredients", "suger")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, err, "did you mean sugar?")
	k.file("slip.yaml", strings.Replace(quay, "ingredient: sugar, grams: 110", "ingredient: suger, grams: 110", 1))
	code, _, err = k.run("", "evaluate", "slip.yaml")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, err, "sugar")
	for _, c := range commands() { // of every command's own flags, one letter short
		c.on(&shell{}).Flags().VisitAll(func(f *pflag.Flag) {
			if len(f.Name) > 4 {
				_, _, err := k.run("", c.name, "--"+f.Name[:len(f.Name)-1])
				assert.Contains(t, err, "did you mean --", "%s --%s", c.name, f.Name)
			}
		})
	}
	long := strings.Repeat("x", 5000)
	for _, args := range [][]string{{long}, {"evaluate", "--" + long}, {"evaluate", "--at", long}, {"evaluate", "-" + long}} {
		_, _, err := k.run("", args...)
		assert.Less(t, len(err), 400)
	}
}

func TestEveryCommandHasAManualPage(t *testing.T) {
	k := newKitchen(t)
	code, _, err := k.run("", "man", k.dir)
	require.Equal(t, exitFine, code, err)
	for _, c := range commands() {
		if c == helpCommand {
			continue // its words stand on the first page
		}
		page, err := os.ReadFile(filepath.Join(k.dir, "ripplecalc-"+c.name+".1"))
		require.NoError(t, err)
		assert.Contains(t, string(page), ".SH OPTIONS", c.name)
	}
	for _, name := range pages(t, k.dir) {
		page, err := os.ReadFile(name)
		require.NoError(t, err)
		assert.Regexp(t, `(?m)^\.TH "RIPPLECALC" "1" "\d{4}-\d{2}-\d{2}" `, string(page), name)
		assert.NotContains(t, string(page), "\t", name)
		assert.NotContains(t, string(page), "NaN", name)
	}
	if mandoc, err := exec.LookPath("mandoc"); err == nil {
		out, err := exec.Command(mandoc, append([]string{"-Tlint", "-Wall"}, pages(t, k.dir)...)...).CombinedOutput()
		assert.NoError(t, err, string(out))
		assert.Empty(t, string(out))
	}
	page, readErr := os.ReadFile(k.path("ripplecalc.1"))
	require.NoError(t, readErr)
	assert.Contains(t, string(page), "Exit codes: 0 fine")
	code, _, err = k.run("", "man", k.path("nowhere"))
	assert.Equal(t, exitInput, code, err)
}

func pages(t *testing.T, folder string) []string {
	all, err := filepath.Glob(filepath.Join(folder, "*.1"))
	require.NoError(t, err)
	require.Len(t, all, len(commands()))
	return all
}

// The script that bash reads completes with the package bash-completion, which it needs.
func TestBashCompletesByTheScript(t *testing.T) {
	helpers := "/usr/share/bash-completion/bash_completion"
	if _, err := os.Stat(helpers); err != nil {
		t.Skip("the package bash-completion is not here")
	}
	k := newKitchen(t)
	self, err := os.Executable()
	require.NoError(t, err)
	k.file("ripplecalc", "#!/bin/sh\nAS_RIPPLECALC=1 exec "+self+" -test.run=^TestAsTheProgram$ -- \"$@\"\n")
	require.NoError(t, os.Chmod(k.path("ripplecalc"), 0o755))
	code, script, errText := k.run("", "completion", "bash")
	require.Equal(t, exitFine, code, errText)
	k.file("script", script)
	for typed, want := range map[string]string{
		"ripplecalc eva":                          "evaluate",
		"ripplecalc card quay.yaml --re":          "--region",
		"ripplecalc card quay.yaml --paper let":   "letter",
		"ripplecalc evaluate quay.yaml --units u": "us",
	} {
		bash := exec.Command("bash", "--norc", "-c", `
set -u +o history; export LC_ALL=C; PATH="$1:$PATH"; set +u
. "$2"; . "$1/script"
COMP_LINE=$3; COMP_POINT=${#3}; read -ra COMP_WORDS <<<"$3"; COMP_CWORD=$((${#COMP_WORDS[@]} - 1)); COMP_TYPE=9
__start_ripplecalc; printf '%s\n' "${COMPREPLY[@]}"`, "bash", k.dir, helpers, typed)
		bash.Dir = k.dir
		out, err := bash.CombinedOutput()
		require.NoError(t, err, string(out))
		assert.Regexp(t, `(?m)^`+want+`\s*$`, string(out), typed)
	}
}

// TestAsTheProgram is ripplecalc for a shell that asks this test's program.
func TestAsTheProgram(t *testing.T) {
	if os.Getenv("AS_RIPPLECALC") == "" {
		t.Skip("asked by TestBashCompletesByTheScript alone")
	}
	os.Exit(run(&shell{in: os.Stdin, out: os.Stdout, err: os.Stderr}, flag.Args()))
}
