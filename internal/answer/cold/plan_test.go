package cold

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/heat"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/work/design"
)

func evaluated(t testing.TB, d design.Design) *model.Result {
	t.Helper()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return &r
}

func planned(t testing.TB, d design.Design, p Profile) Answer {
	t.Helper()
	a, err := Plan(context.Background(), d, evaluated(t, d), p, Options{NoPictures: true})
	require.NoError(t, err)
	return a
}

func TestWarmerCountersSoftenSooner(t *testing.T) {
	last := math.Inf(1)
	for _, air := range []float64{16, 20, 24, 30, 38} {
		p := Default()
		p.Counter.AirC = air
		s := planned(t, market.Honey(), p).Counter
		require.True(t, s.OK)
		assert.Less(t, s.FromMinutes.Value, last)
		assert.Less(t, s.FromMinutes.Value, s.ToMinutes.Value)
		last = s.FromMinutes.Value
	}
}

func TestColderFreezersHardenSoonerAndSoftenLater(t *testing.T) {
	check.Long(t)
	harden, from := math.Inf(1), 0.0
	for _, air := range []float64{-18, -20, -24, -30} {
		p := Default()
		p.Freezer.AirC = air
		a := planned(t, market.Honey(), p)
		assert.Less(t, a.Harden.Hours.Value, harden)
		assert.Greater(t, a.Counter.FromMinutes.Value, from)
		harden, from = a.Harden.Hours.Value, a.Counter.FromMinutes.Value
	}
}

func TestWarmerFillingsHardenLonger(t *testing.T) {
	check.Long(t)
	d := market.Honey()
	r := evaluated(t, d)
	last := 0.0
	for _, start := range []float64{-8, -5, -2, 4, 20} {
		a, err := Plan(context.Background(), d, r, Default(), Options{NoPictures: true, FillC: &start})
		require.NoError(t, err)
		assert.Equal(t, start, a.Harden.StartC)
		assert.Greater(t, a.Harden.Hours.Value, last)
		last = a.Harden.Hours.Value
	}
}

func TestBandsHoldTheirValue(t *testing.T) {
	check.Long(t)
	for _, p := range BuiltIn() {
		a := planned(t, market.Honey(), p)
		for name, r := range map[string]Range{
			"move": a.Harden.MoveHours, "harden": a.Harden.Hours, "whip": a.StillFreeze.Dense.WhipMinutes, "ready": a.StillFreeze.Dense.ReadyMinutes,
			"foam": a.StillFreeze.Foam.ReadyMinutes, "from": a.Counter.FromMinutes, "to": a.Counter.ToMinutes, "whole": a.Counter.WholeMinutes,
			"core": a.Counter.CoreMinutes, "melt": a.Counter.MeltsAtWallMinutes, "fridge": a.Fridge.FromMinutes,
		} {
			assert.True(t, r.Low < r.Value && r.Value < r.High, "%s %s %v", p.Name, name, r)
		}
		assert.Less(t, a.Harden.MoveHours.Value, a.Harden.Hours.Value+1e-9)
		assert.Less(t, a.Counter.FromMinutes.Value, a.Fridge.FromMinutes.Value, "a refrigerator softens more slowly")
	}
}

