package process

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/work/design"
)

func (b *builder) custard(p *Process, times *cold.Answer) {
	in := linesOf(b.r, p)
	if n := float64(p.Eggs.Crack); n > 0 {
		b.add(Step{Code: Crack, Minutes: 3 + perEgg*n, HandsOnMinutes: 3 + perEgg*n, Uses: []Resource{Hands, EggBowl}, WaitMaxMinutes: eggsKeep})
	}
	if len(in[Bloom]) > 0 {
		b.add(Step{Code: Bloom, Lines: in[Bloom], Minutes: 10, HandsOnMinutes: 1, Uses: []Resource{}, WaitMaxMinutes: 60})
	}
	if !p.Custard.Present {
		return
	}
	if len(in[YolkSugar]) > 0 {
		b.add(Step{Code: YolkSugar, Lines: in[YolkSugar], Minutes: 4, HandsOnMinutes: 4, Uses: []Resource{Hands}, After: []StepCode{Crack}, WaitMaxMinutes: 20})
	}
	if len(in[HeatMilk]) > 0 {
		b.add(Step{Code: HeatMilk, Lines: in[HeatMilk], Minutes: 8, HandsOnMinutes: 5, Uses: []Resource{Hands, Pan}, WaitMaxMinutes: hotWait})
	}
	if p.Custard.cooked() {
		m := 10.0
		if !math.IsNaN(p.Custard.OffMinutes) {
			m = math.Max(m, math.Min(p.Custard.OffMinutes, 60))
		}
		m *= float64(p.Custard.Parts)
		b.add(Step{Code: Cook, Minutes: m, HandsOnMinutes: m, Uses: []Resource{Hands, Pan}, After: []StepCode{YolkSugar, HeatMilk}, WaitMaxMinutes: hotWait})
	}
	jelly := b.bloomed(in, design.DensePart)
	heated := b.last(YolkSugar, HeatMilk, Cook) != nil
	if len(in[OffHeat]) > 0 || jelly && heated {
		b.add(Step{Code: OffHeat, Lines: in[OffHeat], Minutes: 4, HandsOnMinutes: 4, Uses: []Resource{Hands, Pan}, After: append(b.last(HeatMilk, Cook), Bloom), WaitMaxMinutes: hotWait})
	}
	if before := b.last(YolkSugar, HeatMilk, Cook, OffHeat); before != nil {
		bath := p.Custard.Cool.BathMinutes
		if math.IsNaN(bath) {
			bath = 30
		}
		b.add(Step{Code: CoolDown, Minutes: bath, HandsOnMinutes: math.Min(bath, 6), Uses: []Resource{WaterBath}, After: before, WaitMaxMinutes: 30})
		b.add(Step{Code: Rest, Minutes: restMin, Uses: []Resource{Fridge}, After: []StepCode{CoolDown}, WaitMaxMinutes: restMax - restMin})
	}
	if len(in[ColdIn]) > 0 {
		after := []StepCode{Rest}
		if jelly && !heated {
			after = append(after, Bloom)
		}
		b.add(Step{Code: ColdIn, Lines: in[ColdIn], Minutes: 3, HandsOnMinutes: 3, Uses: []Resource{Hands}, After: after, WaitMaxMinutes: 60})
	}
	b.freezeSoft(p, times)
}

// freezeSoft turns the custard in a churn, or freezes it still in a tray that is
// beaten now and then.
func (b *builder) freezeSoft(p *Process, times *cold.Answer) {
	after := b.last(Rest, ColdIn)
	if k := p.Kitchen; k.Churns() {
		if k.Churn != BatchFreezer {
			b.add(Step{Code: FreezeBowl, Minutes: 60 * bowlHours, HandsOnMinutes: 1, Uses: []Resource{Freezer}})
		}
		runs := math.Max(1, float64(p.Freezing.ChurnRuns))
		b.add(Step{Code: FreezeSoft, Minutes: runs * perRunMin, HandsOnMinutes: 5 * runs, Uses: []Resource{Turning}, After: append(after, FreezeBowl), WaitMaxMinutes: softWait})
		return
	}
	soft, stirs := softStageMin*1.0, 5.0
	if times != nil && times.StillFreeze.Dense.ReadyMinutes.Known() {
		soft, stirs = times.StillFreeze.Dense.ReadyMinutes.Value, float64(len(times.StillFreeze.Dense.Stirs))
	}
	b.add(Step{Code: FreezeSoft, Minutes: soft, HandsOnMinutes: math.Min(soft, 3*stirs+2), Uses: []Resource{Dish, Freezer}, After: after, WaitMaxMinutes: softWait})
}

// bloomed reports whether gelatine of the custard, or of the foam and its syrup,
// was soaked.
func (b *builder) bloomed(in map[StepCode][]Used, part design.Part) bool {
	for _, u := range in[Bloom] {
		if (b.r.Lines[u.Line].Part == design.DensePart) == (part == design.DensePart) {
			return true
		}
	}
	return false
}

