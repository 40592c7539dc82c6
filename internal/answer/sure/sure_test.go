package sure

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
)

func TestTheSameSeedIsTheSameAnswer(t *testing.T) {
	m, d := model.New(market.Library(t)), market.Honey()
	a, err := Sample(context.Background(), m, d, Options{Kitchens: 200, Seed: 3})
	require.NoError(t, err)
	b, err := Sample(context.Background(), m, d, Options{Kitchens: 200, Seed: 3})
	require.NoError(t, err)
	assert.Equal(t, a.Spread[:3], b.Spread[:3])
	assert.Equal(t, a.BothFraction, b.BothFraction)
	c, err := Sample(context.Background(), m, d, Options{Kitchens: 200, Seed: 4})
	require.NoError(t, err)
	assert.NotEqual(t, a.Spread[CustardKPa], c.Spread[CustardKPa])
}

func TestTheMiddleKitchenIsTheDesignAndTheLawMattersAsItIsPublished(t *testing.T) {
	m, d := model.New(market.Library(t)), market.Honey()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	a, err := Sample(context.Background(), m, d, Options{Kitchens: 2000})
	require.NoError(t, err)
	assert.InEpsilon(t, r.Dense.State.YieldKPa, a.Spread[CustardKPa].Middle, 0.1)
	assert.InEpsilon(t, r.Blend.SweetnessPercent, a.Spread[Sweetness].Middle, 0.02)
	// 85 % within a factor of two is 80 % within 2^(1.2816/1.44).
	law := a.ByCause[Law][CustardKPa]
	assert.InDelta(t, 2*1.2816/1.44*math.Ln2, math.Log(law.High/law.Low), 0.35)
	assert.Zero(t, a.Effect(Law, Sweetness))
	assert.Zero(t, a.Effect(Thaw, CustardKPa))
	assert.Equal(t, Law, a.Foremost(CustardKPa)[0])
	assert.Positive(t, a.Effect(Freezer, CustardKPa))
	assert.Positive(t, a.Effect(Syrup, FoamKPa))
	assert.Zero(t, a.Effect(Syrup, CustardKPa))
}

func TestAHarderTubScoopsInFewerKitchens(t *testing.T) {
	m, d := model.New(market.Library(t)), market.Honey()
	last := 1.1
	for _, c := range []float64{-10, -13, -16, -20} {
		d.Serving.TemperatureC = c
		a, err := Sample(context.Background(), m, d, Options{Kitchens: 400})
		require.NoError(t, err)
		assert.LessOrEqual(t, a.CustardFraction, last, "%g °C", c)
		assert.LessOrEqual(t, a.BothFraction, math.Min(a.CustardFraction, a.FoamFraction)+1e-9)
		last = a.CustardFraction
	}
	assert.Less(t, last, 0.5)
}

func TestMinutesComeOfTheColdOfTheDesign(t *testing.T) {
	m, d := model.New(market.Library(t)), market.Honey()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	c, err := cold.Plan(context.Background(), d, &r, cold.Default(), cold.Options{NoPictures: true})
	require.NoError(t, err)
	a, err := Sample(context.Background(), m, d, Options{Kitchens: 300, Cold: &c})
	require.NoError(t, err)
	s := a.Spread[Minutes]
	require.False(t, math.IsNaN(s.Middle))
	assert.True(t, s.Low <= s.Middle && s.Middle < s.High, "%+v", s)
	assert.InDelta(t, c.Counter.Dense.FromMinutes.Value, s.Middle, math.Max(2, 0.35*c.Counter.Dense.FromMinutes.Value))
	none, err := Sample(context.Background(), m, d, Options{Kitchens: 50})
	require.NoError(t, err)
	assert.True(t, math.IsNaN(none.Spread[Minutes].Middle))
}

func TestACancelledSampleEnds(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Sample(ctx, model.New(market.Library(t)), market.Honey(), Options{Kitchens: 1e6})
	assert.ErrorIs(t, err, context.Canceled)
}

func BenchmarkThousandKitchens(b *testing.B) {
	m, d := model.New(market.Library(b)), market.Honey()
	for range b.N {
		if _, err := Sample(context.Background(), m, d, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
