package planning_test

import (
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/planning"
)

// job is a plan asked for the stall's tub, of so many mL.
func job(t *testing.T, ml float64) planning.Job {
	t.Helper()
	d := market.Plain()
	d.Tubs.VolumeML = ml
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return planning.Job{Design: d, Result: &r, Kitchen: cold.Default(), NoPictures: true}
}

// desk is a planner over a window's thread, which is the test's own.
type desk struct {
	*planning.Planner
	posted chan func()
	done   []planning.Job
	err    error
}

func newDesk() *desk {
	d := &desk{posted: make(chan func(), 1000)}
	d.Planner = planning.NewPlanner(func(f func()) { d.posted <- f })
	d.Done = func(j planning.Job, _ *cold.Answer, _ time.Duration, err error) {
		d.done, d.err = append(d.done, j), err
	}
	return d
}

// settle waits until nothing is computed, and runs what was posted.
func (d *desk) settle(t *testing.T) {
	t.Helper()
	require.Eventually(t, func() bool { return !d.Busy() }, time.Minute, time.Millisecond)
	for len(d.posted) > 0 {
		(<-d.posted)()
	}
}

func TestAPlanComesBackOnTheWindowsThread(t *testing.T) {
	d := newDesk()
	d.Ask(job(t, 500))
	assert.Empty(t, d.done, "nothing is told away from it")
	d.settle(t)
	require.Len(t, d.done, 1)
	assert.NoError(t, d.err)
	assert.Equal(t, 500., d.done[0].Design.Tubs.VolumeML)
}

func TestOfManyPlansTheNewestIsShownLast(t *testing.T) {
	d := newDesk()
	for _, ml := range []float64{300, 400, 500, 600, 700} {
		d.Ask(job(t, ml))
	}
	d.settle(t)
	require.NotEmpty(t, d.done)
	assert.Less(t, len(d.done), 5, "what was overtaken before it began is not computed")
	assert.Equal(t, 700., d.done[len(d.done)-1].Design.Tubs.VolumeML)
}

func TestARequestThatIsOvertakenWhileItRestsIsNeverComputed(t *testing.T) {
	d := newDesk()
	resting := job(t, 300)
	resting.Wait = time.Hour
	d.Ask(resting)
	d.Ask(job(t, 500))
	d.settle(t)
	require.Len(t, d.done, 1)
	assert.Equal(t, 500., d.done[0].Design.Tubs.VolumeML)
}

func TestWhatWasStoppedIsNotShownEvenIfItIsDone(t *testing.T) {
	d := newDesk()
	d.Ask(job(t, 500))
	require.Eventually(t, func() bool { return !d.Busy() }, time.Minute, time.Millisecond)
	require.NotEmpty(t, d.posted, "its answer waits")
	d.Stop()
	d.settle(t)
	assert.Empty(t, d.done)

	waiting := job(t, 300)
	waiting.Wait = time.Hour
	d.Ask(waiting)
	d.Stop()
	d.settle(t)
	assert.Empty(t, d.done)
	d.Ask(job(t, 500))
	d.settle(t)
	assert.Len(t, d.done, 1, "it can be asked again")
}

func TestAnImpossiblePlanSaysWhy(t *testing.T) {
	d := newDesk()
	j := job(t, 500)
	j.Result = &model.Result{}
	d.Ask(j)
	d.settle(t)
	require.Len(t, d.done, 1)
	assert.ErrorContains(t, d.err, "empty")
}

// A small tub freezes in no time to speak of; a large one in its pictures takes
// long enough to be told of.
func TestProgressOnlyRises(t *testing.T) {
	d := newDesk()
	var last atomic.Value
	last.Store(0.)
	d.Progress = func(done float64) {
		assert.GreaterOrEqual(t, done, last.Load().(float64))
		assert.LessOrEqual(t, done, 1.)
		last.Store(done)
	}
	j := job(t, 20000)
	j.NoPictures = false
	d.Ask(j)
	d.settle(t)
	assert.Len(t, d.done, 1)
}
