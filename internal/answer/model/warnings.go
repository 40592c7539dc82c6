package model

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/work/design"
)

// homeFreezerC is what an ordinary freezer holds: common practice, and the
// reference of frozen-food rules.
const homeFreezerC = -18

func (r *Result) say(s Severity, code, where, format string, args ...any) {
	r.Warnings = append(r.Warnings, Warning{Code: code, Where: where, Severity: s, Message: fmt.Sprintf(format, args...)})
}

// warn adds every warning but those of the verdict.
func (r *Result) warn(d design.Design, c *cooked, replaced map[string]string) {
	r.warnCooking(d, c)
	r.warnPhase(&r.Dense, "dense", d.Serving.TemperatureC)
	r.warnPhase(&r.Foam, "foam", d.Serving.TemperatureC)
	r.warnTub(d)
	r.warnStorage()
	r.warnComposition(replaced)
}

func (r *Result) warnCooking(d design.Design, c *cooked) {
	if r.Dense.WrittenG == 0 {
		r.say(Serious, "phase_empty", "dense", "The custard has no lines, so the tub holds foam alone.")
	}
	if r.Foam.WrittenG == 0 {
		r.say(Serious, "phase_empty", "foam", "The foam has no lines, so the tub holds custard alone.")
	}
	if c.dense.short {
		r.say(Serious, "stove_loss_exceeds_water", "dense.stove_loss_percent", "The custard has less water than the stove is to drive off; all of it was taken.")
	}
	if c.syrup.short {
		r.say(Serious, "syrup_weighed_too_light", "foam.syrup.weighed_g", "The pan weighs less than the solids that went in: weigh it again, without the pan.")
	}
	if r.Syrup.Present && !r.Syrup.Reached {
		r.say(Caution, "syrup_no_boil_off", "foam.syrup", "The syrup as weighed boils only at %.1f °C: it is already thicker than %.0f °C makes it. Add water to dissolve the sugar.",
			r.Syrup.BoilingPointC, d.Foam.Syrup.CookTemperatureC)
	}
	if t := d.Foam.Syrup.CookTemperatureC; r.Syrup.Present && r.Syrup.Reached && !r.Syrup.Weighed {
		r.say(Note, "syrup_band", "foam.syrup", "Published tables of boiling syrup differ by about %.1f points of solids at %.0f °C; weighing the pan is exact.", boilingBand, t)
	}
}

func (r *Result) warnPhase(p *Phase, where string, t float64) {
	if p.WrittenG == 0 {
		return
	}
	m := p.Body.Mix
	coldest := t // a freezing point below the serving temperature is a figure too
	if p.Body.FreezingPointC < t {
		coldest = p.Body.FreezingPointC
	}
	if out := solution.Outside(m, coldest); len(out) > 0 {
		names := make([]string, len(out))
		for i, s := range out {
			names[i] = s.String()
		}
		r.say(Caution, "outside_model_range", where, "At %s the freezing curve of %s is extrapolated beyond the tables it rests on.", Celsius(coldest), strings.Join(names, " and "))
	}
	if ratio := 100 * (m.Mass[mix.SodiumChloride] + m.Mass[mix.PotassiumChloride]) / math.Max(m.Mass[mix.Water], 1e-9); ratio > 1 {
		r.say(Caution, "salt_rule_unsettled", where, "%.1f g added salt per 100 g water: the two published rules for sugar with salt differ by 1 to 2 points of frozen water here.", ratio)
	}
	if ratio, sandy := p.Body.LactoseRatio(); sandy {
		r.say(Caution, "lactose_sandy", where, "%.1f g lactose per 100 g water: above one twelfth the trade expects sandiness in storage (common practice).", 100*ratio)
	}
	if percent, grains := p.Body.Graining(); grains && p.Body.Role == phase.Foam {
		r.say(Caution, "foam_graining", where, "The foam's syrup is %.0f %% sugar, more sucrose than dissolves at 20 °C: it may grain. Replace part of the sugar by glucose syrup or honey.", percent)
	}
	if s := &p.State; p.Body.Role == phase.Foam && (s.SyrupSugar > solution.ViscosityRange.MaxPercent || s.T < solution.ViscosityRange.MinC) {
		r.say(Note, "film_beyond_formula", where, "At %s the liquid is %.0f %% sugar: its thickness is computed to %.0f %% and %s only, so the ribbon is stiffer than its hardness says.",
			Celsius(s.T), s.SyrupSugar, solution.ViscosityRange.MaxPercent, Celsius(solution.ViscosityRange.MinC))
	}
	if p.State.T < p.Body.EndOfFreezingC {
		r.say(Note, "end_of_freezing", where, "Below %s no more ice grows; the figures stay at that temperature's ice.", Celsius(math.Round(p.Body.EndOfFreezingC)))
	}
	if k, ok := p.Body.AboveGlass(t); ok && k < 20 {
		r.say(Note, "brittle", where, "At %s the liquid is only %.0f K above its glass: brittle rather than chewy.", Celsius(t), k)
	}
}

