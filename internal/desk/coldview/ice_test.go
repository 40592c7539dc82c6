package coldview_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/coldview"
)

func TestTheIceIsShownOverItsWeeks(t *testing.T) {
	a, r := planned(t, market.Honey(), cold.Default())
	told, err := icy.Tell(r, a, icy.Options{Weeks: 20})
	require.NoError(t, err)
	plot := coldview.IceScene(&told).Plot(coldview.Inks{})
	require.Len(t, plot.Series, 2)
	for i, w := range told.Custard.Weeks {
		assert.Equal(t, w.Week, plot.Series[0].X[i])
		assert.Equal(t, w.Core.ValueUM, plot.Series[0].Y[i])
		assert.Equal(t, w.Wall.ValueUM, plot.Series[1].Y[i])
		assert.LessOrEqual(t, plot.Areas[0].Lo[i], w.Wall.ValueUM)
		assert.GreaterOrEqual(t, plot.Areas[0].Hi[i], w.Core.ValueUM)
		assert.LessOrEqual(t, plot.Areas[0].Hi[i], plot.Y.Max)
	}
	require.NotEmpty(t, plot.Rules)
	assert.Equal(t, "smooth", plot.Rules[0].Label, "named by the word that begins there")
	assert.Equal(t, 30.0, plot.Rules[0].At)
}

func TestEachStepThatCountsHasItsBar(t *testing.T) {
	a, r := planned(t, market.Honey(), cold.Default())
	told, err := icy.Tell(r, a, icy.Options{})
	require.NoError(t, err)
	plot := coldview.IceShares(&told, coldview.Inks{})
	require.Len(t, plot.Y.Ticks, len(plot.Bands))
	sum := 0.0
	for i, b := range plot.Bands {
		sum += b.X1 - b.X0
		assert.True(t, b.Y0 < plot.Y.Ticks[i].Value && plot.Y.Ticks[i].Value < b.Y1)
		assert.NotEmpty(t, plot.Y.Ticks[i].Label)
		if i > 0 {
			assert.Less(t, b.Y1, plot.Bands[i-1].Y0, "one under the other")
		}
	}
	assert.InDelta(t, 100, sum, 5)
}

func TestWithoutIceThereIsNoPicture(t *testing.T) {
	k := cold.Default()
	k.Freezer.AirC = -2
	a, r := planned(t, market.Honey(), k)
	told, err := icy.Tell(r, a, icy.Options{})
	require.NoError(t, err)
	assert.Nil(t, coldview.IceScene(&told).Plot)
}

func TestEachWayToFreezeTheCustardIsReadBack(t *testing.T) {
	k := cold.Default()
	assert.Equal(t, coldview.InTray, coldview.BeatingOf(&k))
	for _, o := range coldview.Beatings() {
		coldview.UseBeating(&k, o.Value)
		assert.Equal(t, o.Value, coldview.BeatingOf(&k))
		assert.NoError(t, k.Validate())
	}
	k = cold.Default()
	k.Churn.BowlML = 1000
	assert.Equal(t, coldview.InBowl, coldview.BeatingOf(&k), "a bowl of no kind is a frozen one")
	coldview.UseBeating(&k, coldview.InTray)
	assert.Equal(t, coldview.InTray, coldview.BeatingOf(&k), "and may be left in the cupboard")
}
