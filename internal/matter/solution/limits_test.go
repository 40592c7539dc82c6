package solution

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/water"
)

// What is asked of a mixture does not depend on how much of it there is: not
// where a sum of masses is a gram exactly, nor a thousandth, nor a tonne.
func TestTheAmountDoesNotMatter(t *testing.T) {
	r := rand.New(rand.NewSource(11))
	for range 30 {
		m := random(r)
		for _, k := range []float64{1e-3, 1 / m.TotalG(), 1 / m.Grams[mix.Water], 1 / m.SaccharidesG(), 1 / (m.SaccharidesG() + m.Grams[mix.Water]), 1e6} {
			n := m.Times(k)
			assert.InDelta(t, freezes(m, DefaultBound), freezes(n, DefaultBound), 1e-9)
			assert.InDelta(t, EndOfFreezingC(m), EndOfFreezingC(n), 1e-9)
			assert.InDelta(t, SoluteFraction(m), SoluteFraction(n), 1e-12)
			assert.InDelta(t, SucroseAsThickPercent(m), SucroseAsThickPercent(n), 1e-9)
			assert.InEpsilon(t, GPerML(m, 4), GPerML(n, 4), 1e-12)
			before, _ := GlassC(m, m.Grams[mix.Water])
			after, _ := GlassC(n, n.Grams[mix.Water])
			assert.InDelta(t, before, after, 1e-9)
		}
	}
	for _, so := range Solutes { // one gram of one solute, and nothing else
		one, two := of(map[mix.Species]float64{so.Species: 1}), of(map[mix.Species]float64{so.Species: 2})
		assert.InDelta(t, SoluteMol(two), 2*SoluteMol(one), 1e-15, so.Species.String())
		held, twice := NewSorption(one, Bound{}), NewSorption(two, Bound{})
		assert.InDelta(t, twice.HeldG(-10), 2*held.HeldG(-10), 1e-12, so.Species.String())
		assert.InDelta(t, EndOfFreezingC(two), EndOfFreezingC(one), 1e-12)
	}
}

// Water alone, dry solutes and nothing at all are mixtures too.
func TestMixturesOfOneThingOrNone(t *testing.T) {
	pure, sugar := of(map[mix.Species]float64{mix.Water: 1}), of(map[mix.Species]float64{mix.Sucrose: 1})
	assert.Zero(t, freezes(pure, DefaultBound))
	assert.True(t, math.IsNaN(freezes(sugar, DefaultBound)), "nothing to freeze")
	assert.True(t, math.IsNaN(freezes(of(map[mix.Species]float64{mix.Water: 0.4, mix.Protein: 1.1}), DefaultBound)), "all of it bound")
	for m, want := range map[mix.Mix]float64{{}: 0, pure: 0, sugar: 1} {
		assert.Equal(t, want, SoluteFraction(m))
	}
	for m, want := range map[mix.Mix]float64{{}: 0, pure: 0, sugar: 100} {
		assert.Equal(t, want, SucroseAsThickPercent(m))
	}
	for _, c := range []struct {
		m    mix.Mix
		want float64
	}{{pure, 1}, {sugar, 0}} {
		got, err := Activity(c.m, Bound{}, -5)
		require.NoError(t, err)
		assert.Equal(t, c.want, got)
	}
	nothing, ok := GlassC(mix.Mix{}, 1)
	assert.False(t, ok)
	assert.Zero(t, nothing)
	assert.InDelta(t, 1/water.KGPerM3(4)*1000, VolumeML(pure, 4), 1e-12)
	assert.Zero(t, VolumeML(mix.Mix{}, 4))
}

// At 0 °C ice and water are in balance, and any solute holds all water.
func TestAtTheMeltingPointOfIceASoluteHoldsAllWater(t *testing.T) {
	wet := NewSorption(of(map[mix.Species]float64{mix.Sucrose: 1}), Bound{})
	protein := NewSorption(of(map[mix.Species]float64{mix.Protein: 2}), DefaultBound)
	for _, at := range []float64{0, 0.1, 20} {
		assert.True(t, math.IsInf(wet.HeldG(at), 1), "%g °C", at)
		assert.InDelta(t, 0.8, protein.HeldG(at), 1e-12, "only its own")
	}
	assert.False(t, math.IsInf(wet.HeldG(-1e-3), 1))
}

// The cold model knows no temperature of its own, the hot one does; the one
// holds to 25 °C and the other from there to 150.
func TestEachActivityModelKeepsItsOwnRange(t *testing.T) {
	m := of(map[mix.Species]float64{mix.Water: 40, mix.Sucrose: 60})
	at := func(c float64) float64 {
		a, err := Activity(m, Bound{}, c)
		require.NoError(t, err, "%g °C", c)
		return a
	}
	for _, c := range []float64{-45.9, -10, 22, 24.999} {
		assert.Equal(t, at(0), at(c), "%g °C", c)
	}
	for _, c := range []float64{25, 100, 149.9} {
		assert.Equal(t, SyrupActivity(SoluteFraction(m), c), at(c), "%g °C", c)
	}
	for _, c := range []float64{-46.1, 150.1} {
		_, err := Activity(m, Bound{}, c)
		assert.Error(t, err, "%g °C", c)
	}
}

