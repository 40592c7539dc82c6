package cold

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
)

// The checks here are of common practice, no source: what makers say, with an
// ordinary recipe. Their ranges are wide because practice names no kitchen.

// Common practice, no source: a pint hardens overnight.
func TestAPintHardensOvernight(t *testing.T) {
	a := planned(t, market.Honey(), Default())
	require.True(t, a.Harden.Hours.Known())
	assert.Less(t, a.Harden.Hours.High, 14.0)
	assert.Greater(t, a.Harden.Hours.Low, 2.0)
}

// Common practice, no source: a pint softens in about 5 to 15 minutes at room
// temperature. The model's ring begins within it and the whole tub ends there.
func TestAPintSoftensInFiveToFifteenMinutes(t *testing.T) {
	s := planned(t, market.Honey(), Default()).Counter
	assert.True(t, s.FromMinutes.Value >= 5 && s.FromMinutes.Value <= 15, "%v", s.FromMinutes)
	assert.InDelta(t, 15, s.WholeMinutes.Value, 5)
}

// Common practice, no source: beating about five times over about two hours.
// It holds for a thin layer or a fan; a deeper layer in still air takes longer,
// and the plan says so.
func TestBeatingFiveTimesOverTwoHoursNeedsAThinLayerOrAFan(t *testing.T) {
	thin := Default()
	thin.Layer.DepthMM, thin.Layer.StirEveryMinutes = 13, 25
	fan, err := Find(BuiltIn(), "fan freezer")
	require.NoError(t, err)
	fan.Layer.StirEveryMinutes = 25
	for name, p := range map[string]Profile{"thin": thin, "fan": fan} {
		c := planned(t, market.Honey(), p).StillFreeze.Dense
		t.Logf("the model, %s: %d stirs over %.0f min", name, len(c.Stirs), c.ReadyMinutes.Value)
		assert.InDelta(t, 5, len(c.Stirs), 2)
		assert.True(t, c.ReadyMinutes.Value > 60 && c.ReadyMinutes.Value < 150, "%v", c.ReadyMinutes)
	}
	deep := Default()
	deep.Layer.DepthMM = 50
	a := planned(t, market.Honey(), deep)
	assert.Greater(t, a.StillFreeze.Dense.ReadyMinutes.Value, 180.0)
	found := false
	for _, n := range a.Notes {
		found = found || n.Code == "longer_than_practice" && n.Where == "still_freeze"
	}
	assert.True(t, found)
}
