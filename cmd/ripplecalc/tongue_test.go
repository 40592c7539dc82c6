package main

import (
	"encoding/json"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	checks "ripplewright/internal/check"
	"ripplewright/internal/check/astray"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/show/tongue"
	"ripplewright/internal/work/design"
)

// makersWords are what a design says in its maker's own words, longest first.
func makersWords(designs ...design.Design) []string {
	var own []string
	for _, d := range designs {
		own = append(own, d.Name, d.Notes)
		own = append(own, strings.Split(d.Notes, "\n")...)
		for _, p := range design.Parts {
			for _, l := range d.Lines(p) {
				own = append(own, l.Note)
			}
		}
		for _, in := range d.Own {
			own = append(own, in.Name, in.Kitchen(), strings.ToLower(in.Name))
		}
	}
	slices.SortFunc(own, func(a, b string) int { return len(b) - len(a) })
	return own
}

// lawsWords are what a label of both regions says as the law or a standard prints it: its
// panel, its statements, its sections, names and claims.
func lawsWords(t *testing.T, demo string) []string {
	own := []string{"Code for Edible Ices", "per serving", "per container", "% DV"}
	for _, region := range []string{"us", "eu"} {
		_, out, _ := runAt("label", demo, "--json", "--region", region)
		var l struct {
			Measure       string `json:"serving_measure"`
			Servings      string `json:"servings_text"`
			Ingredients   string `json:"ingredients_text"`
			Proposed      string `json:"proposed_name"`
			Footnote      string
			Contains      string
			Lines, Second []struct{ Name, Text string }
			Names, Claims []lawful
		}
		require.NoError(t, json.Unmarshal([]byte(out), &l))
		own = append(own, l.Measure, l.Servings, l.Footnote, l.Ingredients, l.Contains, l.Proposed)
		if law, _, _ := strings.Cut(l.Contains, " Allergens are not stated"); law != "" {
			own = append(own, law)
		}
		for _, x := range append(l.Lines, l.Second...) {
			own = append(own, x.Name, x.Text)
		}
		for _, n := range append(l.Names, l.Claims...) {
			food, _, _ := strings.Cut(n.Name, " (") // what stands in brackets is ours
			own = append(append(own, n.Name, food, n.Claim), quoted.FindAllString(n.Disclosure, -1)...)
			for _, c := range append(n.Limits, n.Conditions...) {
				own = append(own, c.Section)
			}
		}
	}
	slices.SortFunc(own, func(a, b string) int { return len(b) - len(a) })
	return own
}

// lawful is a name or a claim of a label, as JSON has it.
type lawful struct {
	Name, Claim, Disclosure string
	Limits, Conditions      []struct{ Section string }
}

// quoted is a statement that a rule words.
var quoted = regexp.MustCompile(`“[^”]*”|"[^"]*"`)

// No remark of ours on a label is English where German is spoken, and none is left out.
func TestALabelsRemarksAreGermanWhereGermanIsSpoken(t *testing.T) {
	checks.Long(t)
	t.Cleanup(func() { tongue.Speak(tongue.English); report.Reads = say.Usual })
	demos, err := filepath.Glob("../../assets/demos/*.yaml")
	require.NoError(t, err)
	for _, demo := range demos {
		own := lawsWords(t, demo)
		for _, d := range market.Demos(t) {
			own = append(own, makersWords(d)...)
		}
		for _, region := range []string{"us", "eu"} {
			_, english, _ := runAt("label", demo, "--all", "--region", region)
			_, german, _ := runAt("label", demo, "--all", "--region", region, "--language", "de")
			assert.Equal(t, strings.Count(english, "\n"), strings.Count(german, "\n"), "%s, %s", demo, region)
			for _, line := range strings.Split(german, "\n") {
				assert.Empty(t, astray.English(quoted.ReplaceAllString(line, ""), own...), "%s, %s: %s", demo, region, line)
			}
		}
	}
}

