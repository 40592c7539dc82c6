package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
)

// english are the words of every English sentence that no German one has; keys and names
// of files have some of them, between other marks.
var english = regexp.MustCompile(`(?i)(^|[^\w.-])(the|and|with|are|its|which|your|than|only|but|by|instead|each|other)($|[^\w.=:_-])`)

// typedWords are what is typed, which help tells alike in every language: flags and keys.
var typedWords = regexp.MustCompile(`--[a-z][a-z-]*|\b[a-z]+(_[a-z0-9]+)+\b`)

func TestHelpIsGermanWhereGermanIsSpoken(t *testing.T) {
	t.Cleanup(func() { tongue.Speak(tongue.English); report.Reads = say.Usual })
	k := newKitchen(t)
	for _, word := range append(helped(), "") {
		args := []string{"help"}
		if word != "" {
			args = append(args, word)
		}
		_, plain, _ := k.run("", args...)
		code, german, err := k.run("", append(args, "--language", "de")...)
		require.Equal(t, exitFine, code, err)
		assert.NotEqual(t, plain, german, word)
		assert.ElementsMatch(t, typedIn(plain), typedIn(german), word)
		for _, line := range strings.Split(german, "\n") {
			if !strings.HasPrefix(line, "Aufruf: ") && !strings.ContainsAny(line, "{#") { // what is typed, and an example of a file
				assert.Empty(t, english.FindAllString(line, -1), "%s: %s", word, line)
			}
		}
		assert.NotContains(t, german, "%!", word)
	}
	for _, c := range commands() {
		_, german, _ := k.run("", c.name, "--help", "--language", "de")
		assert.True(t, strings.HasPrefix(german, "Aufruf: ripplecalc "+c.usage+"\n"), german)
		require.True(t, tongue.Speak("de"))
		c.on(&shell{}).Flags().VisitAll(func(f *pflag.Flag) {
			assert.NotEmpty(t, f.Usage, "%s: --%s", c.name, f.Name)
		})
		tongue.Speak(tongue.English)
	}
}

// typedIn are the words of a text that are typed, each once.
func typedIn(text string) []string {
	all := typedWords.FindAllString(text, -1)
	slices.Sort(all)
	return slices.Compact(all)
}

func TestTheSystemsLanguageHoldsUntilAFlagSaysAnother(t *testing.T) {
	t.Cleanup(func() { tongue.Speak(tongue.English); report.Reads = say.Usual })
	k := newKitchen(t)
	k.locale = "de_AT.UTF-8"
	for args, want := range map[string]string{
		"help":                           "berechnet Entwürfe",
		"--help":                         "berechnet Entwürfe",
		"curve --help":                   "Aufruf: ripplecalc curve",
		"help evaluate":                  "Aufruf: ripplecalc evaluate",
		"help evaluate --language en":    "usage: ripplecalc evaluate",
		"evaluate quay.yaml":             ",",
		"__complete ev":                  "evaluate\tBerechnet",
		"__complete card quay.yaml --pa": "--pages\t",
	} {
		code, out, err := k.run("", strings.Fields(args)...)
		assert.Equal(t, exitFine, code, err)
		assert.Contains(t, out, want, args)
	}
	_, _, err := k.run("", "evalute")
	assert.Contains(t, err, "ist evaluate gemeint?")
	_, out, _ := k.run("", "evaluate", "quay.yaml", "--json")
	assert.Contains(t, out, "custard", "what programs read is English")
	code, _, err := k.run("", "man", k.dir)
	require.Equal(t, exitFine, code, err)
	page, readErr := os.ReadFile(filepath.Join(k.dir, "ripplecalc-evaluate.1"))
	require.NoError(t, readErr)
	assert.Contains(t, string(page), "Computes every figure", "manual pages are English")
	assert.NotContains(t, string(page), "Entw")
}

func TestTheFirstLocaleThatSaysAnythingHolds(t *testing.T) {
	env := map[string]string{"LANG": "en_GB.UTF-8", "LC_MESSAGES": "de_DE.UTF-8"}
	of := func(key string) string { return env[key] }
	assert.Equal(t, "de_DE.UTF-8", locale(of))
	env["LC_ALL"] = "C"
	assert.Equal(t, "C", locale(of))
	assert.Empty(t, locale(func(string) string { return "" }))
}
