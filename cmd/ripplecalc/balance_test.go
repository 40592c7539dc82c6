package main

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/designfile"
)

// balanced is what balance --json promises.
type balanced struct {
	Met       bool
	Remedies  []proposed
	Nearest   *proposed
	Conflicts []struct {
		Wish     string
		Sentence string
	}
	Wishes []struct{ Met bool }
}

type proposed struct {
	Changes []struct {
		Ingredient, Setting, Unit string
		Before, After             *float64
	}
	Figures struct {
		Good  bool
		Dense struct{ Texture string }
	}
}

// flinty is a custard with half of the sugar that it needs, and a comment that
// its maker wants to keep.
const flinty = `ripplewright: 1
name: Quay flint # the winter's
serving: {temperature_c: -14}
dense:
  lines:
    - {ingredient: milk_whole, grams: 480}
    - {ingredient: cream_heavy, grams: 150}
    - {ingredient: egg_yolk, grams: 90} # from the farm
    - {ingredient: sugar, grams: 45}
  overrun_percent: 15
foam:
  lines: [{ingredient: egg_white, grams: 165}]
  syrup:
    lines: [{ingredient: sugar, grams: 170}, {ingredient: water, grams: 60}]
  overrun_percent: 300
`

func TestBalanceMendsAFaultAndWritesTheFirstRemedy(t *testing.T) {
	k := newKitchen(t)
	k.file("flint.yaml", flinty)
	out := k.path("mended.yaml")
	code, stdout, stderr := k.run("", "balance", "flint.yaml", "--json", "-o", "mended.yaml")
	require.Equal(t, exitFine, code, stderr)
	var b balanced
	require.NoError(t, json.Unmarshal([]byte(stdout), &b))
	assert.True(t, b.Met)
	require.NotEmpty(t, b.Remedies)
	assert.LessOrEqual(t, len(b.Remedies), 3)
	for _, r := range b.Remedies {
		assert.True(t, r.Figures.Good)
		assert.NotEmpty(t, r.Figures.Dense.Texture)
		require.NotEmpty(t, r.Changes)
		for _, c := range r.Changes {
			require.NotNil(t, c.Before)
			assert.NotEqual(t, c.Ingredient == "", c.Setting == "")
		}
	}
	require.NotNil(t, b.Nearest)
	text, err := os.ReadFile(out)
	require.NoError(t, err)
	assert.Contains(t, string(text), "# from the farm")
	assert.Contains(t, string(text), "# the winter's")
	f, err := designfile.Load(out)
	require.NoError(t, err)
	code, stdout, _ = k.run("", "evaluate", "mended.yaml", "--json")
	require.Equal(t, exitFine, code)
	assert.Contains(t, stdout, `"good":true`, f.Name)
}

func TestBalanceAnswersWishesOrNamesWhatPullsApart(t *testing.T) {
	k := newKitchen(t)
	k.file("flint.yaml", flinty)
	k.file("wishes.yaml", "custard:\n  texture: scoopable\n  sweetness_percent: {from: 14, to: 16}\n")
	code, stdout, stderr := k.run("", "balance", "flint.yaml", "--wishes", "wishes.yaml", "--json")
	require.Equal(t, exitFine, code, stderr)
	var b balanced
	require.NoError(t, json.Unmarshal([]byte(stdout), &b))
	assert.True(t, b.Met, stdout)
	assert.Len(t, b.Wishes, 2)
	assert.Empty(t, b.Conflicts)

	k.file("wishes.yaml", "custard:\n  hardness_kpa: {to: 0.7, at_c: -20}\n  sweetness_percent: {to: 10.5}\nlevers: {swaps: false, keep: [air]}\n")
	code, stdout, stderr = k.run("", "balance", "flint.yaml", "--wishes", "wishes.yaml", "--json")
	require.Equal(t, exitFine, code, stderr)
	b = balanced{}
	require.NoError(t, json.Unmarshal([]byte(stdout), &b))
	assert.False(t, b.Met)
	assert.Empty(t, b.Remedies)
	require.NotEmpty(t, b.Conflicts)
	assert.NotEmpty(t, b.Conflicts[0].Sentence)
	require.NotNil(t, b.Nearest)
	code, stdout, _ = k.run("", "balance", "flint.yaml", "--wishes", "wishes.yaml")
	assert.Equal(t, exitFine, code)
	assert.Contains(t, stdout, "The nearest design:")
}

