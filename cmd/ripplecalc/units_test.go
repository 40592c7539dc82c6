package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	checks "ripplewright/internal/check"
	"ripplewright/internal/check/astray"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
)

// runAt runs the program in the folder of the tests.
func runAt(args ...string) (code int, out, complaint string) {
	var stdout, stderr strings.Builder
	code = run(&shell{in: strings.NewReader(""), out: &stdout, err: &stderr}, args)
	return code, stdout.String(), stderr.String()
}

// followers are the commands whose texts follow the units: all but label, whose
// units its rules give, validate, which repeats tables as published, and those that
// tell no quantity.
var followers = [][]string{
	{"evaluate", "DEMO"}, {"check", "DEMO"}, {"cold", "DEMO"}, {"ice", "DEMO"}, {"process", "DEMO"}, {"eggs", "DEMO"}, {"shop", "DEMO"}, {"balance", "DEMO"},
	{"plan", "DEMO", "--serve-at", "2026-12-01T18:00:00+01:00"}, {"ripple", "DEMO"}, {"sure", "DEMO", "--kitchens", "40"}, {"curve", "DEMO"},
	{"compare", "DEMO", "OTHER"}, {"compare", "DEMO", "OTHER", "--all"}, {"diff", "DEMO", "OTHER"}, {"batch", "list", "DEMO"}, {"batch", "learn", "DEMO"}, {"version", "list", "DEMO"},
}

// of is a command of two designs.
func of(command []string, demo, other string) []string {
	args := slices.Clone(command)
	for k, a := range args {
		switch a {
		case "DEMO":
			args[k] = demo
		case "OTHER":
			args[k] = other
		}
	}
	return args
}

// Every text of every command follows the units.
func TestTextsFollowTheUnits(t *testing.T) {
	checks.Long(t)
	t.Cleanup(func() { report.Reads = say.Usual })
	own := t.TempDir() // with batches beside them
	demos, err := filepath.Glob("../../assets/demos/*.yaml")
	require.NoError(t, err)
	for i, demo := range demos {
		data, err := os.ReadFile(demo)
		require.NoError(t, err)
		demos[i] = filepath.Join(own, filepath.Base(demo))
		require.NoError(t, os.WriteFile(demos[i], data, 0o600))
		code, _, complaint := runAt("batch", "add", demos[i], "freezer_c=-17.5", "ate.icy=smooth", "custard.weighed_g=900", "custard.cup_g=190", "syrup.reading_c=117", "foam.whites_c=52", "scooped.after_min=14", "scooped.ring_c=-10", "cut.ribbon_mm=3.2")
		require.Zero(t, code, complaint)
	}
	if testing.Short() {
		demos = demos[:2]
	}
	for _, command := range followers {
		for i, demo := range demos {
			for _, flags := range [][]string{{"--units", "us"}, {"--units", "metric"}, {"--units", "metric", "--decimals", "comma"}} {
				args := append(of(command, demo, demos[(i+1)%len(demos)]), flags...)
				code, out, complaint := runAt(args...)
				require.LessOrEqual(t, code, 1, "%v: %s", args, complaint)
				for _, line := range strings.Split(out+complaint, "\n") {
					assert.Empty(t, astray.In(line, report.Reads), "%v: %s", args, line)
				}
			}
		}
	}
}

func TestUnitsChangeNoFigureOfJSON(t *testing.T) {
	number := regexp.MustCompile(`(?m)^ *"[a-z0-9_]+": (-?[0-9.e+-]+|null|true|false),?$`)
	_, metric, _ := runAt("evaluate", "../../assets/demos/hazelnut.yaml", "--json")
	_, us, _ := runAt("evaluate", "../../assets/demos/hazelnut.yaml", "--json", "--units=us")
	assert.Equal(t, number.FindAllString(metric, -1), number.FindAllString(us, -1))
	assert.NotEqual(t, metric, us, "the sentences follow")
}

func TestUnitsMayStandAnywhere(t *testing.T) {
	defer func() { report.Reads = say.Usual }()
	demo := "../../assets/demos/hazelnut.yaml"
	for _, args := range [][]string{{"--units", "us", "check", demo}, {"check", "--units=us", demo}, {"check", demo, "--units", "us"}} {
		code, _, complaint := runAt(args...)
		require.LessOrEqual(t, code, exitInput, complaint)
		assert.Equal(t, say.Customary, report.Reads)
		runAt("check", demo)
		assert.Equal(t, say.Usual, report.Reads, "each run chooses anew")
	}
	for _, wrong := range [][]string{{"check", demo, "--units"}, {"check", "--units", "imperial", demo}, {"--units=", "check", demo}} {
		code, _, complaint := runAt(wrong...)
		assert.Equal(t, exitUsage, code)
		assert.Contains(t, complaint, "--units")
	}
}

