package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/draw"
)

// What is hatched around a label is the band less the label's room, no part twice.
func TestAHatchLeavesItsLabelFree(t *testing.T) {
	area := func(r draw.Rect) float64 { return r.Dx() * r.Dy() }
	band := draw.Rect{X0: 10, Y0: 20, X1: 110, Y1: 60}
	for _, hole := range []draw.Rect{{X0: 20, Y0: 22, X1: 50, Y1: 34}, {X0: 0, Y0: 10, X1: 50, Y1: 34}, {X0: 0, Y0: 0, X1: 200, Y1: 200}, {}, {X0: 200, Y0: 30, X1: 210, Y1: 40}} {
		within := draw.Rect{X0: max(hole.X0, band.X0), Y0: max(hole.Y0, band.Y0), X1: min(hole.X1, band.X1), Y1: min(hole.Y1, band.Y1)}
		want := area(band)
		if within.Dx() > 0 && within.Dy() > 0 {
			want -= area(within)
		}
		got := 0.0
		for _, part := range around(band, hole) {
			got += area(part)
		}
		assert.InDelta(t, want, got, 1e-9, "%v", hole)
	}
}
