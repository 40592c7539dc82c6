package water_test

import (
	"fmt"

	"ripplewright/internal/matter/water"
)

// IAPWS-IF97 (R7-97), table 35: 0.353658941e-2 MPa at 300 K.
func ExampleSaturationPa() {
	fmt.Printf("%.5f Pa\n", water.SaturationPa(300-water.ZeroC))
	// Output:
	// 3536.58941 Pa
}

// US Standard Atmosphere 1976: 89.875 kPa at 1000 m.
func ExampleAirPa() {
	fmt.Printf("%.3f kPa\n", water.AirPa(1000)/1000)
	// Output:
	// 89.875 kPa
}
