package stove

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/process"
)

func TestSeveralTimersRunBesideEachOther(t *testing.T) {
	at := time.Date(2026, 11, 28, 10, 0, 0, 0, time.UTC)
	x := NewTimers(func() time.Time { return at })
	look := func(code process.StepCode, want State, left time.Duration) {
		t.Helper()
		s, l := x.Look(code)
		assert.Equal(t, want, s)
		assert.Equal(t, left, l)
	}
	look(process.Cook, Idle, 0)
	x.Start(process.Rest, 4*time.Hour)
	x.Start(process.Cook, 10*time.Minute)
	at = at.Add(4 * time.Minute)
	look(process.Cook, Running, 6*time.Minute)
	assert.Equal(t, []process.StepCode{process.Cook, process.Rest}, x.Going(), "the one that ends first comes first")

	x.Pause(process.Cook)
	at = at.Add(time.Hour)
	look(process.Cook, Paused, 6*time.Minute)
	look(process.Rest, Running, 4*time.Hour-64*time.Minute)
	x.Start(process.Cook, 99*time.Minute) // goes on, with its own length
	at = at.Add(5 * time.Minute)
	look(process.Cook, Running, time.Minute)
	assert.Empty(t, x.Rung())
	x.Start(process.Cook, 99*time.Minute) // runs already
	look(process.Cook, Running, time.Minute)

	at = at.Add(90 * time.Second)
	look(process.Cook, Over, -30*time.Second)
	assert.Equal(t, []process.StepCode{process.Cook}, x.Rung())
	assert.Empty(t, x.Rung(), "a timer rings once")
	x.Pause(process.Cook) // what is over is not paused
	look(process.Cook, Over, -30*time.Second)
	x.Clear(process.Cook)
	look(process.Cook, Idle, 0)
	assert.Equal(t, []process.StepCode{process.Rest}, x.Going())
}

func steps(codes ...process.StepCode) []process.Step {
	out := make([]process.Step, len(codes))
	for i, c := range codes {
		out[i].Code = c
	}
	return out
}

func TestAWalkHoldsOnToItsStep(t *testing.T) {
	var w Walk
	assert.Equal(t, -1, w.At(nil))
	assert.False(t, w.Go(nil, 1))
	list := steps(process.Crack, process.HeatMilk, process.Cook, process.Serve)
	assert.Equal(t, 0, w.At(list))
	assert.False(t, w.Go(list, -1))
	assert.True(t, w.Go(list, 1))
	assert.True(t, w.Go(list, 1))
	assert.Equal(t, 2, w.At(list))
	assert.Equal(t, 3, w.At(steps(process.Crack, process.Bloom, process.HeatMilk, process.Cook, process.Serve)), "a step more before it")
	assert.Equal(t, 1, w.At(steps(process.Crack, process.Serve)), "it is gone: the last there is")
	assert.False(t, w.Go(steps(process.Crack, process.Serve), 1))
}
