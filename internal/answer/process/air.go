package process

import (
	"math"

	"ripplewright/internal/matter/water"
)

// ShrinkRatio returns the volume of a foam's air at to °C over that at from: an
// ideal gas beside the vapour of a liquid of water activity aw, at p Pa.
//
//	V₂/V₁ = (T₂/T₁) (p − aw·p_s(T₁))/(p − aw·p_s(T₂)),  T in K
//
// the law of Boyle and Charles with Dalton's partial pressures; p_s of package water.
//
// Check: 60 to 4 °C ×0.69, 30 to 4 °C ×0.89, 30 to −18 °C ×0.8108, 4 to −18 °C
// ×0.915 at aw 0.9 (heat balance worked beside the foam's table).
func ShrinkRatio(fromC, toC, aw, pa float64) float64 {
	dry := func(t float64) float64 { return pa - aw*water.SaturationPa(t) }
	return (toC + water.ZeroC) / (fromC + water.ZeroC) * dry(fromC) / dry(toC)
}

// WhiskUntilC is where the foam may be left: warmer, up to a third of its air
// goes with the cold (see Shrink); common practice.
const WhiskUntilC = 30

// ShrinkToC is a refrigerator's cold.
const ShrinkToC = 4

// stoveGPerMin returns the water that leaves an open pan of diameter mm at t °C
// without boiling, g/min, into a room of 20 °C and half humidity: Lewis's
// analogy, h 10 W/(m² K).
//
//	m = (h/(ρ c Le^⅔)) A (ρv(t) − ρv(room)),  Le 0.85, ρ c 1.1·1007 J/(m³ K)
//
// Check: 20 cm pan: 0.8 at 40 °C, 2.4 at 60, 4.5 at 75, 6.0 at 82.
func stoveGPerMin(t, mm float64) float64 {
	const h, rhoC, lewis = 10, 1.1 * 1007, 0.85
	vapour := func(t, rh float64) float64 { // g/m³
		return rh * water.SaturationPa(t) * 18.01528 / (8.314462618 * (t + water.ZeroC))
	}
	area := math.Pi / 4 * mm * mm * 1e-6
	return h / (rhoC * math.Pow(lewis, 2.0/3)) * area * (vapour(t, 1) - vapour(20, 0.5)) * 60
}
