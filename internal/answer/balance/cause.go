package balance

import (
	"strings"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/work/design"
)

// answers reports whether a lever acts on what is wrong with r itself, so that a
// remedy may begin with it. What mends one fault may bring another; against that
// any lever may follow.
func answers(l *Lever, r *model.Result) bool {
	line := l.Kind != Setting && l.Kind != Batch
	dense := line && l.Part == design.DensePart
	foam := line && l.Part != design.DensePart
	wrong := func(e model.Eating) bool {
		return e.How == model.TooSoft || e.How == model.NeedsForce || e.How == model.TooHard
	}
	if wrong(r.Verdict.Dense) && (dense || l.Path == "dense.overrun_percent" || l.Path == "serving.temperature_c") ||
		wrong(r.Verdict.Foam) && (foam || l.Path == "foam.overrun_percent" || l.Path == "foam.syrup.cook_temperature_c" || l.Path == "serving.temperature_c") {
		return true
	}
	for i := range r.Warnings {
		w := &r.Warnings[i]
		if !spoils(w) {
			continue
		}
		ofDense := strings.HasPrefix(w.Where, "dense")
		switch w.Code {
		case "air_beyond_process", "tub_overfull", "stove_loss_exceeds_water", "weighed_too_heavy", "altitude_syrup":
			if l.Path == w.Where {
				return true
			}
		case "freezer_overloaded":
			if l.Path == "tubs.count" || l.Kind == Batch {
				return true
			}
		case "syrup_too_little":
			if l.Path == "tubs.count" || line && l.Part == design.SyrupPart {
				return true
			}
		case "syrup_weighed_too_light":
			if l.Path == "foam.syrup.weighed_g" {
				return true
			}
		case "yolk_in_whites":
			if foam && l.Low == 0 && l.Whole > 0 {
				return true
			}
		case "foam_draws_water", "syrup_no_boil_off":
			if foam || l.Path == "foam.syrup.cook_temperature_c" {
				return true
			}
		case "outside_model_range", "outside_hardness_law":
			if dense && ofDense || foam && !ofDense || l.Path == "serving.temperature_c" {
				return true
			}
		case "too_sweet":
			if dense && ofDense || w.Where == "blend" && (line || l.Path == "blend.foam_volume_percent") {
				return true
			}
		default:
			if dense && ofDense || foam && !ofDense {
				return true
			}
		}
	}
	return false
}
