package icy

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/ice"
	"ripplewright/internal/work/design"
)

// kept is a design in a kitchen, with its cold.
type kept struct {
	d design.Design
	r model.Result
	a cold.Answer
}

func keep(t testing.TB, d design.Design, p cold.Profile) *kept {
	t.Helper()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	a, err := cold.Plan(context.Background(), d, &r, p, cold.Options{NoPictures: true, OnlyFreezing: true})
	require.NoError(t, err)
	return &kept{d, r, a}
}

func (k *kept) told(t testing.TB, o Options) Answer {
	t.Helper()
	out, err := Tell(&k.r, &k.a, o)
	require.NoError(t, err)
	return out
}

// end is the coarser place after all weeks, µm.
func end(a *Answer) float64 { return a.Custard.Weeks[a.Weeks].Coarser().ValueUM }

func kitchen(alter func(*cold.Profile)) cold.Profile {
	p := cold.Default()
	alter(&p)
	return p
}

// never asserts that no value is finer than the one before, by more than the
// frames' own grain.
func never(t *testing.T, what string, values []float64) {
	t.Helper()
	for i := 1; i < len(values); i++ {
		assert.GreaterOrEqual(t, values[i], values[i-1]*(1-1e-3), "%s: %v", what, values)
	}
	assert.Greater(t, values[len(values)-1], values[0], "%s: %v", what, values)
}

// use lets the custard be beaten in a tray by hand, not at all, or by a churn.
func use(p *cold.Profile, how string) {
	p.Layer.Beating, p.Churn.Kind = cold.ByHand, "tray"
	switch how {
	case "none":
		p.Layer.Beating = cold.Never
	case "frozen_bowl", "batch_freezer":
		p.Churn.Kind = how
	}
}

// beaten is told with one more beat as the custard comes out of its dish: the last
// stir by the clock comes now a minute, now half an hour before, which is another
// thing.
func (k *kept) beaten(how string) Answer {
	t := told(&k.r, &k.a)
	t.toEnd = true
	use(&t.a.Profile, how)
	return t.all()
}

func TestAWarmerFreezerNeverMakesItFiner(t *testing.T) {
	for _, how := range []string{"hand", "none", "frozen_bowl", "batch_freezer"} {
		var sizes []float64
		for _, air := range []float64{-30, -26, -24, -22, -20, -18, -16, -14, -12, -10} {
			a := keep(t, market.Honey(), kitchen(func(p *cold.Profile) { p.Freezer.AirC = air })).beaten(how)
			sizes = append(sizes, end(&a))
		}
		never(t, how, sizes)
	}
}

func TestALargerSwingAndMoreOpeningsNeverMakeItFiner(t *testing.T) {
	k := keep(t, market.Honey(), cold.Default())
	var swings, openings []float64
	for _, x := range []float64{0, 0.5, 1, 2, 3, 5, 8, 10} {
		k.a.Profile = kitchen(func(p *cold.Profile) { p.SwingK = x })
		a := k.told(t, Options{})
		swings = append(swings, end(&a))
	}
	never(t, "swing", swings)
	for _, x := range []float64{0, 1, 2, 4, 10, 30, 50} {
		k.a.Profile = kitchen(func(p *cold.Profile) { p.Openings = x })
		a := k.told(t, Options{})
		openings = append(openings, end(&a))
	}
	never(t, "openings", openings)
}

func TestADeeperDishNeverMakesItFiner(t *testing.T) {
	var beaten, left []float64
	for _, depth := range []float64{10, 12, 15, 20, 25, 26, 30, 40, 60, 90} {
		k := keep(t, market.Honey(), kitchen(func(p *cold.Profile) { p.Layer.DepthMM = depth }))
		a, b := k.beaten("hand"), k.beaten("none")
		beaten, left = append(beaten, end(&a)), append(left, end(&b))
	}
	never(t, "depth, beaten", beaten)
	never(t, "depth, left alone", left)
}

func TestAnEarlierLastBeatNeverMakesItFiner(t *testing.T) {
	k := keep(t, market.Honey(), kitchen(func(p *cold.Profile) { p.Layer.StirEveryMinutes = 10 }))
	all := k.a.StillFreeze.Dense.Stirs
	require.Greater(t, len(all), 8)
	var sizes []float64
	for n := len(all); n >= 0; n-- {
		k.a.StillFreeze.Dense.Stirs = all[:n]
		a := k.told(t, Options{})
		sizes = append(sizes, end(&a))
		assert.Equal(t, math.IsNaN(lastBeat(&k.a.StillFreeze.Dense, ice.Of(&k.r.Dense.Body, 1))), a.Custard.Unbeaten)
	}
	never(t, "last beat", sizes)
}