// Water boils at 100 °C: below that no syrup does, and just above a thin one.
func TestNothingBoilsBelowItsWater(t *testing.T) {
	sugar := of(map[mix.Species]float64{mix.Sucrose: 100})
	assert.Zero(t, BoilingFraction(90, water.StandardPressure))
	assert.True(t, math.IsInf(WaterAtBoilG(sugar, 90, water.StandardPressure), 1))
	thin := BoilingFraction(100.1, water.StandardPressure)
	assert.True(t, 0 < thin && thin < 0.01)
	assert.InDelta(t, 100, BoilingC(0, water.StandardPressure), 0.03)
	// The search for a boiling point ends at 0 and at 250 °C.
	assert.InDelta(t, 0, BoilingC(0, 1), 1e-9)
	assert.InDelta(t, 250, BoilingC(0.999, water.StandardPressure), 1e-9)
}

// The higher saccharides bind the water that as many grams of sucrose do.
func TestHigherSaccharidesAsShortAsSucroseFreezeAsSucrose(t *testing.T) {
	so, _ := SoluteOf(mix.Sucrose)
	m := of(map[mix.Species]float64{mix.Water: 70, mix.HigherSaccharides: 30})
	m.HigherMol = 30 / so.GPerMol
	assert.InDelta(t, freezes(binary(mix.Sucrose, 30), Bound{}), freezes(m, Bound{}), 1e-9)
}

// A solute is worth a warning from a fiftieth of the dissolved particles.
func TestASoluteBeyondItsRangeCountsFromAFiftieth(t *testing.T) {
	with := func(share float64) mix.Mix {
		sucrose, _ := SoluteOf(mix.Sucrose)
		salt, _ := SoluteOf(mix.PotassiumChloride)
		return of(map[mix.Species]float64{mix.Water: 60, mix.Sucrose: 40, mix.PotassiumChloride: 40 / sucrose.GPerMol * share / (1 - share) / salt.Nu * salt.GPerMol})
	}
	assert.Empty(t, Outside(with(0.0199), -20))
	assert.Equal(t, []mix.Species{mix.PotassiumChloride}, Outside(with(0.0201), -20))
	assert.Zero(t, OutsideFraction(with(0.0199), -20))
	assert.InDelta(t, 0.3, OutsideFraction(with(0.3), -20), 1e-9)
	assert.Empty(t, Outside(mix.Mix{}, -50))
	// Cryohydric point of potassium chloride: −10.7 °C (CRC Handbook, from
	// memory). Its constant was fitted to 2 mol/kg, which freezes at −6.5 °C.
	assert.Empty(t, Outside(with(0.5), -6.4))
	assert.NotEmpty(t, Outside(with(0.5), -6.6))
}

// Belitz, Grosch & Schieberle, Food Chemistry, table 0.7: sodium caseinate
// 0.64, casein 0.61, albumin 0.44 g water per g; ASHRAE's 0.4 lies below them.
func TestBoundWaterLiesInThePublishedRange(t *testing.T) {
	assert.InDelta(t, 0.64, MostBound.ProteinGPerG, 5e-3)
	assert.InDelta(t, 0.4, DefaultBound.ProteinGPerG, 0.05)
	assert.Zero(t, LeastBound)
	assert.True(t, DefaultBound.FibreGPerG < MostBound.FibreGPerG && MostBound.FibreGPerG < DefaultBound.ProteinGPerG+0.05)
}

// Of what does not part into ions a mol dissolved is a mol of particles. Molar
// masses: CRC Handbook of Chemistry and Physics, 102nd ed. 2021, section 3,
// physical constants of organic compounds (from memory).
func TestAMolOfASugarIsAMolInTheSyrup(t *testing.T) {
	for s, perMol := range map[mix.Species]float64{
		mix.Sucrose: 342.296, mix.Lactose: 342.296, mix.Maltose: 342.296, mix.Trehalose: 342.296, mix.Glucose: 180.155, mix.Fructose: 180.155,
		mix.Galactose: 180.155, mix.Sorbitol: 182.171, mix.Xylitol: 152.146, mix.Erythritol: 122.120, mix.Glycerol: 92.094,
	} {
		assert.InEpsilon(t, 1, SoluteMol(of(map[mix.Species]float64{mix.Water: 50, s: perMol})), 1e-3, s.String())
	}
}
