package phase

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
)

// testdata/tables/solubility.csv.
func TestWhatDissolvesInTheColdIsTheTables(t *testing.T) {
	rows := table(t, "solubility")
	require.Len(t, rows, len(solubleAtZero))
	for _, r := range rows {
		want, err := strconv.ParseFloat(r["g_per_100g_water"], 64)
		require.NoError(t, err)
		found := false
		for _, s := range solubleAtZero {
			if s.solute.String() == r["solute"] {
				found = true
				assert.Equal(t, want, s.g, r["solute"])
				for _, k := range []float64{0.99, 1.01} {
					m := mix.Mix{}
					m.Mass[mix.Water], m.Mass[s.solute] = 100, k*want
					b := Prepare(m, 0, Dense, solution.DefaultBound)
					d := b.Dissolved(0)
					require.Len(t, d, 1)
					assert.Equal(t, k > 1, d[0].Over, r["solute"])
				}
			}
		}
		assert.True(t, found, r["solute"])
	}
}

// 75 g erythritol per 100 g water: about 37 % by mass dissolve at 20 °C, less cold.
func TestErythritolIsOverWhatDissolves(t *testing.T) {
	m := mix.Mix{}
	m.Mass[mix.Water], m.Mass[mix.Erythritol] = 100, 75
	b := Prepare(m, 0, Foam, solution.DefaultBound)
	d := b.Dissolved(-5)
	require.Len(t, d, 1)
	assert.True(t, d[0].Over)
	assert.Empty(t, new(Body).Dissolved(-5))
}
