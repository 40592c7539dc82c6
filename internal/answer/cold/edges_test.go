package cold

import (
	"context"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/work/design"
)

// noted returns the codes that remark says of an answer.
func noted(change func(a *Answer, d *design.Design)) map[string]int {
	d := market.Honey()
	d.Tubs.Shape, d.Tubs.VolumeML = design.ShapeRound, 500
	a := &Answer{}
	a.Harden.Hours, a.StillFreeze.Dense.ReadyMinutes = Range{8, 6, 10}, Range{100, 80, 120}
	a.StillFreeze.Dense.Present = true
	a.Counter = Softening{OK: true, FromMinutes: Range{10, 8, 12}, ToMinutes: Range{20, 15, 25}, CoreMinutes: Range{18, 15, 22}, MeltsAtWallMinutes: Range{30, 25, 35}}
	change(a, &d)
	pl := planner{d: d, a: a}
	pl.remark()
	codes := map[string]int{}
	for _, n := range a.Notes {
		codes[n.Code+" "+n.Where]++
	}
	return codes
}

// Common practice, no source: a pint or so hardens overnight, from the evening
// to the next noon, and softens in 5 to 15 minutes; it is beaten about five
// times over about two hours and a half at most. What is within is not told.
func TestWhatDiffersFromPracticeIsToldFromItsEndOn(t *testing.T) {
	const night, soft, beating = "longer_than_practice harden", "unlike_practice serving_window", "longer_than_practice still_freeze"
	hours := func(h float64) func(*Answer, *design.Design) {
		return func(a *Answer, _ *design.Design) { a.Harden.Hours = Range{h, h, h} }
	}
	window := func(from, to float64) func(*Answer, *design.Design) {
		return func(a *Answer, _ *design.Design) { a.Counter.FromMinutes.Value, a.Counter.ToMinutes.Value = from, to }
	}
	ready := func(minutes float64) func(*Answer, *design.Design) {
		return func(a *Answer, _ *design.Design) { a.StillFreeze.Dense.ReadyMinutes.Value = minutes }
	}
	of := func(ml float64) func(*Answer, *design.Design) {
		return func(a *Answer, d *design.Design) { d.Tubs.VolumeML = ml; a.Harden.Hours = Range{30, 30, 30} }
	}
	for _, c := range []struct {
		code      string
		said, not func(*Answer, *design.Design)
	}{
		{night, hours(12 + 2 + 0.1), hours(12 + 2 - 0.1)}, // from ten in the evening to noon
		{soft, window(15.1, 30), window(14.9, 30)},
		{soft, window(1, 4.9), window(1, 5.1)},
		{beating, ready(2.5*60 + 1), ready(2.5*60 - 1)},
		{night, of(351), of(349)}, // three quarters of a pint of 473 mL, to a pint and a third
		{night, of(649), of(651)},
	} {
		assert.Equal(t, 1, noted(c.said)[c.code], c.code)
		assert.Zero(t, noted(c.not)[c.code], c.code)
	}
	assert.Empty(t, noted(func(*Answer, *design.Design) {}), "an ordinary pint")
	long := planner{d: market.Hazelnut(), a: &Answer{Harden: Harden{Hours: Range{30, 25, 35}}}}
	long.d.Tubs.VolumeML, long.d.Tubs.Shape = 500, design.ShapeRound
	long.remark()
	require.Len(t, long.a.Notes, 1)
	assert.Equal(t, LongHardening{30 * 60}, long.a.Notes[0].Facts, "in minutes")
	assert.Zero(t, noted(func(a *Answer, d *design.Design) { hours(30)(a, d); d.Tubs.Shape = design.ShapeShallow })[night], "no pint tub")
	assert.Zero(t, noted(func(a *Answer, d *design.Design) { window(20, 30)(a, d); a.Counter.OK = false })[soft])
	assert.Zero(t, noted(func(a *Answer, d *design.Design) { ready(400)(a, d); a.StillFreeze.Dense.Present = false })[beating])

	nan := math.NaN()
	assert.Equal(t, 1, noted(func(a *Answer, _ *design.Design) { a.Harden.Hours = never() })["never_hardens harden"])
	assert.Equal(t, 1, noted(func(a *Answer, _ *design.Design) { a.StillFreeze.Dense.ReadyC = nan })["never_half_frozen still_freeze"])
	assert.Equal(t, 1, noted(func(a *Answer, _ *design.Design) { a.Counter.MeltsAtWallMinutes.Value = 17.9 })["wall_before_core serving_window"])
	assert.Zero(t, noted(func(a *Answer, _ *design.Design) { a.Counter.MeltsAtWallMinutes.Value = 18.1 })["wall_before_core serving_window"])
	assert.Equal(t, 1, noted(func(a *Answer, _ *design.Design) { a.Tub.Box = true })["box_as_round tubs"])
	assert.Equal(t, 2, noted(func(a *Answer, _ *design.Design) { a.Tub.Box, a.StillFreeze.Dense.Vessel.Box = true, true })["box_as_round tubs"])
	pl := planner{d: market.Honey(), a: &Answer{Tub: Vessel{Box: true}}}
	pl.remark()
	assert.Equal(t, BoxAsRound{Dish: false}, pl.a.Notes[0].Facts, "the tub")
	assert.Equal(t, NeverHardens{0, 4 * 24 * 60}, func() any {
		pl := planner{d: market.Honey(), a: &Answer{Harden: Harden{Hours: never()}}}
		pl.remark()
		return pl.a.Notes[0].Facts
	}(), "four days are waited for")
}

