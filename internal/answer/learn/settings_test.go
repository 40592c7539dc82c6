package learn_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/work/batch"
)

// A maker who has put what the batches showed into the kitchen is not told it again, and a
// batch made in that kitchen counts.
func TestWhatTheKitchenAlreadySaysIsNotCountedTwice(t *testing.T) {
	s := simulated(t)
	made := func(f batch.Forecast) (n batch.Notebook) {
		for range 5 {
			b := batch.Batch{ID: "b", FreezerC: batch.Of(-15), Forecast: f}
			b.Syrup.WaterBoilsC = batch.Of(102)
			b.Scooped.AfterMinutes = batch.Of(10)
			n.Batches = append(n.Batches, b)
		}
		return n
	}
	n := made(s.expected)
	before := learn.For(&n, &s.d, s.k)
	shown := before.Kitchen(&s.d, s.k)
	require.InDelta(t, -15, shown.Freezer.AirC, 0.6)
	require.Greater(t, shown.Counter.Factor, 1.1)
	require.InDelta(t, 102, shown.Stove.ProbeBoilsC, 0.2)

	own := shown // as the maker keeps it
	own.Counter.LearntSpreadFraction, own.Counter.Measured = 0, "scooped well after 10 min"
	after := learn.For(&n, &s.d, own)
	for _, f := range []learn.Factor{learn.FreezerK, learn.Counter, learn.Probe} {
		assert.False(t, after.Learnt(f), "%s", f)
	}
	assert.Equal(t, own, after.Kitchen(&s.d, own))
	assert.Less(t, after.Kitchens().Left[sure.Thaw], 0.5, "a factor that was measured is known better than a kitchen's in general")
	syrup := func(p learn.Posterior, n *batch.Notebook) int { return p.Counts(learn.SyrupSolids) }
	n.Batches[0].Syrup.ReadingC, n.Batches[0].Syrup.WeighedG, n.Batches[0].Syrup.PanG = batch.Of(118), s.expected.SyrupG, batch.Of(0)
	told := learn.For(&n, &s.d, own)
	require.Equal(t, 1, syrup(told, &n))
	assert.InDelta(t, -s.expected.SyrupSolidsPerK.Value*(0-2), told.Observations[0].Says, 0.2, "2 K less hot than read: as heavy as expected is more solids than by the thermometer")

	f := s.expected // of a batch in the kitchen that now says so
	f.FreezerC, f.CounterFactor, f.ProbeK = batch.Of(own.Freezer.AirC), batch.Of(own.Counter.Factor), batch.Of(own.Stove.ProbeBoilsC-100)
	f.WaterBoilsC, f.ScoopedMinutes, f.ScoopedFreezerWarmer = batch.Of(102), batch.Of(10), batch.Of(8)
	more := made(f)
	n.Batches = append(n.Batches, more.Batches...)
	both := learn.For(&n, &s.d, own)
	assert.Equal(t, 5, both.Counts(learn.Counter))
	assert.InDelta(t, 0, both.Factors[learn.Counter].Mean, 0.03)
	k := both.Kitchen(&s.d, own)
	assert.InDelta(t, own.Freezer.AirC, k.Freezer.AirC, 0.3)
	assert.LessOrEqual(t, k.Counter.SpreadFraction(), own.Counter.SpreadFraction(), "batches never make a measured place less sure")
	assert.False(t, math.IsNaN(k.Stove.ProbeBoilsC))
}
