package phase_test

import (
	"fmt"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
)

// The classical mix of the dairy texts, 12 % fat, 11 % milk solids-not-fat, 15 %
// sugar, which they let freeze at −2.5 °C (from memory).
func ExamplePrepare() {
	m := mix.Mix{IonMol: 0.012061}
	m.Grams[mix.Water], m.Grams[mix.Sucrose], m.Grams[mix.Lactose] = 61.7, 15, 6
	m.Grams[mix.Fat], m.Grams[mix.Protein], m.Grams[mix.Ash] = 12, 3.96, 0.88
	b := phase.Prepare(m, 1, phase.Dense, solution.DefaultBound)
	s := b.At(-18)
	fmt.Printf("freezes at %.1f °C; at −18 °C %.0f %% of its water is ice and it is %s\n",
		b.FreezingPointC, 100*s.FrozenFraction, phase.WordFor(s.YieldKPa).Name)
	// Output:
	// freezes at -2.5 °C; at −18 °C 79 % of its water is ice and it is firm
}

// Goff, University of Guelph, Dairy Science and Technology education series,
// "Figuring package overrun by weight, no particulates": a mix of 1.09 kg/L, of
// which a litre of product weighs 0.560 kg, has 94.6 % of overrun.
func ExampleOverrunFraction() {
	fmt.Printf("%.1f %%\n", 100*phase.OverrunFraction(1.09, 0.560))
	// Output:
	// 94.6 %
}