// Each note leads to a setting of the kitchen, or to the tub's shape: those that remark
// makes, and those of the store but for the recipe's.
func TestEachNoteLeadsToASetting(t *testing.T) {
	paths := map[string]bool{"tubs.shape": true}
	for _, f := range Fields() {
		paths[f.Path] = true
	}
	led := map[string]bool{}
	for _, facts := range []any{BoxAsRound{}, BoxAsRound{Dish: true}, NeverHardens{}, NeverHalfFrozen{}, LongBeating{}, LongHardening{}, UnlikePractice{}, WallBeforeCore{}, SwingThaws{}} {
		path := Cause(model.Warning{Facts: facts})
		assert.True(t, paths[path], "%T leads to %q", facts, path)
		led[path] = true
	}
	assert.Len(t, led, 6)
	assert.Empty(t, Cause(model.Warning{Facts: WaterDrawn{}}), "it comes of the recipe")
}

// A curve is read by line between its samples, and stays at its ends.
func TestACurveIsReadByLine(t *testing.T) {
	r := Run{Track: []Moment{{0, -5, -6, -7, -8}, {10, -15, -26, -37, -48}, {10, 1, 2, 3, 4}, {20, 11, 12, 13, 14}}}
	assert.Equal(t, Moment{0, -5, -6, -7, -8}, r.At(-1))
	assert.Equal(t, Moment{0, -5, -6, -7, -8}, r.At(0))
	assert.Equal(t, Moment{2.5, -7.5, -11, -14.5, -18}, r.At(2.5))
	assert.Equal(t, -15., r.At(10).CoreC, "as it is just before a stir")
	assert.Equal(t, Moment{15, 6, 7, 8, 9}, r.At(15))
	assert.Equal(t, Moment{20, 11, 12, 13, 14}, r.At(99))
	empty := new(Run).At(3)
	assert.Equal(t, 3.0, empty.AtMinutes)
	assert.True(t, math.IsNaN(empty.CoreC) && math.IsNaN(empty.WallC))
	assert.Equal(t, Range{2, 1, 3}, Range{120, 60, 180}.over(60))
	assert.True(t, Range{1, 0, 2}.Known())
	assert.False(t, never().Known())
}

