package process

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/work/design"
)

// StepCode names a step of the making. Package say has its words.
type StepCode string

// The steps, in the order in which they are listed.
const (
	Crack      StepCode = "crack"
	Bloom      StepCode = "bloom_gelatine"
	YolkSugar  StepCode = "yolks_and_sugar"
	HeatMilk   StepCode = "heat_milk"
	Cook       StepCode = "cook"
	OffHeat    StepCode = "off_the_heat"
	CoolDown   StepCode = "cool"
	Rest       StepCode = "rest"
	ColdIn     StepCode = "stir_in_cold"
	FreezeBowl StepCode = "freeze_churn_bowl"
	FreezeSoft StepCode = "freeze_soft"
	BowlWhites StepCode = "whites_in_the_bowl"
	HoldWhites StepCode = "hold_whites_hot"
	BoilSyrup  StepCode = "boil_syrup"
	PourIn     StepCode = "pour_and_whisk"
	WhipCold   StepCode = "whip"
	FoldIn     StepCode = "fold_in"
	ChillFoam  StepCode = "chill_foam"
	ChillTubs  StepCode = "chill_tubs"
	Swirl      StepCode = "fill_and_swirl"
	Hardening  StepCode = "harden"
	Serve      StepCode = "serve"
)

// Resource is a thing of the kitchen that one step at a time can use.
type Resource string

// The resources. Hands are the cook's.
const (
	Hands     Resource = "hands"
	Mixer     Resource = "mixer"
	Pan       Resource = "pan"
	SyrupPan  Resource = "syrup_pan"
	MixBowl   Resource = "bowl"
	EggBowl   Resource = "egg_bowl"
	Dish      Resource = "dish"
	Turning   Resource = "churn"
	Freezer   Resource = "freezer"
	Fridge    Resource = "refrigerator"
	WaterBath Resource = "ice_bath"
)

// Used is how much of a line goes in at a step.
type Used struct {
	Line  int // of Result.Lines
	Grams float64
}

// Step is one step. Minutes are from its begin to its end, HandsOn those of
// them that a cook stands by.
type Step struct {
	Code                    StepCode
	Lines                   []Used
	Minutes, HandsOnMinutes float64
	Uses                    []Resource
	After                   []StepCode // must be done first
	WaitMaxMinutes          float64    // minutes that what comes of it keeps before the next step; +Inf: no limit
}

// Rests and waits, minutes. All common practice, no source, but for the
// refrigerator's days: raw white and yolk keep 2 to 4 days (official cold
// storage chart, reprinted 2018).
const (
	restMin       = 4 * 60
	restMax       = 24 * 60
	eggsKeep      = 2 * 24 * 60
	hotWait       = 10  // a hot custard or syrup does not wait
	peaksWait     = 15  // soft peaks weep
	foamWait      = 30  // a whisked foam without cooked sugar drains
	syrupFoamWait = 240 // one of syrup cooked to 120 to 130 °C stood for 24 h (J. Cookery Sci. Japan 43(3)); at 118 °C a sixth of that
	softWait      = 15  // half frozen custard goes on freezing
	perEgg        = 0.7 // to crack and separate
	coldStageMin  = 60  // of a foam in the freezer where the cold was not computed
	softStageMin  = 180
	hardenHours   = 12
	whiskQuickest = 8 // with a hand mixer, until the foam is cool (8 to 12 min)
	perTubMinutes = 2
	swellMin      = 20 // dried white in its water
	perRunMin     = 30 // of a churn: one batch took 28.5 (a tester's page, 2017)
	bowlHours     = 24 // that a churn's bowl freezes before: the same page
	tubsMin       = 30 // that tubs and spoon are in the freezer before
	creamMin      = 40 // to cool a base without whites in ice water and whip it
)

// WhiskLongest is how long a foam is beaten before its bowl is set in cold
// water, minutes: common practice, no source.
const WhiskLongest = 15

// steps lists the making of the batch in order, each line of the design in the
// steps where it is used.
func (p *Process) steps(d design.Design, r *model.Result, times *cold.Answer) []Step {
	b := &builder{r: r, at: map[StepCode]int{}}
	b.custard(p, times)
	b.foam(p, times)
	b.tub(p, times)
	return b.list
}

// builder puts steps in their order; a step is made by its first line or by
// need.
type builder struct {
	r    *model.Result
	list []Step
	at   map[StepCode]int
}

