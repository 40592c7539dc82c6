package model_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

func TestATemperatureOutOfRangeIsToldOnce(t *testing.T) {
	m := model.New(market.Library(t))
	problems := func(_ model.Result, err error) []design.Problem {
		var input *model.InputError
		require.True(t, errors.As(err, &input), "%v", err)
		return input.Problems
	}
	d := market.Honey()
	for _, c := range []float64{model.ColdestC - 1, model.WarmestC + 1} {
		assert.Len(t, problems(m.EvaluateAt(d, c)), 1)
	}
	d.Serving.TemperatureC = model.WarmestC + 1
	assert.Len(t, problems(m.Evaluate(d)), 1)
}
