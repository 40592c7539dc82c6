package say

import (
	"strings"
	"time"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
)

// Clock is a time of a day: "Sat 18:05".
func Clock(t time.Time) string { return stamp(t, "Mon 15:04") }

// DayName is a day: "Saturday 28 November".
func DayName(t time.Time) string { return stamp(t, "Monday 2 January") }

// DayHead says when a plan begins and when it serves, and how much work it is.
func DayHead(s Style, p *plan.Plan, begins, serves time.Time) string {
	return T("Begin %s, serve %s. %s", Clock(begins), Clock(serves), DayLine(s, p))
}

// TooLate says that a plan would have to begin before now.
func TooLate(begins time.Time) string {
	return T("Too late for that: it begins %s, which is past. Serve later, or start now.", Clock(begins))
}

// Undivided says that nothing had to give way.
const Undivided Message = "Nothing is needed twice at once."

// Untimed says why a plan has no times of its own in the cold.
func Untimed(why error) string {
	return T("The times in the freezer are common practice, because none were computed: %s.", strings.TrimSuffix(Flaw(why), "."))
}

// Taking says that a step has a thing: "mixer: Pour and whip".
func Taking(what process.Resource, step process.StepCode) string {
	return Resource(what) + ": " + StepTitle(step)
}

// TimeSpan is two times of day: "Sat 18:05 to 18:12", the day once.
func TimeSpan(from, to time.Time) string {
	if from.YearDay() == to.YearDay() && from.Year() == to.Year() {
		return T("%s to %s", Clock(from), to.Format("15:04"))
	}
	return T("%s to %s", Clock(from), Clock(to))
}

// TimeOfDay is a time without its day: "18:05".
func TimeOfDay(t time.Time) string { return t.Format("15:04") }

// TimeOfStep is from when to when a step goes, under the name of the day that it
// begins on: "18:05 to 18:12", "22:10 to Sun 10:10".
func TimeOfStep(from, to time.Time) string {
	if from.YearDay() == to.YearDay() && from.Year() == to.Year() {
		return T("%s to %s", TimeOfDay(from), TimeOfDay(to))
	}
	return T("%s to %s", TimeOfDay(from), Clock(to))
}

// NoTime says that no day was found.
const NoTime Message = "No day was found on which nothing waits longer than it keeps. Try another time of serving."
