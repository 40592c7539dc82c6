package balance

import (
	"context"
	"math"
	"slices"
	"sort"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// MostRemedies is how many remedies are looked for.
const MostRemedies = 3

// Remedies are what mends a design.
type Remedies struct {
	// List has up to MostRemedies, each of which gives a good verdict in one
	// step, the one that moves least first.
	List []Proposal
	// Unmet is, where none does, what cannot be met together with the rest, and
	// Nearest what comes closest; nil where nothing comes closer.
	Unmet   []Unmet
	Nearest *Proposal
}

// Unmet is a part of a good verdict that stays out of reach: a phase that does
// not eat well, or a caution.
type Unmet struct {
	Phase *model.Eating // as it stays; nil of a caution
	Role  phase.Role
	Code  string // of the caution
}

// First returns the remedy to name first, or the nearest, nil without either.
func (r *Remedies) First() *Proposal {
	if len(r.List) > 0 {
		return &r.List[0]
	}
	return r.Nearest
}

// All are the remedies and the nearest.
func (r *Remedies) All() (all []*Proposal) {
	for i := range r.List {
		all = append(all, &r.List[i])
	}
	if r.Nearest != nil {
		all = append(all, r.Nearest)
	}
	return all
}

// Mend looks for remedies of d, whose evaluation is r: none of a design that is
// good or has an empty phase. A cancelled context ends it early with what was
// found.
func Mend(ctx context.Context, m *model.Model, d design.Design, r *model.Result, locks Locks) Remedies {
	if r.Verdict.Good || r.Verdict.Empty {
		return Remedies{}
	}
	p := mending(m, d, locks)
	if p == nil {
		return Remedies{}
	}
	n := mender{problem: p, own: d.Own, first: make([]bool, len(p.levers))}
	for i := range p.levers {
		n.first[i] = answers(&p.levers[i], r)
	}
	n.look(ctx)
	return n.found
}

// mending is the problem of a good verdict, nil where the design makes no
// sketch.
func mending(m *model.Model, d design.Design, locks Locks) *problem {
	s, err := m.Sketch(d)
	if err != nil {
		return nil
	}
	k := newMaker(m.Holding(d.Own), &d, &s, locks)
	k.serving()
	k.lines()
	k.swaps()
	k.adds(design.DensePart, 0.25, sucrose, dextrose, "milk_whole")
	if len(d.Foam.Syrup.Lines) > 0 {
		k.adds(design.SyrupPart, 0.3, dextrose, glucoseSyrup, "water")
	}
	if len(d.Foam.Lines) > 0 {
		k.adds(design.FoamPart, 0.4, "egg_white")
	}
	k.air()
	k.syrup()
	k.ratio()
	k.setting("tubs.fill_percent", 60, d.Tubs.FillPercent, 3, 0.5, 0)
	k.forCautions(&s)
	p := newProblem(m, d, k.levers)
	p.eats, p.cautions = true, func(string) bool { return true }
	p.keep = &tastes{s.Phase(phase.Dense).SweetnessPercent, s.Phase(phase.Foam).SweetnessPercent}
	return p
}

// forCautions adds what only one caution asks to move.
func (k *maker) forCautions(s *model.Sketch) {
	for _, w := range s.Warnings() {
		if !spoils(&w) {
			continue
		}
		switch w.Code {
		case "freezer_overloaded":
			if k.d.Batch.Basis == design.BasisAsWritten {
				k.add(Lever{Kind: Batch, Low: 0.05, High: 1, Unit: 0.25, Price: 1})
			} else {
				k.setting("tubs.count", 1, float64(k.d.Tubs.Count), math.Max(1, float64(k.d.Tubs.Count)/8), 1, 1)
			}
		case "syrup_too_little":
			k.setting("tubs.count", float64(k.d.Tubs.Count), math.Min(500, 8*float64(k.d.Tubs.Count)+8), 2, 1, 1)
		case "stove_loss_exceeds_water":
			k.setting("dense.stove_loss_percent", 0, k.d.Dense.StoveLossPercent, 4, 1, 0)
		case "weighed_too_heavy", "syrup_weighed_too_light":
			k.setting("foam.syrup.weighed_g", 0, k.d.Foam.Syrup.WeighedG, k.d.Foam.Syrup.WeighedG, 1, k.d.Foam.Syrup.WeighedG)
		case "syrup_no_boil_off":
			k.setting("foam.syrup.cook_temperature_c", softBall, 130, 2, 3, 0)
		case "altitude_syrup":
			if f, ok := w.Facts.(model.AltitudeSyrup); ok { // the recipe's syrup, at its boiling point up here
				k.setting("foam.syrup.cook_temperature_c", math.Round(f.HereC)-1, math.Round(f.HereC), 2, 1, 0)
			}
		case "yolk_in_whites", "alcohol_boils_off":
			k.takeOut(w.Code)
		case "carbohydrate_unnamed", "acid_with_milk", "sugar_crystallises", "outside_model_range", "salt_rule_unsettled", "too_salty", "outside_hardness_law":
			k.allLines()
		}
	}
}

// takeOut adds levers that take yolk or spirit out of the foam, wholly.
func (k *maker) takeOut(code string) {
	parts := []design.Part{design.FoamPart, design.SyrupPart}
	if code == "alcohol_boils_off" {
		parts = parts[1:]
	}
	for _, p := range parts {
		for i, l := range k.d.Lines(p) {
			in, ok := k.m.Library().Find(l.Ingredient)
			if !ok || k.locks.Lines[LineAt{p, i}] {
				continue
			}
			yolk := code == "yolk_in_whites" && kind.Of(in) == kind.Yolk
			spirit := code == "alcohol_boils_off" && in.Cell(ingredient.Alcohol).Or(0) > 0
			switch {
			case !yolk && !spirit:
			case l.Count > 0:
				k.replace(Lever{Kind: Count, Part: p, Line: i, High: l.Count, Unit: l.Count, Whole: l.Count, Price: 1})
			default:
				k.replace(Lever{Part: p, Line: i, High: l.Grams, Unit: math.Max(l.Grams, 1), Whole: l.Grams, Price: 1})
			}
		}
	}
}

// allLines adds a lever down to nothing for each line that has none, since any
// ingredient may bring what a caution tells of.
func (k *maker) allLines() {
	for _, p := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
		for i, l := range k.d.Lines(p) {
			if l.Count > 0 || l.Grams <= 0 || k.locks.Lines[LineAt{p, i}] {
				continue
			}
			at := slices.IndexFunc(k.levers, func(v Lever) bool { return v.Kind == Grams && v.Part == p && v.Line == i })
			if at < 0 {
				k.add(Lever{Part: p, Line: i, High: l.Grams, Unit: math.Max(0.25*l.Grams, 0.1), Price: 3})
			} else if in, ok := k.m.Library().Find(l.Ingredient); ok && kind.Of(in) != kind.Yolk && kind.Of(in) != kind.White {
				k.levers[at].Low = 0
			}
		}
	}
}

