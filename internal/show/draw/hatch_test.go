package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestHatchStaysInsideItsOutline(t *testing.T) {
	outline := []Point{{10, 10}, {90, 30}, {60, 80}, {50, 40}, {20, 70}} // not convex
	for _, h := range []Hatch{Rising, Falling, Crossed, Dots, Level} {
		var d List
		d.Reset(100, 100)
		d.Texture(outline, h, 6, Stroke{Width: 1, Colour: RGB(0)})
		require.Len(t, d.Marks, 1)
		pts := d.Marks[0].Points
		assert.Greater(t, len(pts), 12)
		for i := 0; i+1 < len(pts); i++ {
			if a, b := pts[i], pts[i+1]; !a.Lifts() && !b.Lifts() {
				mid := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
				edge := math.Inf(1)
				for k := range outline {
					edge = math.Min(edge, distance(mid, outline[k], outline[(k+1)%len(outline)]))
				}
				assert.True(t, edge < 1e-9 || inside(outline, mid), "%v", a)
			}
		}
	}
}

func distance(p, a, b Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	f := math.Max(0, math.Min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/(dx*dx+dy*dy)))
	return math.Hypot(p.X-a.X-f*dx, p.Y-a.Y-f*dy)
}

func inside(outline []Point, p Point) bool {
	in := false
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}
