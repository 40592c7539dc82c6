package benchview

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

func evaluated(t *testing.T, d design.Design) *model.Result {
	t.Helper()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return &r
}

// The strip says what stands in the way, how to begin, or the verdict.
func TestAJudgementForEveryState(t *testing.T) {
	j := Judged(say.Style{}, nil, nil, nil, errors.New("first\nsecond\nthird"))
	assert.Equal(t, Wrong, j.Mood)
	assert.Equal(t, "first", j.Sentence)
	assert.Contains(t, j.Suggestion, "2")

	j = Judged(say.Style{}, evaluated(t, design.New()), nil, nil, nil)
	assert.Equal(t, Judgement{Word: "Begin", Sentence: say.BeginHere.String()}, j)

	hard := market.Honey()
	hard.Serving.TemperatureC = -22
	for _, d := range []design.Design{market.Honey(), hard} {
		r := evaluated(t, d)
		j = Judged(say.Style{}, r, nil, nil, nil)
		assert.Equal(t, r.Verdict.Good, j.Mood == Good, j)
		assert.NotEmpty(t, j.Sentence)
	}

	empty := market.Honey()
	empty.Foam.Lines, empty.Foam.Syrup.Lines = nil, nil // a phase without lines is serious
	j = Judged(say.Style{}, evaluated(t, empty), nil, nil, nil)
	assert.Equal(t, Wrong, j.Mood)
	assert.NotEmpty(t, j.Suggestion)
}

// What batches came to is told with the verdict, and nothing where there are none.
func TestAJudgementTellsOfBatches(t *testing.T) {
	m, d := model.New(market.Library(t)), market.Honey()
	judged := func(taught model.Taught) string {
		r, err := m.Taught(taught).Evaluate(d)
		require.NoError(t, err)
		return Judged(say.Usual, &r, nil, nil, nil).Sentence
	}
	plain := judged(model.Taught{})
	assert.NotContains(t, plain, "batches")
	var taught model.Taught
	taught.Recipe[model.FoamAir] = model.Lesson{Readings: 3, Mean: math.Log(0.8), Half: 0.05, Before: model.Unlearnt[model.FoamAir]}
	assert.Equal(t, plain+" Your batches: 240 % air in the foam (recipe 300 %).", judged(taught))
	taught.Recipe[model.FoamAir].Mean = 0
	assert.Equal(t, plain+" Your batches came out as the recipe says, and narrow its bands.", judged(taught))
	taught.Readings, taught.HarderFactor, taught.ScatterFactor = 3, 1.5, 1.4
	assert.Contains(t, judged(taught), "Your batches: custard 1.50 times as hard as the law says.")
}

// The rail is the model along the temperatures: colder is never softer, and a phase
// without lines has no curve and says so.
func TestTheRailFollowsTheModel(t *testing.T) {
	var x Rail
	r := evaluated(t, market.Honey())
	x.Follow(r)
	require.Len(t, x.Dense.HardnessKPa, len(x.AtC))
	for i, at := range x.AtC {
		s := r.Dense.Body.At(at)
		assert.InDelta(t, s.YieldKPa, x.Dense.HardnessKPa[i], 1e-9*s.YieldKPa)
		if i > 0 {
			assert.LessOrEqual(t, x.Dense.IceVolumeFraction[i], x.Dense.IceVolumeFraction[i-1]+1e-12)
		}
	}
	assert.Equal(t, r.Foam.Scoop, x.Foam.Scoop)
	kept := &x.Dense.HardnessKPa[0]
	d := market.Honey()
	d.Dense.Lines = nil
	x.Follow(evaluated(t, d))
	assert.Same(t, kept, &x.Dense.HardnessKPa[0], "slices are kept from frame to frame")
	assert.True(t, math.IsNaN(x.Dense.HardnessKPa[3]))
	assert.Equal(t, say.NoLines.String(), x.Dense.Note)
	assert.False(t, x.Dense.Scoop.OK)
}
