package solution_test

import (
	"fmt"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

// CRC Handbook of Chemistry and Physics, 102nd ed., section 5, Concentrative
// properties of aqueous solutions: 26 % sucrose freezes at −2.12 °C. The constants
// of sucrose came from that table.
func ExampleSorption_FreezingC() {
	var m mix.Mix
	m.Grams[mix.Sucrose], m.Grams[mix.Water] = 26, 74
	s := solution.NewSorption(m, solution.DefaultBound)
	fmt.Printf("%.2f °C\n", s.FreezingC(m.Grams[mix.Water]))
	// Output:
	// -2.12 °C
}

// Starzak & Peacock 1997, Zuckerindustrie 122:380–387, worked out apart from this
// program in syrup_boiling.csv: 50 % sucrose boils at 101.798 °C.
func ExampleBoilingC() {
	fmt.Printf("%.3f °C\n", solution.BoilingC(solution.SucroseFraction(50), water.StandardPressure))
	// Output:
	// 101.798 °C
}
