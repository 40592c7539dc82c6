package blend_test

import (
	"fmt"

	"ripplewright/internal/matter/blend"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
)

// An invented tub of half a litre (no published example is known to us): a third
// of it is foam, whose air makes it light.
func ExampleFill() {
	of := func(water, sugar, overrun float64, r phase.Role) phase.Body {
		var m mix.Mix
		m.Grams[mix.Water], m.Grams[mix.Sucrose] = water, sugar
		return phase.Prepare(m, overrun, r, solution.DefaultBound)
	}
	custard, foam := of(60, 40, 0.25, phase.Dense), of(40, 60, 2.5, phase.Foam)
	tub := blend.Fill(&custard, &foam, blend.Order{FillML: 500, FoamFraction: 1. / 3, Scale: true})
	fmt.Printf("%.0f g in %.0f mL; foam is %.0f %% of the volume and %.0f %% of the mass\n",
		tub.MassG, tub.VolumeML, 100*tub.FoamVolumeFraction, 100*tub.FoamMassFraction)
	// Output:
	// 377 g in 500 mL; foam is 33 % of the volume and 16 % of the mass
}