func (b *builder) add(s Step) *Step {
	if s.WaitMaxMinutes == 0 {
		s.WaitMaxMinutes = math.Inf(1)
	}
	// A step waits only for those that this design has.
	after := s.After[:0:0]
	for _, c := range s.After {
		if _, ok := b.at[c]; ok {
			after = append(after, c)
		}
	}
	s.After = after
	b.at[s.Code] = len(b.list)
	b.list = append(b.list, s)
	return &b.list[len(b.list)-1]
}

// last returns the code of the latest of codes that the design has, as a list.
func (b *builder) last(codes ...StepCode) []StepCode {
	for i := len(codes) - 1; i >= 0; i-- {
		if _, ok := b.at[codes[i]]; ok {
			return codes[i : i+1]
		}
	}
	return nil
}

// pan is what decides where the custard's lines go in.
type pan struct {
	yolk   bool
	liquid bool // something to heat the rest in that acid does not curdle
	reduce bool // water is to be driven off
}

func panOf(r *model.Result, p *Process) pan {
	w := pan{yolk: p.Custard.Yolk, reduce: p.Custard.WaterOffG > 0}
	for _, l := range r.Lines {
		if k := kind.Of(l.Ingredient); l.Part == design.DensePart && l.Grams > 0 {
			w.liquid = w.liquid || k == kind.Liquid || k == kind.Infusion && l.Ingredient.Cell(ingredient.Water).Or(0) > 50
		}
	}
	return w
}

// step says in which steps a line of the custard goes in, and how much of it in
// the first. Without anything else to heat, the sour things are the liquid.
func (w pan) step(k kind.Kind, in *ingredient.Ingredient) (first, second StepCode, share float64) {
	heated := HeatMilk
	if !w.liquid && !w.yolk && !w.reduce {
		heated = ColdIn // stirred together
	}
	switch k {
	case kind.Yolk, kind.White, kind.WhitePast, kind.WhiteDry:
		return YolkSugar, "", 1
	case kind.Sugar:
		if w.yolk && in.Cell(ingredient.Water).Or(0) < 10 {
			return YolkSugar, heated, 0.5
		}
	case kind.Starch:
		if w.yolk {
			return YolkSugar, "", 1
		}
		return HeatMilk, "", 1
	case kind.Gelatine:
		return Bloom, "", 1
	case kind.Chocolate, kind.Fat, kind.Paste:
		if heated == HeatMilk {
			return OffHeat, "", 1
		}
	case kind.Sour, kind.Acid, kind.Cultured:
		if w.liquid {
			return ColdIn, "", 1
		}
	case kind.Spirit:
		return ColdIn, "", 1
	case kind.Piece:
		return Swirl, "", 1
	}
	return heated, "", 1
}

// foamStep says in which step a line of the foam's bowl goes in.
func foamStep(k kind.Kind, in *ingredient.Ingredient) StepCode {
	switch k {
	case kind.Sour:
		if in.ID == "lemon_juice" || in.ID == "lime_juice" { // an acid that whites stand by
			return BowlWhites
		}
		return FoldIn
	case kind.Spirit, kind.Cocoa, kind.Chocolate, kind.Fat, kind.Paste, kind.Cultured:
		return FoldIn
	case kind.Gelatine:
		return Bloom
	case kind.Piece:
		return Swirl
	}
	return BowlWhites
}

// linesOf sorts the lines into steps.
func linesOf(r *model.Result, p *Process) map[StepCode][]Used {
	out := map[StepCode][]Used{}
	w := panOf(r, p)
	put := func(c StepCode, line int, g float64) {
		if g > 0 {
			out[c] = append(out[c], Used{line, g})
		}
	}
	for i, l := range r.Lines {
		k := kind.Of(l.Ingredient)
		switch {
		case !(l.Grams > 0):
		case l.Part == design.SyrupPart:
			if k == kind.Gelatine {
				put(Bloom, i, l.Grams)
			} else {
				put(BoilSyrup, i, l.Grams)
			}
		case l.Part == design.FoamPart:
			put(foamStep(k, l.Ingredient), i, l.Grams)
		default:
			first, second, share := w.step(k, l.Ingredient)
			part := share * l.Grams
			put(first, i, part)
			put(second, i, l.Grams-part)
		}
	}
	return out
}

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
