package solution

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/water"
)

// What binds water takes that much away from what can freeze: 0.4 g per g of
// protein (ASHRAE Refrigeration Handbook 2006, ch. 9), 0.3 g per g of starch and
// of fibre (from memory).
func TestWhatBindsWaterActsAsThatMuchLessWater(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for s, binds := range map[mix.Species]float64{mix.Protein: 0.4, mix.Starch: 0.3, mix.Fibre: 0.3} {
		for range 20 {
			m := of(map[mix.Species]float64{mix.Water: 50 + 30*r.Float64(), mix.Sucrose: 5 + 25*r.Float64()})
			with, drier := m, m
			with.Grams[s] = 10
			drier.Grams[mix.Water] -= 10 * binds
			require.InDelta(t, freezes(drier, DefaultBound), freezes(with, DefaultBound), 1e-9, s.String())
		}
	}
}

// Roos 1993, Carbohydr. Res. 238:39, T_m′ (from memory), the same as column
// Tm_prime_C of maximal_freeze_concentration.csv.
func TestFreezingEndsWhereEachSugarStopsMelting(t *testing.T) {
	for s, want := range map[mix.Species]float64{
		mix.Sucrose: -34, mix.Glucose: -46, mix.Fructose: -46, mix.Lactose: -30, mix.Maltose: -32, mix.Galactose: -45,
	} {
		assert.InDelta(t, want, EndOfFreezingC(of(map[mix.Species]float64{mix.Water: 60, s: 20})), 0.5, s.String())
	}
}

// Plato 1900 as in the temperature corrections of the US National Bureau of
// Standards, Circular C440, table 109 (from memory): a syrup of 60 % sucrose
// swells by 3.7e-4 to 4.7e-4 per kelvin at 20 to 30 °C.
func TestASyrupSwellsWithTheHeatAsMeasured(t *testing.T) {
	m := of(map[mix.Species]float64{mix.Sucrose: 60, mix.Water: 40})
	assert.InDelta(t, 4.2e-4, (VolumeML(m, 30)/VolumeML(m, 20)-1)/10, 0.5e-4)
}

// Ethanol boils at 78.3 °C (CRC Handbook): nothing of it is in a syrup at 118.
func TestNoEthanolIsLeftInABoiledSyrup(t *testing.T) {
	dry := of(map[mix.Species]float64{mix.Sucrose: 180})
	wet := of(map[mix.Species]float64{mix.Sucrose: 180, mix.Ethanol: 20})
	const air = 101325
	assert.Equal(t, WaterAtBoilG(dry, 118, air), WaterAtBoilG(wet, 118, air))
}

// Belitz, Grosch & Schieberle, Food Chemistry, and others put the dry sugars
// between these, °C; maltotriose and maltohexaose, which enclose the higher
// saccharides, are Orford et al. 1989, Int. J. Biol. Macromol. 11:91 (from
// memory). Water is at 138 K whatever is dissolved in it.
func TestGlassesOfTheDrySugarsLieWherePublishedOnesDo(t *testing.T) {
	for s, want := range map[mix.Species][2]float64{
		mix.Sucrose: {60, 62}, mix.Glucose: {31, 38}, mix.Galactose: {30, 32}, mix.Fructose: {5, 11},
		mix.HigherSaccharides: {134, 175},
	} {
		m := of(map[mix.Species]float64{s: 1})
		got, ok := GlassC(m, 0)
		require.True(t, ok)
		assert.True(t, got >= want[0] && got <= want[1], "%s: %g °C", s, got)
		got, _ = GlassC(m, 1e9)
		assert.InDelta(t, 138, got+water.ZeroC, 0.5, s.String())
	}
}
