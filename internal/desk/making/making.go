// Package making puts together how an open design is made: its process, with
// its times in the cold.
package making

import (
	"context"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// A Job is a design whose making is asked for.
type Job struct {
	Design  design.Design
	Result  *model.Result // its evaluation, which nobody changes any more
	Kitchen cold.Profile

	BowlReadC float64 // see process.Kitchen
}

// Same reports whether o asks for the same making.
func (j Job) Same(o Job) bool {
	return j.Design.Equal(o.Design) && j.Kitchen == o.Kitchen && j.BowlReadC == o.BowlReadC
}

// Of returns the making of job, which takes some tenths of a second. Where the
// times in the cold cannot be computed it has none, and untimed says why.
func Of(ctx context.Context, job Job) (m say.Making, untimed error) {
	times, err := cold.Plan(ctx, job.Design, job.Result, job.Kitchen, cold.Options{NoPictures: true})
	if err != nil {
		return At(job, nil), err
	}
	return At(job, &times), nil
}

// At returns the making of job with times that are known, at once; nil: none.
func At(job Job, times *cold.Answer) say.Making {
	k := process.KitchenOf(job.Kitchen)
	k.BowlReadC = job.BowlReadC
	p := process.Of(job.Design, job.Result, k, job.Kitchen.Freezer.AirC, times)
	return say.Making{Design: job.Design, Result: job.Result, Process: &p, Cold: times}
}
