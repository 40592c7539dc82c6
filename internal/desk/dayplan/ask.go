// Package dayplan answers when a making has to begin, and lays the answer out
// as rows of what is taken when.
package dayplan

import (
	"context"
	"math"
	"time"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/desk/making"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
)

// Question is a design, and a time at which it is served or from which on it
// may be made.
type Question struct {
	making.Job
	Serve bool // At is when it is served, else when the making may begin
	At    time.Time
	Reads say.Style // the units of its words
}

// Same reports whether o asks the same.
func (q Question) Same(o Question) bool {
	return q.Job.Same(o.Job) && q.Serve == o.Serve && q.At.Equal(o.At) && q.Reads == o.Reads
}

// Answer is a plan on real clocks.
type Answer struct {
	Making   say.Making
	Plan     plan.Plan
	Midnight time.Time // its zero
	Day      report.Day
	Untimed  error // why it has no times in the cold; nil: it has
}

// ErrNothing says that a design has no steps.
var ErrNothing = flaw.New("there is nothing to make")

// Of answers q. The error is ErrNothing or plan.ErrNoTime.
func Of(ctx context.Context, q Question) (Answer, error) {
	m, untimed := making.Of(ctx, q.Job)
	if err := ctx.Err(); err != nil {
		return Answer{}, err
	}
	if len(m.Process.Steps) == 0 {
		return Answer{}, ErrNothing
	}
	// The zero is a midnight long before, so that days stay whole.
	a := Answer{Making: m, Untimed: untimed, Midnight: time.Date(q.At.Year(), q.At.Month(), q.At.Day()-7, 0, 0, 0, 0, q.At.Location())}
	order := plan.For(m.Process)
	if at := q.At.Sub(a.Midnight).Minutes(); q.Serve {
		order.ServeMinutes = at
	} else {
		order.StartMinutes = at
	}
	var err error
	if a.Plan, err = plan.Lay(m.Process.Steps, order); err != nil {
		return Answer{}, err
	}
	if math.IsInf(a.Plan.Span().FromMinutes, 1) {
		return Answer{}, ErrNothing
	}
	a.Day = report.DayOf(q.Reads, "", m, a.Plan, a.Midnight)
	return a, nil
}

// Clock returns the time that a minute of the plan is.
func (a *Answer) Clock(minute float64) time.Time {
	return a.Midnight.Add(time.Duration(minute * float64(time.Minute))).Round(time.Minute)
}