// replace puts l in the place of a lever of the same line.
func (k *maker) replace(l Lever) {
	k.levers = slices.DeleteFunc(k.levers, func(v Lever) bool {
		return (v.Kind == Grams || v.Kind == Count) && v.Part == l.Part && v.Line == l.Line && l.Line >= 0
	})
	k.add(l)
}

// mender looks for remedies.
type mender struct {
	*problem
	own   []*ingredient.Ingredient
	found Remedies
	first []bool // by lever: it acts on a fault itself, so that a remedy may begin with it
}

// hopeless is after how many tries in vain nothing more is expected.
const hopeless = 3

// mostMoves is how many levers a remedy may move before all may.
const mostMoves = 6

func (n *mender) look(ctx context.Context) {
	banned := map[int]bool{}
	best, bestSum := append([]float64(nil), n.at...), math.Inf(1)
	note := func(x []float64) {
		if _, sum, ok := n.gaps(x); ok && sum < bestSum {
			best, bestSum = x, sum
		}
	}
	if _, sum, ok := n.gaps(n.at); ok {
		bestSum = sum * 0.98 // what is no better in earnest is not worth a change
	}
	for try, vain := 0, 0; vain < hopeless && len(n.found.List) < MostRemedies && ctx.Err() == nil; try++ {
		x, set := n.pursue(ctx, banned, n.first)
		if len(set) == 0 {
			break
		}
		note(x)
		if vain++; n.take(x) {
			vain = 0
		} else if try == 0 {
			if x := n.throw(ctx); x != nil {
				note(x)
				n.take(x)
			}
		}
		n.ban(banned, n.foremost(x, set))
	}
	n.sift()
	if len(n.found.List) > 0 || ctx.Err() != nil {
		return
	}
	n.nearest(best)
}

