package model_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// Air is no part of the volume that the ice is a share of: each phase counts by
// its mass over its density without air.
func TestTheTubsIceVolumeKnowsNoAir(t *testing.T) {
	each(t, model.New(library(t)), func(name string, _ design.Design, r *model.Result) {
		b := &r.Blend
		dense, foam := b.Dense.MassG/r.Dense.Body.MixDensity, b.Foam.MassG/r.Foam.Body.MixDensity
		if b.Dense.MassG == 0 || b.Foam.MassG == 0 {
			return
		}
		want := (dense*r.Dense.State.IceVolume + foam*r.Foam.State.IceVolume) / (dense + foam)
		require.InDelta(t, want, b.IceVolume, 1e-9, name)
	})
}

// Browne 1912, A Handbook of Sugar Analysis, reads 2.7 points of solids lower
// than Starzak & Peacock 1997 near 118 °C.
func TestTheBandOfABoiledSyrupIsWhatTablesDifferBy(t *testing.T) {
	d := market()
	d.Foam.Syrup.CookTemperatureC = 118
	r, err := model.New(library(t)).Evaluate(d)
	require.NoError(t, err)
	assert.InDelta(t, 2.7, r.Syrup.SolidsPercent-r.Syrup.SolidsBand[0], 0.3)
	assert.InDelta(t, 2.7, r.Syrup.SolidsBand[1]-r.Syrup.SolidsPercent, 0.3)
}

// A whole egg is one yolk and one white.
func TestAWholeEggLeavesNothingOver(t *testing.T) {
	d := market()
	d.Dense.Lines = []design.Line{{Ingredient: "milk_whole", Grams: 400}, {Ingredient: "egg_whole", Grams: 200}, {Ingredient: "sugar", Grams: 90}}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_whole", Grams: 100}}
	r, err := model.New(library(t)).Evaluate(d)
	require.NoError(t, err)
	assert.Greater(t, r.Eggs.Crack, 1.0)
	assert.InDelta(t, r.Eggs.Yolks, r.Eggs.Whites, 1e-12)
	assert.InDelta(t, 0, r.Eggs.YolksLeft+r.Eggs.WhitesLeft, 1e-12)
}

// A tub that is nearly all custard swells as custard does.
func TestATubOfCustardSwellsAsTheCustard(t *testing.T) {
	d := market()
	d.Tubs.FillPercent, d.Blend.FoamVolumePercent = 100, 1
	r, err := model.New(library(t)).Evaluate(d)
	require.NoError(t, err)
	for _, w := range r.Warnings {
		if over, ok := w.Facts.(model.TubOverfull); ok {
			assert.InDelta(t, 100*r.Dense.Swelling, over.FrozenPercent, 0.1)
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
	each(t, model.New(library(t)), func(name string, _ design.Design, r *model.Result) {
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
	each(t, model.New(library(t)), func(name string, _ design.Design, r *model.Result) {
		for _, p := range []*model.Phase{&r.Dense, &r.Foam} {
			if p.WrittenG == 0 || math.IsNaN(p.Yield.Value) {
				continue
			}
			require.LessOrEqual(t, 2*p.Yield.Low, p.Yield.Value*(1+1e-9), name)
			require.GreaterOrEqual(t, p.Yield.High, 2*p.Yield.Value*(1-1e-9), name)
		}
	})
}
