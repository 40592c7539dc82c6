package process_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/work/design"
)

// batches calls f for every demo, every hard design and 500 made at random, each
// in some kitchen.
func batches(t *testing.T, f func(name string, d design.Design, r *model.Result, k process.Kitchen)) {
	t.Helper()
	m := model.New(market.Library(t))
	source := rand.New(rand.NewSource(1907))
	kitchen := func() process.Kitchen {
		k := process.Default()
		k.BowlG, k.RoomC, k.WhitesC = 100+2000*source.Float64(), 10+25*source.Float64(), 2+25*source.Float64()
		k.BowlIs = []process.Material{process.Steel, process.Glass, process.Plastic}[source.Intn(3)]
		k.Tool = []process.Tool{process.HandMixer, process.StandMixer, process.HandWhisk, process.InChurn}[source.Intn(4)]
		k.ChurnBowlML = []float64{0, 0, 900, 5000}[source.Intn(4)]
		k.FridgeC = 1 + 9*source.Float64()
		return k
	}
	run := func(name string, d design.Design) {
		r, err := m.Evaluate(d)
		require.NoError(t, err, name)
		f(name, d, &r, kitchen())
	}
	for name, d := range market.Demos(t) {
		run(name, d)
	}
	for name, d := range market.Hard(t) {
		run(name, d)
	}
	list := market.Library(t).All()
	for range 500 {
		d := market.Plain()
		for range 1 + source.Intn(6) {
			part := design.Part(source.Intn(3))
			d = d.WithLineAdded(part, market.Line(list[source.Intn(len(list))].ID, 1+120*source.Float64()))
		}
		if source.Intn(3) == 0 {
			d = d.WithLines(design.Part(source.Intn(3)), nil)
		}
		if source.Intn(2) == 0 {
			d.Batch.Basis = design.BasisAsWritten
		}
		d.Tubs.Count = 1 + source.Intn(20)
		run("at random", d)
	}
}

// What goes in over all steps is the lines; what comes off the scale is the
// custard without what goes in later; each step comes after those that it waits
// for.
func TestTheStepsUseUpTheLines(t *testing.T) {
	batches(t, func(name string, d design.Design, r *model.Result, k process.Kitchen) {
		p := process.Of(d, r, k, -18, nil)
		sum := make([]float64, len(r.Lines))
		seen := map[process.StepCode]bool{}
		for _, s := range p.Steps {
			for _, u := range s.Lines {
				sum[u.Line] += u.Grams
			}
			for _, before := range s.After {
				require.True(t, seen[before], "%s: %s waits for %s, which comes later", name, s.Code, before)
			}
			require.False(t, seen[s.Code], "%s: %s twice", name, s.Code)
			seen[s.Code] = true
			require.GreaterOrEqual(t, s.Minutes, s.HandsOnMinutes-1e-9, "%s: %s", name, s.Code)
		}
		for i, l := range r.Lines {
			require.InDelta(t, l.Grams, sum[i], 1e-12*(1+l.Grams), "%s: %s", name, l.Ingredient.ID)
		}
		if p.WeighAt() != "" {
			require.GreaterOrEqual(t, p.Custard.WeighedG, -1e-9, name)
			require.LessOrEqual(t, p.Custard.WeighedG, r.Dense.Portion.MadeG+1e-9, name)
		}
	})
}

// The eggs cracked are those used and those left, in grams.
func TestTheLedgerKeepsEveryGram(t *testing.T) {
	batches(t, func(name string, d design.Design, r *model.Result, k process.Kitchen) {
		e := process.EggsOf(d, r)
		size, err := egg.Find(d.Eggs.System, d.Eggs.Size)
		require.NoError(t, err)
		n := float64(e.Crack)
		require.InDelta(t, n*size.YolkG, e.YolksUsed*size.YolkG+e.YolksLeftG, 1e-9*(1+n), name)
		require.InDelta(t, n*size.WhiteG, e.WhitesUsed*size.WhiteG+e.WhitesLeftG, 1e-9*(1+n), name)
	})
}

// The heat that syrup, whites and bowl bring is in the foam or went to the air.
func TestTheHeatOfEveryHotMixCloses(t *testing.T) {
	hot := 0
	batches(t, func(name string, d design.Design, r *model.Result, k process.Kitchen) {
		p := process.Of(d, r, k, -18, nil)
		f := &p.Foam
		if !f.Hot || len(f.Course.C) == 0 {
			return
		}
		hot++
		in, out := f.Heat()
		require.InEpsilon(t, in, out, 1e-9, name)
		require.LessOrEqual(t, f.PeakC, f.AdiabaticC+1e-9, "%s: nothing is hotter than it would be alone", name)
		require.LessOrEqual(t, f.PeakLowC, f.PeakHighC+1e-9, name)
		require.LessOrEqual(t, f.LogLow, f.LogHigh*(1+1e-12)+1e-12, name)
	})
	assert.Greater(t, hot, 200)
}

// Air is a band, and what takes from it takes.
func TestWhatTakesAirTakesIt(t *testing.T) {
	m := model.New(market.Library(t))
	d := market.Plain()
	air := func(change func(design.Design) design.Design, k process.Kitchen) process.Air {
		x := change(d)
		r, err := m.Evaluate(x)
		require.NoError(t, err)
		return process.Of(x, &r, k, -18, nil).Foam.Air
	}
	same := func(d design.Design) design.Design { return d }
	plain := air(same, process.Default())
	assert.Equal(t, process.Air{LowPercent: 250, HighPercent: 400}, plain, "from memory")
	whisk := process.Default()
	whisk.Tool = process.HandWhisk
	for cause, a := range map[process.AirCause]process.Air{
		process.ByTool:  air(same, whisk),
		process.BySugar: air(func(d design.Design) design.Design { return d.WithGrams(design.SyrupPart, 0, 420) }, process.Default()),
		process.ByFat: air(func(d design.Design) design.Design {
			return d.WithLineAdded(design.FoamPart, market.Line("egg_yolk", 1))
		}, process.Default()),
		process.ByFolding: air(func(d design.Design) design.Design {
			return d.WithLineAdded(design.FoamPart, market.Line("cocoa_natural", 8))
		}, process.Default()),
		process.ByWhites: air(func(d design.Design) design.Design {
			return d.WithLine(design.FoamPart, 0, market.Line("egg_white_past", 165))
		}, process.Default()),
	} {
		assert.Contains(t, a.Why, cause)
		assert.True(t, a.LowPercent < plain.LowPercent || a.HighPercent < plain.HighPercent, cause)
		assert.Less(t, a.LowPercent, a.HighPercent, cause)
	}
	acid := air(func(d design.Design) design.Design {
		return d.WithLine(design.FoamPart, 0, market.Line("egg_white_past", 165)).WithLineAdded(design.FoamPart, market.Line("cream_of_tartar", 2))
	}, process.Default())
	assert.NotContains(t, acid.Why, process.ByNoAcid)
	none := air(func(d design.Design) design.Design { return d.WithLine(design.FoamPart, 0, market.Line("water", 165)) }, process.Default())
	assert.NotEqual(t, none.LowPercent, none.LowPercent, "unknown is not a number")
}
