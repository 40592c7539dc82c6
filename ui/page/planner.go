package page

import (
	"context"
	"sync"
	"time"

	"ripplewright/internal/cold"
	"ripplewright/internal/design"
	"ripplewright/internal/model"
)

// PlanJob is what a plan of the cold is asked for.
type PlanJob struct {
	Design     design.Design
	Result     *model.Result // its evaluation, which nobody changes any more
	Kitchen    cold.Profile
	NoPictures bool
	Wait       time.Duration // how long requests must rest first
}

// Planner computes plans of the cold away from the window's thread, one at a
// time and of the newest request only. Its methods are for the window's
// thread, where its answers come back.
type Planner struct {
	// Progress is told how much of a plan is done, 0 to 1. It may be nil.
	Progress func(done float64)
	// Done is given the answer, or what stood in its way. A plan that was
	// stopped, or overtaken while it ran, has none.
	Done func(job PlanJob, a *cold.Answer, took time.Duration, err error)

	post func(func())

	mu      sync.Mutex
	next    *PlanJob
	cancel  context.CancelFunc // of the plan being computed
	running bool
	stops   int // how often it was stopped: older answers are dropped
}

// grace is how long a plan may go on once a newer one is asked for. A plan
// takes less, so a slider that moves shows figures that move with it.
const grace = 150 * time.Millisecond

// progressEvery is the least time between two tellings of progress.
const progressEvery = 40 * time.Millisecond

// NewPlanner returns a planner whose answers come by post.
func NewPlanner(post func(func())) *Planner { return &Planner{post: post} }

// Ask has job computed next, instead of any that still waits.
func (p *Planner) Ask(job PlanJob) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.next = &job
	if p.running {
		if p.cancel != nil {
			time.AfterFunc(grace-min(job.Wait, grace), p.cancel)
		}
		return
	}
	p.running = true
	go p.work()
}

// Stop drops what runs and what waits.
func (p *Planner) Stop() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.stops++
	p.next = nil
	if p.cancel != nil {
		p.cancel()
	}
}

func (p *Planner) work() {
	for {
		p.mu.Lock()
		job, stops := p.next, p.stops
		p.next, p.cancel = nil, nil
		if job == nil {
			p.running = false
			p.mu.Unlock()
			return
		}
		ctx, cancel := context.WithCancel(context.Background())
		p.cancel = cancel
		p.mu.Unlock()
		p.compute(ctx, *job, stops)
		cancel()
	}
}

func (p *Planner) compute(ctx context.Context, job PlanJob, stops int) {
	select {
	case <-ctx.Done():
		return
	case <-time.After(job.Wait):
	}
	began := time.Now()
	told := began
	progress := func(done float64) {
		if p.Progress != nil && time.Since(told) >= progressEvery {
			told = time.Now()
			p.tell(stops, func() { p.Progress(done) })
		}
	}
	a, err := cold.Plan(ctx, job.Design, job.Result, job.Kitchen, cold.Options{Progress: progress, NoPictures: job.NoPictures})
	took := time.Since(began)
	if ctx.Err() == nil {
		p.tell(stops, func() { p.Done(job, &a, took, err) })
	}
}

// tell runs f on the window's thread, unless the planner has been stopped.
func (p *Planner) tell(stops int, f func()) {
	p.post(func() {
		p.mu.Lock()
		late := stops != p.stops
		p.mu.Unlock()
		if !late {
			f()
		}
	})
}