func TestBeatingOrdersTheKitchens(t *testing.T) {
	k := keep(t, market.Honey(), cold.Default())
	size := func(how string) (float64, Word) {
		use(&k.a.Profile, how)
		a := k.told(t, Options{})
		return a.Custard.AfterFreezing.ValueUM, a.Custard.Hardened
	}
	machine, _ := size("batch_freezer")
	churn, _ := size("frozen_bowl")
	hand, _ := size("hand")
	none, word := size("none")
	assert.True(t, machine < churn && churn < hand && hand < none, "%g, %g, %g, %g", machine, churn, hand, none)
	assert.GreaterOrEqual(t, word.Step, Coarse)
	assert.GreaterOrEqual(t, word.Low, Coarse, "unbeaten is never fine or smooth")
	// The recalled range of what a churn gives, 20 to 35 µm, lies in its band.
	use(&k.a.Profile, "frozen_bowl")
	band := k.told(t, Options{}).Custard.AfterFreezing
	assert.True(t, band.LowUM < 20 && band.HighUM > 35)
}

func TestALongerHardeningNeverMakesItFiner(t *testing.T) {
	var sizes []float64
	for _, ml := range []float64{100, 250, 500, 1000, 2500, 5000} {
		d := market.Honey()
		d.Tubs.VolumeML, d.Tubs.Count = ml, max(1, int(1000/ml))
		k := keep(t, d, cold.Default())
		// One batch is frozen; only the tubs differ.
		k.a.StillFreeze = keep(t, market.Honey(), cold.Default()).a.StillFreeze
		a := k.told(t, Options{})
		sizes = append(sizes, a.Custard.Core.ValueUM)
		assert.LessOrEqual(t, a.Custard.Wall.ValueUM, a.Custard.Core.ValueUM)
		assert.True(t, a.Custard.Wall.ValueUM <= a.Custard.Mean.ValueUM+0.5 && a.Custard.Mean.ValueUM <= a.Custard.Core.ValueUM)
	}
	never(t, "tub", sizes)
}

func TestSizesNeverShrinkInStorageAndAddUp(t *testing.T) {
	for _, p := range cold.BuiltIn() {
		a := keep(t, market.Honey(), p).told(t, Options{Weeks: 52})
		for _, phase := range []Phase{a.Custard, a.Foam} {
			require.Len(t, phase.Weeks, 53)
			for i, w := range phase.Weeks {
				for _, s := range []ice.Size{w.Wall, w.Core} {
					assert.True(t, s.LowUM <= s.ValueUM && s.ValueUM <= s.HighUM, "%s week %d: %v", p.Name, i, s)
				}
				if i > 0 {
					assert.GreaterOrEqual(t, w.Wall.ValueUM, phase.Weeks[i-1].Wall.ValueUM)
					assert.GreaterOrEqual(t, w.Core.ValueUM, phase.Weeks[i-1].Core.ValueUM)
				}
			}
			// The cube grows evenly: half a year twice is a year.
			cube := func(i int) float64 { return math.Pow(phase.Weeks[i].Core.ValueUM, 3) }
			assert.InEpsilon(t, cube(52)-cube(26), cube(26)-cube(0), 1e-9)
		}
		sum := 0.0
		for _, s := range a.Steps {
			assert.GreaterOrEqual(t, s.Fraction, 0.0, "%s: %s", p.Name, s.Step)
			sum += s.Fraction
		}
		assert.InDelta(t, 1, sum, 1e-9, p.Name)
	}
}

func TestItKeepsItsWordUntilTheWordsEnd(t *testing.T) {
	k := keep(t, market.Honey(), kitchen(func(p *cold.Profile) { use(p, "frozen_bowl") }))
	a := k.told(t, Options{Weeks: 52})
	require.Less(t, a.Keeps.Weeks, 51.0)
	before, after := int(a.Keeps.Weeks), int(a.Keeps.Weeks)+1
	assert.LessOrEqual(t, a.Custard.Weeks[before].Coarser().ValueUM, a.Keeps.UpToUM)
	assert.GreaterOrEqual(t, a.Custard.Weeks[after].Coarser().ValueUM, a.Keeps.UpToUM)
	assert.InEpsilon(t, ice.Uncertain, a.Keeps.HighWeeks/a.Keeps.Weeks, 1e-12)
	assert.InEpsilon(t, ice.Uncertain, a.Keeps.Weeks/a.Keeps.LowWeeks, 1e-12)
}