// Every vessel holds what is in it. A bowl is about a third as deep as wide.
func TestAVesselHoldsItsVolume(t *testing.T) {
	for _, form := range []Form{FormDish, FormBowl, FormBox} {
		for _, depth := range []float64{0, 12, 60} {
			for _, ml := range []float64{200, 1500} {
				v := layerVessel(Layer{Form: form, DepthMM: depth}, ml)
				assert.InEpsilon(t, ml, math.Pi*v.RadiusMM*v.RadiusMM*v.HeightMM/1000, 1e-9, "%s", form)
				assert.Equal(t, form == FormBox, v.Box)
				if depth > 0 {
					assert.Equal(t, depth, v.HeightMM)
				}
			}
		}
	}
	bowl := layerVessel(Layer{Form: FormBowl}, 900)
	assert.InDelta(t, 0.31, bowl.HeightMM/(2*bowl.RadiusMM), 0.025, "about a third")
	assert.InEpsilon(t, 25.4, layerVessel(Layer{Form: FormDish}, 900).HeightMM, 0.05, "an inch in a baking dish")
	assert.InEpsilon(t, 40, layerVessel(Layer{Form: FormBox}, 900).HeightMM, 0.05, "a sandwich box")

	for _, shape := range []design.Shape{design.ShapeRound, design.ShapeShallow, design.ShapeRectangle} {
		v := tubVessel(design.Tubs{Count: 1, VolumeML: 600, FillPercent: 90, Shape: shape})
		assert.InEpsilon(t, 540, math.Pi*v.RadiusMM*v.RadiusMM*v.HeightMM/1000, 0.01, "%s", shape)
		assert.Equal(t, shape == design.ShapeRectangle, v.Box)
	}
}

// A mesh has about the cells asked for, ten to thirty a side and nearly square.
func TestAMeshIsNearlySquare(t *testing.T) {
	for _, v := range []Vessel{{RadiusMM: 42, HeightMM: 84}, {RadiusMM: 60, HeightMM: 60}, {RadiusMM: 156, HeightMM: 13}, {RadiusMM: 20, HeightMM: 300}} {
		m, err := v.mesh(hardenCells)
		require.NoError(t, err)
		nr, nz := m.Cells()
		assert.True(t, 10 <= nr && nr <= 30 && 10 <= nz && nz <= 30, "%d × %d", nr, nz)
		if 10 < nr && nr < 30 && 10 < nz && nz < 30 {
			assert.InEpsilon(t, 450, nr*nz, 0.05)
			assert.InEpsilon(t, (v.RadiusMM/1000)/float64(nr), (v.HeightMM/1000)/float64(nz), 0.1)
		}
		assert.InEpsilon(t, math.Pi*v.RadiusMM*v.RadiusMM*v.HeightMM*1e-9, m.VolumeM3(), 1e-9)
	}
	flat, err := Vessel{RadiusMM: 300, HeightMM: 5}.mesh(hardenCells)
	require.NoError(t, err)
	nr, nz := flat.Cells()
	assert.Equal(t, [2]int{30, 15}, [2]int{nr, nz})
	tall, err := Vessel{RadiusMM: 5, HeightMM: 300}.mesh(hardenCells)
	require.NoError(t, err)
	nr, nz = tall.Cells()
	assert.Equal(t, [2]int{10, 30}, [2]int{nr, nz})
}

