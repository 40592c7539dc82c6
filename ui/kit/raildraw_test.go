package kit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

func TestHarderIsHigherOnTheRail(t *testing.T) {
	f := railFrame{box: draw.Rect{X1: 100, Y1: 70}, words: []HardnessWord{{0, "pourable"}, {.1, "soft"}, {2.5, "scoopable"}, {6, "firm"}}}
	last := math.Inf(1)
	for kPa := .03; kPa < 17; kPa *= 1.1 {
		y := f.wordPos(kPa)
		assert.Less(t, y, last, "%g kPa", kPa)
		last = y
	}
	for i, w := range f.words[1:] {
		assert.InDelta(t, 70-70*float64(i+1)/4, f.wordPos(w.Above), 1e-9, "words have equal heights")
	}
	assert.True(t, math.IsNaN(f.wordPos(math.NaN())))
	assert.Equal(t, 0.0, f.wordPos(1e9), "beyond the last word the curve stays at the edge")
}

// The axis has round numbers in either scale: −24 °C is −11.2 °F, and −10 °F the first
// that is named.
func TestTheRailsMarksAreRoundInEitherScale(t *testing.T) {
	for scale, want := range map[say.Scale]struct {
		first, last float64
		step        float64
	}{say.Celsius: {-24, -4, 2}, say.Fahrenheit: {-10, 20, 5}} {
		reads := say.Style{Scale: scale}
		var named []float64
		for _, m := range railMarks(reads) {
			if m.named {
				named = append(named, reads.Degrees(m.c))
			}
			assert.GreaterOrEqual(t, m.c, RailMin)
			assert.LessOrEqual(t, m.c, RailMax)
		}
		require.NotEmpty(t, named)
		assert.InDelta(t, want.first, named[0], 1e-5)
		assert.InDelta(t, want.last, named[len(named)-1], 1e-5)
		for i := range named[1:] {
			assert.InDelta(t, want.step, named[i+1]-named[i], 1e-5)
		}
	}
}
