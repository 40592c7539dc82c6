package kit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/draw"
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
