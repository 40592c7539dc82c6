package limits

import "math"

// SmallPanCM is the inside of the smallest common saucepan, cm (common
// practice, no source).
const SmallPanCM = 12.0

// hotSyrup is the density of syrup at about 118 °C, g/mL (from memory).
const hotSyrup = 1.40

// SyrupDepthMM returns how deep g grams of boiled syrup stand in a pan of cm
// across, mm.
//
// Check: 238 g in 12 cm, 15 mm.
func SyrupDepthMM(g, cm float64) float64 {
	return 10 * g / hotSyrup / (math.Pi / 4 * cm * cm)
}
