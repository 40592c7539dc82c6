package learn

import (
	"context"
	"math"
	"strconv"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/answer/tub"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
	"ripplewright/internal/work/batch"
	"ripplewright/internal/work/design"
)

// twice is how much harder a custard is taken to learn what that does to its minutes.
const twice = 2

// UnknownLineError says that a batch has weighed what the design does not hold.
type UnknownLineError struct{ Weight batch.Weight }

// Words are what is wrong.
func (e *UnknownLineError) Words() error {
	return flaw.New("weighed: the design has no %s in %s", e.Weight.Ingredient, e.Weight.Part)
}

func (e *UnknownLineError) Error() string { return e.Words().Error() }

// AsMade returns d, whose evaluation is r, with its lines fixed at the grams that were
// in the pan: as made, or as b has weighed them; and with the temperature at which b's
// syrup came off. The error is an *UnknownLineError.
func AsMade(d design.Design, r *model.Result, k cold.Profile, b *batch.Batch) (design.Design, error) {
	d.Batch.Basis = design.BasisAsWritten
	for _, l := range r.Lines {
		d = d.WithGrams(l.Part, l.Index, l.Grams)
	}
	d.Foam.Syrup.WeighedG = 0 // what the thermometer says is asked for
weights:
	for _, w := range b.Weights() {
		for i, l := range d.Lines(w.Part) {
			if l.Ingredient == w.Ingredient {
				d = d.WithGrams(w.Part, i, w.Grams)
				continue weights
			}
		}
		return d, &UnknownLineError{w}
	}
	if c := b.Syrup.ReadingC; c.Known {
		d.Foam.Syrup.CookTemperatureC = c.Value - offsetK(&d, k)
	}
	return d, nil
}

// offsetK is what the kitchen's probe shows too much, as far as its profile knows.
func offsetK(d *design.Design, k cold.Profile) float64 {
	if k.Stove.ProbeBoilsC == 0 {
		return 0
	}
	return k.Stove.ProbeBoilsC - boilsC(d)
}

// Expect returns what the models expect of a batch of d in kitchen k, with nothing
// learnt: k is as published, and m is taken so. It runs the cold once, which takes some tenths of a
// second. What b has not measured is taken from design and kitchen.
func Expect(ctx context.Context, m *model.Model, d design.Design, k cold.Profile, b *batch.Batch) (batch.Forecast, error) {
	var f batch.Forecast
	m = m.Published()
	r, err := m.Evaluate(d)
	if err != nil {
		return f, err
	}
	if d, err = AsMade(d, &r, k, b); err != nil {
		return f, err
	}
	if at := b.Ate.AtC; at.Known {
		d.Serving.TemperatureC = at.Value
	}
	if r, err = m.Evaluate(d); err != nil {
		return f, err
	}
	f.FreezerC, f.ProbeK = batch.Of(k.Freezer.AirC), known(offsetK(&d, k))
	f.CounterFactor, f.CounterWPerK = batch.Of(k.Counter.Factor), batch.Of(k.Counter.CoefficientWPerM2K)
	if b.FreezerC.Known {
		k.Freezer.AirC = b.FreezerC.Value
	}
	if b.RoomC.Known {
		k.Counter.AirC = b.RoomC.Value
	}
	p := process.Of(d, &r, process.KitchenOf(k), k.Freezer.AirC, nil)
	if p.Syrup.Present {
		f.WaterBoilsC = known(p.Syrup.WaterBoilsC + p.Syrup.ProbeOffsetK)
		f.SyrupG, f.SyrupSolidsPercent = known(r.Syrup.MassG), known(r.Syrup.SolidsPercent)
		hot := d
		hot.Foam.Syrup.CookTemperatureC++
		if s, err := m.Sketch(hot); err == nil {
			f.SyrupSolidsPerK = known(s.Syrup().SolidsPercent - r.Syrup.SolidsPercent)
		}
	}
	if p.Custard.Present {
		f.CustardG = known(p.Custard.WeighedG)
		f.CustardInG = known(r.Dense.Portion.MadeG + r.Dense.WaterOffG*r.Dense.Portion.Factor)
		f.StoveLossPercent = known(d.Dense.StoveLossPercent)
		f.CustardCupG, f.CustardOverrun = known(batch.CupML*r.Dense.Body.GPerML()), known(d.Dense.OverrunPercent)
		f.HardnessKPa = known(r.Dense.YieldKPa.Value)
	}
	if p.Foam.Present {
		f.FoamC = known(p.Foam.PeakC)
		f.FoamCupG, f.FoamOverrun = known(batch.CupML*r.Foam.Body.GPerML()), known(d.Foam.OverrunPercent)
	}
	if err := cutTub(ctx, &f, d, &r, b); err != nil {
		return f, err
	}
	if !r.Dense.InTub() || !r.Dense.Felt() {
		return f, nil
	}
	plan, err := cold.Plan(ctx, d, &r, k, cold.Options{NoPictures: true})
	if err != nil {
		return f, err
	}
	thaw(&f, &plan, &r.Dense.Body, b)
	days := 0.0
	if b.Ate.AfterDays.Known {
		days = b.Ate.AfterDays.Value
	}
	weeks := max(1, int(math.Ceil(days/7)))
	if told, err := icy.Tell(&r, &plan, icy.Options{Weeks: weeks}); err == nil && told.Custard.Frozen {
		f.IceUM = known(coarserUM(&told.Custard, days/7))
	}
	return f, nil
}

