package ripple_test

import (
	"fmt"

	"ripplewright/internal/matter/ripple"
)

// The compact twist of S. Lu, A. Jaffer, X. Jin, H. Zhao and X. Mao, Mathematical
// Marbling, IEEE Computer Graphics and Applications 32(6), 2012; its image worked
// out apart from this program, marbling_maps.csv, first row.
func ExampleTwist_At() {
	x, y := ripple.Twist{XMM: 10, YMM: 0, RadiusMM: 30, AngleRad: 2.2}.At(20, 5)
	fmt.Printf("%.9f, %.9f\n", x, y)
	// Output:
	// 4.404218393, 9.679216301
}