func TestBalanceNamesTheFaultOfAFileOfWishes(t *testing.T) {
	k := newKitchen(t)
	k.file("flint.yaml", flinty)
	k.file("wishes.yaml", "custard:\n  texture: fluffy\n")
	code, _, stderr := k.run("", "balance", "flint.yaml", "--wishes", "wishes.yaml")
	assert.Equal(t, exitInput, code)
	assert.Contains(t, stderr, "wishes.yaml:2: custard.texture: ")
	code, _, stderr = k.run("", "balance", "flint.yaml", "-o", "flint.yaml")
	assert.Equal(t, exitUsage, code, "the design itself is not overwritten: %s", stderr)
	code, stdout, _ := k.run("", "help", "wishes")
	assert.Equal(t, exitFine, code)
	assert.Contains(t, stdout, "custard.sweetness_percent.from")
}

func TestBalanceReportsHowWellItDoes(t *testing.T) {
	k := newKitchen(t)
	code, stdout, stderr := k.run("", "balance", "--report", "--cases", "2", "--seed", "4", "--json")
	require.Equal(t, exitFine, code, stderr)
	var r struct {
		Trips, Remedies struct{ Cases, Met, Named int }
	}
	require.NoError(t, json.Unmarshal([]byte(strings.Replace(stdout, "round_trips", "trips", 1)), &r))
	assert.Equal(t, [2]int{2, 2}, [2]int{r.Trips.Cases, r.Remedies.Cases})
	assert.Equal(t, 2, r.Remedies.Met+r.Remedies.Named)
	code, stdout, _ = k.run("", "balance", "--report", "--cases", "1")
	assert.Equal(t, exitFine, code)
	assert.Contains(t, stdout, "Round trips: ")
	for _, args := range [][]string{{"--report", "x.yaml"}, {"--report", "--cases", "-1"}, {}} {
		code, _, _ = k.run("", append([]string{"balance"}, args...)...)
		assert.Equal(t, exitUsage, code, args)
	}
}

func TestSureSaysHowOftenAndWhy(t *testing.T) {
	k := newKitchen(t)
	k.file("flint.yaml", flinty)
	code, _, stderr := k.run("", "balance", "flint.yaml", "-o", "mended.yaml")
	require.Equal(t, exitFine, code, stderr)
	code, stdout, stderr := k.run("", "sure", "mended.yaml", "--json")
	require.Equal(t, exitFine, code, stderr)
	var s struct {
		Chance float64 `json:"chance_scoops"`
		Spread map[string]struct{ Low, High float64 }
		Causes []map[string]any `json:"by_cause"`
	}
	require.NoError(t, json.Unmarshal([]byte(stdout), &s))
	assert.True(t, s.Chance > 0 && s.Chance < 1, "%g", s.Chance)
	assert.Less(t, s.Spread["custard_hardness_kpa"].Low, s.Spread["custard_hardness_kpa"].High)
	assert.Contains(t, s.Spread, "minutes_to_scoop")
	assert.GreaterOrEqual(t, len(s.Causes), 6)
	_, again, _ := k.run("", "sure", "mended.yaml", "--json")
	assert.Equal(t, stdout, again, "the same seed")
	_, text, _ := k.run("", "sure", "mended.yaml")
	assert.True(t, strings.Contains(text, " in 10 times") || strings.Contains(text, "nearly always"), text)
}
