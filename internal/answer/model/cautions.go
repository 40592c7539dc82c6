package model

import (
	"fmt"
	"math"
	"slices"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/limits"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
	"ripplewright/internal/work/design"
)

// The facts of the kitchen's limits.
type (
	// OverLimit is of air_beyond_process, yolk_heavy, too_sweet,
	// not_sweet_enough, too_salty, freezer_overloaded, syrup_too_little,
	// yolk_in_whites, alcohol_boils_off, acid_with_milk and starch_with_yolk: a
	// figure past a step of a limit.
	OverLimit struct {
		Limit *limits.Limit
		Step  limits.Step
		Value float64 // in the limit's unit
		Extra float64 // syrup_too_little: g of syrup; freezer_overloaded: kg of the batch; alcohol_boils_off: g of alcohol; else 0
	}

	// WeighedTooHeavy is of weighed_too_heavy, g.
	WeighedTooHeavy struct{ PanG, WentInG float64 }

	// Crystallises is of sugar_crystallises: the solutes over their rule.
	Crystallises struct {
		Phase   phase.Role
		Solutes []phase.Dissolved
	}

	// CrystalsUnchecked is of crystals_unchecked: the solutes that have no rule.
	CrystalsUnchecked struct {
		Phase   phase.Role
		Solutes []mix.Species
	}

	// CarbohydrateUnnamed is of carbohydrate_unnamed: whose pack leaves it out,
	// and how much of it is in 100 g of the phase.
	CarbohydrateUnnamed struct {
		Ingredients []*ingredient.Ingredient
		Per100G     float64
		FreezesAtC  Span // °C, as inert and as a simple sugar
	}

	// OutsideHardnessLaw is of outside_hardness_law: where the law ends, the
	// state in full.
	OutsideHardnessLaw struct {
		Phase                    phase.Role
		Law                      phase.LawRange
		AtC                      float64
		FatPercent, SugarPercent float64 // of the phase; of its liquid
		MostPercent, LeastC      float64 // sugar up to which, and °C down to which, a liquid's thickness is known
	}

	// AltitudeSyrup is of altitude_syrup, °C: the temperature asked for; that at
	// which the same syrup boils at sea level, NaN beyond the boiling model; and
	// that at which the syrup which the asked temperature means at sea level
	// boils here.
	AltitudeSyrup struct{ AltitudeM, AskedC, AtSeaC, HereC, WaterBoilsC float64 }
)

var severityOf = [...]Severity{limits.Note: Note, limits.Warn: Caution, limits.Stop: Serious}

// pass warns where v is past a step of l of at least the given level, and
// returns the warning, nil where there is none.
func (r *Result) pass(l *limits.Limit, from limits.Level, where string, v float64) *Warning {
	if l != &limits.StarchWithYolk { // a step of the card deals with that
		for _, s := range l.Steps {
			if s.Level >= limits.Warn {
				r.strain(l.Code, where, v, s.At, l.Below)
				break
			}
		}
	}
	step, ok := l.Passed(v)
	if !ok || step.Level < from {
		return nil
	}
	r.warn(severityOf[step.Level], l.Code, where, OverLimit{Limit: l, Step: step, Value: v})
	return &r.Warnings[len(r.Warnings)-1]
}

// with sets the Extra of a limit's warning.
func (w *Warning) with(extra float64) *Warning {
	if w != nil {
		f := w.Facts.(OverLimit)
		f.Extra = extra
		w.Facts = f
	}
	return w
}

// handled marks a warning as one that a step of the card deals with, so that
// the verdict stands.
func (w *Warning) handled() {
	if w != nil {
		w.Handled = true
	}
}

