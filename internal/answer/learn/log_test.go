package learn_test

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/batch"
)

func TestLoggingFillsInWhatTheDayKnows(t *testing.T) {
	m, d, k := model.New(market.Library(t)), market.Plain(), cold.Default()
	at := time.Date(2026, 11, 28, 9, 40, 0, 0, time.UTC)
	var n batch.Notebook
	log := func(b batch.Batch, at time.Time) learn.Logged {
		l, err := learn.Log(context.Background(), m, d, k, &n, b, at)
		require.NoError(t, err)
		return l
	}
	first := log(batch.Batch{}, at)
	assert.Equal(t, "2026-11-28", first.Entry.ID)
	assert.Equal(t, "2026-11-28", first.Entry.Made)
	assert.Equal(t, "2026-11-28 09:40", first.Entry.When)
	assert.Equal(t, batch.VersionOf(&d), first.Entry.Version)
	assert.True(t, first.Entry.Forecast.HardnessKPa.Known)
	n.Batches = []batch.Batch{first.Whole}
	assert.Equal(t, "2026-11-28-2", log(batch.Batch{}, at).Entry.ID, "a second one of the day")

	later := log(batch.Batch{ID: "2026-11-28", Ate: batch.Ate{Icy: "smooth"}}, at.AddDate(0, 0, 15))
	assert.Equal(t, batch.Of(15), later.Entry.Ate.AfterDays)
	assert.Empty(t, later.Entry.Made, "the day is written down already")
	assert.Greater(t, later.Whole.Forecast.IceUM.Value, first.Whole.Forecast.IceUM.Value, "of the day it was eaten")

	d.Dense.StoveLossPercent += 3
	other := log(batch.Batch{ID: "2026-11-28", FreezerC: batch.Of(-17)}, at)
	assert.True(t, other.OtherDesign)
	assert.Zero(t, other.Entry.Forecast)
	assert.Empty(t, other.Entry.Version)
	assert.Equal(t, first.Whole.Forecast, other.Whole.Forecast, "that of its own design")
}

func TestPairsStandBesideTheirForecasts(t *testing.T) {
	b := batch.Batch{ID: "a", FreezerC: batch.Of(-17), RoomC: batch.Of(25), Ate: batch.Ate{Icy: "smooth"}, Forecast: batch.Forecast{FreezerC: batch.Of(-18)}}
	n := batch.Notebook{Batches: []batch.Batch{b}}
	p := learn.From(&n)
	pairs := p.Pairs(0, &b)
	require.Len(t, pairs, 2)
	assert.Equal(t, "freezer_c", pairs[0].Path)
	assert.Equal(t, -18., pairs[0].Expected)
	assert.Equal(t, "smooth", pairs[1].Word)
	assert.Less(t, pairs[1].Low, pairs[1].High)
	assert.NotEqual(t, pairs[1].Expected, pairs[1].Expected, "no forecast is NaN, not zero")
	for _, q := range pairs {
		assert.Contains(t, learn.Paired(), q.Path)
	}
}

// A cup that was weighed against an overrun of 80 % says nothing of a design that has
// since been set to what was measured.
func TestAnAirIsOfTheSettingThatItWasMeasuredAgainst(t *testing.T) {
	d := market.Plain()
	d.Foam.OverrunPercent = 300
	n := batch.Notebook{Batches: []batch.Batch{{ID: "a", Foam: batch.Foam{CupG: batch.Of(90)}, Forecast: batch.Forecast{FoamCupG: batch.Of(75), FoamOverrun: batch.Of(300)}}}}
	p := learn.For(&n, &d, cold.Default())
	assert.True(t, p.Learnt(learn.FoamAir))
	d.Foam.OverrunPercent = 233
	p = learn.For(&n, &d, cold.Default())
	assert.False(t, p.Learnt(learn.FoamAir))
	assert.Equal(t, batch.Of(75), n.Batches[0].Forecast.FoamCupG, "the notebook stays")
}