func (r *Result) warnTub(d design.Design) {
	if r.Dense.WrittenG == 0 || r.Foam.WrittenG == 0 {
		return
	}
	b := &r.Blend
	swell := (1-b.FoamVolume)*r.Dense.Swelling + b.FoamVolume*r.Foam.Body.Swelling(d.Serving.TemperatureC, 0)
	if fill := d.Tubs.FillPercent * swell; fill > 100 {
		r.say(Caution, "tub_overfull", "tubs.fill_percent", "Frozen, the filling swells to %.0f %% of the tub: fill to %.0f %% or less.", fill, math.Floor(100/swell))
	}
	if b.SweetnessPercent < phase.TradeSweetness[0] || b.SweetnessPercent > phase.TradeSweetness[1] {
		r.say(Note, "sweetness_outside_trade", "blend", "The spoonful is %.1f %% sucrose equivalent; the trade aims for %.0f to %.0f %% in an ice cream.",
			b.SweetnessPercent, phase.TradeSweetness[0], phase.TradeSweetness[1])
	}
	if e := r.Eggs; e.Known && math.Abs(e.Yolks-e.Whites) >= 0.5 && e.Yolks+e.Whites > 0 {
		over, n := "yolks", e.YolksLeft
		if e.WhitesLeft > 0 {
			over, n = "whites", e.WhitesLeft
		}
		r.say(Note, "eggs_unpaired", "eggs", "Cracking whole eggs leaves about %.1f %s over (%s %s eggs).", n, over, d.Eggs.System, d.Eggs.Size)
	}
	if d.Batch.Basis == design.BasisAsWritten && (b.Dense.LeftML > 1 || b.Foam.LeftML > 1) {
		r.say(Note, "left_over", "blend", "At %.0f %% foam, %.0f mL custard and %.0f mL foam are left over.", d.Blend.FoamVolumePercent, b.Dense.LeftML, b.Foam.LeftML)
	}
}

func (r *Result) warnStorage() {
	if r.Dense.WrittenG == 0 || r.Foam.WrittenG == 0 {
		return
	}
	f, dp := r.Foam.Body.FreezingPointC, r.Dense.Body.FreezingPointC
	if f < homeFreezerC && dp > homeFreezerC {
		r.say(Caution, "foam_draws_water", "foam", "The foam freezes only at %s, so in an ordinary freezer (%s) it holds no ice and draws water from the custard. Less sugar or more white helps.", Celsius(f), Celsius(homeFreezerC))
	}
}

func (r *Result) warnComposition(replaced map[string]string) {
	for _, l := range r.Lines {
		if l.Grams == 0 {
			continue
		}
		if whose, ok := replaced[l.Ingredient.ID]; ok {
			r.say(Note, "own_figures_differ", fmt.Sprintf("%s.lines[%d]", l.Part, l.Index),
				"%s: the design carries figures of its own, which differ from %s of that id; the design's are used.", l.Ingredient.Name, whose)
		}
		for _, a := range l.Assumed {
			r.say(Note, "composition_assumed", fmt.Sprintf("%s.lines[%d]", l.Part, l.Index), "%s: %s.", l.Ingredient.Name, a)
		}
	}
	// One warning for each ingredient: a pack that says little would fill a page.
	var lacking []string
	columns := map[string][]string{}
	for _, g := range r.Nutrition.Incomplete {
		a := r.Nutrition.Per100G[g.Column]
		if a.Complete() || a.Most-a.Known < 0.005*math.Max(a.Known, 1) {
			continue // no label could tell
		}
		for _, id := range g.Ingredients {
			if columns[id] == nil {
				lacking = append(lacking, id)
			}
			columns[id] = append(columns[id], g.Column.Words())
		}
	}
	for _, id := range lacking {
		i := slices.IndexFunc(r.Lines, func(l Line) bool { return l.Ingredient.ID == id })
		l := r.Lines[i]
		r.say(Note, "nutrition_incomplete", fmt.Sprintf("%s.lines[%d]", l.Part, l.Index), "%s: no source gives its %s, so the label's figure is a lower bound.",
			l.Ingredient.Name, strings.Join(columns[id], ", "))
	}
}