// The wall formula is of walls of 80 to 300 mm: a lower one counts as 80, a
// higher as 300 (common practice of this program). A factor counts on all faces.
func TestStillAirIsThatOfAWallOfATubsHeight(t *testing.T) {
	p := Place{AirC: -18, Factor: 1}
	side := func(height float64) float64 {
		s, err := p.around(height, -8, 1, Package{}, 0)
		require.NoError(t, err)
		return s.Side.WPerM2K
	}
	assert.Equal(t, side(80), side(20))
	assert.Greater(t, side(80), side(81))
	assert.Greater(t, side(299), side(300))
	assert.Equal(t, side(300), side(900))
	p.CoefficientWPerM2K, p.ShelfWPerM2K, p.Factor = 20, 40, 1.5
	s, err := p.around(80, -8, 1.1, Package{WallM2KPerW: 0.005, LidM2KPerW: 9}, 0.13)
	require.NoError(t, err)
	assert.InDelta(t, 33, s.Side.WPerM2K, 1e-9)
	assert.InDelta(t, 33, s.Top.WPerM2K, 1e-9)
	assert.InDelta(t, 66, s.Bottom.WPerM2K, 1e-9)
	assert.Equal(t, [3]float64{0.005, 0.13, 0.005}, [3]float64{s.Side.M2KPerW, s.Top.M2KPerW, s.Bottom.M2KPerW})
	_, err = Place{AirC: 90, Factor: 1}.around(80, 0, 1, Package{}, 0)
	assert.Error(t, err)
	assert.Equal(t, 0.1, Place{Measured: "core at −15 °C"}.SpreadFraction(), "a third of what ASHRAE 1123-RP leaves of an unmeasured one")
}

// The tables of a substance are as dense as the file says: every twentieth of a
// kelvin, closer where water freezes, never closer than a millikelvin.
func TestTheTablesPointsAreWhereTheEnthalpyBends(t *testing.T) {
	s, err := rippled(evaluated(t, market.Honey()))
	require.NoError(t, err)
	points := s.points(-30, 20)
	assert.Equal(t, -30.0, points[0])
	assert.Equal(t, 20.0, points[len(points)-1])
	widest, closest := 0.0, math.Inf(1)
	for i := 1; i < len(points); i++ {
		widest, closest = math.Max(widest, points[i]-points[i-1]), math.Min(closest, points[i]-points[i-1])
	}
	assert.InDelta(t, 0.05, widest, 1e-9)
	assert.GreaterOrEqual(t, closest, 1e-3)
	for _, b := range s.bodies {
		within := func(from, to float64) (n int) { // points in so many kelvin below the freezing point
			for _, v := range points {
				if b.FreezingPointC-to <= v && v < b.FreezingPointC-from {
					n++
				}
			}
			return n
		}
		assert.Greater(t, within(0, 0.1), 15, "fifteen and more in the last tenth of a kelvin, where even steps have two")
	}
	m, err := s.material(-90, 90)
	require.NoError(t, err)
	low, high := m.RangeC()
	assert.Equal(t, -40.0, low)
	assert.InDelta(t, 60, high, 1e-3, "as far as the components' enthalpies hold (Choi & Okos 1986: −40 °C)")
}

// Which phases a tub has decides of what it is.
func TestATubIsOfThePhasesInIt(t *testing.T) {
	r := evaluated(t, market.Honey())
	for foam, want := range map[float64][]*phase.Body{0: {&r.Dense.Body}, 0.4: {&r.Dense.Body, &r.Foam.Body}, 0.999: {&r.Dense.Body, &r.Foam.Body}, 1: {&r.Foam.Body}} {
		x := *r
		x.Blend.FoamVolumeFraction = foam
		s, err := rippled(&x)
		require.NoError(t, err)
		require.Len(t, s.bodies, len(want), "%g", foam)
		for i := range want {
			assert.Equal(t, want[i].Role, s.bodies[i].Role)
		}
	}
	x := *r
	x.Foam.WrittenG = 0.5 // a crumb of foam is foam
	s, err := rippled(&x)
	require.NoError(t, err)
	assert.Len(t, s.bodies, 2)
	x.Foam.WrittenG = 0
	s, err = rippled(&x)
	require.NoError(t, err)
	assert.Len(t, s.bodies, 1)
	x.Dense.WrittenG, x.Foam.WrittenG, x.Blend.FoamVolumeFraction = 0.5, 0, 0
	_, err = rippled(&x)
	assert.NoError(t, err)
	_, err = rippled(&model.Result{})
	assert.Error(t, err)
}

