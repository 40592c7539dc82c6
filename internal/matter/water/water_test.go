package water

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/check"
)

// exponent of a_ice at −18 °C worked by hand from the three coefficients.
func TestIceActivityAtMinus18IsTheWorkedExample(t *testing.T) {
	check.Printed(t, LnIceActivity(-18), "-0.1752455")
	check.Printed(t, math.Exp(LnIceActivity(-18)), "0.839251")
	assert.Zero(t, LnIceActivity(3))
}

func TestIceActivityFallsAndItsSlopeIsItsDerivative(t *testing.T) {
	for c := -60.0; c < -0.5; c += 0.5 {
		const h = 1e-4
		assert.InDelta(t, (LnIceActivity(c+h)-LnIceActivity(c-h))/(2*h), LnIceActivityPerK(c), 1e-9)
		assert.Positive(t, LnIceActivityPerK(c), "%g °C", c)
	}
}

// IAPWS-IF97 (R7-97), table 35.
func TestSaturationPressureMeetsIF97Table35(t *testing.T) {
	for k, want := range map[float64]string{300: "0.353658941e4", 500: "0.263889776e7"} {
		check.Printed(t, SaturationPa(k-ZeroC), want)
	}
}

// Kell 1975, J. Chem. Eng. Data 20:97, table of densities (values from memory).
func TestDensityMeetsKell(t *testing.T) {
	for c, want := range map[float64]float64{4: 999.972, 20: 998.203, 50: 988.035, 100: 958.364} {
		assert.InDelta(t, want, KGPerM3(c), 0.005, "%g °C", c)
	}
	assert.Equal(t, KGPerM3(-30), KGPerM3(-45), "kept below −30 °C, not extrapolated")
}

// US Standard Atmosphere 1976 (ICAO Doc 7488), table: 89.875 kPa at 1000 m.
func TestAirPressureMeetsTheStandardAtmosphere(t *testing.T) {
	check.Printed(t, AirPa(1000)/1000, "89.875")
	assert.Equal(t, StandardPressure, AirPa(0))
}

// Choi & Okos 1986 give the heat capacity in two pieces that do not quite meet
// at 0 °C; the enthalpy must.
func TestEnthalpyIsContinuousAndItsSlopeIsTheHeatCapacity(t *testing.T) {
	const h = 1e-4
	assert.InDelta(t, JPerG(-1e-9), JPerG(1e-9), 1e-7)
	for c := -39.0; c <= 100; c += 0.7 {
		if math.Abs(c) > h {
			assert.InDelta(t, JPerGK(c), (JPerG(c+h)-JPerG(c-h))/(2*h), 1e-6)
		}
		assert.InDelta(t, IceJPerGK(c), (IceJPerG(c+h)-IceJPerG(c-h))/(2*h), 1e-6)
	}
	assert.InDelta(t, LatentHeat0, LatentJPerG(0), 1e-12)
	check.Printed(t, LatentJPerG(-18), "293.47")
}
