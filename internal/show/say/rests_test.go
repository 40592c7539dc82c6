package say

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

// What is known is said, with its figure; of what is not known nothing is said.
func TestRestsTellAFreezingPointWhereThereIsOne(t *testing.T) {
	m := model.New(market.Library(t))
	r, err := m.Evaluate(quay())
	require.NoError(t, err)
	require.False(t, math.IsNaN(r.Dense.FreezingPointC.Value) || math.IsNaN(r.Foam.FreezingPointC.Value))
	s := Style{}
	text := strings.Join(Rests(s, quay(), &r), "\n")
	assert.Contains(t, text, "The custard starts to freeze at "+s.TemperatureTo(r.Dense.FreezingPointC.Value, 1))
	require.Greater(t, r.Foam.FreezingPointC.High-r.Foam.FreezingPointC.Low, 1.0, "known to a degree or less")
	assert.Contains(t, text, "The foam starts to freeze at "+s.TemperatureTo(r.Foam.FreezingPointC.Value, 0))

	r.Foam.FreezingPointC.Value = math.NaN()
	text = strings.Join(Rests(s, quay(), &r), "\n")
	assert.Contains(t, text, "The custard starts to freeze at ")
	assert.NotContains(t, text, "The foam starts to freeze")
	assert.NotContains(t, text, "NaN")
}

// A phase that is in no tub rests on nothing.
func TestRestsTellNothingOfAPhaseInNoTub(t *testing.T) {
	d := quay().WithLines(design.FoamPart, nil).WithLines(design.SyrupPart, nil)
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	for _, line := range Rests(Style{}, d, &r) {
		assert.NotContains(t, line, "The foam")
	}
}

// The spoon goes as deep as the design says, and to the bottom where it says all
// of it; the handle's width is told where it is not the usual one.
func TestASwirlSaysHowDeepAndHowWide(t *testing.T) {
	b := design.Default().Blend
	b.Strokes, b.DepthPercent = 3, 100
	assert.Contains(t, swirled(Style{}, b), "handle down to the bottom, 3 ")
	b.DepthPercent = 60
	assert.Contains(t, swirled(Style{}, b), "handle down to 60 % of the depth, 3 ")
	b.HandleMM = 2 * design.Default().Blend.HandleMM
	assert.Contains(t, swirled(Style{}, b), " wide down to 60 % of the depth")
	b.Strokes = 0
	assert.Equal(t, "Leave it as it is: no stroke.", swirled(Style{}, b))
}