// ban leaves lever i out of the next remedy, and with the grams of a sugar those
// of all sugars of its part: more honey instead of more sugar is no other remedy.
func (n *mender) ban(banned map[int]bool, i int) {
	banned[i] = true
	l := &n.levers[i]
	if !n.sweetens(l) {
		return
	}
	for k := range n.levers {
		if o := &n.levers[k]; o.Part == l.Part && n.sweetens(o) {
			banned[k] = true
		}
	}
}

// sweetens reports whether a lever moves the grams of a sugar.
func (n *mender) sweetens(l *Lever) bool {
	if l.Kind != Grams {
		return false
	}
	id := l.With
	if l.Line >= 0 {
		id = n.d.Lines(l.Part)[l.Line].Ingredient
	}
	in, ok := n.m.Library().Find(id)
	return ok && kind.Of(in) == kind.Sugar
}

// sift puts the remedies in the order of what they move and drops those that
// turn a design over where another hardly touches it.
func (n *mender) sift() {
	list := n.found.List
	sort.SliceStable(list, func(i, j int) bool { return n.cost(&list[i]) < n.cost(&list[j]) })
	for i := range list {
		if n.cost(&list[i]) > 2.5*n.cost(&list[0])+4 {
			n.found.List = list[:i]
			return
		}
	}
}

// take adds the proposal of x to the remedies if it is good and not one of them.
func (n *mender) take(x []float64) bool {
	q, ok := n.propose(x, n.own, func(q *Proposal) bool { return q.Result.Verdict.Good })
	if !ok || len(q.Changes) == 0 {
		return false
	}
	for i := range n.found.List {
		if sameMoves(n.found.List[i].Changes, q.Changes) {
			return false
		}
	}
	n.found.List = append(n.found.List, q)
	return true
}

// sameMoves reports whether two remedies move the same things.
func sameMoves(a, b []Change) bool {
	return slices.EqualFunc(a, b, func(a, b Change) bool {
		return a.Path == b.Path && a.Part == b.Part && a.Line == b.Line && a.Ingredient == b.Ingredient
	})
}

// cost orders remedies: how many things they move, and how far.
func (n *mender) cost(q *Proposal) float64 {
	sum := 0.0
	for _, c := range q.Changes {
		sum++
		for i := range n.levers {
			l := &n.levers[i]
			if l.Kind != Swap && l.Path == c.Path && (l.Path != "" || l.Part == c.Part && l.Line == c.Line) {
				sum += price(l) * math.Abs(c.After-c.Before) / l.Unit / 2
				break
			}
		}
	}
	return sum
}

// foremost is the lever of set that is moved furthest.
func (n *mender) foremost(x []float64, set []int) int {
	best, far := set[0], -1.0
	for _, i := range set {
		if by := math.Abs(n.units(i, x[i])) * price(&n.levers[i]); by > far {
			best, far = i, by
		}
	}
	return best
}

// reaches are how far a lever is tried, as shares of its range.
var reaches = [...]float64{0.03, 0.08, 0.18, 0.35, 0.6, 1}