func TestAMakersFactorScalesEverySize(t *testing.T) {
	k := keep(t, market.Honey(), cold.Default())
	plain := k.told(t, Options{})
	k.a.Profile.Learnt = cold.Learnt{IceFactor: 1.3, IceLeftFraction: 0.5}
	learnt := k.told(t, Options{})
	width := func(a *Answer) float64 {
		band := a.Custard.Weeks[len(a.Custard.Weeks)-1].Coarser()
		return math.Log(band.HighUM / band.LowUM)
	}
	assert.InEpsilon(t, 0.5, width(&learnt)/width(&plain), 1e-9, "half of the band is left")
	assert.Equal(t, 1.3, learnt.Learnt.IceFactor)
	assert.InEpsilon(t, 1.3, learnt.Custard.AfterFreezing.ValueUM/plain.Custard.AfterFreezing.ValueUM, 1e-9)
	assert.InEpsilon(t, 1.3, end(&learnt)/end(&plain), 1e-9)
	assert.Equal(t, plain.Steps, learnt.Steps)
	for _, l := range []cold.Learnt{{IceFactor: 1.6, IceLeftFraction: 1}, {IceFactor: 0.5, IceLeftFraction: 1}, {IceFactor: math.NaN(), IceLeftFraction: 1}, {IceFactor: 1}, {IceFactor: 1, IceLeftFraction: 2}} {
		k.a.Profile.Learnt = l
		_, err := Tell(&k.r, &k.a, Options{})
		assert.Error(t, err, "%+v", l)
	}
	k.a.Profile.Learnt = cold.Learnt{}
	for _, o := range []Options{{Weeks: -1}, {Weeks: 53}} {
		_, err := Tell(&k.r, &k.a, o)
		assert.Error(t, err, "%+v", o)
	}
}

func TestAGumSlowsStorageByThePublishedFactor(t *testing.T) {
	d := market.Honey()
	d.Dense.Lines = append(d.Dense.Lines, design.Line{Ingredient: "guar_gum", Grams: 2})
	gum := keep(t, d, cold.Default()).told(t, Options{})
	assert.True(t, gum.Gums)
	plain := keep(t, market.Honey(), cold.Default()).told(t, Options{})
	assert.False(t, plain.Gums)
	grown := func(a *Answer) float64 { return math.Pow(end(a), 3) - math.Pow(a.Custard.Core.ValueUM, 3) }
	assert.InEpsilon(t, ice.GumSlows, grown(&plain)/grown(&gum), 0.05)
	d.Dense.Lines[len(d.Dense.Lines)-1].Ingredient = "soy_lecithin"
	assert.False(t, keep(t, d, cold.Default()).told(t, Options{}).Gums, "lecithin is no gum")
}

func TestASwingThatMeltsTheEdgeIsIcy(t *testing.T) {
	d := market.Honey()
	d.Tubs.VolumeML, d.Tubs.Count = 30, 10
	a := keep(t, d, kitchen(func(p *cold.Profile) {
		p.Freezer.AirC, p.SwingK, p.Freezer.CoefficientWPerM2K, p.Package.WallM2KPerW = -4, 10, 200, 0
	})).told(t, Options{})
	assert.True(t, a.Custard.Melts)
	assert.Equal(t, "icy", a.Custard.Word.Name())
}

func TestWithoutIceThereAreNoSizes(t *testing.T) {
	a := keep(t, market.Honey(), kitchen(func(p *cold.Profile) { p.Freezer.AirC = -2 })).told(t, Options{})
	assert.False(t, a.Custard.Frozen)
	assert.True(t, math.IsNaN(a.Custard.Core.ValueUM) && a.Custard.Weeks == nil && a.Steps == nil)
	d := market.Honey()
	d.Foam.Lines, d.Foam.Syrup.Lines, d.Blend.FoamVolumePercent = nil, nil, 0
	a = keep(t, d, cold.Default()).told(t, Options{})
	assert.True(t, a.Custard.Frozen)
	assert.False(t, a.Foam.Present)
}

func TestALeanFoamWithLittleIceIsFineWhateverWasDone(t *testing.T) {
	d := market.Honey()
	d.Foam.Syrup.Lines[0].Grams = 330
	for _, b := range []cold.Beating{cold.ByHand, cold.Never} {
		f := keep(t, d, kitchen(func(p *cold.Profile) { p.Layer.Beating = b })).told(t, Options{}).Foam
		require.True(t, f.Frozen)
		assert.True(t, f.Little)
		assert.Equal(t, Word{}, f.Word)
	}
	f := keep(t, market.Honey(), cold.Default()).told(t, Options{}).Foam
	assert.False(t, f.Little)
}

