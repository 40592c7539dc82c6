package planning_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/planning"
)

// The ice comes after the plan that it rides on, and what would help after that,
// where pictures are wanted too.
func TestTheIceComesAfterItsPlan(t *testing.T) {
	d := market.Honey()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	for _, pictures := range []bool{false, true} {
		posted := make(chan func(), 1000)
		p := planning.NewPlanner(func(f func()) { posted <- f })
		var told []string
		var plan *cold.Answer
		var last planning.Ice
		p.Done = func(_ planning.Job, a *cold.Answer, _ time.Duration, err error) {
			require.NoError(t, err)
			plan, told = a, append(told, "plan")
		}
		p.Iced = func(j planning.Job, ice planning.Ice) {
			assert.Equal(t, &r, j.Result)
			last, told = ice, append(told, "ice")
		}
		p.Ask(planning.Job{Design: d, Result: &r, Kitchen: cold.Default(), NoPictures: !pictures})
		require.Eventually(t, func() bool { return !p.Busy() }, time.Minute, time.Millisecond)
		for len(posted) > 0 {
			(<-posted)()
		}
		want, err := icy.Tell(&r, plan, icy.Options{})
		require.NoError(t, err)
		assert.Equal(t, want, last.Answer)
		if pictures {
			assert.Equal(t, []string{"plan", "ice", "ice"}, told)
			assert.NotEmpty(t, last.Remedies)
		} else {
			assert.Equal(t, []string{"plan", "ice"}, told)
			assert.Empty(t, last.Remedies)
		}
	}
}