// pursue moves one lever after the other, each the one that helps most, until
// nothing is missed. It returns where the levers then stand, and which are moved.
func (p *problem) pursue(ctx context.Context, banned map[int]bool, first []bool) (x []float64, set []int) {
	x = append([]float64(nil), p.at...)
	_, sum, ok := p.gaps(x)
	if !ok {
		return x, nil
	}
	for len(set) < mostMoves && sum > 0 && ctx.Err() == nil {
		known := map[int]attempt{}
		if len(set) == 0 {
			known = p.opening
		}
		best, to := p.foremostAt(x, sum, known, func(i int) bool {
			return !banned[i] && !slices.Contains(set, i) && (len(set) > 0 || first == nil || first[i])
		})
		if best < 0 {
			break
		}
		set = append(set, best)
		x[best] = to
		free := slices.DeleteFunc(slices.Clone(set), func(i int) bool { return p.levers[i].Whole > 0 })
		if len(free) > 0 {
			x, _ = p.descend(ctx, x, free, 12)
		}
		_, sum, _ = p.gaps(x)
		if sum < enough {
			break
		}
	}
	if sum < enough {
		x, set = p.prune(ctx, x, set)
	}
	return x, set
}

// enough is what may be missed still: within what the clearance leaves.
const enough = 1e-3

// prune puts back what turns out not to be needed once all of set is moved.
func (p *problem) prune(ctx context.Context, x []float64, set []int) ([]float64, []int) {
	for k := 0; k < len(set) && len(set) > 1; {
		y := append([]float64(nil), x...)
		y[set[k]] = p.at[set[k]]
		rest := slices.Delete(slices.Clone(set), k, k+1)
		if free := slices.DeleteFunc(slices.Clone(rest), func(i int) bool { return p.levers[i].Whole > 0 }); len(free) > 0 {
			y, _ = p.descend(ctx, y, free, 12)
		}
		if _, sum, ok := p.gaps(y); ok && sum < enough {
			x, set, k = y, rest, 0
			continue
		}
		k++
	}
	return x, set
}

// An attempt is a lever moved alone: to what, what is then missed, and a score that
// is less for what meets more by moving less.
type attempt struct {
	lever                int
	value, missed, score float64
}

// The attempts of levers that may move: all are guessed, and of these so many of
// the best are made, and more while a guess is better than what has been made.
const leastAttempts = 4

// foremostAt returns the lever that helps most at x, where sum is missed, and
// where to move it; −1 where none helps in earnest. It adds to known what it has
// made of attempts at x.
func (p *problem) foremostAt(x []float64, sum float64, known map[int]attempt, may func(i int) bool) (lever int, to float64) {
	r, _, ok := p.gaps(x)
	if !ok {
		return -1, 0
	}
	var guesses []attempt
	for i := range p.levers {
		if t, ok := known[i]; ok && may(i) {
			guesses = append(guesses, t)
		} else if may(i) {
			guesses = append(guesses, p.guess(x, r, i, sum))
		}
	}
	slices.SortStableFunc(guesses, func(a, b attempt) int { return cmp(a.score, b.score) })
	best := attempt{lever: -1, score: math.Inf(1)}
	for n, g := range guesses {
		if n >= leastAttempts && best.score <= g.score {
			break
		}
		t, ok := known[g.lever]
		if !ok {
			t = p.try(x, g.lever, sum)
			known[g.lever] = t
		}
		if t.score < best.score && t.missed < sum*0.97 {
			best = t
		}
	}
	return best.lever, best.value
}

// eachReach calls f with the values of lever i that are tried from x on.
func (p *problem) eachReach(x float64, i int, f func(v, moved float64)) {
	l := &p.levers[i]
	for _, end := range [...]float64{l.Low, l.High} {
		for _, by := range reaches {
			v := x + by*(end-x)
			if l.Whole > 0 {
				v = l.Whole * math.Round(v/l.Whole)
			}
			if v != x && v >= l.Low && v <= l.High {
				f(v, price(l)*math.Abs(v-p.at[i])/l.Unit+price(l))
			}
		}
	}
}

func score(missed, sum, moved float64) float64 { return missed/sum*40 + moved }

