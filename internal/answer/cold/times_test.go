package cold

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/heat"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Each time that is told is when its curve passes the temperature told beside
// it: minutes, hours and curves agree.
func TestTimesAndCurvesAgree(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	a, err := Plan(context.Background(), d, r, Default(), Options{})
	require.NoError(t, err)

	h := &a.Harden
	assert.InDelta(t, h.MoveC, h.Run.At(60*h.MoveHours.Value).CoreC, 0.02)
	assert.InDelta(t, h.CoreToC, h.Run.At(60*h.Hours.Value).CoreC, 0.02)
	last := h.Run.Track[len(h.Run.Track)-1]
	assert.InDelta(t, -17, last.CoreC, 0.12, "the curve ends with the sample a kelvin above the air")
	spaced(t, h.Run, 5, 5)

	for _, s := range []*Softening{&a.Counter, &a.Fridge} {
		run := &s.Run
		assert.InDelta(t, s.FromC, run.At(s.FromMinutes.Value).RingC, 0.05, s.Place)
		assert.InDelta(t, s.ToC, run.At(s.ToMinutes.Value).RingC, 0.05, s.Place)
		assert.InDelta(t, s.FromC, run.At(s.WholeMinutes.Value).MeanC, 0.05, s.Place)
		assert.InDelta(t, s.FromC, run.At(s.CoreMinutes.Value).CoreC, 0.05, s.Place)
		assert.InDelta(t, d.Serving.TemperatureC, run.At(s.RingServingMinutes.Value).RingC, 0.05, s.Place)
		assert.InDelta(t, d.Serving.TemperatureC, run.At(s.MeanServingMinutes.Value).MeanC, 0.05, s.Place)
		assert.InDelta(t, s.MeltC, run.At(s.MeltsAtWallMinutes.Value).WallC, 0.2, s.Place)
		assert.InDelta(t, s.RingC, s.FromC, 0.05)
		assert.InDelta(t, s.CoreC, run.At(s.FromMinutes.Value).CoreC, 1e-9)
		assert.InDelta(t, s.EndCoreC, run.At(s.ToMinutes.Value).CoreC, 1e-9)
		assert.Equal(t, -18.0, s.StartC)
	}
	spaced(t, a.Counter.Run, 0.5, 1)
	spaced(t, a.Fridge.Run, 0.5, 5)

	c, f := &a.StillFreeze.Dense, &a.StillFreeze.Foam
	bare := phase.Prepare(r.Dense.Body.Mix, 0, phase.Dense, bound(d))
	// McGee 2004, On Food and Cooking: about half of the water is ice when a mix
	// is thick and difficult to stir; a third is our own mark for whipping.
	assert.InDelta(t, 1./3, bare.At(c.WhipC).FrozenFraction, 1e-9)
	assert.InDelta(t, 0.5, bare.At(c.ReadyC).FrozenFraction, 1e-9)
	assert.InDelta(t, 0.5, c.ReadyIceFraction, 1e-9)
	assert.InDelta(t, c.WhipC, c.Run.At(c.WhipMinutes.Value).MeanC, 0.02)
	assert.InDelta(t, c.ReadyC, c.Run.At(c.ReadyMinutes.Value).MeanC, 0.02)
	assert.InDelta(t, f.ReadyC, f.Run.At(f.ReadyMinutes.Value).MeanC, 0.02)
	assert.Equal(t, c.ReadyC, f.ReadyC, "neither melts the other")
	assert.InDelta(t, r.Foam.Body.At(f.ReadyC).FrozenFraction, f.ReadyIceFraction, 1e-9)
	assert.InEpsilon(t, r.Dense.Portion.MadeG/bare.GPerML(), c.VolumeML, 1e-9, "without air")
	assert.InEpsilon(t, r.Foam.Portion.MadeG/r.Foam.Body.GPerML(), f.VolumeML, 1e-9, "as whipped")
	spaced(t, c.Run, 1, 1)
	assert.InDelta(t, math.Abs(c.ReadyMinutes.Value-f.ReadyMinutes.Value), a.StillFreeze.HeadStartMinutes, 1e-9)
	assert.InDelta(t, math.Max(c.ReadyMinutes.Value, f.ReadyMinutes.Value), a.StillFreeze.ReadyMinutes, 1e-9)
	assert.Equal(t, f.ReadyMinutes.Value > c.ReadyMinutes.Value, a.StillFreeze.StartFirst == "foam")
	for _, s := range c.Stirs {
		assert.InDelta(t, 100*bare.At(s.MeanC).FrozenFraction, s.WaterFrozenPercent, 1e-9)
	}
	assert.True(t, c.Stirred && !f.Stirred)
}

