package draw_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/draw"
)

// Turned a quarter clockwise, what was right of the point is below it; four quarters
// are none.
func TestAPartIsTurnedAboutItsPoint(t *testing.T) {
	part := &draw.List{W: 10, H: 10}
	part.Box(draw.Rect{X0: 6, Y0: 4, X1: 8, Y1: 6}, draw.RGB(0))
	part.Write(draw.Text{At: draw.Point{X: 9, Y: 5}, S: "x", Size: 1})
	var d draw.List
	d.PlaceTurned(part, 20, 30, 5, 5, math.Pi/2)
	assert.InDelta(t, 20, d.Texts[0].At.X, 1e-12)
	assert.InDelta(t, 34, d.Texts[0].At.Y, 1e-12)
	assert.Equal(t, math.Pi/2, d.Texts[0].Turn)
	for _, p := range d.Marks[0].Points {
		assert.InDelta(t, 20, p.X, 1+1e-9)
		assert.InDelta(t, 32, p.Y, 1+1e-9)
	}
	var round draw.List
	round.PlaceTurned(part, 5, 5, 5, 5, 2*math.Pi)
	for i, p := range round.Marks[0].Points {
		assert.InDelta(t, part.Marks[0].Points[i].X, p.X, 1e-9)
		assert.InDelta(t, part.Marks[0].Points[i].Y, p.Y, 1e-9)
	}
}
