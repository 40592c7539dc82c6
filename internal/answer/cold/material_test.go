package cold

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
)

func TestTablesKeepTheEnthalpyOfTheBodies(t *testing.T) {
	r := evaluated(t, market.Honey())
	s, err := rippled(r)
	require.NoError(t, err)
	m, err := s.material(-30, 30)
	require.NoError(t, err)
	whole := s.enthalpy(30) - s.enthalpy(-30)
	for v := -29.97; v < 30; v += 0.0371 {
		assert.InDelta(t, s.enthalpy(v), m.JPerM3(v), 5e-5*whole, "%.3f °C", v)
		assert.InDelta(t, v, m.TemperatureC(m.JPerM3(v)), 1e-9)
	}
}

func TestTheTubLiesBetweenItsPhases(t *testing.T) {
	r := evaluated(t, market.Honey())
	dense, foam := only(&r.Dense.Body), only(&r.Foam.Body)
	tub, err := rippled(r)
	require.NoError(t, err)
	last := math.Inf(-1)
	for v := -40.0; v <= 40; v += 2.5 {
		for _, f := range []func(substance, float64) float64{substance.conductivity, substance.enthalpy} {
			a, b, x := f(dense, v), f(foam, v), f(tub, v)
			assert.True(t, x >= math.Min(a, b)*(1-1e-12)-1e-6 && x <= math.Max(a, b)+1e-6, "%.1f °C: %g, %g, %g", v, a, b, x)
		}
		assert.Greater(t, tub.enthalpy(v), last)
		last = tub.enthalpy(v)
	}
}

// Nearly all custard, a tub is the custard; nearly all foam, the foam.
func TestATubNearlyAllOfOnePhaseIsThatPhase(t *testing.T) {
	for share, all := range map[float64]int{1: 0, 99: 1} {
		d := market.Honey()
		d.Blend.FoamVolumePercent = share
		r := evaluated(t, d)
		tub, err := rippled(r)
		require.NoError(t, err)
		phase := []substance{only(&r.Dense.Body), only(&r.Foam.Body)}[all]
		for _, f := range []func(substance, float64) float64{substance.conductivity} {
			assert.InEpsilon(t, f(phase, -18), f(tub, -18), 0.12)
		}
	}
}
