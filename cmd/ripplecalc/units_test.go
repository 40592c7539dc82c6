package main

import (
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	checks "ripplewright/internal/check"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
)

var (
	metricUnits = regexp.MustCompile(`°C|\bmL\b|\bmm\b|\bcm\b|[0-9] ?(m|L|K)\b|g/mL|W/\(m`)
	usUnits     = regexp.MustCompile(`°F|\boz\b|[0-9] ?cups?\b|[0-9] in([.,;:)]|$| wide| deep)|\blbs?\b|[0-9] ft\b|pints?\b|gal\b|Btu`)
	// inBoth stands in both systems: a published figure beside what it is in °C.
	inBoth = regexp.MustCompile(`71 °C \(160 °F\)`)
)

// runAt runs the program in the folder of the tests.
func runAt(args ...string) (code int, out, complaint string) {
	var stdout, stderr strings.Builder
	code = run(&shell{in: strings.NewReader(""), out: &stdout, err: &stderr}, args)
	return code, stdout.String(), stderr.String()
}

// Every text of every command follows the units, but for labels, whose units
// their rules give, and for validate, which repeats tables as published.
func TestTextsFollowTheUnits(t *testing.T) {
	checks.Long(t)
	dir := "../../assets/demos"
	demos, err := filepath.Glob(filepath.Join(dir, "*.yaml"))
	require.NoError(t, err)
	if testing.Short() {
		demos = demos[:2]
	}
	for _, command := range []string{"evaluate", "check", "cold", "ice", "process", "plan", "eggs", "shop", "balance"} {
		for _, demo := range demos {
			for units, wrong := range map[string]*regexp.Regexp{"us": metricUnits, "metric": usUnits} {
				args := []string{command, demo, "--units", units}
				if command == "plan" {
					args = append(args, "--serve-at", "2026-12-01T18:00:00+01:00")
				}
				code, out, complaint := runAt(args...)
				require.LessOrEqual(t, code, 1, "%v: %s", args, complaint)
				for _, line := range strings.Split(out, "\n") {
					assert.Empty(t, wrong.FindAllString(inBoth.ReplaceAllString(line, ""), -1), "%v: %s", args, line)
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