// In the pictures of both dishes the coldest spot gets half a kelvin below the
// freezing point, where ice shows, as long after the start as is said. A foam
// of much water, so that its ice comes before the custard is ready.
func TestTheFirstIceIsInThePictures(t *testing.T) {
	d := market.Honey().WithGrams(design.SyrupPart, 0, 40).WithGrams(design.FoamPart, 0, 300)
	r := evaluated(t, d)
	p := Default()
	p.Layer.StartC = 20
	a, err := Plan(context.Background(), d, r, p, Options{OnlyFreezing: true})
	require.NoError(t, err)
	bare := phase.Prepare(r.Dense.Body.Mix, 0, phase.Dense, bound(d))
	for _, dish := range []struct {
		*Cooling
		freezesC float64
	}{{&a.StillFreeze.Dense, bare.FreezingPointC}, {&a.StillFreeze.Foam, r.Foam.Body.FreezingPointC}} {
		i := slices.IndexFunc(dish.Run.Frames, func(p Frame) bool { return slices.Min(p.C) < dish.freezesC-0.5 })
		require.Positive(t, i)
		// A picture a minute, of cells that are warmer in their middle than at the face.
		assert.InDelta(t, dish.Run.Frames[i].AtMinutes-1, dish.FirstIceMinutes.Value, 1)
		assert.Greater(t, dish.FirstIceMinutes.Value, 8.0, "so that a minute tells")
	}
}

// spaced wants the samples and the pictures of a run so many minutes apart.
func spaced(t *testing.T, r Run, track, frames float64) {
	t.Helper()
	require.Greater(t, len(r.Track), 3)
	require.Greater(t, len(r.Frames), 2)
	assert.InDelta(t, track, r.Track[2].AtMinutes-r.Track[1].AtMinutes, 1e-9)
	assert.InDelta(t, frames, r.Frames[2].AtMinutes-r.Frames[1].AtMinutes, 1e-9)
	assert.Zero(t, r.Track[0].AtMinutes)
}

// The edge freezes first half a kelvin below the freezing point, where its ice
// begins to show, in the dish's coldest spot.
func TestTheFirstIceIsHalfAKelvinBelowTheFreezingPoint(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	bare := phase.Prepare(r.Dense.Body.Mix, 0, phase.Dense, bound(d))
	for below, after := range map[float64]bool{0.45: false, 0.55: true} {
		p := Default()
		p.Layer.StirEveryMinutes, p.Layer.EdgeIcePercent = 0, 100*bare.At(bare.FreezingPointC-below).FrozenFraction
		c := planned(t, d, p).StillFreeze.Dense
		require.NotEmpty(t, c.Stirs)
		assert.InDelta(t, bare.FreezingPointC-below, c.Stirs[0].EdgeC, 0.01)
		assert.Equal(t, after, c.Stirs[0].AtMinutes > c.FirstIceMinutes.Value, "stirred at an edge %g K below", below)
	}
}

// Stirred by the edge, ten minutes pass at least from one stir to the next
// (own convention: nobody stands by it).
func TestStirsByTheEdgeAreTenMinutesApart(t *testing.T) {
	p := Default()
	p.Layer.StirEveryMinutes, p.Layer.EdgeIcePercent, p.Layer.DepthMM = 0, 45, 60
	p.Freezer.CoefficientWPerM2K = 150
	c := planned(t, market.Honey(), p).StillFreeze.Dense
	require.Greater(t, len(c.Stirs), 2)
	least := math.Inf(1)
	for i := 1; i < len(c.Stirs); i++ {
		least = math.Min(least, c.Stirs[i].AtMinutes-c.Stirs[i-1].AtMinutes)
	}
	assert.InDelta(t, 10, least, 0.01)
}

// What never comes is waited for so long and no longer: a day and a half in the
// dish, four days in the freezer, twelve hours on the counter, two days in the
// refrigerator.
func TestWhatNeverComesIsGivenUp(t *testing.T) {
	d := market.Honey()
	d.Tubs = design.Tubs{Count: 4, VolumeML: 20000, FillPercent: 100, Shape: design.ShapeRound}
	p := Default()
	p.Freezer.AirC, p.Counter.AirC, p.Refrigerator.AirC = -3, 5, 0.5
	p.Package.WallM2KPerW, p.Package.LidM2KPerW, p.Freezer.Factor = 1, 3, 0.2
	a := planned(t, d, p)
	end := func(r Run) float64 { return r.Track[len(r.Track)-1].AtMinutes }
	assert.InDelta(t, 36*60, end(a.StillFreeze.Dense.Run), 1)
	assert.InDelta(t, 96*60, end(a.Harden.Run), 5)
	assert.InDelta(t, 12*60, end(a.Counter.Run), 1)
	assert.InDelta(t, 48*60, end(a.Fridge.Run), 1)
	assert.Equal(t, NeverHalf, a.StillFreeze.Dense.Means)
	assert.True(t, math.IsNaN(a.StillFreeze.Dense.ReadyC) && math.IsNaN(a.StillFreeze.Dense.ReadyIceFraction))
	assert.InDelta(t, 0, a.StillFreeze.Foam.ReadyC, 1e-9, "no closer than 3 K to the air")
}

// The filling's temperature is the planner's, and lies in what a kitchen fills.
func TestAFillingIsNoColderThanAFreezer(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	for fill, ok := range map[float64]bool{-30: true, 40: true, -30.1: false, 40.1: false} {
		_, err := Plan(context.Background(), d, r, Default(), Options{NoPictures: true, FillC: &fill})
		assert.Equal(t, ok, err == nil, "%g °C", fill)
	}
}