// What storage says, phase by phase: the numbers follow from the ice at the
// freezer's air and at the ends of its swing.
func TestStorageFollowsFromTheIce(t *testing.T) {
	r := evaluated(t, market.Honey())
	b := &r.Dense.Body
	s := stored(b, -18, 2)
	assert.True(t, s.Present && s.HasIce && s.IceWhenWarm)
	assert.InDelta(t, 100*b.At(-18).FrozenFraction, s.WaterFrozenPercent, 1e-9)
	assert.InDelta(t, 100*(b.IceG(-20)-b.IceG(-16))/b.IceG(-20), s.SwingPercent, 1e-9)
	none := stored(b, b.FreezingPointC+0.01, 0)
	assert.False(t, none.HasIce || none.IceWhenWarm)
	assert.True(t, math.IsNaN(none.SwingPercent))
	edge := stored(b, b.FreezingPointC-0.5, 1)
	assert.True(t, edge.HasIce && !edge.IceWhenWarm)
	assert.InDelta(t, 100, edge.SwingPercent, 1e-9)
	crumb := *b
	crumb.Mix = b.Mix.Times(1e-3)
	tiny := phase.Prepare(crumb.Mix, b.OverrunFraction, phase.Dense, bound(market.Honey()))
	assert.True(t, stored(&tiny, -18, 2).HasIce && stored(&tiny, -18, 2).IceWhenWarm, "a little ice is ice")

	// Half of the ice is our own mark between a part and most of it.
	for percent, want := range map[float64]Swing{0.5: SwingPart, 49.9: SwingPart, 50: SwingMost, 99: SwingMost} {
		x := Storage{Dense: Stored{HasIce: true, IceWhenWarm: true, SwingPercent: percent}}
		x.swing()
		assert.Equal(t, want, x.Swing, "%g %%", percent)
		assert.Equal(t, "custard", x.SwingPhase)
	}
	x := Storage{Dense: Stored{HasIce: true, IceWhenWarm: true, SwingPercent: 20}, Foam: Stored{HasIce: true, SwingPercent: 100}}
	x.swing()
	assert.Equal(t, SwingAll, x.Swing)
	assert.Equal(t, "foam", x.SwingPhase)
	x = Storage{Dense: Stored{SwingPercent: math.NaN()}, Foam: Stored{HasIce: true, IceWhenWarm: true, SwingPercent: 0}}
	x.swing()
	assert.Equal(t, SwingNothing, x.Swing)
	assert.Empty(t, x.SwingPhase)
}

// Of two phases without ice the one of the lower activity draws; with the water
// that it lacks it freezes where the freezer keeps it.
func TestADrawerWithTheWaterItLacksFreezesAtTheFreezersAir(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	p := Default()
	store := func(air, swing float64) (*Storage, []model.Warning) {
		p.Freezer.AirC, p.SwingK = air, swing
		tub, err := rippled(r)
		require.NoError(t, err)
		pl := planner{d: d, r: r, p: p, tub: tub, a: &Answer{}}
		pl.store()
		return &pl.a.Storage, pl.a.Notes
	}
	s, notes := store(-7, 1)
	require.True(t, s.WaterDrawn)
	require.Len(t, notes, 1)
	foam := &r.Foam.Body
	wet := foam.Mix.WithWater(foam.Mix.Grams[mix.Water] + s.DrawnG/100*foam.Mix.TotalG())
	then := phase.Prepare(wet, foam.OverrunFraction, phase.Foam, bound(d))
	assert.InDelta(t, -7, then.FreezingPointC, 1e-6)
	assert.InDelta(t, -5, s.Change.ThenC, 1e-9, "with 2 K to spare")
	wet = foam.Mix.WithWater(foam.Mix.Grams[mix.Water] + s.Change.WaterG/100*foam.Mix.TotalG())
	then = phase.Prepare(wet, foam.OverrunFraction, phase.Foam, bound(d))
	assert.True(t, then.FreezingPointC >= -5 && then.FreezingPointC < -4.9, "%g °C", then.FreezingPointC)
	assert.InDelta(t, math.Min(r.Dense.FreezingPointC.Value, r.Foam.FreezingPointC.Value)-2, s.KeepBelowC, 1e-9)

	s, notes = store(-1, 0) // neither holds ice: nobody knows how much moves
	require.True(t, s.WaterDrawn)
	assert.True(t, math.IsNaN(s.DrawnG))
	assert.Equal(t, "foam", s.Drawer)
	require.Len(t, notes, 1)

	f := r.Foam.FreezingPointC.Value
	_, notes = store(f-2, 2.05)
	require.Len(t, notes, 1, "the swing thaws the foam")
	assert.Equal(t, "swing_thaws_phase", notes[0].Code)
	_, notes = store(f-2, 1.95)
	assert.Empty(t, notes)
}