// The tub is computed on some 450 cells, here against four times as many.
func TestAFinerMeshMovesTheCoreByATenthOfAPercentAndTheRingByOne(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	for _, c := range []struct {
		shape design.Shape
		ml    float64
	}{{design.ShapeRound, 250}, {design.ShapeRound, 500}, {design.ShapeShallow, 500}, {design.ShapeRectangle, 500}, {design.ShapeRectangle, 5000}, {design.ShapeRectangle, 20000}} {
		shape := fmt.Sprintf("%s of %g mL", c.shape, c.ml)
		d.Tubs.Shape, d.Tubs.VolumeML = c.shape, c.ml
		pl := planner{runner: runner{ctx: context.Background(), total: 1}, d: d, r: r, p: Default(), a: &Answer{Tub: tubVessel(d.Tubs)}}
		var err error
		pl.tub, err = rippled(r)
		require.NoError(t, err)
		m, err := pl.tub.material(-30, 30)
		require.NoError(t, err)
		core, err := pl.a.Tub.mesh(hardenCells)
		require.NoError(t, err)
		ring, err := pl.a.Tub.mesh(counterMesh)
		require.NoError(t, err)
		nr, nz := core.Cells()
		even, err := heat.Cylinder(pl.a.Tub.RadiusMM/1000, pl.a.Tub.HeightMM/1000, 2*nr, 2*nz)
		require.NoError(t, err)
		nr, nz = ring.Cells()
		graded, err := heat.Graded(pl.a.Tub.RadiusMM/1000, pl.a.Tub.HeightMM/1000, 2*nr, 2*nz, 0.0006)
		require.NoError(t, err)
		harden := exposure{vessel: pl.a.Tub, place: Default().Freezer, pack: Default().Package, start: -5, target: -15, limit: hardenLimit,
			levels: []heat.Level{{Of: heat.Hottest, AtC: -10}, {Of: heat.Hottest, AtC: -15}}}
		soften := exposure{vessel: pl.a.Tub, place: Default().Counter, pack: Default().Package, start: -18, target: 0, limit: counterLimit,
			levels: []heat.Level{{Of: heat.Ring, AtC: -11.5}, {Of: heat.Ring, AtC: -5.3}, {Of: heat.Mean, AtC: -11.5}}}
		for _, c := range []struct {
			e            exposure
			coarse, fine heat.Mesh
			tol          float64
		}{{harden, core, even, 0.001}, {soften, ring, graded, 0.01}} {
			_, rough, err := pl.once(c.e, m, c.coarse, 1, false)
			require.NoError(t, err)
			_, sharp, err := pl.once(c.e, m, c.fine, 1, false)
			require.NoError(t, err)
			for i := range rough {
				assert.InEpsilon(t, sharp[i], rough[i], c.tol, "%s %v", shape, c.e.levels[i])
			}
			t.Logf("%s %d × %d: %.0f s, twice as fine %.0f s", shape, nr, nz, rough, sharp)
		}
	}
}

func TestEveryTubAndKitchenGivesAnAnswer(t *testing.T) {
	check.Long(t)
	kitchens := BuiltIn()
	edge := Default()
	edge.Name, edge.Layer.StirEveryMinutes = "By the edge", 0
	bowl := Default()
	bowl.Name, bowl.Layer.Form, bowl.Layer.DepthMM = "Bowl", FormBowl, 0
	box := Default()
	box.Name, box.Layer.Form, box.Layer.DepthMM = "Box", FormBox, 0
	weak := Default()
	weak.Name, weak.Freezer.AirC = "Ice compartment", -6
	kitchens = append(kitchens, edge, bowl, box, weak)
	tubs := []design.Tubs{
		{Count: 1, VolumeML: 30, FillPercent: 10, Shape: design.ShapeShallow},
		{Count: 4, VolumeML: 500, FillPercent: 96, Shape: design.ShapeRectangle},
		{Count: 500, VolumeML: 20000, FillPercent: 100, Shape: design.ShapeRound},
	}
	for _, p := range kitchens {
		for _, tub := range tubs {
			d := market.Honey()
			d.Tubs = tub
			a := planned(t, d, p)
			assert.True(t, a.Tub.RadiusMM > 0 && a.Tub.HeightMM > 0, "%s %+v", p.Name, tub)
			assert.Equal(t, a.Counter.OK, a.Counter.Why == HasWindow, "%s %+v", p.Name, tub)
		}
	}
}