// Fifteen runs make a plan, and progress tells of each.
func TestProgressCountsTheRuns(t *testing.T) {
	for name, d := range map[string]design.Design{"both": market.Honey(), "custard": market.Honey().WithLines(design.FoamPart, nil).WithLines(design.SyrupPart, nil), "foam": market.Honey().WithLines(design.DensePart, nil)} {
		ends := map[float64]bool{}
		full := 0
		_, err := Plan(context.Background(), d, evaluated(t, d), Default(), Options{NoPictures: true, Progress: func(done float64) {
			for i := 0; i <= 15; i++ {
				if math.Abs(done*15-float64(i)) < 1e-9 {
					ends[float64(i)] = true
				}
			}
			if done == 1 {
				full++
			}
		}})
		require.NoError(t, err)
		assert.GreaterOrEqual(t, len(ends), 12, name)
		assert.True(t, ends[14] && ends[15], name)
		assert.LessOrEqual(t, full, 2, name)
	}
}

// A lidded box freezes more slowly than an open dish of its depth, and a shelf
// of its own freezes a layer faster than the freezer's.
func TestTheLayersLidAndShelfCount(t *testing.T) {
	ready := func(change func(p *Profile)) float64 {
		p := Default()
		p.Layer.DepthMM = 25
		change(&p)
		return planned(t, market.Honey(), p).StillFreeze.Dense.ReadyMinutes.Value
	}
	plain := ready(func(*Profile) {})
	assert.Greater(t, ready(func(p *Profile) { p.Layer.Form = FormBox }), 1.1*plain)
	assert.Less(t, ready(func(p *Profile) { p.Layer.ShelfWPerM2K = 100 }), 0.8*plain)
	assert.Greater(t, ready(func(p *Profile) { p.Layer.ShelfWPerM2K = 0.5 }), 1.2*plain, "a thick mat")
	assert.Less(t, ready(func(p *Profile) { p.Layer.StartC = 0 }), plain)
}

// The tub's bands are both phases': no warmer than either likes and no colder.
func TestTheTubScoopsWhereBothPhasesDo(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	tub, err := rippled(r)
	require.NoError(t, err)
	pl := planner{d: d, r: r, p: Default(), tub: tub, a: &Answer{}}
	var s Softening
	pl.bands(&s)
	require.True(t, s.OK)
	assert.Equal(t, math.Max(s.Dense.FromC, s.Foam.FromC), s.FromC)
	assert.Equal(t, math.Min(s.Dense.ToC, s.Foam.ToC), s.ToC)
	assert.InDelta(t, r.Dense.Scoop.FromC, s.Dense.FromC, 1e-6)
	assert.InDelta(t, phase.Dense.Band().SoftKPa, r.Dense.Body.At(s.Dense.ToC).YieldKPa, 1e-6)
	// Melting at the wall is the custard's becoming pourable; alone, the foam's
	// film never does, and it melts with its last ice.
	assert.InDelta(t, phase.Words[0].BelowKPa, r.Dense.Body.At(s.MeltC).YieldKPa, 1e-6)
	pl.tub = only(&r.Foam.Body)
	var foam Softening
	pl.bands(&foam)
	assert.Equal(t, r.Foam.Body.FreezingPointC, foam.MeltC)
	assert.True(t, foam.Foam.Present && !foam.Dense.Present)
	assert.InDelta(t, -40, foam.FromC, 15, "looked for down to −40 °C")
	assert.InDelta(t, 0, foam.ToC, 1e-9, "and up to 0")
}

// Levels that the start is past take no time, those beyond the air never come.
func TestALevelIsReachedAtOnceInTimeOrNever(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	tub, err := rippled(r)
	require.NoError(t, err)
	v := tubVessel(d.Tubs)
	m, err := tub.material(-30, 30)
	require.NoError(t, err)
	mesh, err := v.mesh(100)
	require.NoError(t, err)
	run := runner{ctx: context.Background(), total: 1}
	times := func(start, air float64, at ...float64) []float64 {
		e := exposure{vessel: v, place: Place{AirC: air, CoefficientWPerM2K: 20, Factor: 1}, start: start, target: air, limit: 1e5}
		for _, c := range at {
			e.levels = append(e.levels, heat.Level{Of: heat.Mean, AtC: c})
		}
		_, out, err := run.once(e, m, mesh, 1, false)
		require.NoError(t, err)
		return out
	}
	got := times(-5, -18, -4, -5, -10, -18, -20, math.NaN())
	assert.Equal(t, []float64{0, 0}, got[:2])
	assert.True(t, 0 < got[2] && got[2] < 1e5)
	for _, never := range got[3:] {
		assert.True(t, math.IsNaN(never))
	}
	got = times(-18, 20, -19, -18, -10, 20, 25)
	assert.Equal(t, []float64{0, 0}, got[:2])
	assert.Greater(t, got[2], 0.0)
	assert.True(t, math.IsNaN(got[3]) && math.IsNaN(got[4]))
}