// Each remedy is what telling the changed kitchen anew gives.
func TestRemediesAreComputedAnew(t *testing.T) {
	k := keep(t, market.Honey(), cold.Default())
	now := k.told(t, Options{})
	list, err := Remedies(context.Background(), k.d, &k.r, &k.a, &now)
	require.NoError(t, err)
	require.NotEmpty(t, list)
	seen := map[Change]Remedy{}
	for i, r := range list {
		seen[r.Change] = r
		assert.GreaterOrEqual(t, r.FinerUM, leastRemedy)
		assert.InDelta(t, end(&now)-r.After.ValueUM, r.FinerUM, 1e-9)
		if i > 0 {
			assert.LessOrEqual(t, r.FinerUM, list[i-1].FinerUM)
		}
	}
	for change, p := range map[Change]cold.Profile{
		ColderFreezer: kitchen(func(p *cold.Profile) { p.Freezer.AirC -= colderBy }),
		ColderTray:    kitchen(func(p *cold.Profile) { p.Layer.ShelfWPerM2K = metalShelf }),
		ShallowerDish: kitchen(func(p *cold.Profile) { p.Layer.DepthMM = 13 }),
	} {
		require.Contains(t, seen, change)
		then := keep(t, market.Honey(), p).told(t, Options{})
		assert.InEpsilon(t, end(&then), seen[change].After.ValueUM, 1e-9, "%s", change)
	}
	// What stands at its best already is no remedy.
	p := kitchen(func(p *cold.Profile) {
		p.Freezer.AirC, p.SwingK, p.Openings, p.Layer.DepthMM, p.Layer.ShelfWPerM2K = coldestFreezer, 0, 0, shallowest, metalShelf
	})
	k = keep(t, market.Honey(), p)
	now = k.told(t, Options{})
	list, err = Remedies(context.Background(), k.d, &k.r, &k.a, &now)
	require.NoError(t, err)
	for _, r := range list {
		assert.Contains(t, []Change{BeatToTheEnd, BeatAtAll, SmallerTubs, LessFreeWater}, r.Change)
	}
}

func TestWhatIsLeftAloneIsToldToBeBeaten(t *testing.T) {
	k := keep(t, market.Honey(), kitchen(func(p *cold.Profile) { p.Layer.Beating = cold.Never }))
	now := k.told(t, Options{})
	list, err := Remedies(context.Background(), k.d, &k.r, &k.a, &now)
	require.NoError(t, err)
	require.NotEmpty(t, list)
	assert.Equal(t, BeatAtAll, list[0].Change, "nothing helps as much")
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = Remedies(ctx, k.d, &k.r, &k.a, &now)
	assert.ErrorIs(t, err, context.Canceled)
}

// A tub without differences inside follows a swing as 1/√(1+(2πτ/T)²), and what
// follows at once follows all of it.
func TestATubFollowsASwingAsItsLagLetsIt(t *testing.T) {
	h := tubHistory{lag: swingMinutes / (2 * math.Pi), part: []float64{1, 0}}
	assert.InDelta(t, 3/math.Sqrt2, h.swing(0, 3), 1e-12)
	assert.InDelta(t, 3, h.swing(1, 3), 1e-12)
	h.lag = 0
	assert.InDelta(t, 3, h.swing(0, 3), 1e-12)
	// From a hardening run: a big tub lags longer than a small one.
	big, small := market.Honey(), market.Honey()
	big.Tubs.VolumeML, small.Tubs.VolumeML = 2500, 250
	slow, quick := historyOf(&keep(t, big, cold.Default()).a.Harden), historyOf(&keep(t, small, cold.Default()).a.Harden)
	assert.Greater(t, slow.lag, 1.5*quick.lag)
	assert.Less(t, slow.swing(0, 2), quick.swing(0, 2))
	assert.InDelta(t, 1, sum(slow.volume), 1e-12)
}

func sum(x []float64) (s float64) {
	for _, v := range x {
		s += v
	}
	return s
}

// BenchmarkTell is the whole history: tray, hardening cell by cell, 12 weeks of
// swings and openings, both phases.
func BenchmarkTell(b *testing.B) {
	k := keep(b, market.Honey(), cold.Default())
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := Tell(&k.r, &k.a, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRemedies(b *testing.B) {
	k := keep(b, market.Honey(), cold.Default())
	now := k.told(b, Options{})
	for i := 0; i < b.N; i++ {
		if _, err := Remedies(context.Background(), k.d, &k.r, &k.a, &now); err != nil {
			b.Fatal(err)
		}
	}
}