func TestOnePhaseAloneHasAPlan(t *testing.T) {
	custard, foam := market.Honey(), market.Honey()
	custard.Foam = design.Foam{OverrunPercent: 300, Syrup: design.Syrup{CookTemperatureC: 118}}
	custard.Blend.FoamVolumePercent = 0
	foam.Dense.Lines = nil
	foam.Blend.FoamVolumePercent = 100
	a := planned(t, custard, Default())
	assert.True(t, a.StillFreeze.Dense.Present && !a.StillFreeze.Foam.Present && a.Harden.Hours.Known())
	assert.False(t, a.Storage.WaterDrawn)
	a = planned(t, foam, Default())
	assert.True(t, !a.StillFreeze.Dense.Present && a.StillFreeze.Foam.Present && a.Harden.Hours.Known())

	_, err := Plan(context.Background(), design.New(), &model.Result{}, Default(), Options{})
	assert.ErrorContains(t, err, "empty")
}

// Butter has a plan, but nobody knows when it scoops; an ordinary tub does.
func TestWhereTheHardnessLawEndsNobodyKnowsWhenItScoops(t *testing.T) {
	a := planned(t, market.Honey().WithLines(design.DensePart, []design.Line{{Ingredient: "butter_unsalted", Grams: 500}}), Default())
	for _, s := range []Softening{a.Counter, a.Fridge} {
		assert.False(t, s.OK)
		assert.Equal(t, NobodyKnows, s.Why)
	}
	a = planned(t, market.Honey(), Default())
	for _, s := range []Softening{a.Counter, a.Fridge} {
		assert.NotEqual(t, NobodyKnows, s.Why)
	}
}

func TestStirsCoolAndFreezeStepByStep(t *testing.T) {
	c := planned(t, market.Honey(), Default()).StillFreeze.Dense
	require.NotEmpty(t, c.Stirs)
	for i, s := range c.Stirs {
		assert.InDelta(t, 30*float64(i+1), s.AtMinutes, 1e-6)
		assert.LessOrEqual(t, s.EdgeC, s.MeanC)
		assert.LessOrEqual(t, s.AtMinutes, c.ReadyMinutes.Value)
		if i > 0 {
			assert.Less(t, s.MeanC, c.Stirs[i-1].MeanC)
			assert.Greater(t, s.WaterFrozenPercent, c.Stirs[i-1].WaterFrozenPercent)
		}
	}
	assert.Less(t, c.FirstIceMinutes.Value, c.WhipMinutes.Value)
	assert.Less(t, c.WhipMinutes.Value, c.ReadyMinutes.Value)

	p := Default()
	p.Layer.StirEveryMinutes, p.Layer.EdgeIcePercent = 0, 35
	c = planned(t, market.Honey(), p).StillFreeze.Dense
	require.NotEmpty(t, c.Stirs)
	first := c.Stirs[0]
	assert.Greater(t, first.AtMinutes, 10.0)
}

func TestAFoamWithoutIceDrawsWaterUntilItIsColdEnough(t *testing.T) {
	d := market.Honey()
	p := Default()
	p.Freezer.AirC, p.SwingK = -7, 1
	s := planned(t, d, p).Storage
	require.True(t, s.WaterDrawn)
	assert.Equal(t, "foam", s.Drawer)
	assert.Greater(t, s.DrawnG, 0.0)
	assert.Less(t, s.Change.FreezesAtC, p.Freezer.AirC, "it would hold ice")
	assert.Greater(t, s.Change.WaterG, 0.0)
	assert.Greater(t, s.Change.ThenC, p.Freezer.AirC)
	p.Freezer.AirC = s.KeepBelowC
	assert.False(t, planned(t, d, p).Storage.WaterDrawn)
}

// A foam just cold enough to hold ice: the freezer's air decides how much of it a
// swing takes, and the sentence that no water moves is true of SwingPart alone.
func TestASwingIsNamedByWhatItDoesToTheIce(t *testing.T) {
	check.Long(t)
	foam := planned(t, market.Honey(), Default()).Storage.Foam.FreezingPointC
	for _, c := range []struct {
		above, swing float64 // K, of the warm end above the foam's freezing point
		want         Swing
	}{{-6, 2, SwingPart}, {-0.2, 2, SwingMost}, {0.5, 2, SwingAll}, {-6, 0, SwingNothing}} {
		p := Default()
		p.SwingK = c.swing
		p.Freezer.AirC = foam + c.above - c.swing
		s := planned(t, market.Honey(), p).Storage
		require.True(t, s.Foam.HasIce && s.Dense.HasIce)
		assert.Equal(t, c.want, s.Swing, "%+v", c)
		assert.Equal(t, c.want != SwingAll, s.Foam.IceWhenWarm)
		if c.want != SwingNothing {
			assert.Equal(t, "foam", s.SwingPhase)
		}
	}
}

