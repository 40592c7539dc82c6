package process_test

import (
	"fmt"

	"ripplewright/internal/answer/process"
)

// Mattick et al. 2001, Appl. Environ. Microbiol. 67:4128–4136, table 7: Salmonella
// Typhimurium DT104 in a sugar solution of water activity 0.87 at 65 °C takes 9.5
// minutes to fall a thousandfold, three tenfold reductions.
func ExampleKilling_LogReduction() {
	held := process.Course{StepMinutes: 0.5}
	for range 20 {
		held.C = append(held.C, 65)
	}
	fmt.Printf("%.2f\n", process.Sugared87.LogReduction(held))
	// Output:
	// 3.00
}
