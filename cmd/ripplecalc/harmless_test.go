package main

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	checks "ripplewright/internal/check"
)

// spiteful is a text that steers terminals, turns text around, breaks out of
// Markdown and forges a line; in YAML's own escapes.
const spiteful = `"<script>x</script>\e[31m\a\u202E\u2028[a](b)` + "```" + `|\nforged: no errors"`

// The design of the quay with such texts wherever words are free.
func spite(k kitchen) {
	text := strings.Replace(quay, "name: Rosehip and brown butter", "name: "+spiteful+"\nnotes: "+spiteful, 1)
	text = strings.Replace(text, "{ingredient: sugar, grams: 110}", "{ingredient: fig_paste, grams: 110, note: "+spiteful+"}", 1)
	own := "ingredients:\n  - id: fig_paste\n"
	for _, key := range []string{"name", "kitchen_name", "common_name", "common_name_eu", "parts"} {
		own += "    " + key + ": " + spiteful + "\n"
	}
	own += "    pack: {per: 100 g, fat: 0.5, carbohydrate: 55, sugars: 50, protein: 2, salt: 0.05}\n"
	k.file("spite.yaml", text+own)
}

// harmless looks for what a text may not do where it is shown.
func harmless(t *testing.T, what, text string) {
	t.Helper()
	require.True(t, utf8.ValidString(text), what)
	for _, r := range text {
		if r != '\n' && r != '\r' && r != '\t' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || r == '\u2028' || r == '\u2029') {
			assert.Failf(t, what, "%U is left", r)
			return
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(strings.TrimSpace(line), "forged") {
			assert.Fail(t, what, "a line is forged: %s", line)
		}
	}
}

func TestNoAnswerDoesWhatADesignsWordsSay(t *testing.T) {
	checks.Long(t)
	k := newKitchen(t)
	spite(k)
	for _, args := range []string{
		"evaluate spite.yaml", "evaluate spite.yaml --json", "curve spite.yaml", "curve spite.yaml --json", "check spite.yaml",
		"label spite.yaml", "label spite.yaml --region eu --all", "label spite.yaml --json", "process spite.yaml", "process spite.yaml --json",
		"plan spite.yaml --serve-at 2026-11-29T15:00:00+01:00", "plan spite.yaml --json --serve-at 2026-11-29T15:00:00+01:00",
		"cold spite.yaml", "cold spite.yaml --json", "eggs spite.yaml", "eggs spite.yaml --json", "shop spite.yaml", "shop spite.yaml --json", "ripple spite.yaml --size 60", "ripple spite.yaml --size 60 --json",
	} {
		code, out, errs := k.run("", strings.Fields(args)...)
		require.Equal(t, exitFine, code, "%s: %s", args, errs)
		harmless(t, args, out)
		harmless(t, args, errs)
	}
	for _, args := range []string{"diff quay.yaml spite.yaml", "diff spite.yaml quay.yaml --json"} {
		code, out, errs := k.run("", strings.Fields(args)...)
		require.Equal(t, exitDiffer, code, "%s: %s", args, errs)
		harmless(t, args, out)
	}
	for _, args := range []string{"card spite.yaml -o x.md", "card spite.yaml -o x.md --region eu", "shop spite.yaml -o x.md", "shop spite.yaml -o x.txt", "label spite.yaml -o x.txt", "label spite.yaml -o x.txt --region eu",
		"plan spite.yaml --serve-at 2026-11-29T15:00:00+01:00 -o x.md", "plan spite.yaml --serve-at 2026-11-29T15:00:00+01:00 -o x.ics",
		"plan spite.yaml --serve-at 2026-11-29T15:00:00+01:00 -o x.json"} {
		words := k.words(args)
		code, _, errs := k.run("", words...)
		require.Equal(t, exitFine, code, "%s: %s", args, errs)
		data, err := os.ReadFile(words[len(words)-1])
		if strings.HasSuffix(args, "eu") {
			data, err = os.ReadFile(words[3])
		}
		require.NoError(t, err)
		harmless(t, args, string(data))
		if strings.Contains(args, ".md") {
			text := string(data)
			for { // what is within a fence is shown as it is
				before, rest, fenced := strings.Cut(text, "\n```\n")
				assert.NotContains(t, before, "<script", args)
				assert.NotRegexp(t, `(^|[^\\])\[`, before, args)
				if !fenced {
					break
				}
				_, text, fenced = strings.Cut(rest, "```\n")
				require.True(t, fenced, "a fence is left open")
			}
		}
	}
}