func TestAFoamAloneIsHardenedFromWarm(t *testing.T) {
	d := market.Honey()
	d.Blend.FoamVolumePercent = 100
	h := planned(t, d, Default()).Harden
	assert.Equal(t, Default().Layer.StartC, h.StartC)
	assert.False(t, h.Already)
	assert.Greater(t, h.Hours.Value, 0.5)
	cold := -16.0
	a, err := Plan(context.Background(), d, evaluated(t, d), Default(), Options{NoPictures: true, FillC: &cold})
	require.NoError(t, err)
	assert.True(t, a.Harden.Already)
	assert.Zero(t, a.Harden.Hours.Value)
}

// The index is that of package ice, whose law validate holds against published
// sizes.
func TestTheIndexOfAgeingIsTheCustardsLaw(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	law := ice.Of(&r.Dense.Body, 1)
	for _, air := range []float64{-18, -14, -27} {
		p := Default()
		p.Freezer.AirC, p.SwingK = air, 3
		s := planned(t, d, p).Storage
		assert.InEpsilon(t, law.UM3PerDay(air)/law.UM3PerDay(-18), s.AgeingIndex, 1e-9)
		assert.InEpsilon(t, law.UM3PerDay(air+3)/law.UM3PerDay(-18), s.AgeingIndexWarm, 1e-9)
		for i, at := range AgeingAtC {
			assert.InEpsilon(t, law.UM3PerDay(at)/law.UM3PerDay(-18), s.Ageing[i], 1e-9)
		}
	}
	p := Default()
	p.Freezer.AirC = -2
	assert.True(t, math.IsNaN(planned(t, d, p).Storage.AgeingIndex), "no ice there")
}

func TestProgressNeverFallsAndACancelledPlanStops(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	last := 0.0
	_, err := Plan(context.Background(), d, r, Default(), Options{Progress: func(f float64) {
		assert.GreaterOrEqual(t, f, last)
		last = f
	}})
	require.NoError(t, err)
	assert.Equal(t, 1.0, last)

	ctx, cancel := context.WithCancel(context.Background())
	_, err = Plan(ctx, d, r, Default(), Options{Progress: func(f float64) {
		if f > 0.3 {
			cancel()
		}
	}})
	assert.ErrorIs(t, err, context.Canceled)
}

func TestPicturesLieBetweenAirAndStart(t *testing.T) {
	d := market.Honey()
	a, err := Plan(context.Background(), d, evaluated(t, d), Default(), Options{})
	require.NoError(t, err)
	for _, run := range []Run{a.Counter.Run, a.Fridge.Run, a.Harden.Run, a.StillFreeze.Dense.Run} {
		require.NotEmpty(t, run.Frames)
		for _, f := range run.Frames {
			require.Len(t, f.C, run.Outward*run.Upward)
			for _, c := range f.C {
				require.True(t, c >= -18.001 && c <= 22)
			}
		}
		warming := run.Track[0].MeanC < run.Track[len(run.Track)-1].MeanC
		for i := 1; i < len(run.Track); i++ {
			step := run.Track[i].MeanC - run.Track[i-1].MeanC
			require.True(t, step == 0 || warming == (step > 0), "heat flows one way")
		}
		m := run.At(run.Track[len(run.Track)-1].AtMinutes / 2)
		assert.False(t, math.IsNaN(m.CoreC))
	}
}

func BenchmarkPlan(b *testing.B) {
	d := market.Honey()
	r := evaluated(b, d)
	for _, p := range BuiltIn()[:2] {
		b.Run(p.Name, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				_, err := Plan(context.Background(), d, r, p, Options{})
				require.NoError(b, err)
			}
		})
	}
}
