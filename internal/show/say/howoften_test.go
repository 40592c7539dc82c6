package say

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/sure"
)

func TestAChanceIsSaidInTenths(t *testing.T) {
	for _, c := range []struct {
		want  string
		share float64
	}{
		{"8 in 10", 0.8}, {"8 in 10", 0.76}, {"nearly always", 0.99}, {"more than 9 in 10", 0.96}, {"9 in 10", 0.94},
		{"less than 1 in 10", 0.04}, {"hardly ever", 0.01}, {Unknown, math.NaN()},
	} {
		assert.Equal(t, c.want, Chance(c.share), "%g", c.share)
	}
}

func TestASpreadHasNoMoreDigitsThanItAllows(t *testing.T) {
	assert.Equal(t, "2.6 to 10 kPa, scoopable to firm", SureSpread(metric, sure.CustardKPa, sure.Spread{Low: 2.6123, Middle: 5, High: 10.02}))
	assert.Equal(t, "16 to 17 %", SureSpread(metric, sure.Sweetness, sure.Spread{Low: 16.31, Middle: 16.5, High: 17.2}))
	assert.Equal(t, "2 to 9 min", SureSpread(metric, sure.Minutes, sure.Spread{Low: 1.9, Middle: 4, High: 9.2}))
	assert.Equal(t, Unknown, SureSpread(metric, sure.Minutes, sure.Spread{Low: math.NaN(), Middle: math.NaN(), High: math.NaN()}))
	for c := range sure.NumCauses {
		assert.NotEmpty(t, SureCause(metric, c))
	}
}
