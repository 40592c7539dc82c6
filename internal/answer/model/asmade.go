package model

import (
	"math"
	"sync"

	"ripplewright/internal/matter/blend"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// asMade is a recipe as kitchens make it: in the middle, and with each making at either
// end, which batches have shown or, where they tell nothing, is stated before any. Weights
// are those of the recipe as written, so that less air fills fewer tubs. Warnings, verdict,
// scoop ranges and lines are left out.
type asMade struct {
	mean *Result
	ends [NumMakings]*[2]*Result // nil: this recipe has nothing of the kind
}

// untaught is a recipe of which batches tell nothing: what kitchens make of it is worked
// out when somebody asks, since searches and labels never do.
type untaught struct {
	once sync.Once
	made *asMade
	of   *maker
}

// asMade returns it.
func (u *untaught) asMade() *asMade {
	u.once.Do(func() { u.made, u.of = u.of.asMade(), nil })
	return u.made
}

// maker makes a recipe that is weighed out as w and fills was as written.
type maker struct {
	m   *Model
	d   design.Design
	w   weighed
	was blend.Tub

	mean settled
}

func (k *maker) asMade() *asMade {
	recipe := k.m.taught.Recipe
	var by [NumMakings]float64
	for i, l := range recipe {
		by[i] = l.Mean
	}
	a := asMade{mean: k.by(by, NumMakings)}
	for i, l := range recipe {
		half := l.Half
		if !l.Known() {
			half = Unlearnt[i]
		}
		if k.has(Making(i)) {
			low, high := by, by
			low[i], high[i] = by[i]-half, by[i]+half
			a.ends[i] = &[2]*Result{k.by(low, Making(i)), k.by(high, Making(i))}
		}
	}
	return &a
}

// has reports whether the recipe has anything that making i moves.
func (k *maker) has(i Making) bool {
	switch i {
	case Boiled:
		return k.d.Foam.Syrup.WeighedG == 0 && k.w.mixes[design.SyrupPart][0].TotalG() > 0
	case Reduced:
		return k.w.mixes[design.DensePart][0].TotalG() > 0
	case CustardAir:
		return k.d.Dense.OverrunPercent > 0
	}
	return k.d.Foam.OverrunPercent > 0
}

// by is the recipe with its makings so far from what is written, of which one alone is not
// as in the middle; NumMakings: all are. A setting that would leave its range ends there.
func (k *maker) by(by [NumMakings]float64, alone Making) *Result {
	d, taught := k.d, k.m.taught
	d.Dense.StoveLossPercent = within("dense.stove_loss_percent", d.Dense.StoveLossPercent+by[Reduced])
	d.Dense.OverrunPercent = within("dense.overrun_percent", d.Dense.OverrunPercent*math.Exp(by[CustardAir]))
	d.Foam.OverrunPercent = within("foam.overrun_percent", d.Foam.OverrunPercent*math.Exp(by[FoamAir]))
	points, band := tables, BoilingBand
	if taught.Recipe[Boiled].Known() || by[Boiled] != 0 { // the ends tell what is left open
		points, band = [3]float64{by[Boiled], by[Boiled], by[Boiled]}, 0
	}
	c := cook(d, &k.w, points)
	at, s := d.Serving.TemperatureC, k.mean
	if alone == NumMakings || alone == Reduced || alone == CustardAir {
		s.dense = phaseAt(c.dense.mix, d.Dense.OverrunPercent, phase.Dense, c.bound, at, taught)
	}
	if alone == NumMakings || alone == Boiled || alone == FoamAir {
		s.foam = phaseAt(c.foam, d.Foam.OverrunPercent, phase.Foam, c.bound, at, taught)
	}
	if alone == NumMakings {
		k.mean = s
	}
	f := refill(d, &c, &s, &k.was)
	r := Result{
		Dense: s.dense.with(f.tub.Dense, k.w.tally[design.DensePart], c.dense.off),
		Foam:  s.foam.with(f.tub.Foam, k.w.tally[design.FoamPart].Plus(k.w.tally[design.SyrupPart], 1), c.syrup.off),
		Syrup: c.syrup.result(f.tub.Foam.Factor, band),
		Blend: f.mixed(&s),
	}
	r.Nutrition = nutrition(d, &r)
	return &r
}

func within(path string, v float64) float64 {
	f, ok := design.FieldAt(path)
	if !ok {
		panic("model: no setting " + path)
	}
	return math.Min(math.Max(v, f.Min), f.Max)
}

// refill fills the tubs with as much of each phase as was weighed out to fill them as
// written.
func refill(d design.Design, c *cooked, s *settled, was *blend.Tub) filled {
	dense, foam := s.dense.Body, s.foam.Body
	dense.Mix, foam.Mix = c.dense.mix[0].Times(was.Dense.Factor), c.foam[0].Times(was.Foam.Factor)
	f := filled{count: float64(d.Tubs.Count), tub: blend.Fill(&dense, &foam, blend.Order{
		FillML:       float64(d.Tubs.Count) * d.Tubs.VolumeML * d.Tubs.FillPercent / 100,
		FoamFraction: d.Blend.FoamVolumePercent / 100,
	})}
	f.tub.Dense.Factor, f.tub.Foam.Factor = was.Dense.Factor, was.Foam.Factor
	return f
}

// Made returns the recipe as batches came out in the middle, nil where they have shown
// nothing of it. It has no warnings, verdict, scoop ranges and lines.
func (r *Result) Made() *Result {
	if r.made == nil {
		return nil
	}
	return r.made.mean
}

// Spread returns a figure of r with its band: as of tells it, widened to what the recipe
// comes to in kitchens of which nothing is known; or, where batches have shown that, from
// their middle on as far either way as their ends are, and to what is written, which stays
// the value. A span without a band has NaN ends.
//
//	low = min(value, c − √Σ b²),  b = c − the lower of the ends of each making
func (r *Result) Spread(of func(*Result) Span) Span {
	s := of(r)
	a := r.made
	if a == nil && r.untaught != nil {
		a = r.untaught.asMade()
	}
	if a == nil || math.IsNaN(s.Value) {
		return s
	}
	low, high, told := a.around(of, 0, NumMakings)
	if r.made == nil { // rounding aside, the middle is what is written
		low, high = math.Min(low, ended(s).Low), math.Max(high, ended(s).High)
	}
	if w := ended(s); !told || alike(low, w.Low) && alike(high, w.High) {
		return s
	}
	return Span{s.Value, math.Min(s.Value, low), math.Max(s.Value, high)}
}

// Freezing returns where a phase of r begins to freeze, °C, with its band by Spread.
func (r *Result) Freezing(role phase.Role) Span {
	return r.Spread(func(r *Result) Span { return r.Phase(role).FreezingPointC })
}

// Frozen is how much of a phase's water is ice, 0 to 1, likewise.
func (r *Result) Frozen(role phase.Role) Span {
	return r.Spread(func(r *Result) Span { return r.Phase(role).FrozenFraction })
}

// Phase returns the phase that plays a role.
func (r *Result) Phase(role phase.Role) *Phase {
	if role == phase.Dense {
		return &r.Dense
	}
	return &r.Foam
}

// alike reports whether two figures differ by rounding alone.
func alike(x, y float64) bool { return math.Abs(x-y) <= 1e-9*math.Abs(y) }

// around is the band of a figure by some of the makings, about their middle; told is
// false where nobody knows it there.
func (a *asMade) around(of func(*Result) Span, from, to Making) (low, high float64, told bool) {
	c := ended(of(a.mean))
	if math.IsNaN(c.Value) {
		return 0, 0, false
	}
	var below, above float64
	least, most := c.Low, c.High
	for _, ends := range a.ends[from:to] {
		if ends == nil {
			continue
		}
		var b, t float64
		for _, r := range ends {
			if e := ended(of(r)); !math.IsNaN(e.Value) {
				b, t = math.Max(b, c.Low-e.Low), math.Max(t, e.High-c.High)
				least, most = math.Min(least, e.Low), math.Max(most, e.High)
			}
		}
		below, above = below+b*b, above+t*t
	}
	low, high = c.Low-math.Sqrt(below), c.High+math.Sqrt(above)
	if least >= 0 { // what is never below nothing is not by coming together
		low = math.Max(low, 0)
	}
	if most <= 0 {
		high = math.Min(high, 0)
	}
	return low, high, true
}

// ended is s with its value for ends that it has not.
func ended(s Span) Span {
	if math.IsNaN(s.Low) {
		s.Low = s.Value
	}
	if math.IsNaN(s.High) {
		s.High = s.Value
	}
	return s
}

// bands returns r with the bands of its own spans by what batches have shown. By value, so
// that a result without batches stays off the heap.
func (a *asMade) bands(r Result) Result {
	r.made = a
	for _, role := range [...]phase.Role{phase.Dense, phase.Foam} {
		p := r.Phase(role)
		p.FreezingPointC, p.FrozenFraction = r.Freezing(role), r.Frozen(role)
		p.YieldKPa = a.yield(p.YieldKPa, r.Taught.Recipe, func(r *Result) *Phase { return r.Phase(role) })
	}
	solids := r.Spread(func(r *Result) Span {
		return Span{r.Syrup.SolidsPercent, r.Syrup.SolidsBandPercent[0], r.Syrup.SolidsBandPercent[1]}
	})
	r.Syrup.SolidsBandPercent = [2]float64{solids.Low, solids.High}
	return r
}

// yield is the band of a hardness. The scatter between batches, a factor k of which
// phase.ScatterHolds standard deviations are, holds already what stove and air do in a
// kitchen that nobody knows: that is taken out, and put in what is left of it.
//
//	ln²k' = ln²k − Σ(before² − after²)
func (a *asMade) yield(s Span, recipe [NumMakings]Lesson, of func(*Result) *Phase) Span {
	hardness := func(r *Result) Span { return of(r).YieldKPa }
	low, high, told := a.around(hardness, Boiled, Boiled+1)
	if math.IsNaN(s.Value) || !told {
		return s
	}
	p := of(a.mean)
	k := math.Log(p.scatter)
	less := 0.0
	for i := Boiled + 1; i < NumMakings; i++ {
		l := recipe[i]
		if !l.Known() || a.ends[i] == nil {
			continue
		}
		after := phase.ScatterHolds / NineteenIn20 / 2 * math.Log(hardness(a.ends[i][1]).Value/hardness(a.ends[i][0]).Value)
		if before := after * l.Before / l.Half; !math.IsNaN(after) && !math.IsInf(after, 0) {
			less += before*before - after*after
		}
	}
	narrower := math.Exp(k - math.Sqrt(math.Max(k*k-less, 0)))
	return Span{s.Value, math.Min(s.Value, low*narrower), math.Max(s.Value, high/narrower)}
}
