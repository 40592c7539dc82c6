package heat_test

import (
	"fmt"

	"ripplewright/internal/matter/heat"
)

// Singh & Heldman, Introduction to Food Engineering, ch. 7, worked example (as
// reprinted): a ball of 7 cm, 1000 kg/m³ and 250 kJ/kg, freezes from −1.25 °C in
// air of −40 °C in 0.72 h, and wrapped in 3 mm of plastic in 1.037 h.
func ExamplePlankS() {
	hours := func(wrapped float64) float64 {
		face := heat.Face{WPerM2K: 50, M2KPerW: wrapped}
		return heat.PlankS(heat.Ball, 1000*250e3, 40-1.25, 0.07, face.OverallWPerM2K(), 1.2) / 3600
	}
	fmt.Printf("%.2f h\n%.3f h\n", hours(0), hours(0.003/0.2))
	// Output:
	// 0.72 h
	// 1.037 h
}
