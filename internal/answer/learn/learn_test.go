package learn_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/work/batch"
)

// probed are batches whose probe showed so many K too much in boiling water.
func probed(offsets ...float64) *batch.Notebook {
	var n batch.Notebook
	for _, k := range offsets {
		n.Batches = append(n.Batches, batch.Batch{ID: "b", Syrup: batch.Syrup{WaterBoilsC: batch.Of(100 + k)}, Forecast: batch.Forecast{WaterBoilsC: batch.Of(100)}})
	}
	return &n
}

// Of one factor the update is the conjugate normal one: the mean weighed by one over
// the variances (Gelman et al. 2013, Bayesian Data Analysis, eq. 2.12, from memory).
func TestOneMeasurementIsTheConjugateUpdate(t *testing.T) {
	before := learn.Prior().Factors[learn.Probe]
	p := learn.From(probed(1))
	o := p.Observations[0]
	weight := 1 / (before.SD * before.SD)
	honest := o.ErrorSD * o.ErrorSD / (o.Chance + (1-o.Chance)/64)
	assert.InDelta(t, (1/honest)/(weight+1/honest), p.Factors[learn.Probe].Mean, 1e-5)
	assert.InDelta(t, 1/math.Sqrt(weight+1/honest), p.Factors[learn.Probe].SD, 1e-5)
	assert.Greater(t, o.Chance, 0.95)
}

func TestFiveAgreeingMoveItMoreThanOne(t *testing.T) {
	one, five := learn.From(probed(2)), learn.From(probed(2, 2, 2, 2, 2))
	assert.Greater(t, five.Factors[learn.Probe].Mean, one.Factors[learn.Probe].Mean)
	assert.Less(t, five.Factors[learn.Probe].SD, one.Factors[learn.Probe].SD)
	assert.Less(t, five.Factors[learn.Probe].Mean, 2.0, "but never past what was read")
}

func TestAnOutlierIsNamedAndHardlyCounts(t *testing.T) {
	p := learn.From(probed(0.8, 1, 1.2, 9, 1))
	require.Len(t, p.Slips(), 1)
	assert.Equal(t, 3, p.Slips()[0].Batch)
	assert.InDelta(t, 1, p.Factors[learn.Probe].Mean, 0.2)
}

func TestWhatIsOffStaysAsBefore(t *testing.T) {
	n := probed(2, 2)
	n.Off = []string{learn.Probe.String()}
	p := learn.From(n)
	assert.Equal(t, learn.Prior().Factors, p.Factors)
	assert.True(t, p.Off[learn.Probe])
	assert.False(t, p.Learnt(learn.Probe))
}

func TestNothingMeasuredTeachesNothing(t *testing.T) {
	p := learn.From(&batch.Notebook{Batches: []batch.Batch{{ID: "a", Made: "2026-11-28"}}})
	assert.Equal(t, learn.Prior().Factors, p.Factors)
	assert.Empty(t, p.Observations)
	p = learn.From(&batch.Notebook{Batches: []batch.Batch{{ID: "a", FreezerC: batch.Of(-18)}}})
	assert.Empty(t, p.Observations, "nobody knows what was expected")
}

// What each measurement says, worked by hand.
func TestWhatAMeasurementSays(t *testing.T) {
	f := batch.Forecast{SyrupG: batch.Of(132), SyrupSolidsPercent: batch.Of(88), SyrupSolidsPerK: batch.Of(0.5), CustardG: batch.Of(1000), CustardInG: batch.Of(1100),
		FoamCupG: batch.Of(80), FoamOverrun: batch.Of(300), FreezerC: batch.Of(-18), ScoopedMinutes: batch.Of(20), ScoopedTwiceHard: batch.Of(28),
		ScoopedFreezerWarmer: batch.Of(18), HardnessKPa: batch.Of(3), IceUM: batch.Of(40)}
	for name, c := range map[string]struct {
		b    batch.Batch
		of   learn.Factor
		says float64
	}{
		"a syrup 2 g lighter has 88 × 132/130 % of solids": {batch.Batch{Syrup: batch.Syrup{ReadingC: batch.Of(118), WeighedG: batch.Of(630), PanG: batch.Of(500)}}, learn.SyrupSolids, 88*132./130 - 88},
		"11 g of 1100 less is a point of loss":             {batch.Batch{Custard: batch.Custard{WeighedG: batch.Of(989)}}, learn.StoveLoss, 1},
		"a cup of 100 g holds 220 % of air, not 300":       {batch.Batch{Foam: batch.Foam{CupG: batch.Of(100)}}, learn.FoamAir, math.Log(220. / 300)},
		"a freezer at −16":                                 {batch.Batch{FreezerC: batch.Of(-16)}, learn.FreezerK, 2},
		"half the time is twice as fast":                   {batch.Batch{Scooped: batch.Scooped{AfterMinutes: batch.Of(10)}}, learn.Counter, math.Ln2},
		"firm is 6 to 12 kPa, √72 in the middle":           {batch.Batch{Ate: batch.Ate{Hardness: "firm"}}, learn.Hardness, math.Log(math.Sqrt(72) / 3)},
		"smooth is 30 to 50 µm":                            {batch.Batch{Ate: batch.Ate{Icy: "smooth"}}, learn.Ice, math.Log(math.Sqrt(1500) / 40)},
	} {
		c.b.Forecast = f
		got := learn.Observe(0, &c.b)
		require.Len(t, got, 1, name)
		assert.Equal(t, c.of, got[0].Of, name)
		assert.InDelta(t, c.says, got[0].Says, 1e-9, name)
	}
}

func TestEachFactorHasItsName(t *testing.T) {
	for f := range learn.NumFactors {
		g, ok := learn.Named(f.String())
		assert.True(t, ok)
		assert.Equal(t, f, g)
	}
	_, ok := learn.Named("luck")
	assert.False(t, ok)
}
