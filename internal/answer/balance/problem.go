package balance

import (
	"context"
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// problem is a design, what may move of it and what is wished of it.
type problem struct {
	m       *model.Model
	k       *model.Sketcher
	d       design.Design
	levers  []Lever
	at      []float64       // where the levers stand in d
	over    *scratch        // the lines of the last sketch
	looks   *int            // how many sketches have been made
	opening map[int]attempt // what has been found of levers moved first and alone

	wishes   []Wish
	eats     bool // both phases are to eat well, by role:
	eat      [2]bite
	cautions func(string) bool // codes of the cautions that must not be; nil: none matters
	guard    float64           // weight of the cautions
	made     bool              // grams are those of the batch as made: its factors are to stay 1
	change   float64           // weight of what is moved, beside what is missed
	keep     *tastes           // what a remedy leaves alone where it can; nil: nothing
}

// tastes are how sweet the phases are.
type tastes struct{ custard, foam float64 }

// newProblem returns the problem of d with the levers, on a model that holds
// d's own ingredients.
func newProblem(m *model.Model, d design.Design, levers []Lever) *problem {
	p := &problem{m: m.Holding(d.Own), d: d, levers: levers, at: make([]float64, len(levers)), change: 1e-4, guard: 1, opening: map[int]attempt{}, over: &scratch{}, looks: new(int)}
	p.d.Own = nil
	p.k = p.m.Sketcher()
	for i := range levers {
		p.at[i] = levers[i].value(&d)
	}
	return p
}

// with returns p with other wishes.
func (p *problem) with(wishes []Wish) *problem {
	q := *p
	q.wishes = wishes
	return &q
}

// design returns p's design with the levers at x.
func (p *problem) design(x []float64) design.Design { return apply(p.d, p.levers, p.at, x, nil) }

// sketch returns the sketch of p's design with the levers at x, which stands
// until the next.
func (p *problem) sketch(x []float64) (*model.Sketch, error) {
	*p.looks++
	return p.k.Sketch(apply(p.d, p.levers, p.at, x, p.over))
}

// units returns how far lever i is from where it stood.
func (p *problem) units(i int, x float64) float64 { return (x - p.at[i]) / p.levers[i].Unit }

// The slots of the residuals that are no wish's: two phases, and then the cautions.
var roles = [...]phase.Role{phase.Dense, phase.Foam}

const (
	clearance  = 0.01 // by what share of its step a figure stays within it, so that rounding does not pass it
	softer     = 0.92 // of a band's firm end, and
	firmer     = 1.15 // of its soft end, likewise
	strainStep = 0.05 // share of a step that weighs as much as a step of a wish
	stuck      = 4    // steps that a caution without a figure weighs
)

// goals returns the number of residuals that say what is missed.
func (p *problem) goals() int { return len(p.wishes) + len(roles) + len(codes) + 2 }

// missed puts into r what s misses, in steps, and returns the sum of squares.
func (p *problem) missed(s *model.Sketch, r []float64) (sum float64) {
	for i := range p.wishes {
		w := &p.wishes[i]
		r[i] = w.miss(w.Value(s)) * math.Sqrt(w.Weight)
	}
	k := len(p.wishes)
	for i, role := range roles {
		r[k+i] = 0
		if p.eats {
			r[k+i] = p.eat[i].missed(s.Phase(role))
		}
	}
	k += len(roles)
	p.strained(s, r[k:k+len(codes)])
	if p.guard != 1 {
		for i := range codes {
			r[k+i] *= math.Sqrt(p.guard)
		}
	}
	k += len(codes)
	r[k], r[k+1] = 0, 0
	if p.made {
		for i, role := range roles {
			if f := s.Phase(role).Portion.Factor; f > 0 {
				r[k+i] = math.Log(f) / 0.002 // tenth of a per cent: the eggs stay whole
			}
		}
	}
	for i, x := range r[:p.goals()] {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			r[i] = unknown
		}
		sum += r[i] * r[i]
	}
	return sum
}

// bite is the hardness between which a phase is to eat well, with something to spare for
// rounding, kPa.
type bite struct{ soft, firm float64 }

// biteOf is that of a phase which has p now: of one that eats well already, no end is
// asked to be further off than it is.
func biteOf(p *model.Phase, r phase.Role) bite {
	band := r.Band()
	b := bite{firmer * band.SoftKPa, softer * band.FirmKPa}
	if p.InTub() && p.Felt() && band.Holds(p.State.YieldKPa) {
		b.soft, b.firm = math.Min(b.soft, p.State.YieldKPa), math.Max(b.firm, p.State.YieldKPa)
	}
	return b
}

