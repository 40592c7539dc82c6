package main

import (
	"os"
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
	page, readErr := os.ReadFile(k.path("ripplecalc.1"))
	require.NoError(t, readErr)
	assert.Contains(t, string(page), "Exit codes: 0 fine")
	code, _, err = k.run("", "man", k.path("nowhere"))
	assert.Equal(t, exitInput, code, err)
}
