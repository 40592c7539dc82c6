package stove

import (
	"sort"
	"time"

	"ripplewright/internal/answer/process"
)

// State is how a timer stands.
type State uint8

// The states.
const (
	Idle State = iota
	Running
	Paused
	Over // its time is up, and nobody has said so yet
)

// Timers are the clocks of the steps, as many as there are pots. They go on
// whoever looks, and keep the length that they were started with. They live on
// one goroutine.
type Timers struct {
	now func() time.Time
	set map[process.StepCode]*timer
}

type timer struct {
	end     time.Time
	left    time.Duration // while it is paused
	running bool
	rung    bool
}

// NewTimers returns timers by the clock now.
func NewTimers(now func() time.Time) *Timers {
	return &Timers{now: now, set: map[process.StepCode]*timer{}}
}

// Start starts the timer of a step, or lets a paused one go on.
func (t *Timers) Start(code process.StepCode, length time.Duration) {
	x := t.set[code]
	switch {
	case x == nil:
		t.set[code] = &timer{end: t.now().Add(length), running: true}
	case !x.running:
		x.end, x.running = t.now().Add(x.left), true
	}
}

// Pause stops a running timer where it is.
func (t *Timers) Pause(code process.StepCode) {
	if s, left := t.Look(code); s == Running {
		t.set[code].left, t.set[code].running = left, false
	}
}

// Clear takes a timer off.
func (t *Timers) Clear(code process.StepCode) { delete(t.set, code) }

// Look returns how a timer stands and what is left of it, negative where it is
// over.
func (t *Timers) Look(code process.StepCode) (State, time.Duration) {
	x := t.set[code]
	switch {
	case x == nil:
		return Idle, 0
	case !x.running:
		return Paused, x.left
	}
	left := x.end.Sub(t.now())
	if left <= 0 {
		return Over, left
	}
	return Running, left
}

// Going returns the steps whose timer is set, the one that ends first first.
func (t *Timers) Going() []process.StepCode {
	var out []process.StepCode
	for code := range t.set {
		out = append(out, code)
	}
	sort.Slice(out, func(i, j int) bool {
		_, a := t.Look(out[i])
		_, b := t.Look(out[j])
		if a != b {
			return a < b
		}
		return out[i] < out[j]
	})
	return out
}

// Rung returns the steps whose time has come since it was asked last.
func (t *Timers) Rung() []process.StepCode {
	var out []process.StepCode
	for _, code := range t.Going() {
		if s, _ := t.Look(code); s == Over && !t.set[code].rung {
			t.set[code].rung = true
			out = append(out, code)
		}
	}
	return out
}
