package plan

import (
	"math"
	"slices"
	"sort"

	"ripplewright/internal/answer/process"
)

// board is a plan in the making.
type board struct {
	steps  []process.Step
	o      Order
	at     map[process.StepCode]int
	next   [][]int // steps that come after
	start  []float64
	placed []bool
	uses   []Use
	moved  map[int]Move
	tries  int
}

func (b *board) index() {
	b.at = map[process.StepCode]int{}
	for i := range b.steps {
		b.at[b.steps[i].Code] = i
	}
	b.next = make([][]int, len(b.steps))
	for i := range b.steps {
		for _, c := range b.steps[i].After {
			j := b.at[c]
			b.next[j] = append(b.next[j], i)
		}
	}
}

// layOut places the steps that are left, and reports whether they all found
// their place.
func (b *board) layOut(left int) bool {
	if left == 0 {
		return true
	}
	i := b.pressing()
	latest, earliest := b.bounds(i)
	s := &b.steps[i]
	held := len(b.uses)
	for end, n := latest, 0; end >= earliest-1e-6 && b.tries > 0; n++ {
		b.tries--
		uses := b.usesOf(i, end-s.Minutes)
		if by, with := b.clash(uses); by != 0 {
			if with != nil {
				b.moved[i] = Move{s.Code, with.What, b.steps[with.Task].Code, latest - end - by}
			}
			end += by
			continue
		}
		b.start[i], b.placed[i] = end-s.Minutes, true
		b.uses = append(b.uses[:held], uses...)
		if b.layOut(left - 1) {
			return true
		}
		b.placed[i], b.uses = false, b.uses[:held]
		end -= earlier(n)
	}
	delete(b.moved, i)
	return false
}

// earlier is by how much the n-th further try comes earlier: small steps first.
func earlier(n int) float64 { return math.Min(30, 3*math.Pow(1.25, float64(n))) }

// pressing returns the step that can wait the least of those whose followers
// are all placed.
func (b *board) pressing() int {
	best := -1
	for i := range b.steps {
		if b.placed[i] || slices.ContainsFunc(b.next[i], func(j int) bool { return !b.placed[j] }) {
			continue
		}
		if best < 0 || b.steps[i].WaitMaxMinutes < b.steps[best].WaitMaxMinutes {
			best = i
		}
	}
	return best
}

// bounds returns the latest end of step i and the earliest at which what comes
// of it still keeps until each step that uses it.
func (b *board) bounds(i int) (latest, earliest float64) {
	latest, earliest = b.o.ServeMinutes, b.o.ServeMinutes-longest
	for _, j := range b.next[i] {
		latest = math.Min(latest, b.start[j])
		earliest = math.Max(earliest, b.start[j]-b.steps[i].WaitMaxMinutes)
	}
	return latest, earliest
}

// usesOf returns what step i takes when it begins at start.
func (b *board) usesOf(i int, start float64) []Use {
	s := &b.steps[i]
	var out []Use
	hands := b.hands(i, start)
	for _, h := range hands {
		out = append(out, Use{process.Hands, i, h})
	}
	for _, what := range s.Uses {
		if what == process.Hands || slices.Contains(shared, what) {
			continue
		}
		span := Span{start, start + s.Minutes}
		if what == process.Mixer && !b.beatenOn(i) {
			span.ToMinutes += b.o.WashUpMinutes
		}
		out = append(out, Use{what, i, span})
	}
	if beaten(s) { // the beaters go into the tray at each stir
		for _, h := range hands {
			out = append(out, Use{process.Mixer, i, Span{h.FromMinutes, h.ToMinutes + b.o.WashUpMinutes}})
		}
	}
	return out
}

// beatenOn reports whether the same beaters go on in the same bowl after step i,
// so that nothing is washed up between.
func (b *board) beatenOn(i int) bool {
	return slices.ContainsFunc(b.next[i], func(j int) bool {
		s := &b.steps[j]
		return slices.Contains(s.Uses, process.MixBowl) && (slices.Contains(s.Uses, process.Mixer) || b.beatenOn(j))
	})
}

// hands returns when a cook stands by: from the beginning on, but for the tray
// in the freezer, which is beaten now and then.
func (b *board) hands(i int, start float64) []Span {
	s := &b.steps[i]
	if s.HandsOnMinutes <= 0 {
		return nil
	}
	if !beaten(s) || len(b.o.StirMinutes) == 0 {
		return []Span{{start, start + math.Min(s.HandsOnMinutes, s.Minutes)}}
	}
	out := []Span{{start, start + 2}}
	for _, m := range b.o.StirMinutes {
		if m+b.o.StirHandsMinutes <= s.Minutes+b.o.StirHandsMinutes {
			out = append(out, Span{start + m, start + m + b.o.StirHandsMinutes})
		}
	}
	return out
}

// beaten reports whether a step is the tray that is beaten by hand.
func beaten(s *process.Step) bool {
	return s.Code == process.FreezeSoft && slices.Contains(s.Uses, process.Dish)
}

const day = 24 * 60

// clash returns by how much uses must move to be free of the first thing that
// is in their way, 0 if nothing is, and whose that is; nil for the night.
func (b *board) clash(uses []Use) (by float64, with *Use) {
	for i := range uses {
		u := &uses[i]
		for j := range b.uses {
			o := &b.uses[j]
			if o.What == u.What && o.overlaps(u.Span) {
				return o.FromMinutes - u.ToMinutes - 1e-6, o
			}
		}
		if u.What != process.Hands {
			continue
		}
		if night, ok := b.night(u.Span); ok {
			return night.FromMinutes - u.ToMinutes - 1e-6, nil
		}
	}
	return 0, nil
}

// night returns the night that a span falls into.
func (b *board) night(s Span) (Span, bool) {
	for d := math.Floor(s.FromMinutes/day) - 1; d <= math.Floor(s.ToMinutes/day)+1; d++ {
		n := Span{d*day + b.o.BedMinutes, (d+1)*day + b.o.WakeMinutes}
		if n.overlaps(s) {
			return n, true
		}
	}
	return Span{}, false
}

func (b *board) plan() Plan {
	p := Plan{Tasks: make([]Task, len(b.steps))}
	order := make([]int, len(b.steps))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(x, y int) bool { return b.start[order[x]] < b.start[order[y]] })
	place := make([]int, len(order))
	for k, i := range order {
		place[i] = k
		p.Tasks[k] = Task{Step: &b.steps[i], StartMinutes: b.start[i], EndMinutes: b.start[i] + b.steps[i].Minutes, Hands: b.hands(i, b.start[i])}
	}
	for _, u := range b.uses {
		u.Task = place[u.Task]
		p.Uses = append(p.Uses, u)
	}
	for _, i := range order {
		if m, ok := b.moved[i]; ok && m.Minutes >= 1 {
			p.Moved = append(p.Moved, m)
		}
	}
	return p
}
