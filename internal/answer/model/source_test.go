package model_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
	"ripplewright/internal/work/design"
)

// Air is no part of the volume that the ice is a share of: each phase counts by
// its mass over its density without air.
func TestTheTubsIceVolumeKnowsNoAir(t *testing.T) {
	each(t, model.New(market.Library(t)), func(name string, _ design.Design, r *model.Result) {
		b := &r.Blend
		dense, foam := b.Dense.MassG/r.Dense.Body.MixGPerML, b.Foam.MassG/r.Foam.Body.MixGPerML
		if b.Dense.MassG == 0 || b.Foam.MassG == 0 {
			return
		}
		want := (dense*r.Dense.State.IceVolumeFraction + foam*r.Foam.State.IceVolumeFraction) / (dense + foam)
		require.InDelta(t, want, b.IceVolumeFraction, 1e-9, name)
	})
}

// Browne 1912, A Handbook of Sugar Analysis, reads 2.7 points of solids lower
// than Starzak & Peacock 1997 near 118 °C.
func TestTheBandOfABoiledSyrupIsWhatTablesDifferBy(t *testing.T) {
	d := market.Honey()
	d.Foam.Syrup.CookTemperatureC = 118
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	// Whole points, as the two disagree in tenths: the band holds both, and not a point more.
	low, high := r.Syrup.SolidsPercent-r.Syrup.SolidsBandPercent[0], r.Syrup.SolidsBandPercent[1]-r.Syrup.SolidsPercent
	assert.InDelta(t, low, high, 1e-9)
	assert.GreaterOrEqual(t, low, 2.9)
	assert.Less(t, low, 3.9)
}

// A whole egg is one yolk and one white.
func TestAWholeEggLeavesAsMuchYolkAsWhite(t *testing.T) {
	d := market.Honey()
	d.Dense.Lines = []design.Line{{Ingredient: "milk_whole", Grams: 400}, {Ingredient: "egg_whole", Grams: 200}, {Ingredient: "sugar", Grams: 90}}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_whole", Grams: 100}}
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	assert.Greater(t, r.Eggs.Crack, 1.0)
	assert.InDelta(t, r.Eggs.Yolks, r.Eggs.Whites, 1e-12)
	assert.InDelta(t, r.Eggs.Left.Yolks, r.Eggs.Left.Whites, 1e-12, "the last egg is not all used, yolk and white alike")
}

// A tub that is nearly all custard swells as custard does.
func TestATubOfCustardSwellsAsTheCustard(t *testing.T) {
	d := market.Honey()
	d.Tubs.FillPercent, d.Blend.FoamVolumePercent = 100, 1
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	for _, w := range r.Warnings {
		if over, ok := w.Facts.(model.TubOverfull); ok {
			assert.InDelta(t, 100*r.Dense.SwellingRatio, over.FrozenPercent, 0.1)
			return
		}
	}
	t.Fatal("nothing is said of a brimming tub that freezes")
}

// The word scale says what each step asks of a hand: "firm" needs force, "hard"
// is to be tempered first.
func TestAFeelIsWhatTheWordScaleSays(t *testing.T) {
	want := map[string]model.Feel{"scoopable": model.EatsWell, "firm": model.NeedsForce, "hard": model.TooHard, "very hard": model.TooHard}
	seen := map[string]int{}
	each(t, model.New(market.Library(t)), func(name string, _ design.Design, r *model.Result) {
		if r.Verdict.Empty {
			return
		}
		for p, how := range map[*model.Phase]model.Feel{&r.Dense: r.Verdict.Dense.How, &r.Foam: r.Verdict.Foam.How} {
			if feel, ok := want[p.Word.Name]; ok {
				require.Equal(t, feel, how, "%s, %g kPa", name, p.State.YieldKPa)
				seen[p.Word.Name]++
			}
		}
	})
	for word := range want {
		assert.Positive(t, seen[word], word)
	}
}

// Dairy Science & Technology 2010, table IV: one formula scatters by a factor 2
// either way, whatever else is open.
func TestTheBandOfHardnessIsTwiceEitherWayAtLeast(t *testing.T) {
	each(t, model.New(market.Library(t)), func(name string, _ design.Design, r *model.Result) {
		for _, p := range []*model.Phase{&r.Dense, &r.Foam} {
			if p.WrittenG == 0 || math.IsNaN(p.YieldKPa.Value) {
				continue
			}
			require.LessOrEqual(t, 2*p.YieldKPa.Low, p.YieldKPa.Value*(1+1e-9), name)
			require.GreaterOrEqual(t, p.YieldKPa.High, 2*p.YieldKPa.Value*(1-1e-9), name)
		}
	})
}

// A syrup of sugar shatters rather than flows where its viscosity is past what
// lets particles stick in a moment's touch, 1e7 Pa s (Downton, Flores-Luna &
// King 1982, Ind. Eng. Chem. Fundam. 21:447: 1e6 to 1e8). From 1e12 at the glass
// it is there as far above it as Williams, Landel & Ferry 1955 say, 17.44 and
// 51.6 K: 20.7 K (all from memory). Bar: 2 K, since the limit is a round number. A foam of
// little white and a syrup cooked to 140 °C comes as close to its glass.
func TestARibbonIsBrittleUntilItsLiquidCanStick(t *testing.T) {
	const tenfolds, c1, c2 = 12 - 7, 17.44, 51.6
	sticks := tenfolds * c2 / (c1 - tenfolds)
	m := model.New(market.Library(t))
	brittle, flows := math.Inf(-1), math.Inf(1)
	for at := -24.0; at <= -4; at += 0.125 {
		d := market.Honey()
		d.Serving.TemperatureC = at
		d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 25}}
		d.Foam.Syrup.CookTemperatureC = 140
		r, err := m.Evaluate(d)
		require.NoError(t, err)
		said := map[string]float64{}
		for _, w := range r.Warnings {
			if f, ok := w.Facts.(model.Brittle); ok {
				said[w.Where] = f.AboveGlassK
			}
		}
		for where, p := range map[string]*model.Phase{"dense": &r.Dense, "foam": &r.Foam} {
			k, ok := p.Body.AboveGlassK(at)
			require.True(t, ok)
			if warned, ok := said[where]; ok {
				require.InDelta(t, k, warned, 1e-9)
				brittle = math.Max(brittle, k)
			} else {
				flows = math.Min(flows, k)
			}
		}
	}
	assert.Less(t, brittle, flows)
	assert.InDelta(t, sticks, brittle, 2)
	assert.InDelta(t, sticks, flows, 2)
}

// People cook at El Alto, 4150 m, the highest large city, and at Jericho, 258 m
// below the sea (both from memory). At the top of what a design may ask, water
// still boils above 84 °C, where a custard has set and before it curdles (McGee
// 2004: sets at 79 to 83 °C, curdles 3 to 6 K above): higher, it could not be
// cooked in an open pan.
func TestAKitchenMayStandWhereACustardCanBeCooked(t *testing.T) {
	for at, may := range map[float64]bool{4150: true, -258: true, 0: true, 5100: false, -500: false} {
		d := market.Honey()
		d.Kitchen.AltitudeM = at
		assert.Equal(t, may, len(design.Validate(d)) == 0, "%g m", at)
	}
	found := false
	for _, f := range design.Fields() {
		if f.Path == "kitchen.altitude_m" {
			found = true
			assert.Greater(t, solution.BoilingC(0, water.AirPa(f.Max)), 84.0)
			assert.GreaterOrEqual(t, f.Min, -400.0, "the atmosphere's formula begins there")
		}
	}
	assert.True(t, found)
}