// The decimal sign and the currency are those asked for, whatever the units, and no
// figure of JSON follows them.
func TestDecimalsAndCurrencyOfTexts(t *testing.T) {
	t.Cleanup(func() { report.Reads = say.Usual })
	demo := "../../assets/demos/night-tram.yaml"
	_, text, _ := runAt("evaluate", demo, "--units", "us", "--decimals", "comma", "--currency", "kr")
	assert.Regexp(t, `kr\x{00a0}\d+,\d\d`, text)
	assert.NotRegexp(t, `\d\.\d+ °F`, text)
	_, plain, _ := runAt("evaluate", demo, "--json")
	_, json, _ := runAt("evaluate", demo, "--json", "--decimals=comma", "--currency=kr")
	number := regexp.MustCompile(`(?m)^ *"[a-z0-9_]+": (-?[0-9.e+-]+|null|true|false),?$`)
	assert.Equal(t, number.FindAllString(plain, -1), number.FindAllString(json, -1))
	for _, wrong := range [][]string{{"check", demo, "--decimals", "dot"}, {"check", demo, "--currency", "far too long to be money"}} {
		code, _, complaint := runAt(wrong...)
		assert.Equal(t, exitUsage, code)
		assert.Contains(t, complaint, wrong[2])
	}
}

// The day as a calendar and as Markdown is told in the units that were chosen, folded
// lines (RFC 5545, 3.1) put together.
func TestThePlansFilesFollowTheUnits(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep, of which the race detector takes long")
	}
	t.Cleanup(func() { report.Reads = say.Usual })
	folded := strings.NewReplacer("\r\n ", "", "\r\n", "\n", `\,`, ",", `\;`, ";", `\n`, "\n")
	for _, demo := range []string{"hazelnut", "oat-orchard"} {
		for _, ending := range []string{".ics", ".md"} {
			texts := map[string]bool{}
			for _, flags := range [][]string{{"--units", "us"}, {"--units", "metric"}, {"--units", "metric", "--decimals", "comma"}} {
				to := filepath.Join(t.TempDir(), "day"+ending)
				code, _, complaint := runAt(append([]string{"plan", "../../assets/demos/" + demo + ".yaml", "--serve-at", "2026-11-29T15:00:00+01:00", "-o", to}, flags...)...)
				require.Zero(t, code, complaint)
				data, err := os.ReadFile(to)
				require.NoError(t, err)
				if ending == ".ics" {
					assert.NotRegexp(t, `[^\r]\n`, string(data), "RFC 5545, 3.1: lines end with CRLF")
				}
				told := regexp.MustCompile(`(?m)^(UID|DT\w+|PRODID|VERSION)[:;].*$`).ReplaceAllString(folded.Replace(string(data)), "")
				for _, line := range strings.Split(told, "\n") {
					assert.Empty(t, astray.In(line, report.Reads), "%s%s %v: %s", demo, ending, flags, line)
				}
				assert.Empty(t, astray.Bare(told, report.Reads), "%s%s %v", demo, ending, flags)
				texts[told] = true
			}
			assert.Greater(t, len(texts), 1, "the units change something of %s%s", demo, ending)
		}
	}
}

// What a tub must bear is in the units of its rules, whatever the maker reads in.
func TestATubsLabelFollowsItsRulesAlone(t *testing.T) {
	t.Cleanup(func() { report.Reads = say.Usual })
	for _, place := range []string{"us", "uk", "ie"} {
		texts := map[string]bool{}
		for _, flags := range [][]string{{"--units", "us"}, {"--units", "metric"}, {"--units", "metric", "--decimals", "comma"}} {
			to := filepath.Join(t.TempDir(), "label.svg")
			args := append([]string{"label", "../../assets/demos/hazelnut.yaml", "--place", place, "--sale", "stall", "--maker", "Saltmarsh Quay, 1 Pier Road", "--made", "2026-07-14", "--keeps", "6m", "-o", to}, flags...)
			code, _, complaint := runAt(args...)
			require.LessOrEqual(t, code, exitInput, "%v: %s", args, complaint)
			data, err := os.ReadFile(to)
			require.NoError(t, err, complaint)
			texts[string(data)] = true
		}
		assert.Len(t, texts, 1, place)
	}
}
