// Package plan lays the steps of a making out over a day or two: when each
// begins and ends, when hands and mixer are taken, what waits.
//
// The method: from a time of serving, steps are placed from the last to the
// first, each as late as the steps after it, the things it uses and the cook's
// night allow, the one that can wait the least first. Where a step would have to
// wait longer than it keeps, the one placed before it is tried earlier. A plan
// from a time of starting is the one with the earliest serving that begins no
// sooner.
//
// Times are minutes from a zero of the caller's, usually a midnight.
package plan

import (
	"math"

	"ripplewright/internal/answer/process"
	"ripplewright/internal/form/flaw"
)

// Task is a step at its time.
type Task struct {
	Step                     *process.Step
	StartMinutes, EndMinutes float64
	Hands                    []Span // when a cook stands by
}

// Span is a stretch of time, From ≤ To.
type Span struct{ FromMinutes, ToMinutes float64 }

func (s Span) overlaps(o Span) bool {
	return s.FromMinutes < o.ToMinutes-1e-9 && o.FromMinutes < s.ToMinutes-1e-9
}

// Use is a thing taken by a task.
type Use struct {
	What process.Resource
	Task int // of Plan.Tasks
	Span
}

// Plan is the day, in order of start.
type Plan struct {
	Tasks []Task
	Uses  []Use // of what one task at a time can have, washing-up included
	Moved []Move
}

// Move says which task gave way to another that needs the same thing.
type Move struct {
	Task    process.StepCode
	What    process.Resource
	For     process.StepCode
	Minutes float64
}

// Order is what the maker asks for. One of Serve and Start is known.
type Order struct {
	ServeMinutes, StartMinutes float64   // minutes; NaN: not asked
	WakeMinutes, BedMinutes    float64   // minutes of the day between which hands are there
	WashUpMinutes              float64   // minutes for beaters and bowl between two uses
	StirMinutes                []float64 // when the tray in the freezer is beaten, from going in
	StirHandsMinutes           float64   // minutes, each time
}

// For returns an order for the making p, in the hours in which its cook works.
func For(p *process.Process) Order {
	k := p.Kitchen
	return Order{StirMinutes: p.StirMinutes, ServeMinutes: math.NaN(), StartMinutes: math.NaN(), WakeMinutes: k.FromHours * 60, BedMinutes: k.ToHours * 60, WashUpMinutes: k.WashUpMinutes, StirHandsMinutes: 3}
}

// shared are the things that hold several tasks at once.
var shared = []process.Resource{process.Freezer, process.Fridge}

// Lay returns the plan of steps. The error is ErrNoTime where no order of them
// keeps every wait within its limit.
func Lay(steps []process.Step, o Order) (Plan, error) {
	back := !math.IsNaN(o.ServeMinutes)
	if back == !math.IsNaN(o.StartMinutes) {
		return Plan{}, flaw.New("plan: ask for a time of serving or one of starting")
	}
	if back {
		return layBack(steps, o)
	}
	least := 0.0
	for i := range steps {
		least = math.Max(least, steps[i].Minutes)
	}
	for o.ServeMinutes = o.StartMinutes + least; o.ServeMinutes < o.StartMinutes+longest; o.ServeMinutes += quarter {
		p, err := layBack(steps, o)
		if err == nil && p.Span().FromMinutes >= o.StartMinutes {
			return p, nil
		}
	}
	return Plan{}, ErrNoTime
}

// A plan from the start is sought by the quarter of an hour, up to so many days.
const (
	quarter = 15
	longest = 6 * day
)

func layBack(steps []process.Step, o Order) (Plan, error) {
	b := &board{steps: steps, o: o, moved: map[int]Move{}, tries: mostTries}
	b.index()
	b.start, b.placed = make([]float64, len(steps)), make([]bool, len(steps))
	if !b.layOut(len(steps)) {
		return Plan{}, ErrNoTime
	}
	return b.plan(), nil
}

// mostTries bounds the search.
const mostTries = 60000

// ErrNoTime says that no order of the steps keeps what cannot wait.
var ErrNoTime = flaw.New("plan: the steps cannot be laid out so that nothing waits too long")

// Span returns from when to when the plan goes.
func (p *Plan) Span() Span {
	s := Span{math.Inf(1), math.Inf(-1)}
	for _, t := range p.Tasks {
		s.FromMinutes, s.ToMinutes = math.Min(s.FromMinutes, t.StartMinutes), math.Max(s.ToMinutes, t.EndMinutes)
	}
	return s
}

// HandsOnMinutes returns the minutes of work in all.
func (p *Plan) HandsOnMinutes() float64 {
	sum := 0.0
	for _, t := range p.Tasks {
		for _, h := range t.Hands {
			sum += h.ToMinutes - h.FromMinutes
		}
	}
	return sum
}

// Check returns what is wrong with a plan: a thing taken twice, an order
// broken, a wait too long; nil if nothing is.
func (p *Plan) Check() error {
	for i := range p.Uses {
		for j := range p.Uses[:i] {
			a, b := p.Uses[i], p.Uses[j]
			if a.What == b.What && a.overlaps(b.Span) && a.Task != b.Task {
				return flaw.New("plan: %s is taken twice, by %s and %s", a.What, p.Tasks[a.Task].Step.Code, p.Tasks[b.Task].Step.Code)
			}
		}
	}
	ends := map[process.StepCode]*Task{}
	for i := range p.Tasks {
		ends[p.Tasks[i].Step.Code] = &p.Tasks[i]
	}
	for i := range p.Tasks {
		t := &p.Tasks[i]
		for _, c := range t.Step.After {
			before := ends[c]
			if t.StartMinutes < before.EndMinutes-1e-3 {
				return flaw.New("plan: %s begins before %s has ended", t.Step.Code, c)
			}
			if t.StartMinutes-before.EndMinutes > before.Step.WaitMaxMinutes+1e-2 {
				return flaw.New("plan: what comes of %s waits longer for %s than it keeps", c, t.Step.Code)
			}
		}
	}
	return nil
}