// cutTub fills in what the computed cut shows past what b's photograph cannot, if it has
// one: the cut costs some tenths of a second. A tub that cannot be drawn has none.
func cutTub(ctx context.Context, f *batch.Forecast, d design.Design, r *model.Result, b *batch.Batch) error {
	if !b.Cut.RibbonMM.Known && !b.Cut.FoamPercent.Known {
		return nil
	}
	view, _ := ripple.ParseView(b.Cut.View) // the side where it is not said
	all, err := tub.Cut(ctx, tub.RippleOf(d, r.Blend.FoamVolumeFraction, view), b.Cut.LeastMM.Value)
	if err != nil {
		return ctx.Err()
	}
	m := all[0]
	f.CutFoamPercent, f.CutRibbonMM, f.CutThickestMM = known(100*m.FoamFraction), known(m.Foam.MeanMM), known(m.Foam.ThickestTenthMM)
	return nil
}

// thaw fills in when the tub scoops.
func thaw(f *batch.Forecast, plan *cold.Answer, b *phase.Body, made *batch.Batch) {
	at := func(kPa float64) float64 {
		c, _ := b.YieldAtC(kPa, model.ColdestC, model.WarmestC)
		return c
	}
	firm := phase.Dense.Band().FirmKPa
	ring := at(firm)
	f.ScoopedTwiceHard = known(ThawedMinutes(plan, at(firm/twice)))
	if c := made.Scooped.RingC; c.Known {
		s := b.At(c.Value)
		ring, f.ScoopedKPa = c.Value, known(s.YieldKPa)
		f.ScoopedTwiceHard = known(ThawedMinutes(plan, ring))
	}
	f.ScoopedMinutes = known(ThawedMinutes(plan, ring))
	f.ScoopedFreezerWarmer = known(ThawedMinutes(plan, ring-1)) // as sure has it: as if it came out as much warmer
}

// ThawedMinutes returns when the outer ring of a tub on the counter is as warm as ringC, °C,
// NaN where it never is.
func ThawedMinutes(plan *cold.Answer, ringC float64) float64 {
	return plan.Counter.Run.RingMinutes(ringC)
}

// coarserUM is the size at the coarser place after so many weeks, between weeks by line.
func coarserUM(p *icy.Phase, weeks float64) float64 {
	i := min(int(weeks), len(p.Weeks)-1)
	a := p.Weeks[i].Coarser().ValueUM
	if i+1 >= len(p.Weeks) {
		return a
	}
	return a + (weeks-float64(i))*(p.Weeks[i+1].Coarser().ValueUM-a)
}

func boilsC(d *design.Design) float64 {
	return solution.BoilingC(0, water.AirPa(d.Kitchen.AltitudeM))
}

// known is v as far as it is a number, to the six digits that a file can be read with.
func known(v float64) batch.Measured {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return batch.Measured{}
	}
	digits, _ := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	return batch.Of(digits)
}
