package ripple

import (
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLightnessIsTheCIEs(t *testing.T) {
	// CIE 15:2004, section 8.2.1.1: both branches meet at Y/Yn = (6/29)³, L* = 8,
	// and white is 100.
	assert.InDelta(t, 8, lightnessOf(216.0/24389), 1e-9)
	assert.InDelta(t, 8, lightnessOf(216.0/24389+1e-12), 1e-9)
	for _, c := range []struct {
		colour color.NRGBA
		l      float64
	}{
		{color.NRGBA{A: 255}, 0},
		{color.NRGBA{255, 255, 255, 255}, 100},
		// The primaries of sRGB in CIELAB, B. Lindbloom's calculator, from memory.
		{color.NRGBA{255, 0, 0, 255}, 53.24},
		{color.NRGBA{0, 255, 0, 255}, 87.74},
		{color.NRGBA{0, 0, 255, 255}, 32.30},
	} {
		assert.InDelta(t, c.l, Lightness(c.colour), 0.01, "%v", c.colour)
	}
}
