// Package planning computes plans of the cold while hands go on.
package planning

import (
	"context"
	"time"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/desk/mishap"
	"ripplewright/internal/desk/newest"
	"ripplewright/internal/work/design"
)

// A Job is what a plan of the cold is asked for.
type Job struct {
	Design     design.Design
	Result     *model.Result // its evaluation, which nobody changes any more
	Kitchen    cold.Profile
	NoPictures bool
	Wait       time.Duration // how long requests must rest first
}

// Ice is how icy a plan eats, and, where its job asks for pictures, what would help.
type Ice struct {
	icy.Answer
	Remedies []icy.Remedy
}

// Planner computes plans of the cold away from the window's thread, one at a
// time and of the newest request only. Its methods are for the window's
// thread, where its answers come back.
type Planner struct {
	// Progress is told how much of a plan is done, 0 to 1. It may be nil.
	Progress func(done float64)
	// Done is given the answer, or what stood in its way. A plan that was
	// stopped, or overtaken while it ran, has none.
	Done func(job Job, a *cold.Answer, took time.Duration, err error)
	// Iced is given how icy the plan eats, after Done. It may be nil.
	Iced func(job Job, ice Ice)

	post func(func())
	work newest.Work
	life context.Context // of all that was asked since the last stop
	end  context.CancelFunc
}

// grace is how long a plan may go on once a newer one is asked for. A plan
// takes less, so a slider that moves shows figures that move with it.
const grace = 150 * time.Millisecond

// progressEvery is the least time between two tellings of progress.
const progressEvery = 40 * time.Millisecond

// NewPlanner returns a planner whose answers come by post.
func NewPlanner(post func(func())) *Planner {
	p := &Planner{post: post}
	p.life, p.end = context.WithCancel(context.Background())
	return p
}

// Ask has job computed next, instead of any that still waits.
func (p *Planner) Ask(job Job) {
	life := p.life
	p.work.Ask(func(newer context.Context) { p.compute(life, newer, job) })
}

// Stop drops what runs and what waits.
func (p *Planner) Stop() {
	p.end()
	p.work.Stop()
	p.life, p.end = context.WithCancel(context.Background())
}

func (p *Planner) compute(life, newer context.Context, job Job) {
	select {
	case <-newer.Done():
		return
	case <-time.After(job.Wait):
	}
	ctx, cancel := context.WithCancel(life)
	defer cancel()
	context.AfterFunc(newer, func() { time.AfterFunc(grace, cancel) })
	began := time.Now()
	told := began
	progress := func(done float64) {
		if p.Progress != nil && time.Since(told) >= progressEvery {
			told = time.Now()
			p.tell(life, func() { p.Progress(done) })
		}
	}
	a, err := mishap.Answer(func() (cold.Answer, error) {
		return cold.Plan(ctx, job.Design, job.Result, job.Kitchen, cold.Options{Progress: progress, NoPictures: job.NoPictures})
	})
	took := time.Since(began)
	if ctx.Err() == nil {
		p.tell(life, func() { p.Done(job, &a, took, err) })
	}
	if ctx.Err() == nil && err == nil && p.Iced != nil {
		p.ice(ctx, life, newer, job, &a)
	}
}

// ice tells how icy the plan eats. What would help waits for none newer: it takes
// as long as the plan.
func (p *Planner) ice(ctx, life, newer context.Context, job Job, a *cold.Answer) {
	out, err := mishap.Answer(func() (Ice, error) {
		told, err := icy.Tell(job.Result, a, icy.Options{})
		return Ice{Answer: told}, err
	})
	if err != nil || ctx.Err() != nil {
		return
	}
	p.tell(life, func() { p.Iced(job, out) })
	if job.NoPictures {
		return
	}
	more, err := mishap.Answer(func() (Ice, error) {
		remedies, err := icy.Remedies(newer, job.Design, job.Result, a, &out.Answer)
		return Ice{out.Answer, remedies}, err
	})
	if err == nil && newer.Err() == nil {
		p.tell(life, func() { p.Iced(job, more) })
	}
}

// tell runs f on the window's thread, unless the planner was stopped meanwhile.
func (p *Planner) tell(life context.Context, f func()) {
	p.post(func() {
		if life.Err() == nil {
			f()
		}
	})
}

// Busy reports whether a plan is being computed or waits.
func (p *Planner) Busy() bool { return p.work.Busy() }