// guess is the best attempt of lever i by the slopes of r, what is missed at x, as
// far as they hold. Those of a lever in whole steps do not: its guess is the best
// there could be.
func (p *problem) guess(x, r []float64, i int, sum float64) attempt {
	l := &p.levers[i]
	best := attempt{lever: i, value: x[i], missed: sum, score: math.Inf(1)}
	step := 0.01 * (l.High - l.Low)
	if x[i]+step > l.High {
		step = -step
	}
	y := slices.Clone(x)
	y[i] += step
	next, _, ok := p.gaps(y)
	if l.Whole > 0 || !ok {
		best.score = 0
		return best
	}
	p.eachReach(x[i], i, func(v, moved float64) {
		s := 0.0
		for k := range r {
			if d := next[k] - r[k]; r[k]*(r[k]+d*(v-x[i])/step) > 0 { // within its band nothing is missed
				e := r[k] + d*(v-x[i])/step
				s += e * e
			}
		}
		if at := score(s, sum, moved); at < best.score {
			best.value, best.missed, best.score = v, s, at
		}
	})
	return best
}

// try moves lever i alone.
func (p *problem) try(x []float64, i int, sum float64) attempt {
	y := slices.Clone(x)
	best := attempt{lever: i, value: x[i], missed: sum, score: math.Inf(1)}
	p.eachReach(x[i], i, func(v, moved float64) {
		y[i] = v
		if _, s, ok := p.gaps(y); ok && score(s, sum, moved) < best.score {
			best.value, best.missed, best.score = v, s, score(s, sum, moved)
		}
	})
	return best
}

// throw moves all levers at once, from several points, for what no few of them
// reach.
func (n *mender) throw(ctx context.Context) []float64 {
	free := n.loose()
	best, bestSum := []float64(nil), math.Inf(1)
	for _, from := range n.starts(free, 2) {
		if ctx.Err() != nil {
			break
		}
		if x, sum := n.descend(ctx, from, free, 15); sum < bestSum {
			best, bestSum = x, sum
		}
	}
	return best
}

// loose lists the levers that may take any value.
func (p *problem) loose() []int {
	var free []int
	for i := range p.levers {
		if p.levers[i].Whole == 0 {
			free = append(free, i)
		}
	}
	return free
}

// starts returns p's own point and the n best of a scatter over the ranges of
// the free levers.
func (p *problem) starts(free []int, n int) [][]float64 {
	type start struct {
		x   []float64
		sum float64
	}
	var all []start
	for k := 1; k <= 16*n; k++ {
		x := append([]float64(nil), p.at...)
		for j, i := range free {
			l := &p.levers[i]
			x[i] = l.Low + halton(k, j)*(l.High-l.Low)
			x[i] = p.at[i] + 0.6*(x[i]-p.at[i])
		}
		if _, sum, ok := p.gaps(x); ok {
			all = append(all, start{x, sum})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].sum < all[j].sum })
	out := [][]float64{append([]float64(nil), p.at...)}
	for _, s := range all[:min(n, len(all))] {
		out = append(out, s.x)
	}
	return out
}

// halton is the k-th number of the j-th of the sequences that scatter evenly
// (Halton 1960, Numerische Mathematik 2:84).
func halton(k, j int) float64 {
	base := primes[j%len(primes)]
	f, v := 1.0, 0.0
	for k += j / len(primes); k > 0; k /= base {
		f /= float64(base)
		v += f * float64(k%base)
	}
	return v
}

var primes = [...]int{2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71}

// nearest tells what x, the closest that was found, leaves unmet.
func (n *mender) nearest(x []float64) {
	q, _ := n.propose(x, n.own, func(*Proposal) bool { return false })
	v, warnings := q.Result.Verdict, q.Result.Warnings
	if len(q.Changes) > 0 {
		n.found.Nearest = &q
	} else if r, err := n.m.Evaluate(n.d); err == nil {
		v, warnings = r.Verdict, r.Warnings
	}
	for i, e := range [...]model.Eating{v.Dense, v.Foam} {
		if e.How != model.EatsWell && e.How != model.NotThere && e.How != model.NotKnown {
			n.found.Unmet = append(n.found.Unmet, Unmet{Phase: &e, Role: roles[i]})
		}
	}
	for i := range warnings {
		if w := &warnings[i]; spoils(w) && !slices.ContainsFunc(n.found.Unmet, func(u Unmet) bool { return u.Code == w.Code }) {
			n.found.Unmet = append(n.found.Unmet, Unmet{Code: w.Code})
		}
	}
}
