package process

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
)

// The density of a boiled syrup, which the depth in the pan rests on, is that of
// the measured solutions (testdata/tables/sucrose_density_20C.csv), carried to the
// heat by their own swelling: soft to hard ball, 83 to 92 % solids.
func TestABoiledSyrupIsAsDenseAsItsSolution(t *testing.T) {
	for c, solids := range map[float64]float64{113: 83, 118: 88, 125: 92} {
		var m mix.Mix
		m.Grams[mix.Sucrose], m.Grams[mix.Water] = solids, 100-solids
		assert.InEpsilon(t, solution.GPerML(m, c), hotDensity, 0.035, "%g %% at %g °C", solids, c)
	}
}
