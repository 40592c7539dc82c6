// Package stove is the cook's way through a making: where one is in it, the
// timers that run, and what a reading at the stove changes.
package stove

import (
	"slices"

	"ripplewright/internal/answer/process"
)

// Walk is a place in the steps. It holds on to its step when they are computed
// anew. The zero Walk is at the first.
type Walk struct {
	code process.StepCode
	i    int
}

// At returns the place in steps, −1 where there are none.
func (w *Walk) At(steps []process.Step) int {
	if i := slices.IndexFunc(steps, func(s process.Step) bool { return s.Code == w.code }); i >= 0 {
		w.i = i
	}
	w.i = min(w.i, len(steps)-1)
	if w.i < 0 {
		w.i = 0
		return -1
	}
	w.code = steps[w.i].Code
	return w.i
}

// Go goes on by so many steps, back where by is negative, and reports whether
// there was a step to go to.
func (w *Walk) Go(steps []process.Step, by int) bool {
	to := w.At(steps) + by
	if to < 0 || to >= len(steps) {
		return false
	}
	w.i, w.code = to, steps[to].Code
	return true
}
