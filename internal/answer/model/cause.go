package model

import (
	"fmt"
	"strings"

	"ripplewright/internal/food/limits"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
)

// Cause is the place in the file whose change acts most on what w, of r, warns of: Where,
// or where that is a whole phase, the line or the setting that it comes of.
func (m *Model) Cause(r *Result, w Warning) string {
	if strings.HasPrefix(w.Where, "ingredients[") {
		return m.most(r, "", func(l *BatchLine, k *known) float64 { return k.brings.unnamed }, w.Where)
	}
	switch w.Code {
	case "end_of_freezing", "brittle":
		return "serving.temperature_c"
	case "syrup_band", "syrup_no_boil_off":
		return "foam.syrup.cook_temperature_c"
	case "salt_rule_unsettled", limits.Salt.Code:
		return m.most(r, w.Where, func(_ *BatchLine, k *known) float64 { return k.brings.salt }, w.Where)
	case limits.Yolk.Code, limits.YolkInWhite.Code:
		return m.most(r, w.Where, func(_ *BatchLine, k *known) float64 { return k.brings.yolk }, w.Where)
	case limits.AlcoholOnStove.Code:
		return m.most(r, w.Where, func(_ *BatchLine, k *known) float64 { return k.brings.alcohol }, w.Where)
	case limits.AcidHot.Code:
		return m.most(r, w.Where, func(_ *BatchLine, k *known) float64 { return k.brings.acid }, w.Where)
	case limits.StarchWithYolk.Code:
		return m.most(r, w.Where, func(_ *BatchLine, k *known) float64 { return k.brings.starch }, w.Where)
	case "left_over":
		return "blend.foam_volume_percent"
	case "foam_draws_water":
		return m.most(r, w.Where, func(l *BatchLine, _ *known) float64 { return -l.Slopes.FreezingPointC }, w.Where)
	case limits.SweetCustard.Code, limits.FlatCustard.Code: // what sweetens is what there is too little of, too
		if w.Where == "blend" {
			return "blend.foam_volume_percent" // the share of the sweeter phase
		}
		return m.most(r, w.Where, func(l *BatchLine, _ *known) float64 { return l.TubSweetPercentPerG }, w.Where)
	case limits.SyrupDepth.Code: // of a recipe made for so many tubs
		return "tubs"
	}
	return m.causeInFacts(r, w)
}

// causeInFacts is where facts name the solutes that a warning is about.
func (m *Model) causeInFacts(r *Result, w Warning) string {
	var of []mix.Species
	switch f := w.Facts.(type) {
	case Crystallises:
		for _, s := range f.Solutes {
			of = append(of, s.Solute)
		}
	case CrystalsUnchecked:
		of = f.Solutes
	case OutsideModelRange:
		of = f.Solutes
	case OutsideHardnessLaw:
		switch {
		case f.FatPercent > 100*phase.MostFat:
			of = []mix.Species{mix.Fat}
		case f.SugarPercent > f.MostPercent:
			return m.most(r, w.Where, func(_ *BatchLine, k *known) float64 { return k.Nominal.SaccharidesG() }, w.Where)
		default:
			return "serving.temperature_c"
		}
	default:
		return w.Where
	}
	return m.most(r, w.Where, func(_ *BatchLine, k *known) float64 {
		sum := 0.0
		for _, s := range of {
			sum += k.Nominal.Grams[s]
		}
		return sum
	}, w.Where)
}

// most is the place of the line, within a phase's place in the file or "" for all, that
// has most of what a gram of it brings; else where nothing has any.
func (m *Model) most(r *Result, within string, brings func(*BatchLine, *known) float64, or string) string {
	place, best := or, 0.0
	for i := range r.Lines {
		l := &r.Lines[i]
		if !strings.HasPrefix(l.Part.String(), within) {
			continue
		}
		if v := l.WrittenG * brings(l, m.resolve(l.Ingredient)); v > best {
			best, place = v, fmt.Sprintf("%s.lines[%d]", l.Part, l.Index)
		}
	}
	return place
}