// cooked reports whether the custard goes to a temperature on the stove.
func (c *Custard) cooked() bool { return c.Yolk || !math.IsNaN(c.StarchC) }

func (b *builder) foam(p *Process, times *cold.Answer) {
	f := &p.Foam
	if !f.Present {
		return
	}
	in := linesOf(b.r, p)
	if len(in[BowlWhites]) > 0 {
		s := Step{Code: BowlWhites, Lines: in[BowlWhites], Minutes: 5, HandsOnMinutes: 5, Uses: []Resource{Hands, Mixer, MixBowl}, After: []StepCode{Crack}, WaitMaxMinutes: peaksWait}
		if f.Whites == DriedWhite { // first it swells, then it is beaten
			s.Minutes += swellMin
		}
		b.add(s)
	}
	switch {
	case len(in[BoilSyrup]) > 0:
		m := p.Syrup.Minutes.Value
		if math.IsNaN(m) || m <= 0 {
			m = 10
		}
		b.add(Step{Code: BoilSyrup, Lines: in[BoilSyrup], Minutes: m + 2, HandsOnMinutes: m/2 + 2, Uses: []Resource{SyrupPan}, WaitMaxMinutes: 1})
		stop := math.Min(WhiskLongest, math.Max(whiskQuickest, f.StopMinutes))
		if math.IsNaN(stop) {
			stop = WhiskLongest
		}
		if f.Cream {
			stop = creamMin
		}
		stop = float64(f.Bowls) * (p.Kitchen.Pour.minutes() + stop)
		b.add(Step{Code: PourIn, Minutes: stop, HandsOnMinutes: stop, Uses: []Resource{Hands, Mixer, MixBowl}, After: []StepCode{BowlWhites, BoilSyrup, Bloom}, WaitMaxMinutes: f.keeps()})
	default:
		if f.Whites == FreshWhite || f.Whites == FreshYolk {
			b.add(Step{Code: HoldWhites, Minutes: 10, HandsOnMinutes: 10, Uses: []Resource{Hands, Pan, MixBowl}, After: []StepCode{BowlWhites}, WaitMaxMinutes: hotWait})
		}
		whip := 8.0 * float64(f.Bowls)
		if b.last(HoldWhites) != nil { // until it is cool too
			whip = WhiskLongest * float64(f.Bowls)
		}
		b.add(Step{Code: WhipCold, Minutes: whip, HandsOnMinutes: whip, Uses: []Resource{Hands, Mixer, MixBowl}, After: append(b.last(BowlWhites, HoldWhites), Bloom), WaitMaxMinutes: foamWait})
	}
	if len(in[FoldIn]) > 0 {
		b.add(Step{Code: FoldIn, Lines: in[FoldIn], Minutes: 3, HandsOnMinutes: 3, Uses: []Resource{Hands, MixBowl}, After: b.last(PourIn, WhipCold), WaitMaxMinutes: f.keeps()})
	}
	chill := float64(coldStageMin)
	if times != nil && times.StillFreeze.Foam.ReadyMinutes.Known() {
		chill = math.Max(5, times.StillFreeze.Foam.ReadyMinutes.Value)
	}
	b.add(Step{Code: ChillFoam, Minutes: chill, HandsOnMinutes: 1, Uses: []Resource{Freezer}, After: b.last(PourIn, WhipCold, FoldIn), WaitMaxMinutes: f.keeps()})
}

// keeps is how many minutes the foam stands before it drains.
func (f *Foam) keeps() float64 {
	if f.Hot {
		return syrupFoamWait
	}
	return foamWait
}

func (b *builder) tub(p *Process, times *cold.Answer) {
	in := linesOf(b.r, p)
	if b.r.Blend.MassG <= 0 {
		return
	}
	fill := 3 + perTubMinutes*math.Ceil(b.r.Blend.TubsFilled)
	b.add(Step{Code: ChillTubs, Minutes: tubsMin, HandsOnMinutes: 1, Uses: []Resource{Freezer}, WaitMaxMinutes: restMax})
	b.add(Step{Code: Swirl, Lines: in[Swirl], Minutes: fill, HandsOnMinutes: fill, Uses: []Resource{Hands}, After: []StepCode{FreezeSoft, ChillFoam, ChillTubs}, WaitMaxMinutes: 10})
	hours := float64(hardenHours)
	if times != nil && times.Harden.Hours.Known() {
		hours = times.Harden.Hours.Value
	}
	b.add(Step{Code: Hardening, Minutes: 60 * hours, HandsOnMinutes: 1, Uses: []Resource{Freezer}, After: []StepCode{Swirl}})
	out := 0.0
	if times != nil && times.Counter.OK && times.Counter.FromMinutes.Known() {
		out = times.Counter.FromMinutes.Value
	}
	b.add(Step{Code: Serve, Minutes: out, HandsOnMinutes: 0, Uses: []Resource{}, After: []StepCode{Hardening}})
}
