package dayplan_test

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/dayplan"
	"ripplewright/internal/desk/making"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

func job(t *testing.T, d design.Design) making.Job {
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return making.Job{Design: d, Result: &r, Kitchen: cold.Default()}
}

func TestADayFromBothEnds(t *testing.T) {
	j := job(t, market.Demo(t))
	for _, serve := range []bool{true, false} {
		at := time.Date(2026, 11, 29, 15, 0, 0, 0, time.UTC)
		a, err := dayplan.Of(context.Background(), dayplan.Question{Job: j, Reads: say.Usual, Serve: serve, At: at})
		require.NoError(t, err)
		require.NoError(t, a.Untimed)
		span := a.Plan.Span()
		if serve {
			assert.False(t, a.Clock(span.ToMinutes).After(at))
		} else {
			assert.False(t, a.Clock(span.FromMinutes).Before(at))
		}
		rows := dayplan.RowsOf(&a.Plan)
		require.Equal(t, process.Hands, rows[0].What)
		assert.Equal(t, process.Fridge, rows[len(rows)-1].What)
		for _, r := range rows {
			for i, b := range r.Bars {
				assert.Less(t, b.Lane, r.Lanes)
				for _, o := range r.Bars[:i] {
					assert.False(t, o.Lane == b.Lane && b.FromMinutes < o.ToMinutes-1e-6, "%s: bars of a lane overlap", r.What)
				}
			}
			if r.What != process.Freezer && r.What != process.Fridge {
				assert.Equal(t, 1, r.Lanes, "%s is taken once at a time", r.What)
			}
		}
		assert.Contains(t, dayplan.At(rows, a.Plan.Tasks[len(a.Plan.Tasks)-1].StartMinutes-1), dayplan.Taken{What: process.Freezer, Step: process.Hardening}, "the tubs stay in the freezer until they are served")
		stretches := dayplan.Stretches(&a.Plan)
		require.Greater(t, len(stretches), 2, "a rest lies between the custard and the freezing")
		sum := 0.0
		for _, row := range rows[:1] {
			for _, b := range row.Bars {
				sum += b.ToMinutes - b.FromMinutes
				inside := 0
				for _, s := range stretches[1:] {
					if s.FromMinutes <= b.FromMinutes && b.ToMinutes <= s.ToMinutes {
						inside++
					}
				}
				assert.Equal(t, 1, inside, "every work lies in one stretch")
			}
		}
		assert.InDelta(t, a.Plan.HandsOnMinutes(), sum, 1e-6)
	}
}

func TestNothingToMakeIsSaid(t *testing.T) {
	d := design.New()
	d.Dense.Lines, d.Foam.Lines, d.Foam.Syrup.Lines = nil, nil, nil
	_, err := dayplan.Of(context.Background(), dayplan.Question{Job: job(t, d), Reads: say.Usual, Serve: true, At: time.Now()})
	assert.ErrorIs(t, err, dayplan.ErrNothing)
}

func TestWhoHasWhatAtAMinute(t *testing.T) {
	rows := []dayplan.Row{
		{What: process.Hands, Bars: []dayplan.Bar{{Span: plan.Span{FromMinutes: 0, ToMinutes: 10}, Step: process.Crack}}},
		{What: process.Freezer, Bars: []dayplan.Bar{{Span: plan.Span{FromMinutes: 5, ToMinutes: 50}, Step: process.FreezeSoft}}},
	}
	assert.Equal(t, []dayplan.Taken{{process.Hands, process.Crack}, {process.Freezer, process.FreezeSoft}}, dayplan.At(rows, 7))
	assert.Equal(t, []dayplan.Taken{{process.Freezer, process.FreezeSoft}}, dayplan.At(rows, 10))
	assert.Empty(t, dayplan.At(rows, 50))
}

func TestMarksAreRoundAndFew(t *testing.T) {
	assert.Equal(t, []float64{60, 75, 90, 105, 120}, dayplan.Marks(plan.Span{FromMinutes: 50, ToMinutes: 120}, 8))
	assert.Equal(t, []float64{-60, 0, 60}, dayplan.Marks(plan.Span{FromMinutes: -70, ToMinutes: 65}, 3))
	for _, hours := range []float64{1, 3, 7, 20, 45, 100} {
		marks := dayplan.Marks(plan.Span{FromMinutes: 17, ToMinutes: 17 + 60*hours}, 8)
		assert.LessOrEqual(t, len(marks), 8)
		assert.GreaterOrEqual(t, len(marks), 2)
	}
}

// Every use is a bar, each thing looks like itself alone, and a name stands only
// where it has room.
func TestThePictureShowsEveryUse(t *testing.T) {
	a, err := dayplan.Of(context.Background(), dayplan.Question{Job: job(t, market.Demo(t)), Reads: say.Usual, Serve: true, At: time.Date(2026, 11, 29, 15, 0, 0, 0, time.UTC)})
	require.NoError(t, err)
	rows := dayplan.RowsOf(&a.Plan)
	bars := 0
	for _, r := range rows {
		bars += len(r.Bars)
		require.Contains(t, dayplan.Looks, r.What)
	}
	seen := map[dayplan.Look]process.Resource{}
	for what, l := range dayplan.Looks {
		assert.Empty(t, seen[l], "%s looks like %s", what, seen[l])
		seen[l] = what
	}
	for room, want := range map[bool]int{true: len(rows[0].Bars), false: 0} {
		v := dayplan.Picture(&a, rows, a.Plan.Span(), dayplan.Palette{}, func(string, float64) bool { return room })
		assert.Len(t, v.Bands, bars+len(v.X.Ticks))
		assert.Len(t, v.Y.Ticks, len(rows))
		named := 0
		for _, b := range v.Bands {
			if b.Label != "" {
				named++
			}
			assert.LessOrEqual(t, b.X0, b.X1)
		}
		assert.Equal(t, want, named)
	}
	b := rows[0].Bars[0]
	assert.Contains(t, dayplan.Words(&a, rows, (b.FromMinutes+b.ToMinutes)/2), say.Taking(process.Hands, b.Step))
}
