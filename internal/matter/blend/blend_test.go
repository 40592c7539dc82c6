package blend_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/matter/blend"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
)

// bodies returns a custard and a foam of our own, of the given grams.
func bodies(dense, foam float64) (phase.Body, phase.Body) {
	var d, f mix.Mix
	d.Grams[mix.Water], d.Grams[mix.Sucrose], d.Grams[mix.Fat], d.Grams[mix.Protein] = 0.6*dense, 0.2*dense, 0.15*dense, 0.05*dense
	d.IonMol = 7e-5 * dense
	f.Grams[mix.Water], f.Grams[mix.Sucrose], f.Grams[mix.Protein] = 0.42*foam, 0.54*foam, 0.04*foam
	return phase.Prepare(d, 0.25, phase.Dense, solution.DefaultBound), phase.Prepare(f, 3, phase.Foam, solution.DefaultBound)
}

func TestScaledPhasesFillTheOrderAtItsShare(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 200 {
		d, f := bodies(10+900*r.Float64(), 10+500*r.Float64())
		o := blend.Order{FillML: 100 + 5000*r.Float64(), FoamFraction: r.Float64(), Scale: true}
		b := blend.Fill(&d, &f, o)
		require.InEpsilon(t, 1, b.FilledFraction, 1e-12)
		require.InDelta(t, o.FoamFraction, b.FoamVolumeFraction, 1e-12)
		require.InEpsilon(t, b.Dense.MassG+b.Foam.MassG, b.MassG, 1e-14)
		require.InEpsilon(t, b.MassG*b.FoamMassFraction, b.Foam.MassG, 1e-12)
		require.Zero(t, b.Dense.LeftML+b.Foam.LeftML)
	}
}

func TestAsWrittenTheScarcerPhaseIsUsedUpAndTheRestIsInNoTub(t *testing.T) {
	d, f := bodies(800, 200)
	made := f.VolumeML() / (d.VolumeML() + f.VolumeML())
	for _, share := range []float64{0, 0.1, made, 0.7, 1} {
		b := blend.Fill(&d, &f, blend.Order{FillML: 1000, FoamFraction: share})
		assert.Equal(t, 1.0, b.Dense.Factor)
		assert.InDelta(t, share, b.FoamVolumeFraction, 1e-12, "the ratio is the maker's")
		assert.InDelta(t, 0, min(b.Dense.LeftML, b.Foam.LeftML), 1e-9)
		assert.InDelta(t, b.VolumeML/1000, b.FilledFraction, 1e-12)
		for body, p := range map[*phase.Body]blend.Portion{&d: b.Dense, &f: b.Foam} {
			assert.InDelta(t, body.Mix.TotalG(), p.MadeG, 1e-9)
			assert.InDelta(t, p.MadeG, p.MassG+p.LeftG, 1e-9)
			assert.InDelta(t, p.MadeML, p.VolumeML+p.LeftML, 1e-9)
			assert.InDelta(t, body.GPerML()*p.LeftML, p.LeftG, 1e-9)
		}
	}
}

func TestAsWrittenAPhaseThatIsNotThereDecidesNothing(t *testing.T) {
	d, f := bodies(500, 0)
	b := blend.Fill(&d, &f, blend.Order{FillML: 1000, FoamFraction: 0.4})
	assert.InDelta(t, d.VolumeML(), b.VolumeML, 1e-9)
	assert.Zero(t, b.Dense.LeftML)
}

func TestAnEmptyPhaseLeavesTheTubsShort(t *testing.T) {
	d, f := bodies(500, 0)
	b := blend.Fill(&d, &f, blend.Order{FillML: 1000, FoamFraction: 0.4, Scale: true})
	assert.InDelta(t, 0.6, b.FilledFraction, 1e-12)
	assert.Zero(t, b.FoamMassFraction)
	d, f = bodies(0, 0)
	b = blend.Fill(&d, &f, blend.Order{FillML: 1000, FoamFraction: 0.4, Scale: true})
	assert.Zero(t, b.FilledFraction)
	assert.False(t, math.IsNaN(b.FoamVolumeFraction))
}

func TestContrastIsOfTheTwoPhases(t *testing.T) {
	d, f := bodies(800, 200)
	at := [2]phase.State{d.At(-16), f.At(-16)}
	c := blend.Compare(&d, &f, at, 0.4, -24, -4)
	assert.InEpsilon(t, at[0].YieldKPa/at[1].YieldKPa, c.HardnessRatio, 1e-12)
	assert.InDelta(t, 54-20, c.SweetnessPercent, 1e-9, "sucrose is its own equivalent")
	assert.InEpsilon(t, math.Pow(at[0].YieldKPa, 0.6)*math.Pow(at[1].YieldKPa, 0.4), c.YieldKPa, 1e-12)
	from, to, ok := blend.BothC(&d, &f, -24, -4)
	require.True(t, ok)
	for _, c := range []float64{from + 1e-6, (from + to) / 2, to - 1e-6} {
		assert.True(t, phase.Dense.Band().Holds(d.At(c).YieldKPa) && phase.Foam.Band().Holds(f.At(c).YieldKPa), "%g °C", c)
	}
}

// The foam is soft at any temperature of the rail, so only a bound is known.
func TestContrastOfAFoamThatIsNeverTooFirmIsALowerBound(t *testing.T) {
	d, f := bodies(800, 200)
	at := [2]phase.State{d.At(-16), f.At(-16)}
	c := blend.Compare(&d, &f, at, 0.4, -24, -4)
	from, _, ok := d.ScoopRangeC(-24, -4)
	require.True(t, ok)
	require.Less(t, f.At(-24).YieldKPa, phase.Foam.Band().FirmKPa)
	assert.True(t, c.ScoopsAtLeast)
	assert.InDelta(t, from+24, c.ScoopsK, 1e-9)
	c = blend.Compare(&d, &d, at, 0.4, -24, -4)
	assert.False(t, c.ScoopsAtLeast)
	assert.InDelta(t, 0, c.ScoopsK, 1e-9)
	assert.True(t, math.IsNaN(blend.Compare(&f, &f, at, 0.4, -24, -4).ScoopsK), "neither is ever too firm")
}

func TestMeanIsByMass(t *testing.T) {
	d, f := bodies(800, 200)
	b := blend.Fill(&d, &f, blend.Order{FoamFraction: 0.3})
	assert.InDelta(t, (b.Dense.MassG*10+b.Foam.MassG*20)/b.MassG, b.Mean(10, 20), 1e-12)
	assert.NotEqual(t, b.FoamVolumeFraction, b.FoamMassFraction)
}
