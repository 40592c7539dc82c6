package learn

import (
	"fmt"
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// Design returns d as this kitchen makes it: its losses, its air and, where the
// thermometer decides, the syrup that it comes to, by perK points of solids for each K.
// A setting that would leave its range ends there.
func (p *Posterior) Design(d design.Design, perK float64) design.Design {
	d.Dense.StoveLossPercent = within("dense.stove_loss_percent", d.Dense.StoveLossPercent+p.Factors[StoveLoss].Mean)
	d.Dense.OverrunPercent = within("dense.overrun_percent", d.Dense.OverrunPercent*math.Exp(p.Factors[CustardAir].Mean))
	d.Foam.OverrunPercent = within("foam.overrun_percent", d.Foam.OverrunPercent*math.Exp(p.Factors[FoamAir].Mean))
	if perK > 0 && d.Foam.Syrup.WeighedG == 0 && len(d.Foam.Syrup.Lines) > 0 {
		d.Foam.Syrup.CookTemperatureC = within("foam.syrup.cook_temperature_c", d.Foam.Syrup.CookTemperatureC+p.Factors[SyrupSolids].Mean/perK)
	}
	return d
}

func within(path string, v float64) float64 {
	f, ok := design.FieldAt(path)
	if !ok {
		panic("learn: no setting " + path)
	}
	return math.Min(math.Max(v, f.Min), f.Max)
}

// Kitchen returns k as its batches have shown it, at the height of d. What was not
// measured stays.
func (p *Posterior) Kitchen(d *design.Design, k cold.Profile) cold.Profile {
	if p.Learnt(Probe) {
		k.Stove.ProbeBoilsC = boilsC(d) + offsetK(d, k) + p.Factors[Probe].Mean
	}
	if p.Learnt(FreezerK) {
		k.Freezer.AirC = math.Min(math.Max(k.Freezer.AirC+p.Factors[FreezerK].Mean, coldestAirC), warmestAirC)
	}
	if p.Learnt(Counter) {
		k.Counter.Factor *= math.Exp(p.Factors[Counter].Mean)
		k.Counter.LearntSpreadFraction = math.Min(k.Counter.SpreadFraction(), math.Exp(nineteenIn20*math.Hypot(p.Factors[Counter].SD, minutesDay))-1)
		k.Counter.Measured = fmt.Sprintf("learnt from %d batches", p.Batches)
	}
	if p.Learnt(Ice) {
		k.Learnt.IceFactor = math.Min(math.Max(math.Exp(p.Factors[Ice].Mean), icy.LeastFactor), icy.MostFactor)
		k.Learnt.IceLeftFraction = p.Narrower(Ice)
		k.Learnt.IceBatches = p.Counts(Ice)
	}
	return k
}

// The air of a freezer as package cold takes it, °C.
const coldestAirC, warmestAirC = -40, -2

// Model returns m as batches have taught it: how hard the custard is over the law, by which
// factor it may still be off, and what boil, stove and air come to. What is not learnt is
// as published.
func (p *Posterior) Model(m *model.Model) *model.Model {
	t := model.Taught{Recipe: p.recipe()}
	if b := p.Factors[Hardness]; p.Learnt(Hardness) {
		t.Readings, t.HarderFactor, t.ScatterFactor = p.Counts(Hardness), math.Exp(b.Mean), math.Exp(phase.ScatterHolds*b.SD)
	}
	if t == (model.Taught{}) {
		return m.Published()
	}
	return m.Taught(t)
}

// makings are the factors of the recipe, with what differs from one batch to the next.
var makings = [model.NumMakings]struct {
	of  Factor
	day float64
}{
	model.Boiled: {SyrupSolids, solidsPoints}, model.Reduced: {StoveLoss, lossPoints},
	model.CustardAir: {CustardAir, airDay}, model.FoamAir: {FoamAir, airDay},
}

// recipe is what is learnt of the makings.
func (p *Posterior) recipe() (out [model.NumMakings]model.Lesson) {
	for i, x := range makings {
		if p.Learnt(x.of) {
			out[i] = model.Lesson{Readings: p.Counts(x.of), Mean: p.Factors[x.of].Mean,
				Half: nineteenIn20 * p.before[x.of] * p.left(x.of, x.day), Before: nineteenIn20 * p.before[x.of]}
		}
	}
	return out
}

// left is how much is left of a factor's spread in the next batch, which differs from the
// last as days do.
func (p *Posterior) left(f Factor, day float64) float64 {
	return math.Min(1, math.Hypot(p.Factors[f].SD, day)/p.before[f])
}

// RibbonMM returns what a mean ribbon that the computed cut has at mm comes to as this hand
// stirs, and where 8 of 10 of its tubs lie. One tub is not the next.
func (p *Posterior) RibbonMM(mm float64) (lowMM, valueMM, highMM float64) {
	b := p.Factors[Mixing]
	b.SD = math.Hypot(b.SD, cutShare)
	low, value, high := b.Band(Mixing)
	return low * mm, value * mm, high * mm
}

// Kitchens returns what sampled kitchens are off by from now on: this one's mean, and as
// much as is left of its spread with what differs from batch to batch.
func (p *Posterior) Kitchens() *sure.Learnt {
	var l sure.Learnt
	left := func(f Factor, day float64) float64 {
		if !p.Learnt(f) && p.before[f] == prior[f] {
			return 1
		}
		return math.Min(1, p.left(f, day)*p.before[f]/prior[f])
	}
	l.Shift[sure.Syrup], l.Left[sure.Syrup] = p.Factors[SyrupSolids].Mean, left(SyrupSolids, solidsPoints)
	l.Shift[sure.Freezer], l.Left[sure.Freezer] = p.Factors[FreezerK].Mean, left(FreezerK, 0)
	l.Shift[sure.Law], l.Left[sure.Law] = p.Factors[Hardness].Mean, left(Hardness, 0)
	l.Shift[sure.Thaw], l.Left[sure.Thaw] = -p.Factors[Counter].Mean, left(Counter, minutesDay)
	l.Left[sure.Weighing], l.Left[sure.EggSize] = 1, 1
	l.CustardAirShiftFraction, l.FoamAirShiftFraction = math.Exp(p.Factors[CustardAir].Mean)-1, math.Exp(p.Factors[FoamAir].Mean)-1
	l.Left[sure.Air] = math.Max(left(CustardAir, airDay), left(FoamAir, airDay))
	l.StoveLossPercent = p.Factors[StoveLoss].Mean
	return &l
}
