package kit

import (
	"math"
	"testing"

	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// Where the hardness law ends, so does the line, and the rail says why.
func TestALineOfHardnessEndsWhereItIsNotKnown(t *testing.T) {
	test.NewTempApp(t)
	ts := []float64{-24, -20, -16, -12, -8, -4}
	drawn := func(dense []float64) (said []draw.Text, left float64) {
		r := NewRail()
		r.view = RailView{Temperatures: ts, Serving: -12, Words: []HardnessWord{{0, "soft"}, {6, "firm"}}}
		r.view.Dense.Hardness, r.view.Foam.Hardness = dense, []float64{9, 8, 7, 6, 5, 4}
		d := draw.List{}
		d.Reset(1200, 300)
		r.layOut(&d, 1200, 300)
		for _, w := range d.Texts {
			if w.S == say.NotKnown.String() {
				said = append(said, w)
			}
		}
		left = math.Inf(1)
		for _, m := range d.Marks {
			if m.Line.Width == 2.4 && m.Line.Dash == denseDash && len(m.Points) > 2 {
				for _, p := range m.Points {
					left = min(left, p.X)
				}
			}
		}
		return said, left
	}
	nan := math.NaN()
	said, left := drawn([]float64{20, 15, 12, 9, 6, 3})
	assert.Empty(t, said)
	said, shorter := drawn([]float64{nan, nan, 12, 9, 6, 3})
	require.Len(t, said, 1)
	assert.Greater(t, shorter, left+50)
	assert.Less(t, said[0].At.X, shorter, "before the end of the line, where there is room")
	said, shortest := drawn([]float64{nan, 15, 12, 9, 6, 3})
	require.Len(t, said, 1)
	assert.Less(t, shortest, shorter)
}