// warnLimits holds the design against what a kitchen can do and people eat.
func (r *Result) warnLimits(m *Model, d design.Design, w *weighed, c *cooked) {
	dense, foam, syrup := w.cook[design.DensePart], w.cook[design.FoamPart], w.cook[design.SyrupPart]
	if p := &r.Dense; p.InTub() {
		r.pass(&limits.CustardAir, limits.Warn, "dense.overrun_percent", 100*p.Body.OverrunFraction)
		r.pass(&limits.Yolk, limits.Warn, "dense", 1000*dense.yolk/p.WrittenG)
		r.pass(&limits.SweetCustard, limits.Warn, "dense", p.SweetnessPercent)
		// What a pack leaves unnamed may be sugar: only what is flat even then is called so.
		r.pass(&limits.FlatCustard, limits.Warn, "dense", p.SweetnessPercent+100*dense.unnamed/p.WrittenG)
		r.pass(&limits.Salt, limits.Warn, "dense", 1000*dense.salt/p.WrittenG)
		r.pass(&limits.AlcoholOnStove, limits.Note, "dense", 100*dense.alcohol/p.WrittenG).with(dense.alcohol).handled()
		if dense.yolk > 0 {
			r.pass(&limits.StarchWithYolk, limits.Note, "dense", 1000*dense.starch/p.WrittenG).handled()
		}
		r.warnAcid(&dense)
		r.warnUnnamed(p, m, d, "dense", dense.unnamed)
		r.warnCrystals(p, "dense")
		r.warnLaw(p, "dense")
	}
	if p := &r.Foam; p.InTub() {
		r.pass(&limits.FoamAir, limits.Warn, "foam.overrun_percent", 100*p.Body.OverrunFraction)
		r.pass(&limits.Salt, limits.Warn, "foam", 1000*(foam.salt+syrup.salt)/p.WrittenG)
		if yolk := foam.yolk + syrup.yolk; yolk > 0 {
			r.pass(&limits.YolkInWhite, limits.Note, "foam", 100*math.Min(yolk/foam.white, 1))
		}
		r.pass(&limits.AlcoholInSyrup, limits.Note, "foam.syrup", 100*syrup.alcohol/p.WrittenG).with(syrup.alcohol)
		r.warnUnnamed(p, m, d, "foam", foam.unnamed+syrup.unnamed)
		r.warnCrystals(p, "foam")
		r.warnLaw(p, "foam")
		r.warnSyrup(d, w, c)
	}
	if r.Blend.MassG > 0 {
		if r.Dense.InTub() && r.Foam.InTub() {
			r.pass(&limits.SweetTub, limits.Warn, "blend", r.Blend.SweetnessPercent)
		}
		made := r.Dense.Portion.MadeG + r.Foam.Portion.MadeG
		r.pass(&limits.FreezerLoad, limits.Warn, "tubs", r.freezerLoad()).with(made / 1000)
	}
}

// warnUnnamed tells of carbohydrate that a maker's pack leaves open: it may lie
// inert like starch or freeze like a simple sugar. Where is the figure to fill in
// of the first of them, or its line where the record is not the design's.
func (r *Result) warnUnnamed(p *Phase, m *Model, d design.Design, part string, grams float64) {
	r.strain(limits.UnnamedCarbohydrate.Code, part, 100*grams/p.WrittenG, limits.UnnamedCarbohydrate.Steps[1].At, false)
	step, ok := limits.UnnamedCarbohydrate.Passed(100 * grams / p.WrittenG)
	if !ok {
		return
	}
	f := CarbohydrateUnnamed{Per100G: 100 * grams / p.WrittenG, FreezesAtC: p.FreezingPointC}
	where := part
	for _, l := range r.Lines {
		if r.phaseOf(l.Part) == p && l.Grams > 0 && m.resolve(l.Ingredient).brings.unnamed > 0 {
			if len(f.Ingredients) == 0 {
				where = fmt.Sprintf("%s.lines[%d]", l.Part, l.Index)
				if i := slices.Index(d.Own, l.Ingredient); i >= 0 {
					where = fmt.Sprintf("ingredients[%d].%s", i, unnamedField(l.Ingredient))
				}
			}
			f.Ingredients = append(f.Ingredients, l.Ingredient)
		}
	}
	r.warn(severityOf[step.Level], limits.UnnamedCarbohydrate.Code, where, f)
}

// unnamedField is the first figure that a record leaves open and that could name
// its carbohydrate.
func unnamedField(in *ingredient.Ingredient) string {
	if k := in.Pack; k != nil {
		for _, x := range [...]struct {
			cell ingredient.Cell
			name string
		}{{k.Sugars, "sugars"}, {k.Polyols, "polyols"}, {k.Fibre, "fibre"}, {k.Starch, "starch"}} {
			if !x.cell.Known {
				return "pack." + x.name
			}
		}
		return "pack"
	}
	for _, c := range [...]ingredient.Column{ingredient.TotalSugars, ingredient.Polyols, ingredient.Fibre, ingredient.Starch} {
		if !in.Cell(c).Known {
			return c.String()
		}
	}
	return ingredient.Carbohydrate.String()
}

// warnCrystals holds each solute against its rule where the tub is kept. Over the
// rule that usual mixes break is a note; a search that has to move at all is led
// to where even that is silent.
func (r *Result) warnCrystals(p *Phase, where string) {
	var over []phase.Dissolved
	severity := Note
	for _, s := range p.Body.Dissolved(HomeFreezerC) {
		r.strain("sugar_crystallises", where, s.GPer100G, s.MostGPer100G, false)
		if s.Over() {
			over = append(over, s)
		}
		if s.Surely() {
			severity = Caution
		}
	}
	if len(over) > 0 {
		r.warn(severity, "sugar_crystallises", where, Crystallises{p.Body.Role, over})
	}
	var unruled []mix.Species
	for _, s := range phase.Unruled {
		if p.Percent(s) >= leastUnruled {
			unruled = append(unruled, s)
		}
	}
	if len(unruled) > 0 {
		r.warn(Note, "crystals_unchecked", where, CrystalsUnchecked{p.Body.Role, unruled})
	}
}