// missed returns how far a phase is outside, in steps of its hardness.
func (b bite) missed(p *model.Phase) float64 {
	if !p.InTub() || !p.Felt() {
		return 0
	}
	switch kPa := p.State.YieldKPa; {
	case kPa > b.firm:
		return math.Log(kPa/b.firm) / CustardHardness.step
	case kPa < b.soft:
		return math.Log(kPa/b.soft) / CustardHardness.step
	}
	return 0
}

// strained puts into r, by code, how far the cautions that matter are passed.
func (p *problem) strained(s *model.Sketch, r []float64) {
	clear(r)
	if p.cautions == nil {
		return
	}
	for _, x := range s.Strains() {
		if by := x.Past() + clearance; by > 0 && p.cautions(x.Code) {
			i := slot(x.Code)
			r[i] = math.Hypot(r[i], by/strainStep)
		}
	}
	for _, w := range s.Warnings() {
		if !spoils(&w) || !p.cautions(w.Code) {
			continue
		}
		i := slot(w.Code)
		switch f := w.Facts.(type) {
		case model.SyrupNoBoilOff:
			if r[i] = 1 + (f.BoilsAtC-f.CookToC)/2; math.IsNaN(r[i]) { // of dry sugar
				r[i] = stuck
			}
		default:
			if r[i] == 0 {
				r[i] = stuck
			}
		}
	}
}

// sub is the problem in some of its levers, the others standing at base.
type sub struct {
	*problem
	base  []float64
	free  []int
	x     []float64 // scratch
	fault bool      // the last point could not be sketched
}

func (p *problem) sub(base []float64, free []int) *sub {
	return &sub{problem: p, base: base, free: free, x: make([]float64, len(base))}
}

func (s *sub) count() int { return s.goals() + 2*len(s.free) + 2 }

// point returns the levers' values at u, each within its range.
func (s *sub) point(u []float64) []float64 {
	x := append([]float64(nil), s.base...)
	s.place(u, x)
	return x
}

func (s *sub) place(u, x []float64) {
	copy(x, s.base)
	for k, i := range s.free {
		l := &s.levers[i]
		x[i] = math.Min(math.Max(s.at[i]+u[k]*l.Unit, l.Low), l.High)
	}
}

// from returns where the free levers stand at x.
func (s *sub) from(x []float64) []float64 {
	u := make([]float64, len(s.free))
	for k, i := range s.free {
		u[k] = s.units(i, x[i])
	}
	return u
}

// residuals are what is missed, what is moved, and how far u is out of range,
// in that order.
func (s *sub) residuals(u, r []float64) {
	s.place(u, s.x)
	n := s.goals()
	sketch, err := s.sketch(s.x)
	if err != nil {
		for i := range r {
			r[i] = unknown
		}
		return
	}
	s.missed(sketch, r)
	for k, i := range s.free {
		l := &s.levers[i]
		r[n+k] = math.Sqrt(s.change*price(l)) * s.units(i, s.x[i])
		r[n+len(s.free)+k] = 3 * (u[k] - s.units(i, s.x[i]))
	}
	n += 2 * len(s.free)
	r[n], r[n+1] = 0, 0
	if t := s.keep; t != nil {
		r[n] = keepsTaste * (sketch.Phase(phase.Dense).SweetnessPercent - t.custard)
		r[n+1] = keepsTaste * (sketch.Phase(phase.Foam).SweetnessPercent - t.foam)
	}
}

// keepsTaste is what a point of sweetness more or less weighs in a remedy: little
// beside what is missed, much beside a gram.
const keepsTaste = 0.01

func price(l *Lever) float64 {
	if l.Price == 0 {
		return 1
	}
	return l.Price
}

// objective returns the sum that a search makes small, at x.
func (p *problem) objective(x []float64, free []int) float64 {
	s := p.sub(x, free)
	r := make([]float64, s.count())
	s.residuals(s.from(x), r)
	sum := 0.0
	for _, v := range r {
		sum += v * v
	}
	return sum
}

// gaps returns what is missed at x, in steps: of the wishes, then of the phases,
// the cautions and the factors. ok is false where x makes no design.
func (p *problem) gaps(x []float64) (r []float64, sum float64, ok bool) {
	s, err := p.sketch(x)
	if err != nil {
		return nil, math.Inf(1), false
	}
	r = make([]float64, p.goals())
	sum = p.missed(s, r)
	return r, sum, true
}

// descend returns the best point near x in the free levers.
func (p *problem) descend(ctx context.Context, x []float64, free []int, steps int) (best []float64, sum float64) {
	s := p.sub(x, free)
	u, sum := solver.minimise(ctx, s, s.from(x), steps)
	return s.point(u), sum
}

// solver is what all searches of this package use.
var solver minimiser = newton{}
