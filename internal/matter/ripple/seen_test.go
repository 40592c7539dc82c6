package ripple

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestThinChordsArePassedOver(t *testing.T) {
	for _, x := range []struct {
		crossings []float64
		foam      bool
		want      []float64
	}{
		{nil, false, nil},
		{[]float64{4, 6}, false, []float64{4, 6}},
		{[]float64{4, 4.5}, false, nil},
		{[]float64{4, 4.6, 5, 9}, false, []float64{4, 9}},  // the gap of 0.4 goes first, and leaves a ribbon of 5
		{[]float64{0.5, 5}, true, []float64{5}},            // a film at the first wall
		{[]float64{5, 9.6}, false, []float64{5}},           // and at the last
		{[]float64{0.3, 0.6, 0.9, 9.9}, true, []float64{}}, // films alone: what is left between them
	} {
		foam, got := thicker(false, append([]float64(nil), x.crossings...), 10, 1)
		assert.Equal(t, x.foam, foam, "%v", x.crossings)
		assert.Equal(t, len(x.want), len(got), "%v: %v", x.crossings, got)
		for i := range got {
			assert.Equal(t, x.want[i], got[i], "%v", x.crossings)
		}
	}
}

// A cut that is looked at as it is has the figures that it was computed with.
func TestACutLookedAtMeasuresAsComputed(t *testing.T) {
	for _, n := range []int{0, 3} {
		c := stir(t, settings(t, Side, Dollops, Mixed, n, 5))
		r := sample(t, c, 300)
		const least = 0.6
		maps := c.forPictures()
		s := Seen{Tub: c.set.Tub, View: Side, FoamFraction: r.FoamFraction(), StepMM: 0.1, LeastMM: least, Foam: func(xs, ys, foam []float64) {
			x, y := append([]float64(nil), xs...), append([]float64(nil), ys...)
			pull(maps, x, y)
			for i := range x {
				foam[i] = 0
				if c.start.at(x[i], y[i]) > c.level {
					foam[i] = 1
				}
			}
		}}
		want, got := r.MeasureOver(least), s.Measure(0.5)
		assert.InEpsilon(t, want.Foam.MeanMM, got.Foam.MeanMM, 0.02, "%d strokes", n)
		assert.InEpsilon(t, want.Dense.MeanMM, got.Dense.MeanMM, 0.02, "%d strokes", n)
		assert.InEpsilon(t, want.Foam.ThickestTenthMM, got.Foam.ThickestTenthMM, 0.03, "%d strokes", n)
		assert.GreaterOrEqual(t, want.Foam.MeanMM, r.Measure().Foam.MeanMM, "without the thin ones the mean is thicker")
	}
}
