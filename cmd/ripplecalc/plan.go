package main

import (
	"bytes"
	"math"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/work/atomicfile"
)

var planCommand = &command{
	name:  "plan",
	usage: "plan FILE --serve-at TIME | --start-at TIME [--hours FROM-TO] [--profile NAME] [-o plan.ics|plan.md|plan.json] [--json]",
	short: "Plans the work over a day or two, back from serving or on from a start",
	long: `
  --serve-at TIME  when it is eaten, as 2026-11-29T15:00:00+01:00 (RFC 3339)
  --start-at TIME  when the making may begin
  --hours FROM-TO  the hours in which you work, as 7:00-22:30, instead of the
                   kitchen's
  --profile NAME   the kitchen, instead of the file's
  -o FILE          a calendar (.ics), a table (.md) or JSON (.json)
  --json           JSON instead of text: begins, serves, hands_on_minutes; tasks
                   (code, title, text, begins, ends, hands_on, uses); taken (what,
                   code, from, to); moved (code, what, for, minutes)

The beaters are washed between two uses.
`,
	least: 1,
	most:  1,
	flags: planFlags,
}

// span reads "7:00-22:30" as minutes of a day; an end past midnight comes
// before the beginning.
func span(text string) (from, to float64, err error) {
	a, b, ok := strings.Cut(text, "-")
	start, errFrom := time.Parse("15:04", a)
	end, errTo := time.Parse("15:04", b)
	if !ok || errFrom != nil || errTo != nil || start.Equal(end) {
		return 0, 0, flaw.New("write two times of a day, as 7:00-22:30")
	}
	minutes := func(t time.Time) float64 { return float64(60*t.Hour() + t.Minute()) }
	if from, to = minutes(start), minutes(end); to < from {
		to += 24 * 60
	}
	return from, to, nil
}

func planFlags(c *command, flags *pflag.FlagSet) action {
	serve, start := flags.String("serve-at", "", ""), flags.String("start-at", "", "")
	profile, out := flags.String("profile", "", ""), flags.StringP("output", "o", "", "")
	hours := flags.String("hours", "", "")
	asJSON := flags.Bool("json", false, "")
	return func(s *shell, files []string) error {
		if (*serve == "") == (*start == "") {
			return c.misused("give --serve-at or --start-at")
		}
		if *out != "" {
			if !hasEnding(*out, ".ics", ".md", ".json") {
				return c.misused("-o %s: a plan is written as .ics, .md or .json", echo.Plain(*out))
			}
			if err := c.mayWrite(*out, files[0]); err != nil {
				return err
			}
		}
		when, err := time.Parse(time.RFC3339, *serve+*start)
		if err != nil {
			return c.misused("%s is no time such as 2026-11-29T15:00:00+01:00", echo.Quoted(*serve+*start))
		}
		file, m, err := makingOf(s, files[0], *profile)
		if err != nil {
			return err
		}
		// The zero is a midnight long before, so that days stay whole.
		midnight := time.Date(when.Year(), when.Month(), when.Day(), 0, 0, 0, 0, when.Location()).AddDate(0, 0, -7)
		minutes := when.Sub(midnight).Minutes()
		order := plan.For(m.Process)
		if *hours != "" {
			if order.WakeMinutes, order.BedMinutes, err = span(*hours); err != nil {
				return c.misused("--hours %s: %v", echo.Quoted(*hours), err)
			}
		}
		if *serve != "" {
			order.ServeMinutes = minutes
		} else {
			order.StartMinutes = minutes
		}
		p, err := plan.Lay(m.Process.Steps, order)
		if err != nil {
			return flaw.New("%s: %v", file, err)
		}
		if math.IsInf(p.Span().FromMinutes, 1) {
			return flaw.New("%s: there is nothing to make", file)
		}
		day := report.DayOf(report.Reads, file, m, p, midnight)
		if *out == "" {
			return s.answer(day, *asJSON)
		}
		var text bytes.Buffer
		switch strings.ToLower(filepath.Ext(*out)) {
		case ".ics":
			err = day.WriteCalendar(&text, time.Now())
		case ".md":
			err = day.WriteMarkdown(&text)
		default:
			err = report.WriteJSON(&text, day, true)
		}
		if err != nil {
			return fault(err)
		}
		return atomicfile.Write(*out, text.Bytes())
	}
}