// Of what must stand on a tub, only what stands there and the law's own name are in the
// law's language.
func TestWhatATubOwesIsToldInGermanWhereGermanIsSpoken(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	t.Cleanup(func() { tongue.Speak(tongue.English); report.Reads = say.Usual })
	demo := "../../assets/demos/hazelnut.yaml"
	for _, place := range []string{"us", "eu", "de", "ie", "it", "uk"} {
		for _, sale := range []string{"shop", "stall", "scooped"} {
			_, out, _ := runAt("label", demo, "--json", "--place", place, "--sale", sale)
			var l struct {
				Elements    []struct{ State, Text string }
				Ingredients string `json:"ingredients_text"`
				Proposed    string `json:"proposed_name"`
			}
			require.NoError(t, json.Unmarshal([]byte(out), &l))
			own := []string{l.Ingredients, l.Proposed}
			for _, e := range l.Elements {
				if e.State == "filled" {
					own = append(own, e.Text)
				}
			}
			_, german, _ := runAt("label", demo, "--place", place, "--sale", sale, "--language", "de")
			owes, _, _ := strings.Cut(german, "\n\n")
			assert.Greater(t, strings.Count(owes, "\n"), 11)
			for _, line := range strings.Split(owes, "\n") {
				assert.Empty(t, astray.English(line, own...), "%s, %s: %s", place, sale, line)
				for _, ours := range []string{"from memory", "law read", "secondary", "Annex", "the panel", "front"} {
					assert.NotContains(t, line, ours)
				}
			}
		}
	}
	_, german, _ := runAt("label", demo, "--all", "--region", "eu", "--language", "de")
	for _, ours := range []string{"from memory", "Annex", "UK guide", "EU code"} {
		assert.NotContains(t, german, ours)
	}
}

// germanToo are commands beside those that follow the units.
var germanToo = [][]string{{"eggs", "DEMO"}, {"batch", "learn", "DEMO"}, {"check", "DEMO"}, {"evaluate", "nowhere.yaml"}, {"card", "DEMO"}, {"foo"}, {"ice", "DEMO", "--weeks", "900"},
	{"cold", "DEMO", "--profile", "nowhere"}, {"eggs", "DEMO", "--way", "sideways"}, {"evaluate"}, {"sure", "DEMO", "--kitchens", "3"}, {"curve", "DEMO", "--from", "9"}}

// keyOfFile is where something stands in a design: file, line and key.
var keyOfFile = regexp.MustCompile(`\.yaml:\d+: [a-z_.\[\]0-9]+:`)

// No text of a command is English where German is spoken, but for the maker's own
// words, names of files and flags, and sources.
func TestTextsAreGermanWhereGermanIsSpoken(t *testing.T) {
	checks.Long(t)
	t.Cleanup(func() { tongue.Speak(tongue.English); report.Reads = say.Usual })
	var own []string
	for _, d := range market.Demos(t) {
		own = append(own, makersWords(d)...)
	}
	for _, k := range cold.BuiltIn() {
		own = append(own, k.Name) // as it is typed
	}
	own = append(own, "dairy ice cream", "ice cream", "milk ice", "frozen custard") // names of food, as their rules have them
	slices.SortFunc(own, func(a, b string) int { return len(b) - len(a) })
	demos, err := filepath.Glob("../../assets/demos/*.yaml")
	require.NoError(t, err)
	for _, command := range append(slices.Clone(followers), germanToo...) {
		if command[0] == "curve" && len(command) == 2 {
			continue // its heads are keys, for programs
		}
		for i, demo := range demos {
			args := append(of(command, demo, demos[(i+1)%len(demos)]), "--language", "de")
			_, out, complaint := runAt(args...)
			for _, line := range strings.Split(out+complaint, "\n") {
				if strings.HasPrefix(line, "Aufruf: ") || strings.Contains(line, "≠ Etikett, ") {
					continue // what is typed
				}
				line = keyOfFile.ReplaceAllString(line, ".yaml") // as the file has it
				assert.Empty(t, astray.English(line, own...), "%v: %s", args, line)
			}
		}
	}
}
