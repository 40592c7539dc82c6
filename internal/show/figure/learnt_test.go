package figure_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/figure"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
)

// agreeing are n batches that came out as much beyond their forecast: points of solids and
// of loss, and a cup's weight over what was expected.
func agreeing(of model.Making, n int, points, cup float64) *batch.Notebook {
	b := batch.Batch{Forecast: batch.Forecast{SyrupG: batch.Of(200), SyrupSolidsPercent: batch.Of(85), CustardG: batch.Of(1000), CustardInG: batch.Of(1100),
		CustardCupG: batch.Of(200), CustardOverrun: batch.Of(30), FoamCupG: batch.Of(80), FoamOverrun: batch.Of(300)}}
	switch of {
	case model.Boiled:
		b.Syrup = batch.Syrup{WeighedG: batch.Of(200 / (1 + points/85)), PanG: batch.Of(0), ReadingC: batch.Of(118)}
	case model.Reduced:
		b.Custard.WeighedG = batch.Of(1000 - 11*points)
	case model.CustardAir:
		b.Custard.CupG = batch.Of(200 * cup)
	case model.FoamAir:
		b.Foam.CupG = batch.Of(80 * cup)
	}
	var all batch.Notebook
	for i := range n {
		b.ID = fmt.Sprint(i)
		all.Batches = append(all.Batches, b)
	}
	return &all
}

// airy is the honey tub with air in its custard and a loss on the stove.
func airy() design.Design {
	d := market.Honey()
	d.Dense.OverrunPercent, d.Dense.StoveLossPercent = 30, 6
	return d
}

func evaluatedBy(t *testing.T, m *model.Model, d design.Design) *model.Result {
	t.Helper()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	return &r
}

// everywhere calls f for every figure of every table, in each of its columns.
func everywhere(r *model.Result, f func(name string, row *figure.Row, column int)) {
	for _, table := range figure.Tables {
		columns := len(table.Columns)
		if columns == 0 { // one for each line
			columns = len(r.Lines)
		}
		for i := range table.Rows {
			for c := range columns {
				if row := &table.Rows[i]; row.In(c) {
					f(fmt.Sprint(table.Key, " ", row.Key, " ", c), row, c)
				}
			}
		}
	}
}

func width(v figure.Value) float64 {
	if !v.Banded() {
		return 0
	}
	return v.High - v.Low
}

// What agreeing batches teach of a making narrows the band of every figure that it feeds,
// the more the more of them there are. The band is there before any batch, as wide as what
// is stated of kitchens in general: no batch is the first to show one.
func TestAgreeingBatchesNarrowEveryBandThatTheyFeed(t *testing.T) {
	published, d := model.New(market.Library(t)), airy()
	plain := evaluatedBy(t, published, d)
	for of := range model.NumMakings {
		after := map[int]*model.Result{}
		for _, n := range []int{1, 2, 5} {
			p := learn.From(agreeing(of, n, 0, 1))
			after[n] = evaluatedBy(t, p.Model(published), d)
		}
		fed := 0
		everywhere(plain, func(name string, row *figure.Row, c int) {
			none, one, two, five := row.Of(plain, c), row.Of(after[1], c), row.Of(after[2], c), row.Of(after[5], c)
			if !none.Known() {
				assert.False(t, five.Known(), name)
				return
			}
			slack := 1e-9 * math.Abs(none.Value)
			assert.Equal(t, none.Value, five.Value, "%s: %s moves no figure", of, name)
			assert.GreaterOrEqual(t, width(none)+slack, width(one), "%s: %s", of, name)
			assert.GreaterOrEqual(t, width(one)+slack, width(two), "%s: %s", of, name)
			assert.GreaterOrEqual(t, width(two)+slack, width(five), "%s: %s", of, name)
			if width(one)-width(five) > slack {
				fed++
				assert.Greater(t, width(none), width(one), "%s: %s", of, name)
				assert.Greater(t, width(two), width(five), "%s: %s", of, name)
			}
		})
		assert.Greater(t, fed, 8, of)
	}
}

// Without batches a band is what is stated of kitchens: of the foam's air alone it is a fifth
// either way (common practice, no source), and what has no air has none.
func TestABandWithoutBatchesIsWhatIsStated(t *testing.T) {
	r := evaluatedBy(t, model.New(market.Library(t)), airy())
	air := figure.Phases.Row("overrun_percent")
	for column, set := range []float64{30, airy().Foam.OverrunPercent} {
		v := air.Of(r, column)
		assert.InDelta(t, set/1.2, v.Low, 1e-9)
		assert.InDelta(t, set*1.2, v.High, 1e-9)
	}
	off := figure.Phases.Row("water_driven_off_g").Of(r, figure.Custard) // 6 points of the stove either way
	assert.InDelta(t, 0, off.Low, 1e-9)
	assert.InDelta(t, 2*off.Value, off.High, 1e-9*off.Value)

	d := airy()
	d.Dense.OverrunPercent = 0
	assert.False(t, air.Of(evaluatedBy(t, model.New(market.Library(t)), d), figure.Custard).Banded())
}

// Batches that came out otherwise than written: the figure stays, and its band holds what
// they came to.
func TestEveryBandHoldsWhatBatchesCameTo(t *testing.T) {
	published, d := model.New(market.Library(t)), airy()
	plain := evaluatedBy(t, published, d)
	for of := range model.NumMakings {
		for _, sign := range []float64{-1, 1} {
			for _, n := range []int{1, 5} {
				p := learn.From(agreeing(of, n, 2*sign, 1+0.08*sign))
				r := evaluatedBy(t, p.Model(published), d)
				require.NotNil(t, r.Made())
				lopsided := 0
				everywhere(plain, func(name string, row *figure.Row, c int) {
					v, was := row.Of(r, c), row.Of(plain, c)
					if was.Known() {
						assert.Equal(t, was.Value, v.Value, name)
					}
					if v.Banded() {
						assert.True(t, v.Low <= v.Value && v.Value <= v.High, "%s %+v", name, v)
					}
					if !row.Forecasts() && row.Key != "hardness" || c == figure.Tub && row.Key == "hardness" {
						assert.Equal(t, width(was), width(v), "%s: %s is as written", of, name)
						return
					}
					came := row.Of(r.Made(), c)
					if !came.Known() || !v.Known() || v.Bound != figure.Exact {
						return
					}
					low, high := v.Low, v.High
					if !v.Banded() {
						low, high = v.Value, v.Value
					}
					assert.True(t, low <= came.Value+1e-9*math.Abs(came.Value) && came.Value-1e-9*math.Abs(came.Value) <= high, "%s: %s %+v does not hold %g", of, name, v, came.Value)
					if math.Abs((v.High-v.Value)-(v.Value-v.Low)) > 0.2*width(v) {
						lopsided++
					}
				})
				assert.Positive(t, lopsided, of)
			}
		}
	}
}

// A factor that is switched off, or that nobody measured, leaves every figure as published.
func TestWhatIsOffIsAsPublished(t *testing.T) {
	published, d := model.New(market.Library(t)), airy()
	want := evaluatedBy(t, published, d)
	for of := range model.NumMakings {
		n := agreeing(of, 5, 2, 1.1)
		n.Off = []string{of.String()}
		p := learn.From(n)
		assert.Same(t, published, p.Model(published))
	}
	nothing := learn.Prior()
	assert.Equal(t, want, evaluatedBy(t, nothing.Model(published), d))
}
