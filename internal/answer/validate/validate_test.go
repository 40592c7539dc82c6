package validate_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/testdata"
)

// rows runs all checks once for all tests: they take ten seconds, and minutes
// under the race detector.
func rows(t testing.TB) []validate.Row {
	t.Helper()
	if testing.Short() {
		t.Skip("a minute of what the tests of each model compute in part")
	}
	once.Do(func() { all = run(t) })
	require.NotEmpty(t, all)
	return all
}

var (
	once sync.Once
	all  []validate.Row
)

func run(t testing.TB) []validate.Row {
	t.Helper()
	found, err := validate.Run(testdata.Tables, market.Library(t))
	require.NoError(t, err)
	return found
}

func TestEveryPublishedTableIsMetWithinItsBar(t *testing.T) {
	for _, r := range rows(t) {
		t.Logf("%-52s %4d points, max %.3g, rms %.3g, bar %.3g %s, %v", r.Table, r.Points, r.MaxAbsError, r.RMSError, r.Bar, r.Unit, r.Pass)
		assert.True(t, r.Pass, r.Table)
		assert.Positive(t, r.Points, r.Table)
		assert.NotEmpty(t, r.Source, r.Table)
		for _, p := range r.Pairs {
			if p.Counted || p.Why != "" {
				continue
			}
			t.Errorf("%s: a point is left out without a reason", r.Table)
		}
	}
}

// Beyond a solute's range the points are shown with the reason, and not counted.
func TestExtrapolatedPointsAreShownAndNotCounted(t *testing.T) {
	shown := map[string]int{}
	for _, r := range rows(t) {
		for _, p := range r.Pairs {
			if !p.Counted {
				shown[r.Table]++
			}
		}
	}
	assert.Equal(t, 3, shown["brines_independent"], "ethanol 41 and 46 %, glycerol 59.5 %")
	assert.Equal(t, 2, shown["electrolytes_smithsonian"], "KCl above 2 mol/kg")
	assert.Equal(t, 1, shown["fruit_freezing_points"], "banana")
}

func TestRowsHaveNamesForPeople(t *testing.T) {
	for _, r := range rows(t) {
		assert.NotContains(t, r.Title().String(), "_", r.Table)
		assert.NotEmpty(t, r.Kind.Words(), r.Table)
	}
}

func TestRowsCarryTheirKeysInJSON(t *testing.T) {
	text, err := json.Marshal(rows(t))
	require.NoError(t, err)
	var back []map[string]any
	require.NoError(t, json.Unmarshal(text, &back))
	for _, r := range back {
		for _, key := range []string{"table", "source", "points", "unit", "max_abs_error", "rms_error", "bar", "pass", "kind", "note"} {
			assert.Contains(t, r, key)
		}
	}
}

func BenchmarkRun(b *testing.B) {
	for i := 0; i < b.N; i++ {
		run(b)
	}
}

// README promises what the comparison holds, solute by solute, no less and no
// more; a solute that was fitted has its promise, and each reaches its table's end.
func TestTheReadmePromisesWhatTheComparisonHolds(t *testing.T) {
	text, err := os.ReadFile("../../../README.md")
	require.NoError(t, err)
	_, list, ok := strings.Cut(string(text), "| solute | mass % | within, K |\n|---|---|---|\n")
	require.True(t, ok)
	list, _, _ = strings.Cut(list, "\n\n")
	var want []string
	promised := map[mix.Species]bool{}
	for _, p := range validate.Promises {
		want = append(want, fmt.Sprintf("| %s | %g to %g | %g |", p.Solute, p.FromPercent, p.ToPercent, p.K))
		promised[p.Solute] = true
		so, ok := solution.SoluteOf(p.Solute)
		require.True(t, ok)
		i := slices.IndexFunc(rows(t), func(r validate.Row) bool { return r.Table == so.Table })
		require.GreaterOrEqual(t, i, 0, "%s", p.Solute)
		r := rows(t)[i]
		assert.LessOrEqual(t, r.MaxAbsError, p.K, "%s", p.Solute)
		assert.Greater(t, r.MaxAbsError, p.K/2, "%s: the promise is far wider than what is held", p.Solute)
		end := 0.0
		for _, x := range r.Pairs {
			if x.Counted {
				end = math.Max(end, x.X)
			}
		}
		assert.Equal(t, p.ToPercent, end, "%s: the last point compared", p.Solute)
	}
	assert.Equal(t, want, strings.Split(list, "\n"))
	for _, so := range solution.Solutes {
		assert.Equal(t, so.Table != "", promised[so.Species], "%s", so.Species)
	}
}

// computedByUs is how a table's comment says that a program of ours made its
// figures.
var computedByUs = regexp.MustCompile(`(?i)separate program|prototype|apart from this program|adiabatic mixing|synthetic foam|worked out here`)

// otherwise are the rows of such tables whose own column was read elsewhere, or
// whose constants came from it.
var otherwise = map[string]string{
	"syrup_boiling (Browne 1912)":                                "a column of published readings",
	"syrup_solids_at_temperature (Browne 1912)":                  "a column of published readings",
	"syrup_solids_at_temperature (Browne 1912, the stated band)": "a column of published readings",
	"altitude (rule of thumb)":                                   "a published rule",
	"freezing_time_slab (between two formulas)":                  "two published formulas",
	"mix_worked_example":                                         "another, published method",
	"overrun_worked_examples":                                    "printed results",
	"sucrose_ice_equilibrium":                                    "another model, from memory",
	"ripple_side_thickness":                                      "a constant came from it",
}

// A table that a program of ours computed proves arithmetic, and its rows say so.
func TestWhatIsComputedTwiceIsSaidToBe(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range rows(t) {
		table, _, _ := strings.Cut(r.Table, " (")
		text, err := testdata.Tables.ReadFile("tables/" + table + ".csv")
		if errors.Is(err, fs.ErrNotExist) {
			continue // computed in the check
		}
		require.NoError(t, err)
		for _, line := range strings.Split(string(text), "\n") {
			if strings.HasPrefix(line, "#") && computedByUs.MatchString(line) {
				if otherwise[r.Table] == "" {
					assert.Equal(t, validate.Twice, r.Kind, r.Table)
				} else {
					assert.NotEqual(t, validate.Twice, r.Kind, r.Table)
				}
				seen[r.Table] = true
			}
		}
	}
	for name := range otherwise {
		assert.True(t, seen[name], name)
	}
}
