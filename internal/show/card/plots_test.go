package card

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// A syrup of more than 75 % sugar is beyond what is known of its thickness
// (solution.ViscosityRange). Long sugars get there in the cold, since they hold little water.
func TestTheHardnessEndsWithItsLaw(t *testing.T) {
	curve := func(grams float64) (left, right, from float64, rests string) {
		left, right = math.Inf(1), math.Inf(-1)
		d := market.Hazelnut().WithLineAdded(design.DensePart, market.Line("polydextrose", grams))
		r := evaluated(t, d)
		plot := hardnessPlot(say.Style{}, d, r, 80, 60)
		for _, m := range plot.Marks {
			if m.Line.Dash == draw.Solid && m.Line.Colour == ink && m.Line.Width > 0.4 && len(m.Points) > 20 {
				for _, p := range m.Points {
					if !p.Lifts() {
						left, right = min(left, p.X), max(right, p.X)
					}
				}
			}
		}
		return left, right, r.Dense.KnownFromC(), strings.Join(contentOf(d, r, Options{}).rests, "\n")
	}
	left, right, from, rests := curve(1)
	require.Equal(t, model.RailLow, from)
	assert.NotContains(t, rests, "nobody knows how hard")
	end, _, from, rests := curve(600)
	require.Greater(t, from, model.RailLow)
	assert.InDelta(t, left+(right-left)*(from-model.RailLow)/(model.RailHigh-model.RailLow), end, (right-left)/100)
	assert.Contains(t, rests, "nobody knows how hard the custard is")
}
