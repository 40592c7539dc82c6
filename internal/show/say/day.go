package say

import (
	"time"

	"ripplewright/internal/answer/plan"
)

// Clock is a time of a day: "Sat 18:05".
func Clock(t time.Time) string { return t.Format("Mon 15:04") }

// DayName is a day: "Saturday 28 November".
func DayName(t time.Time) string { return t.Format("Monday 2 January") }

// DayHead says when a plan begins and when it serves, and how much work it is.
func DayHead(s Style, p *plan.Plan, begins, serves time.Time) string {
	return "Begin " + Clock(begins) + ", serve " + Clock(serves) + ". " + DayLine(s, p)
}

// TooLate says that a plan would have to begin before now.
func TooLate(begins time.Time) string {
	return "Too late for that: it begins " + Clock(begins) + ", which is past. Serve later, or start now."
}

// Undivided says that nothing had to give way.
const Undivided = "Nothing is needed twice at once."
