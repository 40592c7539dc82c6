package model

import (
	"fmt"
	"math"
	"slices"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/work/design"
)

// HomeFreezerC is what an ordinary freezer holds: common practice, and the
// reference of frozen-food rules.
const HomeFreezerC = -18

// warnAll adds every warning.
func (r *Result) warnAll(m *Model, d design.Design, w *weighed, c *cooked) {
	r.warnCooking(d, c)
	r.warnLimits(m, d, w, c)
	r.warnPhase(&r.Dense, "dense", d.Serving.TemperatureC)
	r.warnPhase(&r.Foam, "foam", d.Serving.TemperatureC)
	r.warnTub(d)
	r.warnStorage()
	r.warnComposition(w.replaced)
}

func (r *Result) warnCooking(d design.Design, c *cooked) {
	for _, role := range r.lacking(d) {
		r.warn(Serious, "phase_empty", [...]string{phase.Dense: "dense", phase.Foam: "foam"}[role], PhaseEmpty{role})
	}
	if c.dense.short && !r.Absent(&r.Dense) {
		r.warn(Serious, "stove_loss_exceeds_water", "dense.stove_loss_percent", nil)
	}
	if r.Absent(&r.Foam) {
		return // nobody eats what is boiled
	}
	if c.syrup.short {
		r.warn(Serious, "syrup_weighed_too_light", "foam.syrup.weighed_g", nil)
	}
	if r.Syrup.Present && !r.Syrup.Reached {
		r.warn(Caution, "syrup_no_boil_off", "foam.syrup", SyrupNoBoilOff{r.Syrup.BoilingPointC, d.Foam.Syrup.CookTemperatureC})
	}
	if t := d.Foam.Syrup.CookTemperatureC; r.Syrup.Present && r.Syrup.Reached && !r.Syrup.Weighed {
		r.warn(Note, "syrup_band", "foam.syrup", SyrupBand{BoilingBand, t})
	}
}

// mostExtrapolated is the share of a phase's dissolved particles beyond their
// tables up to which that spoils no verdict: a tenth of them, wrong by a fifth,
// moves the freezing point by 2 %, a third of what real mixes scatter by (2.5 °C
// ± 0.15 K). Ours to choose.
const mostExtrapolated = 0.1

func (r *Result) warnPhase(p *Phase, where string, t float64) {
	if !p.InTub() {
		return // nobody eats it
	}
	m := p.Body.Mix
	coldest := t // a freezing point below the serving temperature is a figure too
	if p.Body.FreezingPointC < t {
		coldest = p.Body.FreezingPointC
	}
	if out := solution.Outside(m, coldest); len(out) > 0 {
		s := Note
		if solution.OutsideFraction(m, coldest) > mostExtrapolated {
			s = Caution
		}
		r.warn(s, "outside_model_range", where, OutsideModelRange{coldest, out})
	}
	salt := saltOf(m)
	r.strain("salt_rule_unsettled", where, salt, settledSaltG, false)
	if salt > settledSaltG {
		r.warn(Caution, "salt_rule_unsettled", where, SaltRuleUnsettled{salt})
	}
	if p.State.AtC < p.Body.EndOfFreezingC {
		r.warn(Note, "end_of_freezing", where, EndOfFreezing{p.Body.EndOfFreezingC})
	}
	if k, ok := p.Body.AboveGlassK(t); ok && k < 20 {
		r.warn(Note, "brittle", where, Brittle{t, k})
	}
}

// settledSaltG is the added salt, g per 100 g of water, up to which two published
// rules for sugar with salt agree (testdata/tables/mixing_rule_bracket.csv).
const settledSaltG = 1.0

// saltOf returns the added salt of m, g per 100 g of its water.
func saltOf(m mix.Mix) float64 {
	return 100 * (m.Grams[mix.SodiumChloride] + m.Grams[mix.PotassiumChloride]) / math.Max(m.Grams[mix.Water], 1e-9)
}

func (r *Result) warnTub(d design.Design) {
	if !r.Dense.InTub() || !r.Foam.InTub() {
		return
	}
	b := &r.Blend
	swell := (1-b.FoamVolumeFraction)*r.Dense.SwellingRatio + b.FoamVolumeFraction*r.Foam.Body.SwellingRatio(d.Serving.TemperatureC, 0)
	r.strain("tub_overfull", "tubs.fill_percent", d.Tubs.FillPercent*swell, 100, false)
	if fill := d.Tubs.FillPercent * swell; fill > 100 {
		r.warn(Caution, "tub_overfull", "tubs.fill_percent", TubOverfull{fill, math.Floor(100 / swell)})
	}
	if e := r.Eggs; e.Known && math.Abs(e.Yolks-e.Whites) >= 0.5 {
		r.warn(Note, "eggs_unpaired", "eggs", EggsUnpaired{e.Left.Yolks, e.Left.Whites, d.Eggs.System, d.Eggs.Size})
	}
	if d.Batch.Basis == design.BasisAsWritten && (b.Dense.LeftML > 1 || b.Foam.LeftML > 1) {
		r.warn(Note, "left_over", "blend", LeftOver{d.Blend.FoamVolumePercent, b.Dense.LeftML, b.Foam.LeftML,
			b.Dense.LeftG, b.Foam.LeftG, 100 * b.Foam.MadeML / (b.Foam.MadeML + b.Dense.MadeML)})
	}
}

func (r *Result) warnStorage() {
	if !r.Dense.InTub() || !r.Foam.InTub() {
		return
	}
	f, dp := r.Foam.Body.FreezingPointC, r.Dense.Body.FreezingPointC
	if dp > HomeFreezerC {
		r.strain("foam_draws_water", "foam", -f, -HomeFreezerC, false)
	}
	if f < HomeFreezerC && dp > HomeFreezerC {
		r.warn(Caution, "foam_draws_water", "foam", FoamDrawsWater{f, HomeFreezerC})
	}
}

func (r *Result) warnComposition(replaced map[string]*ingredient.Ingredient) {
	for _, l := range r.Lines {
		if !r.Counts(&l) {
			continue
		}
		if whose, ok := replaced[l.Ingredient.ID]; ok {
			r.warn(Note, "own_figures_differ", fmt.Sprintf("%s.lines[%d]", l.Part, l.Index), OwnFiguresDiffer{l.Ingredient, whose.Own})
		}
		for _, a := range l.Assumed {
			r.warn(Note, "composition_assumed", fmt.Sprintf("%s.lines[%d]", l.Part, l.Index), CompositionAssumed{l.Ingredient, a})
		}
	}
	// One warning for each ingredient: a pack that says little would fill a page.
	var lacking []string
	columns := map[string][]ingredient.Column{}
	for _, g := range r.Nutrition.Incomplete {
		a := r.Nutrition.Per100G[g.Column]
		if a.Complete() || a.Most-a.Known < 0.005*math.Max(a.Known, 1) {
			continue // no label could tell
		}
		for _, id := range g.Ingredients {
			if columns[id] == nil {
				lacking = append(lacking, id)
			}
			columns[id] = append(columns[id], g.Column)
		}
	}
	for _, id := range lacking {
		i := slices.IndexFunc(r.Lines, func(l BatchLine) bool { return l.Ingredient.ID == id })
		l := r.Lines[i]
		r.warn(Note, "nutrition_incomplete", fmt.Sprintf("%s.lines[%d]", l.Part, l.Index), NutritionIncomplete{l.Ingredient, columns[id]})
	}
}
