package wishing

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/check/market"
)

func TestWhatIsLeftOpenIsNotWishedFor(t *testing.T) {
	assert.Empty(t, Wishes{}.Ask(balance.Locks{}).Wishes)
	a := Wishes{Custard: "soft", SweetFromPercent: 14, KeepsIce: true, WholeEggs: true, Eggs: 6}.Ask(balance.Locks{})
	require.Len(t, a.Wishes, 4)
	assert.True(t, math.IsInf(a.Wishes[1].High, 1))
	assert.Equal(t, [2]float64{6, 6}, [2]float64{a.Wishes[3].Low, a.Wishes[3].High})
	assert.Len(t, Wishes{Eggs: 6}.Ask(balance.Locks{}).Wishes, 0, "eggs are not counted where they need not be whole")
	b := Wishes{SweetPercent: 16}.Ask(balance.Locks{})
	assert.Equal(t, [2]float64{0, 16}, [2]float64{b.Wishes[0].Low, b.Wishes[0].High})
}

func TestAnswersComeByPost(t *testing.T) {
	posted := make(chan func(), 10)
	var found *balance.Answer
	var likely *sure.Answer
	var spots []balance.Spot
	f := New(func(f func()) { posted <- f },
		func(a balance.Answer, err error) { require.NoError(t, err); found = &a },
		func(a sure.Answer, err error) { require.NoError(t, err); likely = &a },
		func(a []balance.Spot, err error) { require.NoError(t, err); spots = a })
	m, d := model.New(market.Library(t)), market.Demo(t)
	f.Find(m, d, Wishes{Custard: "scoopable"}.Ask(balance.Locks{}))
	f.Sample(m, d, nil)
	f.Blend(m, d, balance.Locks{})
	require.Eventually(t, func() bool {
		select {
		case f := <-posted:
			f()
		default:
		}
		return found != nil && likely != nil && spots != nil
	}, 60*time.Second, time.Millisecond)
	assert.True(t, found.Met)
	assert.Positive(t, likely.Kitchens)
}
