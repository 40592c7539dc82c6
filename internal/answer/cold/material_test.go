package cold

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTablesKeepTheEnthalpyOfTheBodies(t *testing.T) {
	r := evaluated(t, market())
	s, err := rippled(r)
	require.NoError(t, err)
	m, err := s.material(-30, 30)
	require.NoError(t, err)
	whole := s.enthalpy(30) - s.enthalpy(-30)
	for v := -29.97; v < 30; v += 0.0371 {
		assert.InDelta(t, s.enthalpy(v), m.Enthalpy(v), 5e-5*whole, "%.3f °C", v)
		assert.InDelta(t, v, m.Temperature(m.Enthalpy(v)), 1e-9)
	}
}

func TestTheTubLiesBetweenItsPhases(t *testing.T) {
	r := evaluated(t, market())
	var at []float64
	for v := -40.0; v <= 40; v += 2.5 {
		at = append(at, v)
	}
	dense, foam, tub := Properties(r, at)
	last := math.Inf(-1)
	for i := range at {
		for _, pair := range [][3]float64{
			{dense[i].ConductivityWPMK, foam[i].ConductivityWPMK, tub[i].ConductivityWPMK},
			{dense[i].DensityKgPerM3, foam[i].DensityKgPerM3, tub[i].DensityKgPerM3},
			{dense[i].EnthalpyMJPerM3, foam[i].EnthalpyMJPerM3, tub[i].EnthalpyMJPerM3},
		} {
			assert.True(t, pair[2] >= math.Min(pair[0], pair[1])-1e-12 && pair[2] <= math.Max(pair[0], pair[1])+1e-12, "%.1f °C %v", at[i], pair)
		}
		assert.Greater(t, tub[i].EnthalpyMJPerM3, last)
		last = tub[i].EnthalpyMJPerM3
	}
}
