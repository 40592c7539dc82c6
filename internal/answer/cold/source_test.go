package cold

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/heat"
)

// surface_coefficients.csv is of a wall of 83 mm, in dry air in the freezer and
// at 50 % humidity in the room: Churchill & Chu 1975, with the radiation of a
// grey wall. Bar: half of its last digit, 0.005, and the 0.5 % of its check in
// validate, for the laws of air in it are from memory.
func TestATubInStillAirHasThePublishedCoefficient(t *testing.T) {
	for _, row := range check.Table(t, "surface_coefficients") {
		surface, air, want := row.Num("T_surface_C"), row.Num("T_air_C"), row.Num("h_total")
		p := Place{AirC: air, Factor: 1}
		if air > 0 && surface < air {
			p.HumidityPercent = 50
		}
		s, err := p.around(83, surface, 1, Package{}, 0)
		require.NoError(t, err)
		for _, f := range []heat.Face{s.Side, s.Top, s.Bottom} {
			assert.InDelta(t, want, f.WPerM2K, 0.005+0.005*want, "%g °C in %g °C", surface, air)
		}
	}
}

// ASHRAE research project 1123-RP, statement of scope: measured coefficients of
// food scatter by ±30 %. The ends of a time are those of the two coefficients.
func TestABandIsTheTimesOfCoefficientsThirtyPercentOff(t *testing.T) {
	fan := Default()
	at := func(coefficient float64) Answer {
		p := fan
		p.Freezer.CoefficientWPerM2K = coefficient
		return planned(t, market.Honey(), p)
	}
	a, slow, quick := at(20), at(20*0.7), at(20*1.3)
	for name, of := range map[string]func(*Answer) Range{
		"harden": func(a *Answer) Range { return a.Harden.Hours },
		"move":   func(a *Answer) Range { return a.Harden.MoveHours },
		"freeze": func(a *Answer) Range { return a.StillFreeze.Dense.FirstIceMinutes },
	} {
		assert.InEpsilon(t, of(&slow).Value, of(&a).High, 1e-6, name)
		assert.InEpsilon(t, of(&quick).Value, of(&a).Low, 1e-6, name)
	}
}

// A tub is carried about when two thirds of the custard's water are ice, and
// stored when three quarters are: −10 and −15 °C in ice_fraction_published.csv,
// 67 and 77 % (dairy textbooks, from memory). Ours has honey in it, so up to
// 2.5 points of difference are allowed.
func TestATubMovesAndIsStoredWithThePublishedIce(t *testing.T) {
	p := Default()
	p.Freezer.AirC = -30
	h := planned(t, market.Honey(), p).Harden
	custard := &evaluated(t, market.Honey()).Dense.Body
	found := 0
	for _, row := range check.Table(t, "ice_fraction_published") {
		switch row.Num("T_C") {
		case -10:
			found++
			assert.InDelta(t, row.Num("pct_water_frozen"), 100*custard.At(h.MoveC).FrozenFraction, 2.5)
		case -15:
			found++
			assert.InDelta(t, row.Num("pct_water_frozen"), 100*custard.At(h.CoreToC).FrozenFraction, 2.5)
		}
	}
	assert.Equal(t, 2, found, "rows of the table")
}

// A core reaches its air only in the limit, so neither temperature is asked
// closer to it than 3 K (own convention), and both are reached.
func TestNoCoreIsAskedToBeAsColdAsItsAir(t *testing.T) {
	for _, air := range []float64{-8, -11, -14, -18, -30} {
		p := Default()
		p.Freezer.AirC = air
		h := planned(t, market.Honey(), p).Harden
		assert.GreaterOrEqual(t, h.CoreToC-air, 3.0)
		assert.GreaterOrEqual(t, h.MoveC, h.CoreToC)
		assert.True(t, h.Hours.Known() && h.Hours.Value >= h.MoveHours.Value, "%g °C: %v, %v", air, h.MoveHours, h.Hours)
	}
}
