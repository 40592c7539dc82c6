package notebook_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/notebook"
	"ripplewright/internal/work/batch"
)

var noon = time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC)

// A reading that is kept at the stove is in the batch, whose forecast is of the design
// before the reading changed it; and what was whipped then is not learnt twice.
func TestWhatIsKeptAtTheStoveIsInTheBatch(t *testing.T) {
	path := filepath.Join(t.TempDir(), "quay.yaml")
	b := notebook.Open(func() string { return path })
	d := market.Plain()
	after := d
	after.Foam.OverrunPercent = d.Foam.OverrunPercent - 60
	b.Keep(process.FoamCupG, 95, d)
	b.Keep(process.SyrupG, 212, after)
	assert.Equal(t, batch.Of(95), b.Draft.Foam.CupG)
	assert.Equal(t, batch.Of(212), b.Draft.Syrup.MassG())
	j := b.Job(model.New(market.Library(t)), after, cold.Default(), noon)
	assert.True(t, j.Design.Equal(d))
	l, err := notebook.Write(context.Background(), j)
	require.NoError(t, err)
	b.Written()
	assert.Zero(t, b.Draft)
	require.Len(t, b.Notes.Batches, 1)
	assert.Equal(t, l.Whole.Forecast, b.Notes.Batches[0].Forecast)
	assert.Equal(t, d.Foam.OverrunPercent, l.Whole.Forecast.FoamOverrun.Value)
	p := b.Taught(&d)
	assert.True(t, p.Learnt(learn.FoamAir))
	p = b.Taught(&after)
	assert.False(t, p.Learnt(learn.FoamAir))
}

func TestAnotherDesignHasAnotherNotebook(t *testing.T) {
	folder := t.TempDir()
	path := ""
	b := notebook.Open(func() string { return path })
	d := market.Plain()
	b.Keep(process.FoamCupG, 95, d)
	_, err := notebook.Write(context.Background(), b.Job(model.New(market.Library(t)), d, cold.Default(), noon))
	assert.ErrorContains(t, err, "save the design first")
	path = filepath.Join(folder, "quay.yaml")
	b.Follow()
	assert.Equal(t, batch.Of(95), b.Draft.Foam.CupG, "it is the same design, saved")
	path = filepath.Join(folder, "other.yaml")
	require.NoError(t, os.WriteFile(batch.PathOf(path), []byte("---\nbatch: a\nroom_c: 99\n...\n"), 0o644))
	b.Follow()
	assert.Zero(t, b.Draft)
	assert.ErrorContains(t, b.Err, "other.batches.yaml:3: room_c: 99 °C is outside")
	assert.Error(t, b.Switch(learn.Ice, false, noon), "a file that cannot be read is left alone")
}

func TestAFactorIsSwitchedOffAndOn(t *testing.T) {
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, batch.Append(batch.PathOf(path), batch.Batch{ID: "a", FreezerC: batch.Of(-15), Forecast: batch.Forecast{FreezerC: batch.Of(-18)}}))
	b := notebook.Open(func() string { return path })
	d := market.Plain()
	warm := b.Kitchen(&d, cold.Default()).Freezer.AirC
	assert.Greater(t, warm, -18.)
	require.NoError(t, b.Switch(learn.FreezerK, false, noon))
	assert.Equal(t, -18., b.Kitchen(&d, cold.Default()).Freezer.AirC)
	require.NoError(t, b.Switch(learn.FreezerK, true, noon))
	assert.Equal(t, warm, b.Kitchen(&d, cold.Default()).Freezer.AirC)
}

func TestPlotsHoldWhatWasMeasured(t *testing.T) {
	n := batch.Notebook{Batches: []batch.Batch{
		{ID: "a", FreezerC: batch.Of(-16), Forecast: batch.Forecast{FreezerC: batch.Of(-18)}},
		{ID: "b", FreezerC: batch.Of(-16.5), Forecast: batch.Forecast{FreezerC: batch.Of(-18)}},
		{ID: "c"},
	}}
	p := learn.From(&n)
	plot := notebook.Inks{}.History(&p, &n, "freezer_c")
	require.Len(t, plot.Series, 2)
	assert.Equal(t, []float64{-18, -18}, plot.Series[0].Y)
	assert.Empty(t, notebook.Inks{}.History(&p, &n, "ate.icy").Series)

	known := notebook.Inks{}.Learnt(&p, learn.FreezerK)
	require.Len(t, known.Series, 3)
	top := func(y []float64) (at int) {
		for i := range y {
			if y[i] > y[at] {
				at = i
			}
		}
		return at
	}
	before, now := known.Series[0], known.Series[1]
	assert.InDelta(t, 0, before.X[top(before.Y)], 0.1)
	assert.Greater(t, now.X[top(now.Y)], 0.5)
	assert.Greater(t, now.Y[top(now.Y)], before.Y[top(before.Y)], "surer")
	assert.Equal(t, 2., known.Series[2].X[0])
}