func TestAMessageRepeatsNoMoreThanEightyCharacters(t *testing.T) {
	k := newKitchen(t)
	long := strings.Repeat("q", 10000)
	for key, text := range map[string]string{
		"name":       strings.Replace(quay, "Rosehip and brown butter", long, 1),
		"ingredient": strings.Replace(quay, "ingredient: milk_whole", "ingredient: "+long, 1),
		"key":        quay + long + ": 1\n",
		"value":      strings.Replace(quay, "temperature_c: -12", "temperature_c: "+long, 1),
		"layout":     strings.Replace(quay, "strokes: 5", "strokes: 5, layout: "+long, 1),
		"own name":   strings.Replace(quay, "{ingredient: sugar, grams: 110}", "{ingredient: own, grams: 110}", 1) + "ingredients: [{id: own, name: " + long + ", pack: {per: 100 g, fat: 1}}]\n",
		"own id":     quay + "ingredients: [{id: " + long + ", name: Own, pack: {per: 100 g, fat: 1}}]\n",
		"profile":    quay + "kitchen: {profile: " + long + "}\n",
	} {
		k.file("long.yaml", text)
		for _, args := range []string{"check long.yaml", "cold long.yaml"} {
			_, out, errs := k.run("", strings.Fields(args)...)
			assert.NotContains(t, out+errs, strings.Repeat("q", 81), "%s, %s", key, args)
		}
	}
	for _, args := range []string{"%s", "evaluate quay.yaml --%s", "evaluate quay.yaml --at %s", "evaluate quay.yaml --at=%s", "help %s", "ingredients %s", "cold quay.yaml --profile %s",
		"ripple quay.yaml --view %s", "ripple quay.yaml -o %s", "card quay.yaml -o %s", "card quay.yaml -o x.pdf --paper %s", "label quay.yaml --region %s", "label quay.yaml --form %s",
		"label quay.yaml -o %s", "plan quay.yaml --serve-at %s", "plan quay.yaml -o %s --serve-at 2026-11-29T15:00:00+01:00", "validate %s"} {
		code, out, errs := k.run("", strings.Fields(fmt.Sprintf(args, long))...)
		assert.NotEqual(t, exitFault, code, args)
		assert.NotContains(t, out+errs, strings.Repeat("q", 81), args)
	}
}

// What is noted of batches, versions and kitchens is as free as a design's words.
func TestNoAnswerDoesWhatANotebookSays(t *testing.T) {
	checks.Long(t)
	k := newKitchen(t)
	spite(k)
	for _, key := range []string{"words", "photographs", "weighed", "batch", "lot"} {
		k.file("entry.yaml", key+": "+spiteful+"\n")
		if key == "photographs" || key == "weighed" {
			k.file("entry.yaml", key+": ["+spiteful+"]\n")
		}
		code, out, errs := k.run("", "batch", "add", "spite.yaml", "--entry", "entry.yaml", "freezer_c=-17", "ate.icy=fine", "ate.hardness=firm")
		assert.NotEqual(t, exitFault, code, key)
		harmless(t, "batch add "+key, out)
		harmless(t, "batch add "+key, errs)
		require.Equal(t, key == "weighed" || key == "batch" || key == "lot", code != exitFine, "%s: %s", key, errs)
	}
	code, _, errs := k.run("", "version", "keep", "spite.yaml", "--note", "a\x1b[31m\u202e\u2028b\nforged: no errors")
	require.Equal(t, exitFine, code, errs)
	k.file("config/ripplewright/kitchens.yaml", "version: 1\nkitchens: [{name: "+spiteful+"}]\n")
	for _, args := range []string{
		"batch list spite.yaml", "batch list spite.yaml --json", "batch list spite.yaml --csv", "batch learn spite.yaml", "batch learn spite.yaml --json",
		"version list spite.yaml", "version list spite.yaml --json", "evaluate spite.yaml", "evaluate spite.yaml --json", "ice spite.yaml", "sure spite.yaml --kitchens 10",
		"balance spite.yaml", "balance spite.yaml --json", "cold quay.yaml",
	} {
		code, out, errs := k.run("", strings.Fields(args)...)
		assert.NotEqual(t, exitFault, code, args)
		harmless(t, args, out)
		harmless(t, args, errs)
	}
	for _, end := range []string{"svg", "html", "md", "json"} {
		code, _, errs := k.run("", "card", "spite.yaml", "-o", k.path("x."+end))
		if code == exitUsage {
			continue // no such form of a card
		}
		require.Equal(t, exitFine, code, "%s: %s", end, errs)
		data, err := os.ReadFile(k.path("x." + end))
		require.NoError(t, err)
		harmless(t, end, string(data))
		if end != "md" { // whose fences show what they hold as it is
			assert.NotContains(t, string(data), "<script>x", end)
		}
	}
}

// Words of ten thousand letters are shown or refused, and what is shown of them in a
// message or a file's name is short.
func TestTenThousandLettersAreNoFault(t *testing.T) {
	checks.Long(t)
	k := newKitchen(t)
	long := strings.Repeat("ü", 10000)
	k.file("long.yaml", strings.Replace(quay, "name: Rosehip and brown butter", "name: "+long+"\nnotes: "+long, 1))
	for _, args := range []string{
		"evaluate long.yaml", "evaluate long.yaml --json", "label long.yaml --region eu", "process long.yaml", "cold long.yaml", "shop long.yaml", "batch add long.yaml words=" + long,
		"batch add long.yaml lot=" + long, "batch add long.yaml photographs=" + long, "batch list long.yaml", "version keep long.yaml --note " + long, "version list long.yaml", "card long.yaml -o x.pdf", "card long.yaml -o x.md", "label long.yaml -o x.png",
	} {
		words := k.words(args)
		code, _, errs := k.run("", words...)
		assert.NotEqual(t, exitFault, code, "%.60s: %s", args, errs)
		assert.NotContains(t, errs, strings.Repeat("ü", 81), "%.60s", args)
	}
}

// words are those of a command, with its output "x.…" in the kitchen.
func (k kitchen) words(args string) []string {
	words := strings.Fields(args)
	for i, w := range words {
		if strings.HasPrefix(w, "x.") {
			words[i] = k.path(w)
		}
	}
	return words
}
