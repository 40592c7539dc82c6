package notebook_test

import (
	"context"
	"errors"
	"io/fs"
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
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/versions"
)

var noon = time.Date(2026, 11, 28, 12, 0, 0, 0, time.UTC)

// beside returns the notebook beside the design file at path, whatever path is at the
// time: Plain as a maker saved it, with a comment.
func beside(t *testing.T, path *string) *notebook.Book {
	return notebook.Open(func() *designfile.File {
		if *path == "" {
			return nil
		}
		f, err := designfile.Load(*path)
		if errors.Is(err, fs.ErrNotExist) {
			var text []byte
			text, err = (&designfile.File{}).Encode(market.Plain())
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(*path, append([]byte("# for the quay\n"), text...), 0o644))
			f, err = designfile.Load(*path)
		}
		require.NoError(t, err)
		return f
	})
}

// A batch keeps the design that it was made by, in the form of its file: the one before
// the readings at the stove, whatever the file says. One that is added to later, of a
// design that has changed, was not made by that.
func TestABatchKeepsTheVersionItWasMadeBy(t *testing.T) {
	path := filepath.Join(t.TempDir(), "quay.yaml")
	b := beside(t, &path)
	m := model.New(market.Library(t))
	made := market.Plain()
	made.Dense.OverrunPercent += 5
	after := made
	after.Foam.OverrunPercent -= 60
	b.Keep(process.FoamCupG, 95, made)
	l, err := notebook.Write(context.Background(), b.Job(m, after, cold.Default(), noon))
	require.NoError(t, err)
	require.NoError(t, l.NoVersion)
	b.Done()
	kept, err := versions.List(path)
	require.NoError(t, err)
	require.Len(t, kept, 1)
	assert.Equal(t, l.Entry.ID, kept[0].Batch)
	assert.Contains(t, string(kept[0].Text()), "# for the quay")
	f, err := kept[0].Design(market.Library(t))
	require.NoError(t, err)
	assert.True(t, f.Design.Equal(made))

	b.Draft = batch.Batch{ID: l.Entry.ID, Ate: batch.Ate{Icy: "fine"}}
	_, err = notebook.Write(context.Background(), b.Job(m, after, cold.Default(), noon.Add(24*time.Hour)))
	require.NoError(t, err)
	kept, err = versions.List(path)
	require.NoError(t, err)
	assert.Len(t, kept, 1, "of another design than the batch was made by")

	require.NoError(t, os.RemoveAll(versions.Beside(path)))
	require.NoError(t, os.WriteFile(versions.Beside(path), nil, 0o644))
	b.Draft = batch.Batch{RoomC: batch.Of(21)}
	l, err = notebook.Write(context.Background(), b.Job(m, made, cold.Default(), noon.Add(48*time.Hour)))
	require.NoError(t, err, "the batch itself is written")
	assert.Error(t, l.NoVersion)
}

// A reading that is kept at the stove is in the batch, whose forecast is of the design
// before the reading changed it; and what was whipped then is not learnt twice.
func TestWhatIsKeptAtTheStoveIsInTheBatch(t *testing.T) {
	path := filepath.Join(t.TempDir(), "quay.yaml")
	d := market.Plain()
	b := beside(t, &path)
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
	b.Done()
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
	b := beside(t, &path)
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
	require.NoError(t, batch.Append(batch.PathOf(path), batch.Batch{ID: "a", FreezerC: batch.Of(-15), Forecast: batch.Forecast{FreezerC: batch.Of(-18)}}, nil))
	b := beside(t, &path)
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
	plot = notebook.Inks{Reads: say.Customary}.History(&p, &n, "freezer_c")
	assert.Contains(t, plot.Y.Title, "°F")
	assert.InDeltaSlice(t, []float64{-0.4, -0.4}, plot.Series[0].Y, 1e-9, "as its axis says")

	known := notebook.Inks{}.Learnt(&p, learn.FreezerK)
	require.Len(t, known.Series, 4)
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
	bars, each := known.Series[2], known.Series[3]
	assert.Equal(t, 2., each.X[0])
	assert.InDelta(t, 1, bars.X[0], 1e-9, "a thermometer in a freezer errs by 1 K")
	assert.InDelta(t, 3, bars.X[1], 1e-9)
	assert.Equal(t, each.Y[0], bars.Y[1])
}
