package kit

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestTheLevelSharesTheVolume adds up thin discs of the tub instead of the formula.
func TestTheLevelSharesTheVolume(t *testing.T) {
	for _, base := range []float64{30, 40, 50} {
		f := tubFrame{top: 10, foot: 110, rTop: 40, rBase: base, surface: 25}
		f.rSurf = f.half(f.surface)
		for _, share := range []float64{0, .05, .4, .6, 1} {
			y, below, all := f.level(share), 0.0, 0.0
			const n = 20000
			for i := range n {
				at := f.surface + (f.foot-f.surface)*(float64(i)+.5)/n
				disc := f.half(at) * f.half(at)
				all += disc
				if at > y {
					below += disc
				}
			}
			assert.InDelta(t, share, below/all, 2e-4, "base %g", base)
		}
	}
}
