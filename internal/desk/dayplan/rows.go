package dayplan

import (
	"math"
	"slices"
	"sort"

	"ripplewright/internal/answer/plan"
	"ripplewright/internal/answer/process"
)

// Row is a thing of the kitchen and the times at which it is taken.
type Row struct {
	What  process.Resource
	Bars  []Bar
	Lanes int // that its bars need side by side
}

// Bar is a stretch in which a step has the row's thing, minutes of the plan.
type Bar struct {
	plan.Span
	Step process.StepCode
	Lane int // from 0
}

// order is that of the rows, hands first and the cold last.
var order = []process.Resource{process.Hands, process.Mixer, process.Pan, process.SyrupPan, process.EggBowl, process.MixBowl,
	process.Dish, process.Turning, process.WaterBath, process.Freezer, process.Fridge}

// RowsOf returns what a plan takes, without the things that it does not need.
func RowsOf(p *plan.Plan) []Row {
	bars := map[process.Resource][]Bar{}
	for _, u := range p.Uses {
		bars[u.What] = append(bars[u.What], Bar{Span: u.Span, Step: p.Tasks[u.Task].Step.Code})
	}
	for _, t := range p.Tasks {
		for _, what := range t.Step.Uses {
			if what == process.Freezer || what == process.Fridge { // which hold several at once
				bars[what] = append(bars[what], Bar{Span: plan.Span{FromMinutes: t.StartMinutes, ToMinutes: fetched(p, &t)}, Step: t.Step.Code})
			}
		}
	}
	var rows []Row
	for _, what := range order {
		if len(bars[what]) > 0 {
			rows = append(rows, laned(what, bars[what]))
		}
	}
	return rows
}

// fetched is when what a task has put into the cold is taken out again: as the
// next step that needs it begins.
func fetched(p *plan.Plan, t *plan.Task) float64 {
	out := math.Inf(1)
	for _, next := range p.Tasks {
		if slices.Contains(next.Step.After, t.Step.Code) {
			out = math.Min(out, next.StartMinutes)
		}
	}
	if math.IsInf(out, 1) {
		return t.EndMinutes
	}
	return math.Max(out, t.EndMinutes)
}

// laned puts each bar into the first lane that is free.
func laned(what process.Resource, bars []Bar) Row {
	sort.SliceStable(bars, func(i, j int) bool { return bars[i].FromMinutes < bars[j].FromMinutes })
	var free []float64 // by lane
	for i := range bars {
		lane := slices.IndexFunc(free, func(from float64) bool { return from <= bars[i].FromMinutes+1e-6 })
		if lane < 0 {
			lane = len(free)
			free = append(free, 0)
		}
		bars[i].Lane, free[lane] = lane, bars[i].ToMinutes
	}
	return Row{what, bars, len(free)}
}

// pause is how long hands must rest for a new stretch of work to begin, minutes.
const pause = 90

// Stretches returns the times of work, parted by long rests: the first is that
// of the whole plan.
func Stretches(p *plan.Plan) []plan.Span {
	out := []plan.Span{p.Span()}
	var hands []plan.Span
	for _, t := range p.Tasks {
		hands = append(hands, t.Hands...)
	}
	sort.Slice(hands, func(i, j int) bool { return hands[i].FromMinutes < hands[j].FromMinutes })
	for _, h := range hands {
		if last := &out[len(out)-1]; len(out) > 1 && h.FromMinutes-last.ToMinutes < pause {
			last.ToMinutes = max(last.ToMinutes, h.ToMinutes)
			continue
		}
		out = append(out, h)
	}
	return out
}

// At returns who has what at a minute, in the order of the rows.
func At(rows []Row, minute float64) []Taken {
	var out []Taken
	for _, r := range rows {
		for _, b := range r.Bars {
			if b.FromMinutes <= minute && minute < b.ToMinutes {
				out = append(out, Taken{r.What, b.Step})
			}
		}
	}
	return out
}

// Taken is a thing and the step that has it.
type Taken struct {
	What process.Resource
	Step process.StepCode
}

// Marks returns the full hours at which to mark a stretch, about n of them.
func Marks(s plan.Span, n int) []float64 {
	for _, step := range [...]float64{15, 30, 60, 120, 180, 360, 720, 1440, 2880} {
		first := step * math.Ceil(s.FromMinutes/step)
		if count := int((s.ToMinutes-first)/step) + 1; count > n && step < 2880 {
			continue
		}
		var out []float64
		for at := first; at <= s.ToMinutes; at += step {
			out = append(out, at)
		}
		return out
	}
	return nil
}
