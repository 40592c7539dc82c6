package say

import (
	"math"
	"strconv"
	"time"

	"ripplewright/internal/answer/plan"
)

// DayRow is a step and when it begins: "Boil the syrup" at "18:05", under the
// name of its day where that begins, "the day before".
type DayRow struct{ Day, Time, Title string }

// DayList lists a plan by the clock, its days counted back from the minute at
// which is served.
func DayList(p *plan.Plan, serve float64) []DayRow {
	const day = 24 * 60
	var out []DayRow
	last := math.NaN()
	for _, t := range p.Tasks {
		at := math.Round(t.StartMinutes)
		row := DayRow{Time: TimeOfDay(time.Time{}.Add(time.Duration(math.Mod(at, day)) * time.Minute)), Title: StepTitle(t.Step.Code)}
		if back := math.Floor(serve/day) - math.Floor(at/day); back != last {
			row.Day, last = dayBack(int(back)), back
		}
		out = append(out, row)
	}
	return out
}

func dayBack(n int) string {
	switch n {
	case 0:
		return T("The day itself")
	case 1:
		return T("The day before")
	}
	return T("%s days before", strconv.Itoa(n))
}

// DayTitle heads a plan back from a time of day at which is served.
func DayTitle(serve float64) string {
	return T("The day, to serve at %s", TimeOfDay(time.Time{}.Add(time.Duration(math.Mod(serve, 24*60))*time.Minute)))
}