// leastUnruled is how much of a solute, g per 100 g, is worth a note that nobody
// says how it crystallises: fruit brings less. Ours to choose.
const leastUnruled = 2.0

const outsideLaw = "outside_hardness_law"

// warnLaw tells where the hardness law ends, so that no word is given.
func (r *Result) warnLaw(p *Phase, where string) {
	r.strain(outsideLaw, where, p.State.SyrupSugarPercent, solution.ViscosityRange.MaxPercent, false)
	r.strain(outsideLaw, where, p.Percent(mix.Fat), 100*phase.MostFat, false)
	if law := p.Body.LawRange(&p.State); law.Ends() {
		r.warn(Caution, "outside_hardness_law", where, OutsideHardnessLaw{Phase: p.Body.Role, Law: law, AtC: p.State.AtC,
			FatPercent: p.Percent(mix.Fat), SugarPercent: p.State.SyrupSugarPercent,
			MostPercent: solution.ViscosityRange.MaxPercent, LeastC: solution.ViscosityRange.MinC})
	}
}

// warnAcid looks at acid beside milk: heated with it, or, where that curdles,
// whisked into the cold custard, as the card's steps have it.
func (r *Result) warnAcid(dense *brought) {
	if dense.milk <= 0 || dense.acid <= 0 {
		return
	}
	perKG := 1000 * dense.acid / dense.milk
	r.strain(limits.AcidCold.Code, "dense", perKG, limits.AcidCold.Steps[1].At, false)
	if limits.AcidCold.Level(perKG) >= limits.Warn {
		r.pass(&limits.AcidCold, limits.Warn, "dense", perKG)
		return
	}
	step, ok := limits.AcidHot.Passed(perKG)
	if !ok {
		return
	}
	s := Note // stirred in cold it stays smooth
	if step.Level == limits.Stop {
		s = Caution
	}
	r.Warnings = append(r.Warnings, Warning{Code: limits.AcidHot.Code, Where: "dense", Severity: s, Facts: OverLimit{Limit: &limits.AcidHot, Step: step, Value: perKG}, Handled: true})
}

func (r *Result) warnSyrup(d design.Design, w *weighed, c *cooked) {
	if !r.Syrup.Present {
		return
	}
	if c.syrup.excess > 0 {
		r.warn(Serious, "weighed_too_heavy", "foam.syrup.weighed_g", WeighedTooHeavy{d.Foam.Syrup.WeighedG, d.Foam.Syrup.WeighedG - c.syrup.excess})
	}
	if r.Syrup.Weighed {
		return // the scale decides, not the thermometer
	}
	r.pass(&limits.SyrupDepth, limits.Warn, "foam.syrup", limits.SyrupDepthMM(r.Syrup.MassG, limits.SmallPanCM)).with(r.Syrup.MassG)
	if d.Kitchen.AltitudeM >= limits.AltitudeFromM {
		r.warnAltitude(d)
	}
}

// The syrup of an Italian meringue at sea level, °C: McGee 2004, On Food and
// Cooking, and two pastry books (testdata/tables/kitchen_limits.csv).
const hottestMeringueSyrup = 121

// warnAltitude says what a syrup's temperature means up here. Where it asks for
// a syrup that only the altitude makes too thick, that is a caution.
func (r *Result) warnAltitude(d design.Design) {
	here := water.AirPa(d.Kitchen.AltitudeM)
	asked := d.Foam.Syrup.CookTemperatureC
	f := AltitudeSyrup{
		AltitudeM: d.Kitchen.AltitudeM, AskedC: asked, AtSeaC: math.NaN(), WaterBoilsC: solution.BoilingC(0, here),
		HereC: solution.BoilingC(solution.BoilingFraction(asked, water.StandardPressure), here),
	}
	if sea := solution.BoilingC(solution.BoilingFraction(asked, here), water.StandardPressure); sea < solution.Hot[1] {
		f.AtSeaC = sea
	}
	s := Note
	if asked <= hottestMeringueSyrup && !(f.AtSeaC <= hottestMeringueSyrup) {
		s = Caution
	}
	r.warn(s, limits.Altitude.Code, "foam.syrup.cook_temperature_c", f)
}

// The freezer that nobody described: 100 L, four stars (common practice).
const homeFreezerL = 100

// freezerLoad is the heat of the batch from a refrigerator to the freezer's
// cold over what an ordinary freezer takes in a day.
func (r *Result) freezerLoad() float64 {
	kj := 0.0
	for _, p := range [...]*Phase{&r.Dense, &r.Foam} {
		if p.Portion.MadeG > 0 {
			kj += p.Portion.MadeG / 1000 * (p.Body.JPerG(fridgeC) - p.Body.JPerG(HomeFreezerC))
		}
	}
	return kj / (math.Max(limits.RatedLeastKg, limits.RatedKgPer100L*homeFreezerL/100) * limits.TestLoadKJPerKg)
}

// fridgeC is what an ordinary refrigerator is set to: common practice.
const fridgeC = 4
