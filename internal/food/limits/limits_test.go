package limits_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
	"ripplewright/internal/food/limits"
)

// table returns kitchen_limits.csv by key; an open end is NaN.
func table(t *testing.T) map[string]check.Row {
	t.Helper()
	rows := map[string]check.Row{}
	for _, r := range check.Table(t, "kitchen_limits") {
		rows[r.Text("key")] = r
	}
	return rows
}

func TestNothingRememberedStopsAnyone(t *testing.T) {
	stops := 0
	for _, l := range limits.All {
		for _, s := range l.Steps {
			assert.Contains(t, []limits.Read{limits.InText, limits.Secondary, limits.Computed, limits.Memory}, s.Read, l.What)
			assert.NotEmpty(t, s.Source, l.What)
			if s.Level == limits.Stop {
				stops++
				assert.NotEqual(t, limits.Memory, s.Read, l.What)
			}
		}
	}
	assert.Positive(t, stops)
}

func TestEveryStepIsTheOneOfItsTable(t *testing.T) {
	rows := table(t)
	for _, l := range limits.All {
		for _, s := range l.Steps {
			if s.Row == "" {
				continue
			}
			r, ok := rows[s.Row]
			require.True(t, ok, s.Row)
			assert.True(t, s.At == r.Num("low") || s.At == r.Num("high"), "%s: %g is no end of %s", l.What, s.At, s.Row)
			assert.Equal(t, r.Text("unit"), l.Unit, s.Row)
			assert.Equal(t, r.Text("read"), string(s.Read), s.Row)
		}
	}
}

func TestStepsRunFromTheMildest(t *testing.T) {
	for _, l := range limits.All {
		require.NotEmpty(t, l.Steps, l.What)
		for i := 1; i < len(l.Steps); i++ {
			a, b := l.Steps[i-1], l.Steps[i]
			assert.Less(t, a.Level, b.Level, l.What)
			assert.Equal(t, l.Below, b.At < a.At, l.What)
			assert.NotEqual(t, a.At, b.At, l.What)
		}
		for _, s := range l.Steps {
			past := 1e-9 * (1 + math.Abs(s.At))
			if l.Below {
				past = -past
			}
			assert.Less(t, l.Level(s.At), s.Level, "%s: the bound itself is allowed", l.What)
			assert.Equal(t, s.Level, l.Level(s.At+past), l.What)
		}
		assert.Equal(t, limits.Within, l.Level(math.NaN()), l.What)
	}
}

func TestWhatNobodyCanMakeIsStoppedOrWarnedOf(t *testing.T) {
	for _, c := range []struct {
		of   *limits.Limit
		v    float64
		want limits.Level
	}{
		{&limits.CustardAir, 120, limits.Stop}, // a custard at 120 % by hand
		{&limits.CustardAir, 20, limits.Within},
		{&limits.TrayAir, 30, limits.Warn},
		{&limits.FoamAir, 850, limits.Stop},
		{&limits.FoamAir, 320, limits.Within},
		{&limits.Yolk, 333, limits.Warn}, // a third of the mix
		{&limits.Yolk, 110, limits.Within},
		{&limits.SweetTub, 29, limits.Warn},
		{&limits.FlatCustard, 9, limits.Warn},
		{&limits.Salt, 20, limits.Warn},
		{&limits.AcidHot, 3, limits.Stop},
		{&limits.StarchPeak, 82, limits.Stop},
		{&limits.Altitude, 299, limits.Within},
		{&limits.Altitude, 3000, limits.Note},
		{&limits.SyrupDepth, limits.SyrupDepthMM(10, limits.SmallPanCM), limits.Warn}, // 10 g
	} {
		assert.Equal(t, c.want, c.of.Level(c.v), "%s at %g", c.of.What, c.v)
	}
}

func TestDepthOfSyrupIsTheTables(t *testing.T) {
	rows := table(t)
	assert.InDelta(t, 15, limits.SyrupDepthMM(rows["syrup_12cm_15mm"].Num("low"), 12), 0.05)
	assert.InDelta(t, 15, limits.SyrupDepthMM(rows["syrup_16cm_15mm"].Num("low"), 16), 0.05)
}

func TestEveryLimitIsListedOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range limits.All {
		assert.NotEmpty(t, l.Code)
		assert.False(t, seen[l.Code+l.What], l.What)
		seen[l.Code+l.What] = true
	}
}

// The law that the syrup's step rests on, and the row that the stove's quotes:
// the table's own figures, both ways.
func TestWhatAHotPanLeavesOfAlcoholIsTheTables(t *testing.T) {
	law, quoted := 0, false
	for _, x := range check.Table(t, "ethanol_retention") {
		switch kept := x.Num("ethanol_retained_pct"); {
		case x.Text("water_lost_pct") != "":
			law++
			assert.InDelta(t, 100*math.Pow(1-x.Num("water_lost_pct")/100, 12), kept, 0.06, "%v", x)
		case x.Text("method") == "stirred in, baked or simmered" && x.Text("minutes") == "15":
			quoted = true
			assert.Contains(t, limits.AlcoholOnStove.Steps[0].Source, strconv.Itoa(int(kept))+" % left after "+x.Text("minutes")+" min")
		}
	}
	assert.Positive(t, law)
	assert.True(t, quoted)
	for _, s := range limits.AlcoholInSyrup.Steps {
		assert.Contains(t, s.Source, "(water left)^12")
	}
}
