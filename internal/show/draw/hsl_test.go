package draw

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// CSS Color Module Level 3, section 4.2.4 and its table of names (from memory).
func TestHuesAreThoseOfTheirNames(t *testing.T) {
	for _, c := range []struct {
		rgb     uint32
		h, s, l float64
	}{
		{0xff0000, 0, 100, 50}, {0xffff00, 60, 100, 50}, {0x00ff00, 120, 100, 50}, {0x00ffff, 180, 100, 50},
		{0x0000ff, 240, 100, 50}, {0xff00ff, 300, 100, 50}, {0xffffff, 0, 0, 100}, {0, 0, 0, 0}, {0x800000, 0, 100, 25.1},
	} {
		h, s, l := HSL(RGB(c.rgb))
		assert.InDeltaSlice(t, []float64{c.h, c.s, c.l}, []float64{h, s, l}, 0.01, "%06x", c.rgb)
	}
}

func TestEveryColourComesBackFromItsHue(t *testing.T) {
	for rgb := uint32(0); rgb <= 0xffffff; rgb += 4099 {
		assert.Equal(t, RGB(rgb), OfHSL(HSL(RGB(rgb))), "%06x", rgb)
	}
}
