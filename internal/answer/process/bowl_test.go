package process

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/matter/water"
)

// The printed figures are those named beside Shrink, half a unit of their last
// digit either way; those of the pan were worked with the air's density at each
// film temperature, which moves them by up to 5 %.
func TestAFoamShrinksAsItCools(t *testing.T) {
	for _, c := range []struct{ from, to, want, tolerance float64 }{{60, 4, 0.69, 0.005}, {30, 4, 0.89, 0.005}, {30, -18, 0.8108, 0.0005}, {4, -18, 0.915, 0.0005}} {
		assert.InDelta(t, c.want, ShrinkRatio(c.from, c.to, 0.9, water.StandardPressure), c.tolerance, "%g to %g °C", c.from, c.to)
	}
}

func TestAnOpenPanLosesWaterAsWorked(t *testing.T) {
	for c, want := range map[float64]float64{40: 0.8, 60: 2.4, 75: 4.5, 82: 6.0} {
		assert.InEpsilon(t, want, stoveGPerMin(c, 200), 0.06, "%g °C", c)
	}
}

// 1.2 kg from 82 to 5 °C takes 12 to 15 min by the estimate that it rests on; more
// custard never cools faster, and a bigger pot in the refrigerator fails where
// a small one passes.
func TestCoolingByBathAndRefrigerator(t *testing.T) {
	k := Default()
	last := cool(200, 3.5, 82, k)
	assert.InDelta(t, 13.5, cool(1200, 3.5, 82, k).BathMinutes, 1.5)
	for g := 300.0; g < 6000; g += 300 {
		o := cool(g, 3.5, 82, k)
		assert.Greater(t, o.BathMinutes, last.BathMinutes)
		assert.Greater(t, o.FridgeHours, last.FridgeHours)
		assert.True(t, o.BathMeets)
		if !last.FridgeMeets {
			assert.False(t, o.FridgeMeets)
		}
		last = o
	}
	assert.False(t, last.FridgeMeets, "6 kg in one pot")
}