// Neither frozen, the sweeter phase draws from the other, whichever it is.
func TestTheSweeterOfTwoUnfrozenPhasesDraws(t *testing.T) {
	for fructose, want := range map[float64]string{0: "foam", 900: "custard"} {
		d := market.Honey().WithLineAdded(design.DensePart, market.Line("fructose", fructose))
		r := evaluated(t, d)
		p := Default()
		p.Freezer.AirC, p.SwingK = -1, 0
		tub, err := rippled(r)
		require.NoError(t, err)
		pl := planner{d: d, r: r, p: p, tub: tub, a: &Answer{}}
		pl.store()
		assert.Equal(t, want, pl.a.Storage.Drawer, "%g g fructose", fructose)
	}
}

func bound(d design.Design) (b solution.Bound) {
	b.ProteinGPerG, b.FibreGPerG = d.Model.ProteinGPerG, d.Model.FibreGPerG
	return b
}

// The measured time is met to the minute asked, no coefficient in reason makes
// others, and what is no time is refused.
func TestACalibrationErrorSaysWhatTimesThereAre(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	_, err := Calibrate(context.Background(), d, r, Default(), Measurement{Kind: CoreAt, Minutes: 30, CoreC: -15, StartC: -5})
	var refused *CalibrationError
	require.ErrorAs(t, err, &refused)
	assert.Greater(t, refused.ShortestMinutes, 30.0)
	// A tenth of the resistance is the wall's and the food's own, so a factor of
	// 25 between the ends makes the time at most so many times longer.
	assert.True(t, refused.LongestMinutes/refused.ShortestMinutes > 5 && refused.LongestMinutes/refused.ShortestMinutes < 25)
	_, err = Calibrate(context.Background(), d, r, Default(), Measurement{Kind: CoreAt, Minutes: 30, CoreC: -19, StartC: -5})
	require.ErrorAs(t, err, &refused)
	assert.Equal(t, 40.0*24*60, refused.LongestMinutes, "a core never colder than its air is waited for 40 days")
	assert.Equal(t, refused.LongestMinutes, refused.ShortestMinutes)
	_, err = Calibrate(context.Background(), d, r, Default(), Measurement{Kind: CoreAt, Minutes: 0.5, CoreC: -15, StartC: -5})
	assert.True(t, errors.As(err, &refused), "half a minute is a time")
	for _, minutes := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err = Calibrate(context.Background(), d, r, Default(), Measurement{Kind: CoreAt, Minutes: minutes, CoreC: -15, StartC: -5})
		assert.Error(t, err, "%g", minutes)
		assert.False(t, errors.As(err, &refused), "%g", minutes)
	}
	p, err := Calibrate(context.Background(), d, r, Default(), Measurement{Kind: CoreAt, Minutes: computedTime(t, d, r), CoreC: -15, StartC: -5})
	require.NoError(t, err)
	assert.InDelta(t, 1, p.Freezer.Factor, 0.01)
	assert.Contains(t, p.Freezer.Measured, "core at -15 °C after")
}

// computedTime is the time, minutes, that the core takes with the coefficient
// as computed.
func computedTime(t *testing.T, d design.Design, r *model.Result) float64 {
	t.Helper()
	start := -5.0
	a, err := Plan(context.Background(), d, r, Default(), Options{NoPictures: true, FillC: &start})
	require.NoError(t, err)
	return 60 * a.Harden.Hours.Value
}
