package phase

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
)

// dissolved returns g of s in 100 g of water beside its rule at t °C.
func dissolved(t testing.TB, role Role, s mix.Species, g, at float64) Dissolved {
	t.Helper()
	var m mix.Mix
	m.Grams[mix.Water], m.Grams[s] = 100, g
	b := Prepare(m, 0, role, solution.DefaultBound)
	for _, d := range b.Dissolved(at) {
		if d.Solute == s {
			return d
		}
	}
	t.Fatalf("no rule for %s", s)
	return Dissolved{}
}

// testdata/tables/solubility.csv: every figure is a row of it, none of them a
// computed one, and at that temperature the rule gives it back.
func TestEachRuleIsARowOfTheTable(t *testing.T) {
	rows := check.Table(t, "solubility")
	for _, r := range crystalRules {
		if r.water == Trade {
			continue
		}
		for _, m := range [...]measured{r.at, r.warmer} {
			if m.g == 0 {
				continue
			}
			found := false
			for _, row := range rows {
				at := row.Num("T_C")
				g := row.Num("g_per_100g_water")
				found = found || row.Text("solute") == r.solute.String() && at == m.t && g == m.g && row.Text("read") != "C"
			}
			assert.True(t, found, "%s at %g °C", r.solute, m.t)
			assert.InDelta(t, m.g, r.dissolvesAt(m.t), 1e-9, "%s", r.solute)
		}
		for _, k := range []float64{0.999, 1.001} {
			d := dissolved(t, Foam, r.solute, k*r.at.g, math.Max(r.at.t, 5))
			if r.water == Syrup || r.warmer.g == 0 {
				assert.Equal(t, k > 1, d.Over(), "%s", r.solute)
			}
		}
	}
}

// The table's rows read C were computed by another program; and what
// crystallises dissolves less in the cold than where it was measured.
func TestColdSolubilityIsTheTables(t *testing.T) {
	computed := 0
	for _, row := range check.Table(t, "solubility") {
		if row.Text("read") != "C" || row.Text("solute") != "erythritol" {
			continue
		}
		computed++
		at := row.Num("T_C")
		want := row.Num("g_per_100g_water")
		assert.InDelta(t, want, dissolved(t, Dense, mix.Erythritol, 1, at).MostGPer100G, 0.1, "%g °C", at)
	}
	assert.Equal(t, 3, computed)
	for _, r := range crystalRules {
		if r.water == Unfrozen {
			assert.LessOrEqual(t, r.dissolvesAt(-18), r.at.g, "%s", r.solute)
			assert.LessOrEqual(t, r.dissolvesAt(-18), r.dissolvesAt(-10), "%s", r.solute)
		}
	}
}

// testdata/tables/kitchen_limits.csv, erythritol_crystals_*: g per kg of a
// custard that begin to crystallise, by another program, in the water that the
// custard keeps liquid without it. Erythritol keeps some of its own liquid, so
// that ours begins a little later: at the freezer's −18 °C within 5 % of the
// table's upper end, at −10 °C at 59 g/kg where the table says 40.
func TestErythritolBeginsToCrystalliseWhereTheTableSays(t *testing.T) {
	with := func(perKG float64) Body {
		m := custard.Times((1000 - perKG) / custard.TotalG())
		m.Grams[mix.Erythritol] += perKG
		return body(m, 0.2, Dense)
	}
	checked := 0
	for _, row := range check.Table(t, "kitchen_limits") {
		at, ok := map[string]float64{"erythritol_crystals_minus18": -18, "erythritol_crystals_minus10": -10}[row.Text("key")]
		if !ok {
			continue
		}
		checked++
		low := row.Num("low")
		high := row.Num("high")

		trace := with(1e-6)
		d := trace.Dissolved(at)
		saturated := d[0].MostGPer100G * 1e-6 / d[0].GPer100G // g per kg
		assert.True(t, low < saturated && saturated < high, "%g g/kg at %g °C", saturated, at)
		if at == -18 {
			below, above := with(low), with(1.05*high)
			assert.False(t, below.Dissolved(at)[0].Over())
			assert.True(t, above.Dissolved(at)[0].Over())
		}
	}
	assert.Equal(t, 2, checked)
}

// Each solute by its own water: the same sugar is no fault of a custard's
// frozen syrup, the foam's syrup is judged unfrozen, and lactose by the trade.
func TestEachSoluteIsHeldAgainstItsOwnWater(t *testing.T) {
	assert.True(t, dissolved(t, Foam, mix.Erythritol, 75, -5).Over(), "75 g per 100 g water")
	assert.False(t, dissolved(t, Foam, mix.Sucrose, 203, -18).Over(), "beside its ice sucrose stays syrup")
	assert.True(t, dissolved(t, Foam, mix.Sucrose, 205, -18).Over())
	assert.True(t, dissolved(t, Foam, mix.Glucose, 135, -18).Over(), "a foam of dextrose alone")
	assert.False(t, dissolved(t, Dense, mix.Lactose, 8.3, -18).Over(), "one twelfth")
	assert.True(t, dissolved(t, Dense, mix.Lactose, 8.4, -18).Over())
	var m mix.Mix
	m.Grams[mix.Water], m.Grams[mix.Sucrose] = 100, 250
	b := Prepare(m, 0, Dense, solution.DefaultBound)
	assert.Empty(t, b.Dissolved(-18))
	assert.Empty(t, new(Body).Dissolved(-5))

	// Bound water dissolves nothing.
	m = mix.Mix{}
	m.Grams[mix.Water], m.Grams[mix.Mannitol], m.Grams[mix.Protein] = 50, 10, 20
	bound := Prepare(m, 0, Dense, solution.Bound{ProteinGPerG: 0.4})
	assert.InDelta(t, 10/(50-8.)*100, bound.Dissolved(0)[0].GPer100G, 1e-9)
}
