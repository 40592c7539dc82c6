package process

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
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
