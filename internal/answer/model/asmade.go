package model

import (
	"math"

	"ripplewright/internal/matter/blend"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// asMade is a recipe as batches have shown it to come out: in the middle, and with each
// making that they tell of at either end. Weights are those of the recipe as written, so
// that less air fills fewer tubs. Warnings, verdict, scoop ranges and lines are left out.
type asMade struct {
	mean *Result
	ends [NumMakings]*[2]*Result // nil: no batch tells
}

// asMade returns nil where batches have shown nothing of the recipe of d, which is weighed
// out as w and fills was as written.
func (m *Model) asMade(d design.Design, w *weighed, was *blend.Tub) *asMade {
	recipe := m.taught.Recipe
	if recipe == ([NumMakings]Lesson{}) {
		return nil
	}
	var by [NumMakings]float64
	for i, l := range recipe {
		by[i] = l.Mean
	}
	a := asMade{mean: m.madeBy(d, w, was, by)}
	for i, l := range recipe {
		if l.Known() {
			low, high := by, by
			low[i], high[i] = l.Mean-l.Half, l.Mean+l.Half
			a.ends[i] = &[2]*Result{m.madeBy(d, w, was, low), m.madeBy(d, w, was, high)}
		}
	}
	return &a
}

// madeBy is the recipe with its makings so far from what is written. A setting that would
// leave its range ends there.
func (m *Model) madeBy(d design.Design, w *weighed, was *blend.Tub, by [NumMakings]float64) *Result {
	d.Dense.StoveLossPercent = within("dense.stove_loss_percent", d.Dense.StoveLossPercent+by[Reduced])
	d.Dense.OverrunPercent = within("dense.overrun_percent", d.Dense.OverrunPercent*math.Exp(by[CustardAir]))
	d.Foam.OverrunPercent = within("foam.overrun_percent", d.Foam.OverrunPercent*math.Exp(by[FoamAir]))
	points, band := tables, BoilingBand
	if m.taught.Recipe[Boiled].Known() { // the ends tell what is left open
		points, band = [3]float64{by[Boiled], by[Boiled], by[Boiled]}, 0
	}
	c := cook(d, w, points)
	s := settle(d, &c, m.taught)
	f := refill(d, &c, &s, was)
	r := Result{
		Dense: s.dense.with(f.tub.Dense, w.tally[design.DensePart], c.dense.off),
		Foam:  s.foam.with(f.tub.Foam, w.tally[design.FoamPart].Plus(w.tally[design.SyrupPart], 1), c.syrup.off),
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

// Spread returns a figure of r with its band: as of tells it, or, where batches have shown
// what the recipe comes to, from their middle on as far either way as their ends are, and
// to what is written, which stays the value. A span without a band has NaN ends.
//
//	low = min(value, c − √Σ b²),  b = c − the lower of the ends of each making
func (r *Result) Spread(of func(*Result) Span) Span {
	s := of(r)
	if r.made == nil || math.IsNaN(s.Value) {
		return s
	}
	low, high, told := r.made.around(of, 0, NumMakings)
	if w := ended(s); !told || alike(low, w.Low) && alike(high, w.High) {
		return s
	}
	return Span{s.Value, math.Min(s.Value, low), math.Max(s.Value, high)}
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
	for _, of := range [...]func(*Result) *Phase{func(r *Result) *Phase { return &r.Dense }, func(r *Result) *Phase { return &r.Foam }} {
		p := of(&r)
		p.FreezingPointC = r.Spread(func(r *Result) Span { return of(r).FreezingPointC })
		p.FrozenFraction = r.Spread(func(r *Result) Span { return of(r).FrozenFraction })
		p.YieldKPa = a.yield(p.YieldKPa, r.Taught.Recipe, of)
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
		if !l.Known() {
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
