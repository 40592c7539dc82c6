package kit

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// A stepper knows what keys do to a value in a range: an arrow is one step;
// Page Up and Down, or an arrow with shift, ten; Home and End the limits.
// It also decides when a hand has come to rest, so that a key held down is one
// change with many steps.
type stepper struct {
	min, max, step float64

	shift   bool
	held    bool // a key is down, as the window says; a release will follow
	pending bool // a change has been told of, its end has not
	keyed   bool // the last hand was on a key
}

// ByKeys reports whether the last change was made by stepping with keys. Asked
// from within a callback it tells of the change at hand: many such in a row may
// be meant as one.
func (s *stepper) ByKeys() bool { return s.keyed }

// snap returns v on the grid of steps that begins at min, within the range.
func (s *stepper) snap(v float64) float64 {
	if math.IsNaN(v) {
		return s.min
	}
	if s.step > 0 {
		v = s.min + math.Round((v-s.min)/s.step)*s.step
		v = math.Round(v*1e9) / 1e9 // the grid's 0.30000000000000004
	}
	return math.Max(s.min, math.Min(s.max, v))
}

// key returns where key takes v, and whether it is a key of ours.
func (s *stepper) key(key fyne.KeyName, v float64) (float64, bool) {
	s.keyed = true
	step := s.step
	if step <= 0 {
		step = (s.max - s.min) / 100
	}
	if s.shift {
		step *= 10
	}
	switch key {
	case fyne.KeyLeft, fyne.KeyDown:
		v -= step
	case fyne.KeyRight, fyne.KeyUp:
		v += step
	case fyne.KeyPageDown:
		v -= 10 * s.step
	case fyne.KeyPageUp:
		v += 10 * s.step
	case fyne.KeyHome:
		v = s.min
	case fyne.KeyEnd:
		v = s.max
	default:
		return v, false
	}
	return s.snap(v), true
}

func (s *stepper) down(key fyne.KeyName) {
	switch key {
	case desktop.KeyShiftLeft, desktop.KeyShiftRight:
		s.shift = true
	default:
		s.held = true
	}
}

// up reports whether the release of key ends a change.
func (s *stepper) up(key fyne.KeyName) bool {
	switch key {
	case desktop.KeyShiftLeft, desktop.KeyShiftRight:
		s.shift = false
		return false
	}
	s.held = false
	return s.rest()
}

// rest reports whether there is a change to be ended, and forgets it.
func (s *stepper) rest() bool {
	was := s.pending
	s.pending = false
	return was
}

// leave is called when the focus goes; it reports whether that ends a change.
func (s *stepper) leave() bool {
	s.shift, s.held = false, false
	return s.rest()
}
