package kit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/chart"
)

func TestRibbonShareIsExactToAThousandth(t *testing.T) {
	var r ribbons
	for _, taper := range []float64{1, 1.15, .8} {
		for _, share := range []float64{0, .01, .3, .5, .93, 1} {
			r.draw(share, taper, chart.RGB(0xEBB457), chart.RGB(0xFBF3E2))
			limit := r.threshold(share, taper)
			foam, face := 0, 0
			for j := 0; j < ribbonSide; j++ {
				half := (taper + (1-taper)*(float64(j)+.5)/ribbonSide) / math.Max(1, taper) * ribbonSide / 2
				for i := 0; i < ribbonSide; i++ {
					if math.Abs(float64(i)+.5-ribbonSide/2) > half {
						continue
					}
					face++
					if r.field[j*ribbonSide+i] > limit {
						foam++
					}
				}
			}
			assert.InDelta(t, share, float64(foam)/float64(face), .001, "share %g taper %g", share, taper)
		}
	}
}

func TestHarderIsHigherOnTheRail(t *testing.T) {
	f := railFrame{box: chart.Rect{X1: 100, Y1: 70}, words: []Word{{0, "pourable"}, {.1, "soft"}, {2.5, "scoopable"}, {6, "firm"}}}
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

func BenchmarkRibbons(b *testing.B) {
	var r ribbons
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		r.draw(.2+float64(i%50)/100, 1.1, chart.RGB(0xEBB457), chart.RGB(0xFBF3E2))
	}
}
